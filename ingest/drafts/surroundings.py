"""What a page says around a table: its lamp, its rhythm, its legend. Pure."""

from __future__ import annotations

import re

from ingest.drafts.words import DURATION

_COLOURS = "green|red|amber|yellow|orange|blue|white"
_LABEL = re.compile(r"\b((?:LD|LED|LP|H|D)\s?-?\d{1,2}[A-Z]?)\b")
_COLOUR = re.compile(
    rf"\b({_COLOURS})\b(?=(?:\s+\w+){{0,2}}\s+(?:lamp|led|light)\b)"
    rf"|\b(?:lamp|led|light)[\s(,]+({_COLOURS})\b",
    re.IGNORECASE,
)
_BOX = re.compile(r"\b(indoor|outdoor)\b", re.IGNORECASE)
_BOXES = "indoor|outdoor|remote|thermostat"
_DISPLAY = re.compile(
    rf"\b({_BOXES})(?: unit(?:'s)?)? display\b"
    rf"|\b(?:shown|displayed) (?:on|by) (?:the )?({_BOXES})\b",
    re.IGNORECASE,
)
_LIGHT = re.compile(r"\b(?:lamps?|leds?|lights?|flash|blink)", re.IGNORECASE)
_TIME = DURATION.pattern
_WINDOW = re.compile(
    rf"\b(?:every|in|within|per|repeat(?:s|ed)?(?: time)?(?: of the group)?)\s+{_TIME}",
    re.IGNORECASE,
)
_PAUSE = re.compile(
    rf"\bpause(?:s|d)?\b(?:\s+\w+){{0,3}}?\s+{_TIME}|\b{_TIME}\s+(?:dark\s+)?pause\b",
    re.IGNORECASE,
)
_FAULTS = re.compile(
    r"\b(?:faults?|errors?|failures?|malfunctions?|alarms?|troubles?)\b", re.IGNORECASE
)
_NO_FAULTS = re.compile(
    r"\b(?:not? faults?|are not faults|normal states?)\b", re.IGNORECASE
)
GLYPHS = "●○◎☆★◆◇■□▲△▼▽◉◐◑⊗✕✖✳✱"
"""Signs that tables use for the state of a lamp."""
_MEANT = {
    "on": r"\b(?:on|lit|steady|continuous)\b",
    "off": r"\b(?:off|dark|not lit|out)\b",
    "flash": r"\b(?:flash(?:es|ing)?|blink(?:s|ing)?)\b",
}
NEAR = 5
"""Lines above a table that may speak of it."""


def before(text: str, start: int) -> list[str]:
    """Return the last lines above a place of a page, nearest first."""
    lines = [line.strip() for line in text[:start].splitlines() if line.strip()]
    return lines[::-1][: NEAR + 1]


def lamp_named(text: str, start: int) -> dict[str, str]:
    """Return the lamp that the lines above a table name, nearest first.

    The label and the colour must stand in one line; lines that name two lamps name
    none.
    """
    for line in before(text, start):
        labels = _labels(line)
        colours = {
            (found[1] or found[2]).casefold() for found in _COLOUR.finditer(line)
        }
        if len(labels) > 1 or len(colours) > 1:
            return {}
        if labels or colours:
            lamp = {}
            if labels:
                lamp["label"] = labels.pop()
            if colours:
                lamp["colour"] = colours.pop()
            return {**_box(line), **lamp}
    return {}


def _labels(line: str) -> set[str]:
    """Return the labels in a line; H1 and D1 are codes where no lamp is spoken of."""
    found = {each[1].replace(" ", "") for each in _LABEL.finditer(line)}
    if _LIGHT.search(line):
        return found
    return {label for label in found if label.startswith("L")}


def _box(line: str) -> dict[str, str]:
    boxes = {found.casefold() for found in _BOX.findall(line)}
    return {"box": boxes.pop()} if len(boxes) == 1 else {}


def display_named(text: str, start: int) -> dict[str, str]:
    """Return the box whose display the title just above a table names, if one only.

    A title may say whose codes they are; that is not where they are shown.
    """
    for line in before(text, start)[:2]:
        boxes = {(found[1] or found[2]).casefold() for found in _DISPLAY.finditer(line)}
        if len(boxes) == 1:
            return {"box": boxes.pop()}
    return {}


def rhythm(text: str, start: int) -> dict[str, str]:
    """Return the window or the pause that the lines above a table state."""
    for line in before(text, start):
        if not _LIGHT.search(line):
            continue
        pauses = {_written(found) for found in _PAUSE.finditer(line)}
        windows = {_written(found) for found in _WINDOW.finditer(line)}
        if len(pauses) == 1:
            return {"pause": pauses.pop()}
        if len(windows) == 1:
            return {"window": windows.pop()}
    return {}


def _written(found: re.Match[str]) -> str:
    parts = [part for part in found.groups() if part]
    return f"{parts[0]} {parts[1]}"


def speaks_of_faults(text: str, start: int) -> bool | None:
    """Return whether the lines above a table call its rows faults; None: neither."""
    for line in before(text, start):
        if _NO_FAULTS.search(line):
            return False
        if _FAULTS.search(line):
            return True
    return None


def legend(text: str) -> dict[str, str]:
    """Return glyph -> state of a lamp where the page explains its signs.

    Examples
    --------
    >>> legend("● lit   ○ dark   ◎ flashing") == {"●": "on", "○": "off", "◎": "flash"}
    True
    """
    found: dict[str, str] = {}
    pieces = re.split(rf"(?=[{GLYPHS}])", text)
    for piece in pieces[1:]:
        said = piece[1:28].split("\n")[0]
        first = re.match(r"\s*[:=\-–]?\s*((?:\w+ ?){1,3})", said)
        words = first[1] if first else ""
        states = [name for name, form in _MEANT.items() if re.search(form, words, re.I)]
        if len(states) == 1:
            found.setdefault(piece[0], states[0])
    return found


def legend_line(text: str) -> str:
    """Return the line of a page that explains its glyphs, or nothing."""
    for line in text.splitlines():
        if len(legend(line)) >= 2 or (legend(line) and line.strip()[0] in GLYPHS):  # noqa: PLR2004 - a legend tells signs apart
            return " ".join(line.split())
    return ""
