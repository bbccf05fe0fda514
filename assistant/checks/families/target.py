"""The named check of charging by superheat: the published target of a fixed orifice."""

from __future__ import annotations

from assistant.checks.comparing import compare
from assistant.checks.entry import NamedCheck, required
from assistant.checks.families.asking import choice, figure, flag, lacking, refused
from assistant.checks.inputs import Input, Values
from assistant.checks.report import CheckReport
from assistant.checks.target_superheat import TARGET, target_superheat
from assistant.checks.uncertainty import expanded

_LEAST_TARGET = 5 / 1.8
"""K: below a target of 5 °F the test is not valid (California RA3.2, 2008)."""


def charging_target(values: Values) -> CheckReport:
    """Return the target superheat, and how a measured one stands to it."""
    name = "target-superheat"
    speed, orifice = values.word("speed"), values.word("metering")
    if speed == "inverter" or orifice == "expansion valve":
        reason = (
            "an inverter or an expansion valve sets its own superheat: no target; "
            "weigh the charge in"
        )
        return refused(name, TARGET, "dK", reason)
    target = target_superheat(values.number("outdoor"), values.number("wet_bulb"))
    if not values.has("superheat"):
        return figure(name, TARGET, target, "dK")
    measured = values.number("superheat")
    if target < _LEAST_TARGET:
        reason = "below a target of 5 °F the test is not valid"
        return refused(name, TARGET, "dK", reason, value=measured, expected=target)
    reason, untold = lacking(
        values,
        ("airflow", "at least 300 cfm a ton of airflow"),
        ("steady", "settled for 15 minutes"),
    )
    untold = (
        *(("speed",) if speed is None else ()),
        *(("metering",) if orifice is None else ()),
        *untold,
    )
    if untold:
        reason = reason or f"not told: {', '.join(untold)}"
        return refused(
            name, TARGET, "dK", reason, *untold, value=measured, expected=target
        )
    band = values.number("band")
    low, high = target - band, target + band
    u = values.number("u") if values.has("u") else expanded(1.0, 1.0)
    result, reason = compare(measured, low, high, u, "dK")
    return figure(
        name,
        TARGET,
        measured,
        "dK",
        reason,
        expected=target,
        low=low,
        high=high,
        result=result,
        uncertainty=u,
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "target-superheat",
        "target superheat of a fixed orifice at a fixed speed",
        TARGET,
        (
            required("outdoor", "temperature", "95 °F", "dry bulb outdoors"),
            required("wet_bulb", "temperature", "67 °F", "into the indoor coil"),
            Input(
                "superheat", "temperature difference", "13 F difference", "as measured"
            ),
            Input(
                "band",
                "temperature difference",
                "5 F difference",
                "allowed either way (California RA3.2: 5 °F for the installer)",
                default="5 F difference",
            ),
            Input("u", "temperature difference", "1 K difference", "its uncertainty"),
            choice("metering", "indoors", "fixed orifice", "expansion valve"),
            choice("speed", "the compressor's", "fixed", "inverter"),
            flag("airflow", "whether at least 300 cfm a ton are known to flow"),
            flag("steady", "whether it has settled for 15 minutes"),
        ),
        charging_target,
    ),
)
"""The checks of this family."""
