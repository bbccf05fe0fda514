"""Wording of a wait's rule by itself: what the document asks, without times of day."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from assistant.dialogue.trigger_words import TRIGGER_WORDS
from assistant.timing.lengths import ordinal
from assistant.timing.wait_kinds.base import Condition, WaitBase
from assistant.timing.wait_kinds.every import Wait
from assistant.timing.wait_kinds.frost import Defrost, Entry, EntryRow
from assistant.timing.wait_kinds.holds import (
    CapacitorBleed,
    Cooling,
    SoftStop,
    Standby,
)
from assistant.timing.wait_kinds.runs import OrderStep, StartUpOrder
from assistant.timing.wait_kinds.shows import ButtonTiming, DetectionTime, IgnoreWindow
from assistant.timing.wait_kinds.starts import (
    Preheat,
    ResetDelay,
    RestartDelay,
    StartDelay,
)
from assistant.units.show import format_quantity

_OPERATORS = {
    "below": "below",
    "at_most": "at or below",
    "at_least": "at or above",
    "above": "above",
}


def value_words(condition: Condition) -> str:
    """Say what a value must come to."""
    wanted = condition.value
    shown = format_quantity(wanted, like=wanted.text or None)
    return f"{condition.sensor} {_OPERATORS[condition.op]} {shown}"


def wait_rule(wait: Wait, *, inside: bool) -> str:
    """Say a wait's rule without its times of day.

    `inside` says whether the person may work inside the unit: a way past a wait, and
    what is measured or pressed there, is for nobody else.
    """
    parts = [_lengths(wait), *_more(wait, inside=inside)]
    parts.extend(bypass_words(wait, inside=inside))
    return " ".join(part for part in parts if part)


def needs_hands_inside(wait: WaitBase) -> bool:
    """Say whether the whole rule is about a part inside the unit."""
    at_hand = wait.scope in ("remote", "thermostat")
    return isinstance(wait, ButtonTiming) and not at_hand


def bypass_words(wait: WaitBase, *, inside: bool) -> tuple[str, ...]:
    """Name a way past a wait, never without what it does besides."""
    if wait.bypass and wait.bypass_side_effect and inside:
        return (f"({wait.bypass}; side effect: {wait.bypass_side_effect}.)",)
    if wait.can_user_shorten is False:
        return ("It cannot be shortened.",)
    return ()


def _lengths(wait: Wait) -> str:
    since = TRIGGER_WORDS[wait.trigger]
    if isinstance(wait, ButtonTiming):
        return f"{wait.name}: {_button(wait)}."
    if isinstance(wait, RestartDelay):
        return f"{wait.name}: {_attempts(wait)}, each from {since}."
    named = (("at least", wait.minimum), ("usually", wait.usual))
    times = [f"{word} {format_quantity(q)}" for word, q in named if q is not None]
    if wait.give_up is not None:
        times.append(f"not longer than {format_quantity(wait.give_up)}")
    if not times:
        return f"{wait.name}: from {since}."
    about = "about " if wait.approx else ""
    return f"{wait.name}: {about}{', '.join(times)} from {since}."


def _more(wait: Wait, *, inside: bool) -> Iterator[str]:
    if isinstance(wait, CapacitorBleed):
        yield bleed_words(wait, inside=inside)
    for kind, words in _BY_KIND.items():
        if isinstance(wait, kind):
            yield from words(wait)
    if wait.wanted and not isinstance(wait, CapacitorBleed):
        link = " or " if wait.logic == "or" else " and "
        values = link.join(value_words(one) for one in wait.wanted)
        timed = wait.minimum is not None or wait.usual is not None
        lead = "Or" if wait.logic == "or" else "Needs" if timed else "Ends at"
        yield f"{lead}: {values}."
    if wait.condition:
        yield f"Condition: {wait.condition}."
    if wait.only_when:
        yield f"Only when: {', '.join(wait.only_when)}."


def _attempts(wait: RestartDelay) -> str:
    each = [
        f"{format_quantity(length)} before the {ordinal(number)} restart"
        for number, length in enumerate(wait.by_attempt, start=1)
    ]
    if wait.then == "repeats":
        each.append("the last one repeats")
    if wait.then == "no_retry":
        each.append("then no more restarts")
    return ", ".join(each)


def _button(wait: ButtonTiming) -> str:
    times = f" {wait.presses} times" if wait.presses > 1 else ""
    within = f" within {format_quantity(wait.within)}" if wait.within else ""
    hold = f", held {format_quantity(wait.hold)}" if wait.hold else ""
    return f"press {wait.button}{times}{within}{hold}: {wait.does}"


def _start(wait: StartDelay) -> Iterator[str]:
    if wait.if_off_before is not None:
        shorter = format_quantity(wait.if_off_before)
        yield f"Only {shorter} where the unit was off before the outage."


def _preheat(wait: Preheat) -> Iterator[str]:
    if wait.after_off_for is not None:
        yield f"Only after {format_quantity(wait.after_off_for)} or more without power."


def _reset(wait: ResetDelay) -> Iterator[str]:
    if wait.within is not None:
        yield f"Only for a reset within {format_quantity(wait.within)} of the first."


def _standby(wait: Standby) -> Iterator[str]:
    if wait.latches:
        stays = "even through power off and on" if wait.survives_restart else ""
        yield f"If the value is not back by then, the trip stays {stays}".rstrip() + "."


def _soft(wait: SoftStop) -> Iterator[str]:
    again = ordinal(wait.retries + 1)
    yield f"It starts again by itself; after the {again} stop it does not."


def bleed_words(wait: CapacitorBleed, *, inside: bool) -> str:
    """Say that time proves nothing, and what does, to who may measure it."""
    if not inside:
        return "The time alone proves nothing: leave covers on."
    volts = format_quantity(wait.wanted[0].value)
    return (
        "The time alone proves nothing: measure at every marked bank, "
        f"to {volts} or lower."
    )


def _cooling(wait: Cooling) -> Iterator[str]:
    yield f"Only afterwards counts: {wait.before}."


def _detect(_wait: DetectionTime) -> Iterator[str]:
    yield "What lasts less than that is not taken for a fault."


def _ignored(wait: IgnoreWindow) -> Iterator[str]:
    yield f"Meanwhile {wait.input} is not looked at."


def _defrost(wait: Defrost) -> Iterator[str]:
    if wait.entry is not None:
        yield f"It begins after: {'; '.join(_entry(wait.entry))}."
    if wait.interval is not None:
        yield f"At least {format_quantity(wait.interval)} after the one before."
    if wait.after:
        yield f"After it: {steps_words(wait.after)}."


def _entry(entry: Entry) -> Iterator[str]:
    if entry.run is not None:
        yield f"{format_quantity(entry.run)} of running added up"
    if entry.coil_at_most is not None:
        yield f"{entry.coil} at or below {format_quantity(entry.coil_at_most)}"
    if entry.coil_under_ambient is not None:
        under = format_quantity(entry.coil_under_ambient)
        yield f"{entry.coil} {under} or more below {entry.ambient}"
    for row in entry.table:
        yield _entry_row(entry, row)


def _entry_row(entry: Entry, row: EntryRow) -> str:
    bounds = [
        f"{word} {format_quantity(limit)}"
        for word, limit in (("from", row.ambient_from), ("below", row.ambient_below))
        if limit is not None
    ]
    run = f" after {format_quantity(row.run)}" if row.run is not None else ""
    coil = format_quantity(row.coil_at_most)
    where = " ".join(bounds) or "at any temperature"
    return f"{entry.ambient} {where}: {entry.coil} at or below {coil}{run}"


def steps_words(steps: Sequence[OrderStep]) -> str:
    """Say which part starts how long after what."""
    parts = []
    for step in steps:
        times = [
            format_quantity(q) for q in (step.earliest, step.latest) if q is not None
        ]
        after = step.after.replace("_", " ")
        gap = f" {' to '.join(times)} after {after}" if times else f" after {after}"
        parts.append(f"{step.part}{gap}")
    return "; then ".join(parts)


def order_of_start(wait: StartUpOrder) -> str:
    """Say which part starts first and how long after what."""
    return f"Start-up order: {steps_words(wait.order)}."


_BY_KIND: Mapping[type[WaitBase], Callable[..., Iterator[str]]] = {
    StartDelay: _start,
    Preheat: _preheat,
    ResetDelay: _reset,
    Standby: _standby,
    SoftStop: _soft,
    Cooling: _cooling,
    DetectionTime: _detect,
    IgnoreWindow: _ignored,
    Defrost: _defrost,
}
