"""Shows a pack, or a draft, as a person reads it."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, InputError
from tui.plain.console import Console
from tui.wiring import reading_library

if TYPE_CHECKING:
    from assistant.rules.pack import Pack


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the words of `rules show`."""
    parser.add_argument(
        "pack", metavar="PATH|ID", help="a folder, a draft, or a pack in force"
    )


def show(args: argparse.Namespace, console: Console) -> int:
    """Print a pack or a draft."""
    from ingest.drafts.folder import is_draft, read_draft
    from tui.plain.draft_sheet import draft_fields, draft_lines
    from tui.plain.pack_sheet import pack_lines

    folder = Path(args.pack)
    if is_draft(folder):
        draft = read_draft(folder)
        if console.json:
            console.document({"draft": draft_fields(draft)})
        else:
            console.lines(draft_lines(draft, console.width))
        return ANSWERED
    pack = _pack(args, folder)
    if console.json:
        shown = pack.model_dump(mode="json", by_alias=True, exclude_defaults=True)
        console.document({"pack": pack.head.id, "rules": shown})
    else:
        console.lines(pack_lines(pack, console.width))
    return ANSWERED


def _pack(args: argparse.Namespace, folder: Path) -> Pack:
    from assistant.rules.loader import load_pack
    from assistant.rules.stored import read_stored

    if folder.name == "pack.yaml":
        folder = folder.parent
    if folder.is_dir():
        return load_pack(folder)
    with reading_library(args) as store:
        stored = {pack.id: pack for pack in store.packs()}
    if args.pack not in stored:
        known = ", ".join(stored) or "none"
        raise InputError(
            f"no rule pack {args.pack!r} is in force; in force: {known}",
            "name a pack's folder or its id",
        )
    return read_stored(stored[args.pack].payload)
