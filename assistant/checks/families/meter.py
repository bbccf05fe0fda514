"""The named checks of a meter's own figures."""

from __future__ import annotations

from assistant.checks.comparing import because, compare
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import figure
from assistant.checks.inputs import COUNT, READING, Input, Values
from assistant.checks.reading import bound_for
from assistant.checks.report import CheckReport
from assistant.checks.uncertainty import GUARD, METER, expanded, guarded, meter_bound
from assistant.errors import UsageError
from assistant.units.quantity import Quantity


def meter_error(values: Values) -> CheckReport:
    """Return the largest error of a reading, with the range it leaves."""
    reading, resolution = values.quantity("reading"), values.quantity("resolution")
    _same_unit(reading, resolution, "resolution")
    percent, digits = values.number("percent") * 100, values.number("digits")
    bound = meter_bound(reading.value, percent, digits, resolution.value)
    return figure(
        "meter-bound",
        METER,
        bound,
        reading.unit,
        low=reading.value - bound,
        high=reading.value + bound,
        uncertainty=expanded(bound),
    )


def guard_band(values: Values) -> CheckReport:
    """Return the verdict of a reading against limits, guarded by U."""
    reading = values.quantity("reading")
    low, high = values.maybe("low"), values.maybe("high")
    u, told = values.maybe("u"), values.meter()
    for other, name in ((low, "low"), (high, "high"), (u, "u")):
        if other is not None:
            _same_unit(reading, other, name)
    if low is None and high is None:
        raise UsageError("a guard band needs a limit", "give low='207 V' or high=…")
    bound, note = bound_for(told, reading.value, reading.unit)
    wide = expanded(bound) if u is None else u.value
    floor, ceiling = (None if end is None else end.value for end in (low, high))
    result = guarded(reading.value, floor, ceiling, wide)
    compared, reason = compare(reading.value, floor, ceiling, wide, reading.unit)
    if compared != result:
        reason = "too close to call: the band is narrower than twice the uncertainty"
    return figure(
        "guard-band",
        GUARD,
        reading.value,
        reading.unit,
        because(reason, "" if u is not None else note),
        low=floor,
        high=ceiling,
        result=result,
        uncertainty=wide,
    )


def _same_unit(reading: Quantity, other: Quantity, name: str) -> None:
    if other.unit != reading.unit:
        raise UsageError(
            f"{name}={other.text!r} is not in the unit of reading={reading.text!r}",
            "give both in volts, both in ohms, or both in amperes",
        )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "meter-bound",
        "largest error that a meter's figures allow",
        METER,
        (
            required("reading", READING, "120.0 V", "as shown"),
            required("percent", "ratio", "0.7 %", "share of the reading"),
            required("digits", COUNT, "2", "counts of the last digit"),
            required("resolution", READING, "0.1 V", "one count of the range used"),
        ),
        meter_error,
    ),
    NamedCheck(
        "guard-band",
        "whether a reading can carry a verdict against limits",
        GUARD,
        (
            required("reading", READING, "210.5 V", "as shown"),
            Input("low", READING, "207 V", "lowest allowed"),
            Input("high", READING, "253 V", "highest allowed"),
            Input("u", READING, "2.8 V", "expanded uncertainty, k = 2"),
            *METER_INPUTS,
        ),
        guard_band,
    ),
)
"""The checks of this family."""
