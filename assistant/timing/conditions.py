"""Values that a wait looks at: met only where a value since its start says so."""

from __future__ import annotations

from assistant.timing.moment import Moment
from assistant.timing.values import ConditionState, ValueTold
from assistant.timing.wait_kinds.base import Condition, WaitBase


def conditions_since(
    wait: WaitBase, started: Moment | None, values: tuple[ValueTold, ...]
) -> tuple[ConditionState, ...]:
    """Return how each value stands, judged by the last one told since the start.

    A value told for a time that may lie before the start says nothing.
    """
    return tuple(_state(one, started, values) for one in wait.wanted)


def _state(
    condition: Condition, started: Moment | None, values: tuple[ValueTold, ...]
) -> ConditionState:
    wanted = condition.sensor.strip().casefold()
    since = [
        one
        for one in values
        if one.sensor.strip().casefold() == wanted
        and started is not None
        and one.at.earliest >= started.latest
        and condition.met_by(one.value) is not None
    ]
    if not since:
        return ConditionState(condition, None)
    last = max(enumerate(since), key=lambda each: (each[1].at.latest, each[0]))[1]
    return ConditionState(condition, condition.met_by(last.value), last.value)


def satisfied(states: tuple[ConditionState, ...], logic: str) -> bool:
    """Return whether the values allow the end: all of them, or any with ``or``."""
    if logic == "or":
        return any(state.met for state in states)
    return all(state.met for state in states)
