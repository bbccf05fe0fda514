"""Readings of a nameplate compared with what a pack states: classes, not strings."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from assistant.rules.ranges import Verdict

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
    return compare_sets(read_voltages(stated), read_voltages(read))


def read_voltages(text: str) -> frozenset[str]:
    """Return the voltage classes that a text names."""
    found = set()
    for number in _VOLTS.findall(text):
        volts = float(number)
        if volts >= LEAST_VOLTS:
            match = [name for name, low, high in _CLASSES if low <= volts <= high]
            found.add(str(match[0]) if match else number)
    return frozenset(found)


def compare_phase(stated: str, read: str) -> Verdict:
    """Compare phases: ``1``, ``single``, ``3-phase``, ``three phase``."""
    return compare_sets(read_phases(stated), read_phases(read))


def read_phases(text: str) -> frozenset[str]:
    """Return the phases that a text names."""
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
    if mine and theirs:
        return compare_sets(mine, theirs)
    return "possible" if mine or theirs else compare_words(stated, read)


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


COMPARED: Mapping[str, Callable[[str, str], Verdict]] = {
    "series": compare_words,
    "family": compare_words,
    "voltage": compare_voltage,
    "phase": compare_phase,
    "board_mark": compare_words,
    "capacity_class": compare_capacity,
    "market": compare_words,
}
"""Field of a scope and of the plate -> how the two are compared."""
