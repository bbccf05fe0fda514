"""Whether the checks of a pack keep the safe order and the roles."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from assistant.checks.comparing import STORED_CHARGE_LIMIT
from assistant.checks.kinds import (
    BandCheck,
    BusCheck,
    CapacitorCheck,
    ChargeCheck,
    Check,
    CheckBase,
    CoilCheck,
    DiodesCheck,
    DividerCheck,
    InsulationCheck,
    SupplyCheck,
    SwitchCheck,
    ThermistorCheck,
    TwoSensorsCheck,
    WindingCheck,
)
from assistant.record import Item
from assistant.rules.findings import Finding
from assistant.rules.kinds import Card, Cause, ComplaintCall, StopCall
from assistant.rules.mistakes import Path
from assistant.rules.refused import never_said, refused
from assistant.signals.kinds import SignalBase
from assistant.timing.stop_kinds import StopBase, resets_at
from assistant.timing.wait_kinds.base import WaitBase

_LIVE = re.compile(
    r"\b(?:live|energi[sz]ed|power(?:ed)? (?:is )?on|powered up|under load|"
    r"while (?:it|the unit|the compressor) (?:runs|is running))\b",
    re.IGNORECASE,
)
_NOT_LIVE = re.compile(
    r"\b(?:not|no|never|before|until|nothing|prove)\b", re.IGNORECASE
)
_HANDS = re.compile(
    r"\b(?:unplug|disconnect|pull|remove|loosen|unscrew|swap|replace|reconnect|lift "
    r"the (?:lead|wire)s?)\b(?! (?:switch|is open))",
    re.IGNORECASE,
)
_OFF = re.compile(
    r"\b(?:isolate|(?:power|switch|turn)(?: \w+){0,4}? off|off at the|de-?energi[sz]e|"
    r"open the disconnect|lock (?:it |out|and tag))\b",
    re.IGNORECASE,
)
_ON = re.compile(
    r"\b(?:restore|(?:power|switch|turn)(?: \w+){0,4}? (?:back )?on|re-?energi[sz]e|"
    r"close the disconnect)\b",
    re.IGNORECASE,
)


def check_power_order(check: Check) -> Iterator[Finding]:
    """Yield steps whose power state is not led up to, and roles that may not act."""
    yield from _roles(check)
    if _measures_ohms(check):
        if check.needs == "live":
            yield Finding(("needs",), "resistance is never measured live", "power_off")
        elif "power off" not in check.requires:
            hint = "add `power off` to `requires`"
            told = "resistance is measured without requiring the power to be off"
            yield Finding(("requires",), told, hint)
    if isinstance(check, ChargeCheck) and check.needs != "gauges":
        told = "a superheat or a subcooling is read with gauges"
        yield Finding(("needs",), told, "write `needs: gauges`")
    yield from _power_asked_for(check)
    yield from _step_order(check)


_ISOLATED = re.compile(
    r"\b(?:isolated|de-?energi[sz]ed|measured dead|with (?:the )?power off)\b",
    re.IGNORECASE,
)
_NEEDS_POWER = frozenset({"call present", "fixed speed", "mains at the terminals"})
"""What can only be so while the supply is on."""
DIODE = 3.0
"""Volts up to which a band may be the drop of a diode, measured with the power off."""


def _power_asked_for(check: Check) -> Iterator[Finding]:
    """Yield checks whose power state is at odds with what they measure or require."""
    dead = check.needs in ("power_off", "opens_circuit")
    if dead and _measures_live(check):
        told = "what is measured here is there only while the supply is on"
        yield Finding(("needs",), told, "write `needs: live`")
    at_odds = _NEEDS_POWER & set(check.requires)
    if dead and at_odds:
        told = f"`{min(at_odds)}` cannot be so with the power off"
        yield Finding(("needs",), told, "write `needs: live`, or take it out")
    if check.needs == "live" and _ISOLATED.search(check.ask):
        told = "it is live, and its own words isolate first"
        yield Finding(("needs",), told, "write `needs: power_off`")
    told_already = _measures_ohms(check)
    if check.needs == "live" and "power off" in check.requires and not told_already:
        told = "it is live and requires the power to be off"
        yield Finding(("needs",), told, "write `needs: power_off`, or take it out")


def _measures_live(check: Check) -> bool:
    if isinstance(check, SupplyCheck | BusCheck | DividerCheck):
        return True
    if not isinstance(check, BandCheck):
        return False
    ends = [end for end in (check.low, check.high) if end is not None]
    if any(end.unit in ("A", "Hz") for end in ends):
        return True
    volts = [end.value for end in ends if end.unit == "V"]
    proves_dead = (
        check.low is None and bool(volts) and max(volts) <= STORED_CHARGE_LIMIT
    )
    return bool(volts) and max(volts) > DIODE and not proves_dead


def _step_order(check: Check) -> Iterator[Finding]:
    powered = check.needs == "live"
    for place, step in enumerate(check.steps):
        if _OFF.search(step):
            powered = False
        elif _ON.search(step):
            powered = True
        elif powered and _HANDS.search(step):
            told = f"hands go inside while it is live: `{step}`"
            yield Finding(("steps", place), told, "put the step that isolates first")
        elif not powered and _LIVE.search(step) and not _NOT_LIVE.search(step):
            told = f"a live step without the power restored before it: `{step}`"
            hint = "write `needs: live`, or the step that restores the power"
            yield Finding(("steps", place), told, hint)


def _measures_ohms(check: Check) -> bool:
    if isinstance(check, BandCheck):
        return any(
            end is not None and end.unit == "ohm" for end in (check.low, check.high)
        )
    return isinstance(check, _DEAD_ONLY)


_DEAD_ONLY = (
    ThermistorCheck,
    WindingCheck,
    InsulationCheck,
    CapacitorCheck,
    CoilCheck,
    SwitchCheck,
    DiodesCheck,
    TwoSensorsCheck,
)
"""Kinds that are read with the power off, whatever the pack says."""


def _roles(check: Check) -> Iterator[Finding]:
    if "customer" in check.allowed_for and check.needs != "look":
        told = f"a customer may not do what needs `{check.needs}`"
        yield Finding(("allowed_for",), told, "customers look, and nothing else")
    wrong = set(check.allowed_for) - {"licensed technician"}
    if check.needs == "opens_circuit" and wrong:
        told = "only a licensed technician opens a refrigerant circuit"
        yield Finding(("allowed_for",), told, f"take out {', '.join(sorted(wrong))}")


def check_wording(item: Item) -> Iterator[Finding]:
    """Yield texts that the engine must refuse as a step, or never say."""
    for path, text in _texts(item):
        why = refused(text)
        if why is not None:
            yield Finding(
                path, f"the engine refuses `{text}`: {why}", "say the safe way"
            )
        hint = never_said(text)
        if hint is not None:
            yield Finding(path, f"`{text}` is never said", hint)


def _texts(item: Item) -> Iterator[tuple[Path, str]]:
    """Yield what would be shown as something to do or to believe."""
    for field in _FIELDS.get(_family(type(item)), ()):
        held = getattr(item, field)
        if isinstance(held, str):
            yield (field,), held
        for place, text in enumerate(held if isinstance(held, tuple) else ()):
            if isinstance(text, str):
                yield (field, place), text
    held_fields = vars(item)
    for place, outcome in enumerate(held_fields.get("outcomes", ())):
        yield ("outcomes", place, "says"), outcome.says
    if isinstance(item, StopBase):
        yield from _of_resets(item)


def _of_resets(item: StopBase) -> Iterator[tuple[Path, str]]:
    for at, reset in resets_at(item):
        yield (*at, "how"), reset.how
    for place, level in enumerate(getattr(item, "levels", ())):
        if level.release is not None:
            yield ("levels", place, "release"), level.release


_FIELDS: dict[type[Item], tuple[str, ...]] = {
    SignalBase: ("meaning", "unit_action", "recover"),
    WaitBase: ("follows", "overdue", "bypass"),
    StopBase: ("release", "count_clears"),
    CheckBase: ("ask", "steps"),
    Cause: ("before_ordering", "remedy"),
    ComplaintCall: ("first",),
    Card: ("steps",),
    StopCall: ("do_now",),
}


@lru_cache(maxsize=256)
def _family(kind: type[Item]) -> type[Item]:
    for family in _FIELDS:
        if issubclass(kind, family):
            return family
    return kind
