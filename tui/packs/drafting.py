"""Drafts rules from a document, and accepts them row by row, by name."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import ANSWERED, NOT_FOUND, WITH_WARNINGS, UsageError
from tui.plain.console import Console
from tui.wiring import reading_library

if TYPE_CHECKING:
    from ingest.drafts.accept import Settling, Taken
    from ingest.drafts.model import Draft

ENDING = "-draft"


def draft_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the words of `rules draft`."""
    parser.add_argument("doc", metavar="DOC", help="a document of the library")
    parser.add_argument(
        "--out", type=Path, metavar="FOLDER", help="where to (default: TITLE-draft)"
    )


def draft(args: argparse.Namespace, console: Console) -> int:
    """Write a draft of what looks like rules; 1 when nothing does, 3 with doubts."""
    from ingest.drafts.folder import write_draft
    from ingest.drafts.make import draft_document

    with reading_library(args) as store:
        made = draft_document(args.doc, store)
    if not made.rows:
        return _nothing(args.doc, console)
    folder = args.out or Path(f"{made.head.id}{ENDING}")
    write_draft(made, folder)
    doubtful = any(row.doubts for row in made.rows) or bool(made.head.doubts)
    _tell_draft(made, folder, console)
    return WITH_WARNINGS if doubtful else ANSWERED


def _nothing(doc: str, console: Console) -> int:
    if console.json:
        console.document({"status": "not_found", "document": doc, "rows": []})
    else:
        console.line(f"{doc}: no table and no sentence looks like a rule")
    return NOT_FOUND


def _tell_draft(made: Draft, folder: Path, console: Console) -> None:
    from tui.plain.draft_sheet import draft_fields, draft_lines

    if console.json:
        told = {"status": "drafted", "folder": str(folder), "draft": draft_fields(made)}
        console.document(told)
        return
    console.lines(draft_lines(made, console.width))
    console.line(f"written to {folder}")
    console.line(f"next: faultleaf rules accept {folder} ROW... --by NAME")


def accept_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the words of `rules accept`."""
    parser.add_argument("draft", type=Path, metavar="DRAFT", help="a draft's folder")
    parser.add_argument("rows", nargs="*", metavar="ROW", help="rows to accept")
    parser.add_argument("--by", required=True, metavar="NAME", help="who accepts them")
    parser.add_argument(
        "--all", action="store_true", help="every row; refused while doubts stand"
    )
    parser.add_argument(
        "--settle",
        nargs=2,
        action="append",
        default=[],
        metavar=("ROW", "DOUBT=VALUE"),
        help="what the page has; ROW may be a printed table such as p3-t1, or `pack`",
    )
    parser.add_argument(
        "--into", type=Path, metavar="PACK", help="the pack (default: the draft's name)"
    )


def accept(args: argparse.Namespace, console: Console) -> int:
    """Settle doubts, then move rows into a pack that stands with them."""
    from ingest.drafts.accept import Taken, settle_in
    from ingest.drafts.accept import accept as take
    from ingest.drafts.folder import read_draft

    _check_words(args)
    folder: Path = args.draft
    now = SystemClock().now()
    settlings = _settlings(args.settle)
    settled = settle_in(folder, settlings, args.by, now)
    pack = args.into or pack_beside(folder)
    if args.rows or args.all:
        names: Sequence[str] | None = None if args.all else args.rows
        with reading_library(args) as store:
            taken = take(folder, names, args.by, now, (pack, store))
    else:
        left = read_draft(folder).rows
        doubtful = sum(bool(row.doubts) for row in left)
        taken = Taken((), pack, len(left), doubtful)
    _tell_taken(taken, settled, console)
    return WITH_WARNINGS if taken.proved and taken.proved.warnings else ANSWERED


def _check_words(args: argparse.Namespace) -> None:
    if args.all and args.rows:
        raise UsageError("rows are named and --all is given", "use one of them")
    if not (args.all or args.rows or args.settle):
        hint = f"faultleaf rules show {args.draft} lists the rows"
        raise UsageError("no row is named and no doubt is settled", hint)


def pack_beside(folder: Path) -> Path:
    """Return the pack's folder that belongs to a draft's.

    Examples
    --------
    >>> pack_beside(Path("shop/heron-draft")).as_posix()
    'shop/heron'
    """
    name = folder.resolve().name if folder.name in ("", ".", "..") else folder.name
    own = name.removesuffix(ENDING)
    return folder.parent / (own if own != name else f"{name}-pack")


def _settlings(pairs: Sequence[Sequence[str]]) -> list[Settling]:
    from ingest.drafts.accept import Settling

    made = []
    for row, said in pairs:
        doubt, sign, value = said.partition("=")
        if not sign or not value.strip():
            hint = f"--settle {row} DOUBT=VALUE, in quotes"
            raise UsageError(f"{said!r} is not DOUBT=VALUE", hint)
        made.append(Settling(row, doubt.strip(), value))
    return made


def _tell_taken(taken: Taken, settled: Sequence[str], console: Console) -> None:
    from dataclasses import asdict

    from tui.plain.text import count

    mistakes = taken.proved.mistakes if taken.proved else ()
    if console.json:
        console.document(
            {
                "accepted": list(taken.accepted),
                "settled": list(settled),
                "pack": str(taken.pack),
                "left": taken.left,
                "doubtful": taken.doubtful,
                "mistakes": [asdict(each) for each in mistakes],
            }
        )
        return
    console.lines(f"settled: {row}" for row in settled)
    console.lines(f"{each.severity}: {each}" for each in mistakes)
    if taken.accepted:
        told = count(len(taken.accepted), "row")
        console.line(f"{taken.pack}: {told} accepted; every source is on its page")
        console.line(f"next: faultleaf add {taken.pack}")
    console.line(f"left in the draft: {taken.left}, {taken.doubtful} with doubts")
