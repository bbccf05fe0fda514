"""The named checks of the command: one read-only table, and how one is run."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import replace
from itertools import chain
from types import MappingProxyType

from assistant.checks.curve import Curve
from assistant.checks.entry import NamedCheck
from assistant.checks.families import (
    air,
    charge,
    commissioning,
    instruments,
    inverter,
    kept,
    meter,
    motors,
    parts,
    phases,
    refrigerant,
    sensors,
    supply,
    target,
    thermistor,
)
from assistant.checks.inputs import read_inputs
from assistant.checks.kinds import Meter
from assistant.checks.law import OutOfRangeError
from assistant.checks.report import SCHEMA, CheckReport
from assistant.errors import UsageError

__all__ = ["CHECKS", "NamedCheck", "curve_of", "listing", "run_named", "usage"]

_FAMILIES = (
    air.NAMED,
    charge.NAMED,
    commissioning.NAMED,
    instruments.NAMED,
    inverter.NAMED,
    kept.NAMED,
    meter.NAMED,
    motors.NAMED,
    parts.NAMED,
    phases.NAMED,
    refrigerant.NAMED,
    sensors.NAMED,
    supply.NAMED,
    target.NAMED,
    thermistor.NAMED,
)

CHECKS: Mapping[str, NamedCheck] = MappingProxyType(
    {
        check.name: check
        for check in sorted(
            chain.from_iterable(_FAMILIES), key=lambda check: check.name
        )
    }
)
"""Every named check, by name."""


def run_named(
    name: str, given: Mapping[str, str], saved: Meter | None = None
) -> CheckReport:
    """Run a named check.

    Parameters
    ----------
    name : str
        A key of `CHECKS`.
    given : mapping of str to str
        Each key to its text, unit included.
    saved : Meter, optional
        The meter used where the texts tell none.

    Raises
    ------
    UsageError
        For an unknown name or key, a missing key, or a value that cannot be read.
    OutOfRangeError
        Outside the range that the law is stated for.

    Examples
    --------
    >>> run_named("standby-bus", {"supply": "230 V"}).value
    325.3
    """
    check = CHECKS.get(name)
    if check is None:
        near = difflib.get_close_matches(name, CHECKS, n=1)
        mean = f"did you mean {near[0]!r}? " if near else ""
        raise UsageError(
            f"there is no check {name!r}",
            f"{mean}see them all with: faultleaf check --list",
        )
    values, texts = read_inputs(name, check.inputs, given, saved)
    try:
        report = check.run(values)
    except OutOfRangeError:
        raise
    except ValueError as error:
        raise UsageError(f"check {name!r}: {error}", usage(check)) from error
    return replace(report, inputs=texts)


def curve_of(name: str, given: Mapping[str, str]) -> Curve:
    """Return the curve that the reading of a named check lies on.

    Parameters
    ----------
    name : str
        A key of `CHECKS`.
    given : mapping of str to str
        Each key to its text, as for `run_named`.

    Raises
    ------
    UsageError
        For a check without a curve, or what `run_named` would refuse.
    OutOfRangeError
        Outside the range that the law is stated for.
    """
    check = CHECKS.get(name)
    if check is None or check.curve is None:
        drawable = ", ".join(each.name for each in CHECKS.values() if each.curve)
        raise UsageError(f"check {name!r} has no curve", f"these have one: {drawable}")
    values, _ = read_inputs(name, check.inputs, given)
    return check.curve(values)


def usage(check: NamedCheck) -> str:
    """Return the line to type for a check, optional keys in brackets.

    Examples
    --------
    >>> usage(CHECKS["supply-sag"])[:59]
    "faultleaf check supply-sag rest='231 V' start='215 V' [larg"
    """
    words = [
        f"{item.name}='{item.example}'"
        if item.required
        else f"[{item.name}='{item.example}']"
        for item in check.inputs
    ]
    return " ".join(("faultleaf check", check.name, *words))


def listing() -> dict[str, object]:
    """Return the JSON document of ``check --list``."""
    return {"schema": SCHEMA, "checks": [_described(c) for c in CHECKS.values()]}


def _described(check: NamedCheck) -> dict[str, object]:
    return {
        "name": check.name,
        "says": check.says,
        "formula": check.law.formula,
        "source": check.law.source,
        "note": check.law.note,
        "limits": [str(limit) for limit in check.law.limits],
        "usage": usage(check),
        "inputs": [
            {
                "name": item.name,
                "dimension": item.dimension,
                "example": item.example,
                "says": item.says,
                "required": item.required,
                "default": item.default or None,
                "instead_of": item.instead_of or None,
            }
            for item in check.inputs
        ],
    }
