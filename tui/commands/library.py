"""`faultleaf library`: what is in it, what it covers, and its vectors."""

from __future__ import annotations

import argparse

from assistant.errors import ANSWERED, WITH_WARNINGS
from tui.parser import common_options
from tui.plain.console import Console
from tui.wiring import places, reading_library


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare `list`, which is the default, and `embed`."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION")
    actions.add_parser(
        "list",
        parents=[common_options()],
        help="documents, rule packs and coverage (default)",
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
    """List the library, or bring its vectors up to date."""
    if args.action == "embed":
        return _embed(args, console)
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
