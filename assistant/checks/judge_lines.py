"""Judges a fan motor by its pins, and a communication line by its movement."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import because, compare, shown
from assistant.checks.judge_phases import told_of
from assistant.checks.kinds import FanPinsCheck, LineCheck, Meter, Pin
from assistant.checks.law import OutOfRangeError
from assistant.checks.line_behaviour import BEHAVES, behaviour
from assistant.checks.reading import THE_READING, ReadingFor, bound_for
from assistant.checks.uncertainty import GUARD, expanded
from assistant.checks.verdict import Verdict, unjudged

REFERENCED = "the line may be at mains potential: rated probes, nothing touched"
PLUGGING = "plug and unplug only isolated, with the bus measured dead"


def judge_fan_pins(
    check: FanPinsCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return whose side a still fan is on: fail is the board's, pass the motor's.

    The supplies are read with the header unplugged before any part is named, and
    the command pin before the motor is.

    Parameters
    ----------
    check : FanPinsCheck
        The pin table, [V].
    reading : ReadingFor
        With a reading for each pin, [V].
    meter : Meter or None
        Assumed when not told.
    """
    names = tuple(pin.name for pin in check.pins)
    told, missing = told_of((*names, check.command.name), reading)
    base = unjudged(check.id, GUARD, "V")
    supplies = {name: _pin(base, pin, told, meter) for name, pin in _by_name(check)}
    for name, verdict in supplies.items():
        if verdict is not None and verdict.result != "pass":
            side = "with the header unplugged this is the board's side, not the motor's"
            why = side if verdict.result == "fail" else ""
            reason = because(f"{name}: {verdict.reason}", why, PLUGGING)
            return replace(verdict, reason=reason)
    lacking = tuple(name for name in missing if name.removeprefix("reading ") in names)
    if lacking:
        reason = "no part is named before every supply is read, header unplugged"
        return replace(base, reason=because(reason, PLUGGING), missing=lacking)
    return _by_command(base, check, told, meter)


def _by_name(check: FanPinsCheck) -> tuple[tuple[str, Pin], ...]:
    return tuple((pin.name, pin) for pin in check.pins)


def _by_command(
    base: Verdict,
    check: FanPinsCheck,
    told: dict[str, float | None],
    meter: Meter | None,
) -> Verdict:
    name = check.command.name
    verdict = _pin(base, check.command, told, meter)
    if verdict is None:
        reason = (
            f"the supplies are there; the motor is not named before {name}, the speed "
            "command, is read plugged in during a call"
        )
        missing = (f"reading {name}",)
        return replace(base, reason=because(reason, PLUGGING), missing=missing)
    side = {
        "pass": "supplies and command arrive: the motor's side",
        "fail": "no right command leaves the board: the board's side",
    }.get(verdict.result, "")
    return replace(verdict, reason=because(f"{name}: {verdict.reason}", side, PLUGGING))


def _pin(
    base: Verdict, pin: Pin, told: dict[str, float | None], meter: Meter | None
) -> Verdict | None:
    value = told.get(pin.name)
    if value is None:
        return None
    low, high = pin.low.value, pin.high.value
    a, assumed = bound_for(meter, value, "V")
    u = expanded(a)
    result, reason = compare(value, low, high, u, "V")
    return replace(
        base,
        result=result,
        reason=because(reason, assumed),
        value=value,
        low=low,
        high=high,
        uncertainty=u,
    )


def judge_line(check: LineCheck, reading: ReadingFor, meter: Meter | None) -> Verdict:
    """Return the verdict of a communication line, by the document's rule only.

    Parameters
    ----------
    check : LineCheck
        What is healthy, what else means, and the band [V] if one is stated.
    reading : ReadingFor
        With three readings or more, [V].
    meter : Meter or None
        Assumed when not told.
    """
    values = [value.value for _, value in reading.set_of if value is not None]
    base = unjudged(check.id, BEHAVES, "V", check.low, check.high)
    try:
        moved = behaviour(*values)
    except OutOfRangeError as error:
        reason = because(f"{error}: read it three times", REFERENCED)
        return replace(base, reason=reason, missing=(THE_READING,))
    seen = f"it {_SAYS[moved]}, {shown(min(values), 'V')} to {shown(max(values), 'V')}"
    if moved not in check.healthy:
        means = check.means.get(moved, "not what the document calls healthy")
        return replace(
            base,
            result="fail",
            reason=because(seen, means, REFERENCED),
            value=max(values, key=abs),
        )
    for value in (min(values), max(values)):
        u = expanded(bound_for(meter, value, "V")[0])
        if base.low is None and base.high is None:
            break
        result, reason = compare(value, base.low, base.high, u, "V")
        if result != "pass":
            note = because(seen, reason, REFERENCED)
            return replace(base, result=result, reason=note, value=value, uncertainty=u)
    healthy = "as the document calls healthy"
    return replace(
        base,
        result="pass",
        reason=because(seen, healthy, REFERENCED),
        value=max(values, key=abs),
    )


_SAYS = {
    "swings": "swings both ways",
    "one-sided": "moves on one side of zero",
    "constant": "stands still",
    "nothing": "shows nothing",
}
