"""What a named check gives back, and the document printed for it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.checks.verdict import Result, Verdict
from assistant.units.names import find_unit
from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity

SCHEMA = 1


@dataclass(frozen=True, slots=True)
class CheckReport:
    """The outcome of one named check, in canonical units.

    Attributes
    ----------
    check : str
        Its name in the registry.
    value : float or None
        What was computed, or the reading when one was judged, in `unit`.
    unit : str
        A canonical unit.
    low, high : float or None
        Limits, in `unit`.
    result : str or None
        None when nothing was judged.
    reason, formula, source : str
        Why, what was computed, and where it stands.
    expected, uncertainty : float or None
        In `unit`.
    missing : tuple of str
        For no_verdict: what is still to be told.
    inputs : mapping
        Each key to its text as given, defaults included.
    """

    check: str
    value: float | None
    unit: str
    low: float | None = None
    high: float | None = None
    result: Result | None = None
    reason: str = ""
    formula: str = ""
    source: str = ""
    expected: float | None = None
    uncertainty: float | None = None
    missing: tuple[str, ...] = ()
    also: tuple[tuple[str, float, str], ...] = ()
    """Figures that come with the value: name, value and canonical unit."""
    inputs: Mapping[str, str] = field(default_factory=dict)


def from_verdict(name: str, verdict: Verdict) -> CheckReport:
    """Return the report of a judged reading."""
    return CheckReport(
        check=name,
        value=verdict.value,
        unit=verdict.unit,
        low=verdict.low,
        high=verdict.high,
        result=verdict.result,
        reason=verdict.reason,
        formula=verdict.formula,
        source=verdict.source,
        expected=verdict.expected,
        uncertainty=verdict.uncertainty,
        missing=verdict.missing,
    )


def document(report: CheckReport) -> dict[str, object]:
    """Return the JSON document of ``check --json``; values in canonical units.

    Examples
    --------
    >>> found = document(CheckReport("supply-sag", 32.5, "V", inputs={"rest": "231 V"}))
    >>> found["check"], found["value"], found["unit"], found["result"]
    ('supply-sag', 32.5, 'V', None)
    >>> found["shown"]
    '32.5 V'
    """
    return {
        "schema": SCHEMA,
        "check": report.check,
        "inputs": dict(report.inputs),
        "value": _clean(report.value),
        "unit": report.unit,
        "low": _clean(report.low),
        "high": _clean(report.high),
        "result": report.result,
        "reason": report.reason,
        "formula": report.formula,
        "source": report.source,
        "expected": _clean(report.expected),
        "uncertainty": _clean(report.uncertainty),
        "missing": list(report.missing),
        "shown": show(report.value, report),
        "also": [
            {
                "name": name,
                "value": _clean(value),
                "unit": unit,
                "shown": show_as(value, unit, report),
            }
            for name, value, unit in report.also
        ],
    }


def _clean(value: float | None) -> float | None:
    """Return a figure without the last bits that binary arithmetic leaves."""
    return None if value is None else float(f"{value:.12g}")


_DIGITS = 4
_AS_WRITTEN = {"PaG", "Pa", "W", "m3/s", "kg", "kg/m", "m2", "m"}
"""Units whose figures are shown in the unit that an input was written in."""
_BESIDE_FAHRENHEIT = {"PaG": "psig", "Pa": "psia", "W": "Btu/h"}
"""What goes with °F where no input was written in the figure's own dimension."""
_FAHRENHEIT = re.compile(r"[\d.]\s*(?:°F|F|degF)(?![A-Za-z])")


def show(value: float | None, report: CheckReport) -> str:
    """Return a figure of a report in the unit that its inputs were written in."""
    return "" if value is None else show_as(value, report.unit, report)


def show_as(value: float, unit: str, report: CheckReport) -> str:
    """Return a figure [unit] in the unit that a report's inputs were written in."""
    quantity = Quantity(value=value, unit=unit)
    fahrenheit = any(_FAHRENHEIT.search(text) for text in report.inputs.values())
    if unit in {"K", "dK"}:
        return format_quantity(quantity, like="°F" if fahrenheit else None)
    if unit in _AS_WRITTEN:
        like = _like(report, unit)
        if like is None and fahrenheit:
            like = _BESIDE_FAHRENHEIT.get(unit)
        return format_quantity(quantity, like=like, digits=_DIGITS)
    return format_quantity(quantity)


def unit_like(report: CheckReport, unit: str) -> str:
    """Return the unit in which a report's inputs tell such figures; empty for none."""
    fahrenheit = any(_FAHRENHEIT.search(text) for text in report.inputs.values())
    if unit == "K":
        return "°F" if fahrenheit else ""
    return _BESIDE_FAHRENHEIT.get(unit, "") if fahrenheit else ""


def _like(report: CheckReport, unit: str) -> str | None:
    """Return an input that was written in a unit of the same dimension."""
    for text in report.inputs.values():
        spelled = text.strip().lstrip("+-−0123456789.,eE ")
        found = find_unit(spelled) if spelled else None
        if found is not None and found.canonical == unit:
            return spelled
    return None
