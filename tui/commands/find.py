"""`faultleaf find`: passages of the literature, with their pages."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, NOT_FOUND, UsageError
from tui.plain.console import Console
from tui.wiring import places, readable, reading_library, words_of

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from assistant.library.types import Match

MOST = 100


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the text, the unit, and how much to show."""
    parser.add_argument("text", nargs="+", help="what to look for; - reads stdin")
    parser.add_argument("--unit", metavar="MODEL[,key=value...]", help="see `ask`")
    parser.add_argument(
        "--all-units",
        action="store_true",
        help="look through the literature of every unit",
    )
    parser.add_argument(
        "--document", metavar="DOC", help="look through one document only"
    )
    parser.add_argument(
        "--limit", type=int, default=5, metavar="N", help="hits to show (default 5)"
    )
    parser.add_argument(
        "--why", action="store_true", help="show the raw evidence of every hit"
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Search and print the hits, or what was searched in vain."""
    if not 1 <= args.limit <= MOST:
        raise UsageError(
            f"--limit {args.limit} is not between 1 and {MOST}", "faultleaf find --help"
        )
    text = readable(words_of(args.text, console))
    from assistant.library.encoder import load_encoder
    from assistant.library.search import Search

    with reading_library(args) as store:
        search = Search(store, load_encoder(places(args)))
        result = search.search(
            text,
            match=_match(args, store),
            limit=args.limit,
            document=args.document,
        )
    if console.json:
        from tui.plain.as_json import found_fields

        console.document(found_fields(result))
    else:
        from tui.plain.hits import found_lines

        console.lines(found_lines(result, console.width, why=args.why))
    return ANSWERED if result.found else NOT_FOUND


def _match(args: argparse.Namespace, store: LibraryStore) -> Match | None:
    """Say of each document whether it applies; None when the unit is not told."""
    if args.unit is None or args.all_units:
        return None
    from assistant.dialogue.knowledge import Knowledge
    from assistant.rules.stored import read_stored
    from tui.unit_option import parse_unit

    packs = tuple(read_stored(pack.payload) for pack in store.packs())
    knowledge = Knowledge(packs=packs, documents=store.documents())
    verdicts = knowledge.document_match(parse_unit(args.unit))
    return lambda document: verdicts[document.sha256]
