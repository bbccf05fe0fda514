"""Compares what a display shows with a row: codes, sub-codes, places, values."""

from __future__ import annotations

import re

from assistant.signals.fits import NEAR_GLYPH, Fit, assumed, matched
from assistant.signals.kinds import (
    DigitPosition,
    DisplayCode,
    DisplayValue,
    MainSubCode,
)
from assistant.signals.observation import Observation
from assistant.signals.seven_segment import look_alike, plain_code

SUB_TAKEN_FOR_CODE = 0.25
"""Weight of a row whose second code was reported as the code."""
MAY_BE_VALUE = 0.5
"""Weight of a value beside a code that is written the same."""
_BLANKS = " _-\u2013"
_HUNDRED, _TENTHS = 100, 10
_HEX = re.compile(r"[0-9A-Fa-f]+")
_NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?")
_POINT = re.compile(r"0?\.[0-9]{1,2}")


def fit_shown(
    seen: Observation, row: DisplayCode | MainSubCode | DigitPosition | DisplayValue
) -> Fit | None:
    """Compare a display; None where it shows something else."""
    if seen.state != "display":
        return None
    match row:
        case DisplayCode():
            return fit_code(seen, (row.code, *row.glyph_equivalence))
        case MainSubCode():
            return _main_sub(seen, row)
        case DigitPosition():
            return _place(seen, row)
        case DisplayValue():
            value = read_value(seen.code or "", row)
            if value is None:
                return None
            fit = matched("state", "code")
            return fit.and_also(Fit(weight=MAY_BE_VALUE, near=frozenset({"value"})))


def fit_code(seen: Observation, codes: tuple[str, ...]) -> Fit | None:
    """Compare a code that was read whole, as one of several, or in its beginning."""
    told = (seen.code,) if seen.code else seen.codes_possible
    if not told:
        starts = plain_code(seen.code_starts or "")
        begins = starts and any(plain_code(code).startswith(starts) for code in codes)
        return matched("state").and_also(assumed("code")) if begins else None
    if any(plain_code(one) == plain_code(code) for one in told for code in codes):
        return matched("state", "code")
    if any(look_alike(one, code) for one in told for code in codes):
        return Fit(
            frozenset({"state", "code"}),
            frozenset({"glyph"}),
            NEAR_GLYPH,
            near=frozenset({"glyph"}),
        )
    return None


def _main_sub(seen: Observation, row: MainSubCode) -> Fit | None:
    main = fit_code(seen, (row.code,))
    if main is None:
        swapped = row.sub is not None and seen.sub is None and seen.code is not None
        if swapped and plain_code(seen.code or "") == plain_code(row.sub or ""):
            slots = frozenset({"code", "sub"})
            return Fit(
                frozenset({"state"}), slots, SUB_TAKEN_FOR_CODE, near=frozenset({"sub"})
            )
        return None
    if seen.sub is None:
        return main.and_also(assumed("sub")) if row.sub is not None else main
    if row.sub is not None and plain_code(seen.sub) != plain_code(row.sub):
        return None
    return main.and_also(matched("sub"))


def signs_of(code: str, places: int) -> tuple[str, ...] | None:
    """Return the sign at each place, a blank as "", or None where it has other places.

    Examples
    --------
    >>> signs_of("4_1", 3), signs_of("E4", 3)
    (('4', '', '1'), None)
    """
    text = code if len(code) == places else plain_code(code)
    if len(text) != places:
        return None
    return tuple("" if sign in _BLANKS else sign.upper() for sign in text)


def _place(seen: Observation, row: DigitPosition) -> Fit | None:
    signs = signs_of(seen.code or "", row.of)
    if signs is None:
        return None
    shown, written = signs[row.position - 1], row.sign.strip(_BLANKS).upper()
    if shown == written:
        return matched("state", "code")
    if shown and written and look_alike(shown, written):
        near = frozenset({"glyph"})
        return Fit(frozenset({"state", "code"}), near, NEAR_GLYPH, near=near)
    return None


def read_value(code: str, row: DisplayValue) -> float | str | None:
    """Return what a display value stands for, or None where it can be no such value.

    A sentinel gives its own words.

    Examples
    --------
    >>> row = DisplayValue(
    ...     kind="display_value", id="x", meaning="", is_fault=False,
    ...     encoding="point_is_hundred", low=-30, high=130,
    ...     sentinels={"--": "no sensor"})
    >>> read_value("0.7", row), read_value("45", row), read_value("--", row)
    (107.0, 45.0, 'no sensor')
    """
    text = code.strip()
    if text in row.sentinels:
        return row.sentinels[text]
    value = _number(text, row)
    inside = value is not None and row.low <= value <= row.high
    return value if inside else None


def _number(text: str, row: DisplayValue) -> float | None:
    if row.encoding == "hexadecimal":
        return float(int(text, 16)) if _HEX.fullmatch(text) else None
    if row.encoding == "point_is_hundred" and _POINT.fullmatch(text):
        digits = text.partition(".")[2]
        scale = _TENTHS if len(digits) == 1 else _HUNDRED
        return float(_HUNDRED + round(float(text) * scale))
    return float(text) if _NUMBER.fullmatch(text) else None
