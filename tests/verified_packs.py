"""Packs verified against a library of two invented documents."""

from __future__ import annotations

from pathlib import Path

from assistant.rules.kinds import PackDocument
from assistant.rules.loader import load_pack_with_lines
from assistant.rules.mistakes import Mistake
from assistant.rules.verify import PageText, verify_pack
from tests.pack_folders import GOOD, write_pack

SERVICE = {
    2: "Stored charge",
    12: "wait 3 minutes after a stop; compressor first",
    14: "3 times in 60\n  minutes",
    20: "The unit does not cool",
    30: "LD1 lit",
    31: "4 flashes: sensor, board",
    33: "E4",
    34: "run lit, timer flashing",
    40: "Discharge 0 180 / 20 68 / 60 14.5",
    41: "measure the sensor at the plug",
}
BULLETIN = {1: "4 flashes. This replaces the row for 4 flashes."}
LIBRARY = {"QM service manual": SERVICE, "QM bulletin 7": BULLETIN}


def pages(library: dict[str, dict[int, str]]) -> PageText:
    def page_text(document: PackDocument, page: int) -> str | None:
        held = library.get(document.title)
        if held is None or page > max(held):
            return None
        return held.get(page, "")

    return page_text


def verified(
    folder: Path, files: dict[str, str], library: dict[str, dict[int, str]] = LIBRARY
) -> list[Mistake]:
    pack, lines = load_pack_with_lines(write_pack(folder / "pack", files))
    prefix = f"{(folder / 'pack').as_posix()}/"
    return [
        Mistake(m.file.removeprefix(prefix), m.line, m.what, m.hint, m.severity)
        for m in verify_pack(pack, pages(library), lines)
    ]


def line_of(files: dict[str, str], file: str, marker: str) -> int:
    return files[file][: files[file].index(marker)].count("\n") + 1


def added(file: str, text: str) -> dict[str, str]:
    return {**GOOD, file: GOOD[file] + text}
