"""What else was said that waits depend on: attempts, yes-or-no, values read."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.facts import (
    AttemptFact,
    ContextFact,
    HappeningFact,
    ProtectionStopFact,
    ReadingFact,
    ResetFact,
    TemperatureFact,
)
from assistant.jobs.fold import Held
from assistant.timing.moment import Moment
from assistant.timing.values import Known, ValueTold

FAILED_START = "failed start"
_STOPS = frozenset({"compressor_stopped", "protection_stop"})
_SAYS = {
    "call present": ("call present", "no call"),
    "compressor running": ("compressor running", "compressor stopped"),
    "off before the outage": ("off before the outage", "running before the outage"),
}
"""A yes-or-no, and what it says when it is true and when it is not."""
_PLACES = {"indoor": "room temperature", "outdoor": "outdoor temperature"}


def known(facts: Sequence[Held]) -> Known:
    """Return what the facts in force say of attempts, states and values."""
    return Known(attempts(facts), said(facts), values(facts))


def attempts(facts: Sequence[Held]) -> tuple[int, ...]:
    """Return which restart it may be; none where it stopped or was reset again since.

    The number told holds for the stop it was told with: after another stop, or a
    reset, it is not known whether the unit counts on.
    """
    found: tuple[int, ...] = ()
    turn = -1
    for held in facts:
        fact = held.fact
        if isinstance(fact, AttemptFact):
            found, turn = fact.number, held.turn
        elif isinstance(fact, ProtectionStopFact) and fact.event == FAILED_START:
            # Whether the first start is among those told is not known.
            made = {one + more for one in fact.count for more in (0, 1)}
            found, turn = tuple(sorted(made)), held.turn
        elif held.turn > turn and _is_another(held):
            found = ()
    return found


def _is_another(held: Held) -> bool:
    """Say whether a fact tells of another stop, not of the time of the last one."""
    fact = held.fact
    if held.answers.startswith("time"):
        return False
    if isinstance(fact, HappeningFact):
        return fact.trigger in _STOPS
    return isinstance(fact, ProtectionStopFact | ResetFact)


def said(facts: Sequence[Held]) -> dict[str, bool]:
    """Return each state a wait may depend on that was said, the last one winning."""
    found: dict[str, bool] = {}
    for held in facts:
        fact = held.fact
        if isinstance(fact, ContextFact) and fact.name in _SAYS:
            yes, no = _SAYS[fact.name]
            found[yes], found[no] = fact.value, not fact.value
    return found


def values(facts: Sequence[Held]) -> tuple[ValueTold, ...]:
    """Return every value read, with the time it is of, else when it was told."""
    found = []
    for held in facts:
        fact = held.fact
        at = fact.at or Moment(earliest=held.noted, latest=held.noted)
        if isinstance(fact, ReadingFact) and fact.value is not None:
            found.append(ValueTold(fact.of, fact.value, at))
        elif isinstance(fact, TemperatureFact):
            found.append(ValueTold(_PLACES[fact.where], fact.value, at))
    return tuple(found)
