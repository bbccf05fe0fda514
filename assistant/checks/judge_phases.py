"""Judges three readings against one another: phases, windings, module diodes."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import because, compare, shown
from assistant.checks.diodes import MODULE, phases_alike
from assistant.checks.kinds import DiodesCheck, Meter, UnbalanceCheck, WindingCheck
from assistant.checks.reading import ReadingFor, bound_for
from assistant.checks.unbalance import UNBALANCE, phase_lost, unbalance, unbalance_bound
from assistant.checks.uncertainty import expanded
from assistant.checks.verdict import Verdict, unjudged, worst

LIMIT = "the document's limit"


def told_of(
    points: tuple[str, ...], reading: ReadingFor
) -> tuple[dict[str, float | None], tuple[str, ...]]:
    """Return the last reading of each point, None for OL, and the points not told."""
    told = {
        name: None if value is None else value.value for name, value in reading.set_of
    }
    missing = tuple(f"reading {name}" for name in points if name not in told)
    return {name: told[name] for name in points if name in told}, missing


def _lacking(base: Verdict, missing: tuple[str, ...]) -> Verdict:
    wanted = ", ".join(name.removeprefix("reading ") for name in missing)
    reason = f"all are compared, and these are not told: {wanted}"
    return replace(base, reason=reason, missing=missing)


def judge_unbalance(
    check: UnbalanceCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of the unbalance of three phases.

    Parameters
    ----------
    check : UnbalanceCheck
        With the document's largest share, [1].
    reading : ReadingFor
        With the three readings, [V] or [A].
    meter : Meter or None
        Assumed when not told.
    """
    told, missing = told_of(check.points, reading)
    base = unjudged(check.id, UNBALANCE, "1", high=check.largest)
    if missing:
        return _lacking(base, missing)
    values = tuple(value for value in told.values() if value is not None)
    unit = "V" if check.of == "voltage" else "A"
    share = unbalance(*values)
    a, assumed = bound_for(meter, max(values), unit)
    u = unbalance_bound(a, sum(values) / len(values))
    result, reason = compare(share, None, check.largest.value, u, "1")
    lost = ""
    if check.of == "current" and phase_lost(*values):
        lost = "it looks like a lost phase: fuses, contactor and lugs first"
    elif check.of == "voltage":
        lost = "near-normal voltages while it runs do not rule out a lost phase"
    notes = because(reason, lost, assumed)
    return replace(base, result=result, reason=notes, value=share, uncertainty=u)


def judge_winding(
    check: WindingCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of three windings, by the document's limits only.

    Parameters
    ----------
    check : WindingCheck
        With the largest spread [1] and the resistances [ohm] that it states.
    reading : ReadingFor
        With the three readings, [ohm].
    meter : Meter or None
        Assumed when not told.
    """
    told, missing = told_of(check.points, reading)
    base = unjudged(check.id, UNBALANCE, "1", high=check.largest)
    if missing:
        return _lacking(base, missing)
    opened = [name for name, value in told.items() if value is None]
    if opened:
        return _open_windings(base, opened)
    values = {name: value for name, value in told.items() if value is not None}
    verdicts = [
        verdict
        for verdict in (
            _spread(base, check, values, meter),
            _each(check, values, meter),
        )
        if verdict is not None
    ]
    if not verdicts:
        share = unbalance(*values.values())
        reason = f"the spread is {shown(share, '1')}, and no limit of the document"
        return replace(base, reason=f"{reason} is told", value=share, missing=(LIMIT,))
    first = worst(verdicts)
    rest = because(*(one.reason for one in verdicts if one is not first))
    return replace(first, reason=because(first.reason, rest))


def _open_windings(base: Verdict, opened: list[str]) -> Verdict:
    where = ", ".join(opened)
    if len(opened) > 2:  # noqa: PLR2004 - all of three
        reason = (
            "all three read OL: a plug, or a protector inside that opens while hot; "
            "let it cool, read at the terminals and again"
        )
        return replace(
            base, reason=reason, missing=tuple(f"reading {n}" for n in opened)
        )
    reason = f"OL at {where}: read again at the compressor's own terminals"
    return replace(base, result="fail", reason=reason)


def _spread(
    base: Verdict,
    check: WindingCheck,
    values: dict[str, float],
    meter: Meter | None,
) -> Verdict | None:
    if check.largest is None:
        return None
    share = unbalance(*values.values())
    a, assumed = bound_for(meter, max(values.values()), "ohm")
    u = unbalance_bound(a, sum(values.values()) / len(values))
    largest = check.largest.value
    result, reason = compare(share, None, largest, u, "1")
    if u >= largest:
        result = "inconclusive"
        reason = (
            f"this meter cannot resolve a spread of {shown(largest, '1')}: its "
            f"uncertainty alone is {shown(u, '1')}; take the lead resistance off, or "
            "measure with four wires"
        )
    return replace(
        base,
        result=result,
        reason=because(reason, assumed),
        value=share,
        uncertainty=u,
    )


def _each(
    check: WindingCheck, values: dict[str, float], meter: Meter | None
) -> Verdict | None:
    base = unjudged(check.id, UNBALANCE, "ohm", check.low, check.high)
    if base.low is None and base.high is None:
        return None
    found = []
    for name, value in values.items():
        u = expanded(bound_for(meter, value, "ohm")[0])
        result, reason = compare(value, base.low, base.high, u, "ohm")
        reason = f"{name}: {reason}"
        found.append(
            replace(base, result=result, reason=reason, value=value, uncertainty=u)
        )
    return worst(found)


def judge_diodes(
    check: DiodesCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of a module's diodes in one direction.

    Parameters
    ----------
    check : DiodesCheck
        With the document's band [V], if it states one.
    reading : ReadingFor
        With a reading for each phase, [V] or OL.
    meter : Meter or None
        Assumed when not told.
    """
    told, missing = told_of(check.points, reading)
    base = unjudged(check.id, MODULE, "V", check.low, check.high)
    if missing:
        return _lacking(base, missing)
    values = [value for value in told.values() if value is not None]
    if not values:
        reason = (
            "all three read OL: the leads may be the wrong way round for this meter, "
            "or its diode range is not on; turn them and read again"
        )
        return replace(base, reason=reason, missing=("reading",))
    a, assumed = bound_for(meter, max(values), "V")
    u = expanded(a)
    alike = phases_alike(tuple(told.values()), expanded(a, a))
    listed = ", ".join(
        f"{name} {'OL' if value is None else shown(value, 'V')}"
        for name, value in told.items()
    )
    base = replace(base, uncertainty=u, value=min(values))
    if alike in {"short", "open"}:
        reason = f"{alike} in one phase: {listed}"
        return replace(base, result="fail", reason=reason)
    banded = _banded(base, values, u)
    if banded is not None:
        return replace(banded, reason=because(banded.reason, listed, assumed))
    if alike == "differ":
        reason = f"the phases differ: {listed}; the document's figures decide"
        return replace(base, result="inconclusive", reason=because(reason, assumed))
    return replace(
        base, result="pass", reason=because(f"the phases agree: {listed}", assumed)
    )


def _banded(base: Verdict, values: list[float], u: float) -> Verdict | None:
    if base.low is None and base.high is None:
        return None
    found = [
        replace(base, result=result, reason=reason, value=value)
        for value in values
        for result, reason in (compare(value, base.low, base.high, u, "V"),)
    ]
    return worst(found)
