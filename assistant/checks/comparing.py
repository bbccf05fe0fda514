"""Compares a reading with limits and says it in words; shared by every judge."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.checks.uncertainty import guarded
from assistant.checks.verdict import Result
from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity

GROSS = 10.0
"""Factor from the expected value at which a reading is questioned."""
DIGITS = 4
"""Digits that a reading is quoted with: as many as a usual meter shows."""
STORED_CHARGE_LIMIT = 50.0
"""Ceiling for stored charge, V (29 CFR 1910.333(a)(1)); a document may go lower."""
NOT_PROOF = (
    "this reading does not prove the circuit dead: test the meter on a known source "
    "before and after, and measure at every marked bank"
)


def shown(value: float, unit: str) -> str:
    """Return a value as a person would write it."""
    return format_quantity(Quantity(value=value, unit=unit), digits=DIGITS)


def spread(u: float, unit: str) -> str:
    """Return an uncertainty to two digits; one of a temperature is a difference."""
    kind = "dK" if unit == "K" else unit
    digits = 3 if kind == "dK" else 2
    return format_quantity(Quantity(value=u, unit=kind), digits=digits)


def compare(
    value: float, low: float | None, high: float | None, u: float, unit: str
) -> tuple[Result, str]:
    """Return the verdict of a value against limits, with its reason.

    A band narrower than 2 U can never be passed. A value beyond one limit by more
    than U still fails that limit, as it would if it stood alone.

    Parameters
    ----------
    value, low, high, u : float
        Reading, limits and U (k = 2), [unit].
    unit : str
        A canonical unit.
    """
    result = guarded(value, low, high, u)
    if low is not None and guarded(value, low, None, u) == "fail":
        return "fail", _beyond(value, low, "below", u, unit)
    if high is not None and guarded(value, None, high, u) == "fail":
        return "fail", _beyond(value, high, "above", u, unit)
    limits = _limits(low, high, unit)
    read = f"{shown(value, unit)} ± {spread(u, unit)}"
    if result == "pass":
        return result, f"{read} {limits}"
    narrow = low is not None and high is not None and high - low < 2 * u
    why = "the band is narrower than twice the uncertainty" if narrow else limits
    return result, f"too close to call with this meter: {read}, {why}"


def _beyond(value: float, limit: float, side: str, u: float, unit: str) -> str:
    return (
        f"{shown(value, unit)} lies {side} {shown(limit, unit)} by more than its "
        f"uncertainty of {spread(u, unit)}"
    )


def _limits(low: float | None, high: float | None, unit: str) -> str:
    if low is not None and high is not None:
        return f"against {shown(low, unit)} to {shown(high, unit)}"
    if low is not None:
        return f"against at least {shown(low, unit)}"
    return "" if high is None else f"against at most {shown(high, unit)}"


def question(value: float, expected: float, unit: str) -> str:
    """Return a doubt about a reading far from what is expected, or nothing.

    The reading is never mended: a decimal slip and a fault look alike.
    """
    if expected == 0 or (value != 0 and 1 / GROSS < value / expected < GROSS):
        return ""
    return (
        f"{shown(value, unit)} is far from the {shown(expected, unit)} expected: "
        "check the meter's range, the unit and the test points; it is taken as told"
    )


def unmet_reason(false: Sequence[str], unknown: Sequence[str]) -> str:
    """Return which conditions do not hold and which are not known; may be empty."""
    return because(
        f"this must hold and does not: {', '.join(false)}" if false else "",
        f"this must hold and is not known: {', '.join(unknown)}" if unknown else "",
    )


def because(*parts: str) -> str:
    """Join what is not empty into one reason."""
    return "; ".join(part for part in parts if part)
