"""The named checks of the command: one read-only table, and how one is run."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from assistant.checks import named
from assistant.checks.bus import STANDBY
from assistant.checks.inputs import (
    COUNT,
    POINTS,
    POWER,
    READING,
    Input,
    Values,
    read_inputs,
)
from assistant.checks.law import Law, OutOfRangeError
from assistant.checks.report import SCHEMA, CheckReport
from assistant.checks.supply import BAND, SAG
from assistant.checks.thermistor import BETA, TABLE
from assistant.checks.uncertainty import GUARD, METER
from assistant.errors import UsageError


@dataclass(frozen=True, slots=True)
class NamedCheck:
    """A law that a person can run by name.

    Attributes
    ----------
    name, says : str
        The name typed, and one line on what it is for.
    law : Law
        Formula, source and limits.
    inputs : tuple of Input
        In the order they are listed.
    run : callable
        Parsed values to a report.
    """

    name: str
    says: str
    law: Law
    inputs: tuple[Input, ...]
    run: Callable[[Values], CheckReport]


_METER = (
    Input("percent", "ratio", "1 %", "the meter's share of the reading"),
    Input("digits", COUNT, "3", "the meter's counts of the last digit"),
    Input("resolution", READING, "0.1 V", "one count of the range used"),
)
_POWER = Input("power", POWER, "off", "power while it was read: off or live")
_TEMPERATURE = Input(
    "temperature", "temperature", "25 °C", "measured at the sensor, not in the room"
)
_RESISTANCE = Input("resistance", "resistance", "10 kohm", "read, sensor unplugged")
_TOLERANCE = Input(
    "tolerance", "ratio", "5 %", "the document's tolerance of resistance"
)
_TEN = Input("tolerance", "ratio", "10 %", "allowed share either way", default="10 %")
_VOLTS = Input("reading", "voltage", "228 V", "as measured")

_SENSOR = (_TEMPERATURE, _RESISTANCE, _TOLERANCE, _POWER, *_METER)


def _required(name: str, dimension: str, example: str, says: str) -> Input:
    return Input(name, dimension, example, says, required=True)


_ALL = (
    NamedCheck(
        "thermistor-beta",
        "resistance and temperature of a sensor by R0, T0 and B",
        BETA,
        (
            _required("r0", "resistance", "10 kohm", "resistance at t0"),
            _required("t0", "temperature", "25 °C", "reference temperature"),
            _required("beta", "temperature", "3950 K", "B value"),
            *_SENSOR,
        ),
        named.thermistor_beta,
    ),
    NamedCheck(
        "thermistor-table",
        "resistance and temperature of a sensor between stated points",
        TABLE,
        (
            _required(
                "points",
                POINTS,
                "20 °C: 25.0 kohm; 25 °C: 20.0 kohm",
                "points of the document's table",
            ),
            *_SENSOR,
        ),
        named.thermistor_table,
    ),
    NamedCheck(
        "supply-voltage",
        "supply voltage at the terminals against its band",
        BAND,
        (
            _required("nominal", "voltage", "230 V", "voltage of the nameplate"),
            _TEN,
            _VOLTS,
            _POWER,
            *_METER,
        ),
        named.supply_voltage,
    ),
    NamedCheck(
        "supply-sag",
        "how far the supply falls when the compressor starts",
        SAG,
        (
            _required("rest", "voltage", "231 V", "at the terminals, before the start"),
            _required("start", "voltage", "215 V", "lowest during the start"),
            Input("largest", "voltage", "25 V", "largest fall the document allows"),
            *_METER,
        ),
        named.supply_sag,
    ),
    NamedCheck(
        "standby-bus",
        "direct voltage behind the rectifier in standby",
        STANDBY,
        (
            _required("supply", "voltage", "230 V", "measured at the same time"),
            _TEN,
            _VOLTS,
            _POWER,
            *_METER,
        ),
        named.standby_bus_voltage,
    ),
    NamedCheck(
        "meter-bound",
        "largest error that a meter's figures allow",
        METER,
        (
            _required("reading", READING, "120.0 V", "as shown"),
            _required("percent", "ratio", "0.7 %", "share of the reading"),
            _required("digits", COUNT, "2", "counts of the last digit"),
            _required("resolution", READING, "0.1 V", "one count of the range used"),
        ),
        named.meter_error,
    ),
    NamedCheck(
        "guard-band",
        "whether a reading can carry a verdict against limits",
        GUARD,
        (
            _required("reading", READING, "210.5 V", "as shown"),
            Input("low", READING, "207 V", "lowest allowed"),
            Input("high", READING, "253 V", "highest allowed"),
            Input("u", READING, "2.8 V", "expanded uncertainty, k = 2"),
            *_METER,
        ),
        named.guard_band,
    ),
)

CHECKS: Mapping[str, NamedCheck] = MappingProxyType(
    {check.name: check for check in sorted(_ALL, key=lambda check: check.name)}
)
"""Every named check, by name."""


def run_named(name: str, given: Mapping[str, str]) -> CheckReport:
    """Run a named check.

    Parameters
    ----------
    name : str
        A key of `CHECKS`.
    given : mapping of str to str
        Each key to its text, unit included.

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
    values, texts = read_inputs(name, check.inputs, given)
    try:
        report = check.run(values)
    except OutOfRangeError:
        raise
    except ValueError as error:
        raise UsageError(f"check {name!r}: {error}", usage(check)) from error
    return replace(report, inputs=texts)


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
            }
            for item in check.inputs
        ],
    }
