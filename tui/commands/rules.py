"""`faultleaf rules`: prove rule packs against the literature in the library."""

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
    """Declare `verify`."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)
    verify = actions.add_parser(
        "verify",
        parents=[common_options()],
        help="sources, overlaps, gaps, references and safe order of a pack",
        description="Proves that every source of a pack stands on its page, and "
        "looks for overlaps, gaps, loose references and unsafe steps.",
    )
    verify.add_argument("pack", metavar="PATH|ID", help="a folder, or a pack in force")


def run(args: argparse.Namespace, console: Console) -> int:
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
