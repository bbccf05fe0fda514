"""The named checks of tools: gauges, and whether tools can decide a band at all."""

from __future__ import annotations

from assistant.checks.comparing import spread
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import figure
from assistant.checks.inputs import READING, Input, Values
from assistant.checks.instruments import DECIDES, GAUGE, gauge_bound, never_decides
from assistant.checks.reading import bound_for
from assistant.checks.report import CheckReport
from assistant.checks.uncertainty import expanded
from assistant.errors import UsageError


def gauge(values: Values) -> CheckReport:
    """Return the largest error of a gauge."""
    scale = values.quantity("full_scale")
    bound = gauge_bound(scale.value, values.number("gauge_class") * 100)
    return figure("gauge-bound", GAUGE, bound, scale.unit, uncertainty=expanded(bound))


def can_decide(values: Values) -> CheckReport:
    """Return whether a meter can ever pass a band, before it is used."""
    name, low, high = "can-decide", values.quantity("low"), values.quantity("high")
    if low.unit != high.unit or low.value > high.value:
        raise UsageError(
            "check 'can-decide': low and high are no band",
            "give low='12 V' high='16 V'",
        )
    bounds, assumed = [], ""
    if values.has("bound"):
        told = values.quantity("bound")
        if told.unit != low.unit:
            raise UsageError("check 'can-decide': bound is in another unit", "")
        bounds = [told.value]
    else:
        a, assumed = bound_for(values.meter(), high.value, high.unit)
        bounds = [a]
    u = expanded(*bounds)
    if never_decides(low.value, high.value, *bounds):
        reason = (
            f"these tools can never pass this band: their uncertainty of "
            f"{spread(u, low.unit)} either way is wider than it; a finer tool is needed"
        )
    else:
        left = high.value - low.value - 2 * u
        reason = f"they can: {spread(left, low.unit)} of the band are left to accept"
    reason = f"{reason}; {assumed}" if assumed else reason
    return figure(
        name,
        DECIDES,
        high.value - low.value,
        low.unit,
        reason,
        low=low.value,
        high=high.value,
        uncertainty=u,
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "gauge-bound",
        "largest error of a gauge of a class",
        GAUGE,
        (
            required("full_scale", READING, "500 psi", "end of its scale"),
            required("gauge_class", "ratio", "0.5 %", "of full scale"),
        ),
        gauge,
    ),
    NamedCheck(
        "can-decide",
        "whether a meter can ever pass a band, before the reading is taken",
        DECIDES,
        (
            required("low", READING, "207 V", "lowest allowed"),
            required("high", READING, "253 V", "highest allowed"),
            Input("bound", READING, "2.4 V", "the tool's largest error, if known"),
            *METER_INPUTS,
        ),
        can_decide,
    ),
)
