"""The named check of a reading against the one kept from commissioning."""

from __future__ import annotations

from assistant.checks.baseline import DRIFT, drift
from assistant.checks.comparing import because, compare, spread
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import More, figure, flag, refused
from assistant.checks.inputs import READING, Input, Values
from assistant.checks.reading import bound_for
from assistant.checks.report import CheckReport
from assistant.checks.uncertainty import expanded
from assistant.errors import UsageError

_SAME = "the conditions of the baseline"


def baseline_drift(values: Values) -> CheckReport:
    """Return how far a reading moved, and its verdict by the document's drift."""
    name = "baseline-drift"
    reading, baseline = values.quantity("reading"), values.quantity("baseline")
    unit = reading.unit
    for other in (baseline, values.maybe("allowed")):
        if other is not None and other.unit != unit:
            raise UsageError(
                f"{other.text!r} is not in the unit of reading={reading.text!r}",
                "give all in volts, all in amperes, or all in one other unit",
            )
    moved = drift(reading.value, baseline.value)
    if values.yes("same_conditions") is not True:
        reason = f"a reading is compared only under {_SAME}"
        return refused(name, DRIFT, unit, reason, _SAME, value=moved)
    a, assumed = bound_for(values.meter(), reading.value, unit)
    before, _ = bound_for(values.meter(), baseline.value, unit)
    u = expanded(a, before)
    more: More = {"uncertainty": u}
    if not values.has("allowed"):
        seen = "no more than" if abs(moved) <= u else "more than"
        reason = f"it moved {seen} the two readings' {spread(u, unit)}; no drift that "
        reason += "the document allows is told"
        return figure(name, DRIFT, moved, unit, because(reason, assumed), **more)
    allowed = values.number("allowed")
    more["low"], more["high"] = -allowed, allowed
    more["result"], why = compare(moved, -allowed, allowed, u, unit)
    return figure(name, DRIFT, moved, unit, because(why, assumed), **more)


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "baseline-drift",
        "how far a reading has moved since the unit was commissioned",
        DRIFT,
        (
            required("reading", READING, "8.6 A", "now"),
            required("baseline", READING, "9.4 A", "kept from commissioning"),
            Input("allowed", READING, "1.5 A", "drift the document allows"),
            flag("same_conditions", "whether mode, speed and air are as they were"),
            *METER_INPUTS,
        ),
        baseline_drift,
    ),
)
