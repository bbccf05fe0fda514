"""One slip of the kinds that people make, put into a right pack at a chosen place.

A kind gives every place in a pack's files where it can be made. Each slip changes the
meaning, or the form, of what is written; whether anything notices is what the report
of `tests.evaluation.packs` counts.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

Files = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Slip:
    """A changed line: file, line from 1, what stood there, what stands there now.

    `put` may hold line ends, or be empty where the line went.
    """

    kind: str
    file: str
    line: int
    stood: str
    put: str

    def into(self, files: Files) -> dict[str, str]:
        """Return the files with the slip in them."""
        lines = files[self.file].split("\n")
        new = [] if self.put == GONE else self.put.split("\n")
        lines[self.line - 1 : self.line] = new
        return {**files, self.file: "\n".join(lines)}


GONE = "\0"
"""Put in place of a line that was lost."""
Change = Callable[[str, random.Random], str | None]


def slips(kind: str, files: Files, rng: random.Random) -> Iterator[Slip]:
    """Yield every slip of a kind that a pack has a place for."""
    suffixes, pattern, change = KINDS[kind]
    looked = re.compile(pattern)
    for file, text in sorted(files.items()):
        if not file.endswith(suffixes):
            continue
        for number, line in enumerate(text.split("\n"), start=1):
            if line.lstrip().startswith("#") or not looked.search(line):
                continue
            put = change(line, rng)
            if put is not None and put != line:
                yield Slip(kind, file, number, line, put)


def _sub(pattern: str, put: str) -> Change:
    return lambda line, _rng: re.sub(pattern, put, line, count=1)


def _lost(_line: str, _rng: random.Random) -> str:
    return GONE


def _other_digit(match: re.Match[str], rng: random.Random) -> str:
    return rng.choice([digit for digit in "123456789" if digit != match[0]])


def _digit(pattern: str) -> Change:
    """Change one digit of what the first group of a pattern holds."""

    def change(line: str, rng: random.Random) -> str | None:
        found = re.search(pattern, line)
        if found is None:
            return None
        places = list(re.finditer(r"\d", found[1]))
        if not places:
            return None
        at = rng.choice(places)
        start = found.start(1) + at.start()
        return line[:start] + _other_digit(at, rng) + line[start + 1 :]

    return change


def _letter_doubled(pattern: str) -> Change:
    """Misspell the word that the first group of a pattern holds."""

    def change(line: str, rng: random.Random) -> str | None:
        found = re.search(pattern, line)
        if found is None or len(found[1]) < 3:
            return None
        at = found.start(1) + rng.randrange(1, len(found[1]) - 1)
        return line[:at] + line[at + 1] + line[at] + line[at + 2 :]

    return change


def _page(by: Callable[[int], int]) -> Change:
    def change(line: str, _rng: random.Random) -> str | None:
        return re.sub(r"page: (\d+)", lambda m: f"page: {by(int(m[1]))}", line, count=1)

    return change


def _quote(line: str, rng: random.Random) -> str | None:
    """Exchange two letters of a quote that differ."""
    found = re.search(r'quote: "([^"]+)"', line)
    if found is None:
        return None
    inner = found[1]
    places = [
        n
        for n in range(len(inner) - 1)
        if inner[n] != inner[n + 1] and inner[n : n + 2].isalnum()
    ]
    if not places:
        return None
    at = found.start(1) + rng.choice(places)
    return line[:at] + line[at + 1] + line[at] + line[at + 2 :]


def _cells(change: Callable[[list[str]], list[str] | None]) -> Change:
    def changed(line: str, _rng: random.Random) -> str | None:
        cells = line.split(",")
        if len(cells) < 3 or not cells[0].lstrip("-").replace(".", "").isdigit():
            return None
        new = change(cells)
        return None if new is None else ",".join(new)

    return changed


def _row_digit(line: str, rng: random.Random) -> str | None:
    cells = line.split(",")
    if len(cells) < 3 or not cells[1].replace(".", "").isdigit():
        return None
    at = rng.choice(list(re.finditer(r"\d", cells[1])))
    put = _other_digit(at, rng)
    cells[1] = cells[1][: at.start()] + put + cells[1][at.end() :]
    return ",".join(cells)


_KEY = r"^\s*(?:- )?([a-z_]{4,}):"
_TIME = r"\b(?:minimum|usual|give_up|window|pause|off_at_least|off_at_most)"
_ENDS = (".yaml",)
_TABLE = (".csv",)
_ITEMS = tuple(
    f"{name}.yaml"
    for name in ("signals", "waits", "stops", "checks", "causes", "sensors")
)

KINDS: dict[str, tuple[tuple[str, ...], str, Change]] = {
    # form
    "key misspelt": (_ENDS, _KEY, _letter_doubled(_KEY)),
    "kind misspelt": (_ENDS, r"kind: [a-z_]{4,}", _letter_doubled(r"kind: (\w+)")),
    "required line lost": (
        _ITEMS,
        r"^  (?:kind|name|meaning|is_fault|event|trigger|frequency|needs|ask):",
        _lost,
    ),
    "source lost": (_ITEMS, r"^  source: \{.*\}$", _lost),
    "unit lost": (_ENDS, rf"{_TIME}: \d+ \w", _sub(rf"({_TIME}: \d+) \w+", r"\1")),
    "unit of another dimension": (
        _ENDS,
        rf"{_TIME}: \d+ (?:s|min|h)\b",
        _sub(rf"({_TIME}: \d+) (?:s|min|h)\b", r"\1 kohm"),
    ),
    "quotes lost from on or off": (
        _ENDS,
        r'state: "o(?:n|ff)"',
        _sub(r'state: "(on|off)"', r"state: \1"),
    ),
    "tab for spaces": (_ENDS, r"^  \w+:", _sub(r"^  ", "\t")),
    "bracket lost": (_ENDS, r"\[[^\]]*\]", _sub(r"\]", "")),
    "id given twice": (_ENDS, r"^- id: ", lambda line, _: f"{line}\n  id: twice-over"),
    # references
    "reference misspelt": (
        _ENDS,
        r"^  (?:causes|waits|stops): \[[a-z]",
        _letter_doubled(r"\[([a-z-]+)"),
    ),
    "document misspelt": (_ENDS, r"doc: [a-z]{4}", _letter_doubled(r"doc: ([a-z]+)")),
    # sources
    "page after": (_ENDS, r"page: \d+", _page(lambda n: n + 1)),
    "page beyond the document": (_ENDS, r"page: \d+", _page(lambda n: n + 900)),
    "letters exchanged in a quote": (_ENDS, r'quote: "', _quote),
    # figures
    "another count": (_ITEMS, r"^  count: \d", _digit(r"count: (\d+)")),
    "another code": (_ITEMS, r'^  code: "[A-Z]+\d', _digit(r'code: "(\w+)"')),
    "another time": (_ITEMS, rf"{_TIME}: \d", _digit(rf"{_TIME}: (\d+)")),
    "another limit": (_ITEMS, r"^  limit: \d", _digit(r"limit: (\d+)")),
    "another band": (_ITEMS, r"^  (?:low|high): -?\d", _digit(r"(?:low|high): (\S+)")),
    "low and high taken for each other": (
        _ITEMS,
        r"^  low: ",
        _sub(r"^  low:", "  high:"),
    ),
    # safety
    "off-time of a reset lost": (
        _ITEMS,
        r"off_at_least: ",
        lambda line, _: (
            re.sub(r"off_at_least: [^,}]+(?:, )?", "", line) if "{" in line else GONE
        ),
    ),
    "live step called power off": (
        _ITEMS,
        r"needs: live",
        _sub(r"needs: live", "needs: power_off"),
    ),
    "power off step called live": (
        _ITEMS,
        r"needs: power_off",
        _sub(r"needs: power_off", "needs: live"),
    ),
    "customer let in": (
        _ITEMS,
        r"allowed_for: \[technician",
        _sub(r"allowed_for: \[", "allowed_for: [customer, "),
    ),
    # table rows
    "another digit in a table": (_TABLE, r"^-?\d", _row_digit),
    "cells of a table exchanged": (
        _TABLE,
        r"^-?\d",
        _cells(lambda cells: [cells[1], cells[0], *cells[2:]]),
    ),
    "a cell of a table lost": (
        _TABLE,
        r"^-?\d",
        _cells(lambda cells: [cells[0], *cells[2:]]),
    ),
    "comma for the decimal point": (
        _TABLE,
        r"^-?\d+,\d+\.\d",
        _cells(lambda cells: [cells[0], cells[1].replace(".", ","), *cells[2:]]),
    ),
    # applicability
    "pattern with an open bracket": (
        ("pack.yaml", *_ITEMS),
        r'models: \["[^"]*\)',
        _sub(r"\)", ""),
    ),
    # meaning: only the page could tell
    "colour taken for another": (
        _ITEMS,
        r"colour: (?:amber|green|red)",
        _sub(r"colour: (?:amber|green|red)", "colour: blue"),
    ),
    "fault called normal": (
        _ITEMS,
        r"is_fault: true",
        _sub(r"is_fault: true", "is_fault: false"),
    ),
    "move turned about": (
        _ITEMS,
        r"strongly for",
        _sub(r"strongly for", "strongly against"),
    ),
}
"""Kind -> endings of the files it is made in, what a line needs, how it is changed."""
