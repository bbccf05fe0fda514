"""Readings of a nameplate compared with what a pack states: classes, not strings."""

from __future__ import annotations

import re
from typing import Literal

from assistant.record import SerialRange

Verdict = Literal["confirmed", "possible", "excluded"]

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_VOLTS = re.compile(r"(\d{2,3}(?:\.\d+)?)(?!\s*(?:\d|\.\d|hz|ph))", re.IGNORECASE)
_CLASSES = (
    (115, 95.0, 132.0),
    (230, 187.0, 264.0),
    (277, 265.0, 305.0),
    (400, 342.0, 440.0),
    (460, 441.0, 528.0),
    (575, 529.0, 635.0),
)
"""Class, lowest and highest volts: nominal voltages of supplies with about ±10 %
(references: supply limits; the spans between them split by hand)."""
_FILLER = frozenset(
    {"label", "labels", "mark", "marking", "print", "printed", "sticker", "tag"}
    | {"board", "chip", "processor", "microprocessor", "color", "colour"}
    | {"the", "a", "an", "is", "on", "with"}
)
LEAST_VOLTS = 90
"""Smaller numbers beside a voltage are phases and hertz."""
CENTURY = 70
"""Two-digit years from here on are of the last century."""
SHORT_YEAR = 2
UNITS_A_CLASS = 1000
_PHASE = {"one": "1", "single": "1", "1": "1", "three": "3", "3": "3"}


def compare_sets(stated: frozenset[str], read: frozenset[str]) -> Verdict:
    """Return how alternatives read agree with alternatives stated.

    Everything read is among those stated: confirmed; some of it: possible.
    """
    if not stated or not read:
        return "possible"
    if read <= stated:
        return "confirmed"
    return "possible" if read & stated else "excluded"


def compare_voltage(stated: str, read: str) -> Verdict:
    """Compare voltage classes; ``208/230`` is the 230 class.

    Examples
    --------
    >>> compare_voltage("230", "208/230-1-60"), compare_voltage("115 V", "230")
    ('confirmed', 'excluded')
    >>> compare_voltage("230", "115/230")
    'possible'
    """
    return compare_sets(_classes(stated), _classes(read))


def _classes(text: str) -> frozenset[str]:
    found = set()
    for number in _VOLTS.findall(text):
        volts = float(number)
        if volts >= LEAST_VOLTS:
            match = [name for name, low, high in _CLASSES if low <= volts <= high]
            found.add(str(match[0]) if match else number)
    return frozenset(found)


def compare_phase(stated: str, read: str) -> Verdict:
    """Compare phases: ``1``, ``single``, ``3-phase``, ``three phase``."""
    return compare_sets(_phases(stated), _phases(read))


def _phases(text: str) -> frozenset[str]:
    words = re.findall(r"[a-z]+|\d", text.casefold())
    return frozenset(_PHASE[word] for word in words if word in _PHASE)


def compare_capacity(stated: str, read: str) -> Verdict:
    """Compare capacity classes; ``40/60 class`` states two, ``24000`` is ``24``.

    Examples
    --------
    >>> compare_capacity("40/60 class", "60"), compare_capacity("24", "36k")
    ('confirmed', 'excluded')
    """
    mine, theirs = _sizes(stated), _sizes(read)
    return (
        compare_sets(mine, theirs) if mine and theirs else compare_words(stated, read)
    )


def _sizes(text: str) -> frozenset[str]:
    numbers = [float(number) for number in _NUMBER.findall(text.replace(",", ""))]
    return frozenset(
        f"{n / UNITS_A_CLASS if n >= UNITS_A_CLASS else n:g}" for n in numbers
    )


def compare_words(stated: str, read: str) -> Verdict:
    """Compare marks in words; a part of the words named leaves it possible.

    Examples
    --------
    >>> compare_words("orange dot", "an orange dot on the chip")
    'confirmed'
    >>> compare_words("orange dot", "orange"), compare_words("orange", "white label")
    ('possible', 'excluded')
    """
    mine, theirs = _words(stated), _words(read)
    if mine == theirs:
        return "confirmed"
    return "possible" if mine < theirs or theirs < mine else "excluded"


def _words(text: str) -> frozenset[str]:
    words = frozenset(re.findall(r"[a-z0-9]+", text.casefold()))
    return words - _FILLER or words


def compare_serial(stated: SerialRange, read: str) -> Verdict:
    """Compare a serial number with an inclusive range in the stated format.

    A serial that does not carry a date in that format decides nothing.
    """
    given = serial_key(stated.format, read)
    if given is None:
        return "possible"
    first = serial_key(stated.format, stated.first) if stated.first else None
    last = serial_key(stated.format, stated.last) if stated.last else None
    if first is not None and given < first:
        return "excluded"
    if last is not None and given > last:
        return "excluded"
    return "confirmed" if first is not None or last is not None else "possible"


def serial_key(form: str, serial: str) -> tuple[int, int] | None:
    """Return (year, week or month) of a serial, or None when it carries none.

    `form` spells digit by digit ``YYWW``, ``WWYY``, ``YYMM`` or ``YYYYWW`` from the
    first digit on, ``X`` for a digit that says nothing; letters in the serial are
    passed over. Two-digit years from 70 on are of the last century.

    Examples
    --------
    >>> serial_key("YYWW", "A2314-00871"), serial_key("WWYY", "1423")
    ((2023, 14), (2023, 14))
    """
    digits = re.sub(r"\D", "", serial)
    if not serial_form_known(form) or len(digits) < len(form):
        return None
    parts = dict.fromkeys("YWMX", "")
    for letter, digit in zip(form.upper(), digits, strict=False):
        parts[letter] += digit
    year, turn = int(parts["Y"]), int(parts["W"] or parts["M"])
    if len(parts["Y"]) == SHORT_YEAR:
        year += 1900 if year >= CENTURY else 2000
    return (year, turn) if 1 <= turn <= (53 if parts["W"] else 12) else None


def serial_form_known(form: str) -> bool:
    """Return whether a serial format can be read: years with weeks or months."""
    letters = form.upper()
    years = letters.count("Y")
    weeks, months = letters.count("W"), letters.count("M")
    return (
        not set(letters) - set("YWMX")
        and years in (2, 4)
        and (weeks, months) in ((2, 0), (0, 2))
    )
