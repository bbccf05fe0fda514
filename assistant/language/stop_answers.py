"""Short answers about stops and resets: which one, how long off, which protection."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.facts import ProtectionStopFact, ResetDetailFact, ResetFact
from assistant.language.asked import Asked
from assistant.language.claims import Claim, rx
from assistant.language.reset_details import off_time_answer
from assistant.language.resets import resets
from assistant.language.stops import named_event, stops
from assistant.timing.stop_kinds import ResetName

_WHICH: tuple[tuple[re.Pattern[str], ResetName], ...] = (
    (
        rx(
            r"(?:power|breaker|disconnect|mains|isolator|killed|cycled|supply|main "
            r"switch)"
        ),
        "power",
    ),
    (rx(r"(?:test|tst|service) pins"), "test_pins"),
    (rx(r"(?:button|reset button|pressed|switch on the board|pins)"), "button"),
    (rx(r"(?:thermostat|call)"), "thermostat"),
    (rx(r"(?:remote|handset|controller|clicker)"), "remote"),
    (rx(r"(?:history|memory|codes?|cleared|log|stored)"), "history"),
)


def tells_a_stop(asked: Asked) -> bool:
    """Tell whether "off" or "out" is of a supply or a stop and not of a lamp."""
    return any(family(asked.view, asked.vocabulary) for family in (resets, stops))


def _reset_which(asked: Asked) -> Claim | None:
    for claim in resets(asked.view, asked.vocabulary):
        return claim
    for pattern, which in _WHICH:
        match = pattern.search(asked.view.folded)
        if match:
            return Claim(*match.span(), ResetFact(which=which))
    return None


def _reset_by(asked: Asked) -> Claim | None:
    """Read which reset it was as more about the one told; a new one is told anew."""
    claim = _reset_which(asked)
    if claim is None or not isinstance(claim.item, ResetFact):
        return claim
    told = claim.item
    if (told.which, told.off_s, told.supplies) == (None, None, None):
        return None  # nothing of how it was done: another reset, told anew
    fact = ResetDetailFact(which=told.which, off_s=told.off_s, supplies=told.supplies)
    return Claim(claim.start, claim.end, fact)


def _stop_event(asked: Asked) -> Claim | None:
    """Read the bare name of a protection; a sentence about stops is read by itself."""
    if stops(asked.view, asked.vocabulary):
        return None
    named = named_event(asked.view, asked.vocabulary)
    if named is None:
        return None
    return Claim(named[0], named[1], ProtectionStopFact(event=named[2]))


STOP_READERS: dict[str, Callable[[Asked], Claim | None]] = {
    "reset_which": _reset_which,
    "reset_by": _reset_by,
    "stop_event": _stop_event,
    "off_time": off_time_answer,
}
"""Slot -> how its answer is read."""
