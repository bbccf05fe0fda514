"""`faultleaf rules`: begin, show, prove, draft and accept rule packs."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, PackError
from tui.parser import common_options
from tui.plain.console import Console
from tui.wiring import places, reading_library

if TYPE_CHECKING:
    from ingest.packs import Proved


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the actions."""
    from tui.packs import drafting, showing, writing

    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)

    def action(name: str, line: str, more: str) -> argparse.ArgumentParser:
        return actions.add_parser(
            name, parents=[common_options()], help=line, description=more
        )

    verify = action(
        "verify",
        "sources, overlaps, gaps, references and safe order of a pack",
        "Proves that every source of a pack stands on its page, and looks for "
        "overlaps, gaps, loose references and unsafe steps.",
    )
    verify.add_argument("pack", metavar="PATH|ID", help="a folder, or a pack in force")
    new = action("new", "begin a pack: commented files", "Writes a commented pack.")
    writing.new_arguments(new)
    show = action(
        "show", "a pack as a person reads it", "Shows a pack, or a draft, in words."
    )
    showing.arguments(show)
    schema = action(
        "schema",
        "JSON Schema of a pack's files, for editors",
        "Prints the JSON Schema of one file of a pack, or writes all of them.",
    )
    writing.schema_arguments(schema)
    draft = action(
        "draft",
        "rows that look like rules, from a document of the library",
        "Writes every row of a table and every sentence that looks like a rule, with "
        "its page, its words and its doubts. A draft answers nothing. Exit code 3: "
        "some rows have doubts; 1: nothing looks like a rule.",
    )
    drafting.draft_arguments(draft)
    accept = action(
        "accept",
        "take rows of a draft into a pack, by name",
        "Moves rows of a draft into a pack, which is proved with them before it is "
        "written. A row with doubts is refused until they are settled.",
    )
    drafting.accept_arguments(accept)


def run(args: argparse.Namespace, console: Console) -> int:
    """Do what the action says."""
    from tui.packs import drafting, showing, writing

    acts = {
        "verify": _verify,
        "new": writing.new,
        "show": showing.show,
        "schema": writing.schema,
        "draft": drafting.draft,
        "accept": drafting.accept,
    }
    return acts[args.action](args, console)


def _verify(args: argparse.Namespace, console: Console) -> int:
    """Prove the pack; print everything that speaks against it."""
    from ingest.packs import parsed_files, prove_folder, prove_stored

    folder = Path(args.pack)
    if folder.name == "pack.yaml":
        folder = folder.parent
    with reading_library(args) as store:
        if folder.is_dir():
            proved = prove_folder(folder, store, parsed_files(places(args)))
        else:
            proved = prove_stored(args.pack, store)
    if console.json:
        console.document(_fields(proved))
    else:
        console.lines(_lines(proved))
    return PackError.exit_code if proved.mistakes else ANSWERED


def _fields(proved: Proved) -> dict[str, object]:
    from dataclasses import asdict

    return {
        "pack": proved.pack.head.id,
        "version": proved.pack.head.version,
        "stands": not proved.errors,
        "mistakes": [asdict(each) for each in proved.mistakes],
    }


def _lines(proved: Proved) -> list[str]:
    lines = [f"{each.severity}: {each}" for each in proved.mistakes]
    head = proved.pack.head
    name = f"{head.id} {head.version}"
    if proved.errors:
        return [*lines, f"{name} does not stand: it cannot be in force like this"]
    if proved.warnings:
        return [*lines, f"{name} stands, with {len(proved.warnings)} to see to"]
    return [f"{name} stands: every source is on its page"]
