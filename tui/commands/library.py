"""`faultleaf library`: what is in it, what is said of it, its proof and vectors."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, WITH_WARNINGS
from tui import proving, stating
from tui.parser import common_options
from tui.plain.console import Console
from tui.wiring import places, reading_library

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from assistant.library.types import Document


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare `list`, which is the default, `show`, `set`, `verify` and `embed`."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION")
    actions.add_parser(
        "list",
        parents=[common_options()],
        help="documents, rule packs and coverage (default)",
    )
    show = actions.add_parser(
        "show",
        parents=[common_options()],
        help="one document: who says what of it, and how each page was read",
    )
    show.add_argument("name", metavar="DOC", help="path, file name, title or id")
    show.add_argument(
        "--page",
        type=int,
        metavar="N",
        help="the text of one page, and before its repair; counted in the file",
    )
    stating.arguments(
        actions.add_parser(
            "set",
            parents=[common_options()],
            help="state title, revision, what it supersedes or which units it is for",
            allow_abbrev=False,
        )
    )
    proving.arguments(
        actions.add_parser(
            "verify",
            parents=[common_options()],
            help="read the files again and prove every stored text on its page",
            allow_abbrev=False,
        )
    )
    embed = actions.add_parser(
        "embed", parents=[common_options()], help="compute the vectors that are missing"
    )
    embed.add_argument(
        "--anew",
        action="store_true",
        help="with the configured model, whatever the library was made with",
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """List the library, or do what the action says."""
    actions: dict[str | None, Callable[[argparse.Namespace, Console], int]] = {
        "embed": _embed,
        "set": stating.run,
        "show": _show,
        "verify": proving.run,
    }
    return actions.get(args.action, _list)(args, console)


def _show(args: argparse.Namespace, console: Console) -> int:
    from tui.plain.as_json import record_fields
    from tui.plain.one_document import named_document, sheet_lines, sheet_of

    with reading_library(args) as store:
        document = named_document(store, args.name)
        if args.page is not None:
            return _show_page(store, document, args.page, console)
        sheet = sheet_of(store, document, _counter(args))
    if console.json:
        console.document(record_fields(sheet))
    else:
        console.lines(sheet_lines(sheet, console.width))
    return ANSWERED


def _show_page(
    store: LibraryStore, document: Document, number: int, console: Console
) -> int:
    from tui.plain.as_json import record_fields
    from tui.plain.one_page import page_lines, page_of

    sheet = page_of(store, document, number)
    if console.json:
        console.document(record_fields(sheet))
    else:
        console.lines(page_lines(sheet, console.width))
    return ANSWERED


def _counter(args: argparse.Namespace) -> Callable[[str], int] | None:
    """Return what counts tokens, where the model's tokenizer is installed."""
    from assistant.errors import LibraryError
    from tui.adding import token_counter

    try:
        return token_counter(places(args))
    except LibraryError:
        return None


def _list(args: argparse.Namespace, console: Console) -> int:
    from tui.plain.as_json import record_fields
    from tui.plain.holdings import holdings, holdings_lines

    with reading_library(args) as store:
        held = holdings(store)
    if console.json:
        console.document(record_fields(held))
    else:
        console.lines(holdings_lines(held, console.width))
    return ANSWERED


def _embed(args: argparse.Namespace, console: Console) -> int:
    from assistant.library.store import LibraryStore
    from tui.embedding import embed_library

    settings = places(args)
    with LibraryStore.open(settings.library) as store:
        done = embed_library(store, settings, console, replace=args.anew)
    if console.json:
        console.document({"embedded": done.texts, "warning": done.warning})
    else:
        console.line(f"embedded {done.texts} texts")
        if done.warning:
            console.line(f"warning: {done.warning}")
    return WITH_WARNINGS if done.warning else ANSWERED
