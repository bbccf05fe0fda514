"""Finds the unit that a word or two spell; loads no library."""

from __future__ import annotations

import re

from assistant.units.table import UNITS, WORDS, Unit

_DIFFERENCE = re.compile(
    r"(?P<unit>K|°C|°F|C|F|degC|degF)\s*(?:difference|diff|diff\.)", re.IGNORECASE
)
_KIND = re.compile(
    r"(?P<unit>\S+?)\s*[\s(](?P<kind>gauge|absolute|abs|g|a)\)?", re.IGNORECASE
)
_CURRENT = re.compile(r"(?P<unit>m?V|kV|volts?|m?A|amps?)\s+(?:AC|DC)", re.IGNORECASE)
_VACUUM = re.compile(r"in\.? ?hg\.? (?:of )?vac(?:uum)?\.?", re.IGNORECASE)
_DEGREES = re.compile(
    r"(?:°|degrees?|deg\.?)\s*(?P<scale>C|F|celsius|fahrenheit)", re.IGNORECASE
)


def find_unit(text: str) -> Unit | None:
    """Return the unit that `text` spells, or None.

    Case counts in symbols (``K`` is kelvin, ``k`` is thousand ohms) and not in
    words (``Minutes``). Loads no library.

    Examples
    --------
    >>> find_unit("kΩ").canonical, find_unit("V AC").canonical
    ('ohm', 'V')
    >>> find_unit("9 F difference") is None, find_unit("F difference").canonical
    (True, 'dK')
    """
    spelled = text.strip().replace("Ω", "Ω").replace("μ", "µ")
    if spelled in UNITS:
        return UNITS[spelled]
    if spelled.lower() in WORDS:
        return UNITS[spelled.lower()]
    return _compound(spelled)


def _compound(spelled: str) -> Unit | None:
    """Units of more than one word: a difference, AC or DC, gauge or absolute."""
    if found := _DIFFERENCE.fullmatch(spelled):
        scale = "delta_degF" if "f" in found["unit"].lower() else "delta_degC"
        return UNITS[scale]
    if found := _DEGREES.fullmatch(spelled):
        return UNITS[found["scale"][0].upper()]
    if found := _CURRENT.fullmatch(spelled):
        return find_unit(found["unit"])
    if _VACUUM.fullmatch(spelled):
        return UNITS["inHg_vacuum"]
    if found := _KIND.fullmatch(spelled):
        return _pressure(found["unit"], found["kind"])
    return None


def _pressure(spelled: str, kind: str) -> Unit | None:
    unit = UNITS.get(spelled)
    if unit is None or unit.canonical != "PaG":
        return None
    if kind.lower().startswith("g"):
        return unit
    sign = "psia" if unit.sign == "psig" else unit.sign.replace("gauge", "absolute")
    return Unit("Pa", unit.factor, sign)
