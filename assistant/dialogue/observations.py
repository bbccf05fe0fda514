"""Lamp reports of a job merged into what is seen now."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.facts import LampFact
from assistant.jobs.fold import Held, JobState, current
from assistant.signals.observation import Observation, State

IDENTITY = ("box", "board", "label", "colour")
KEPT = (*IDENTITY, "emitter", "lamps")
PATTERN = (
    "count",
    "long_count",
    "code",
    "codes_possible",
    "code_starts",
    "sub",
    "pause",
    "window_s",
    "rate",
    "rate_hz",
    "phase",
    "display_level",
    "conditions",
    "not_conditions",
    "stored",
)
"""Slots that say what a lamp does."""
BOTH = 2
VAGUE: frozenset[State] = frozenset({"blink"})


def seen_now(state: JobState) -> tuple[Observation, ...]:
    """Return the lamps as they look now, partial answers laid over what they answer.

    A later report of the same lamp replaces the earlier; an answer to a question
    fills in only what was asked.
    """
    return merge([held for held in current(state) if isinstance(held.fact, LampFact)])


def seen_before_reset(state: JobState) -> tuple[Observation, ...]:
    """Return lamps known only from before the last reset."""
    if seen_now(state):
        return ()
    return merge([held for held in state.held if isinstance(held.fact, LampFact)])


def merge(reports: Sequence[Held]) -> tuple[Observation, ...]:
    """Lay reports over each other, oldest first."""
    merged: list[tuple[int, Observation]] = []
    for held in reports:
        fact = held.fact
        if not isinstance(fact, LampFact):
            continue
        if fact.observation.lamps == "every":
            merged = [
                one
                for one in merged
                if not _told_anew(one, held.turn, fact.observation)
            ]
        if held.answers == "codes" and fact.observation.shown_in_turn:
            merged = [(turn, _in_turn(one)) for turn, one in merged]
        place = _place(merged, held, fact.observation)
        if place is None:
            merged.append((held.turn, fact.observation))
        else:
            older = merged[place][1]
            newer = overlay(older, fact.observation, _asked_of_a_lamp(held))
            looked_again = held.answers == "count" or fact.origin == "tap counter"
            if looked_again and held.turn != merged[place][0]:
                newer = newer.model_copy(update=tally(older, fact.observation))
            merged[place] = (held.turn, newer)
    return tuple(observation for _, observation in merged)


def _place(
    merged: Sequence[tuple[int, Observation]], held: Held, new: Observation
) -> int | None:
    """Find which lamp seen so far the new report speaks of."""
    if held.answers == "codes" and new.code:
        same = (nth for nth, (_, old) in enumerate(merged) if old.code == new.code)
        return next(same, None)
    asked = _asked_of_a_lamp(held)
    named = asked not in IDENTITY and (new.label or new.colour)
    if merged and asked and not named and not asked.startswith("lamp:"):
        return len(merged) - 1
    for place in reversed(range(len(merged))):
        turn, old = merged[place]
        if same_lamp(old, new) and not (turn == held.turn and _told_apart(old, new)):
            return place
    return None


def _asked_of_a_lamp(held: Held) -> str:
    """Return what was asked of the lamp told last; empty where it was not of one.

    Which protection stopped the unit may be answered by what any lamp shows.
    """
    return "" if held.answers == "stop_event" else held.answers


def _in_turn(seen: Observation) -> Observation:
    """Return what a display shows as one code of its round."""
    if seen.state != "display":
        return seen
    return seen.model_copy(update={"shown_in_turn": True})


def _told_apart(old: Observation, new: Observation) -> bool:
    """Two lamps named in one breath are two lamps, unless they are the same word."""
    if old.shown_in_turn and new.shown_in_turn and old.code != new.code:
        return True
    return any(getattr(old, slot) or getattr(new, slot) for slot in IDENTITY)


def _told_anew(older: tuple[int, Observation], turn: int, new: Observation) -> bool:
    """Say whether what is told of every lamp takes the place of an earlier report."""
    told_in, old = older
    alike = old.model_copy(update={"lamps": new.lamps})
    return told_in != turn and old.state != "display" and same_lamp(alike, new)


def same_lamp(one: Observation, other: Observation) -> bool:
    """Say whether two reports can speak of one lamp: no identity slot disagrees."""
    if (one.state == "display") != (other.state == "display"):
        return "no_code" in (one.state, other.state)
    if one.emitter != other.emitter and one.emitter and other.emitter:
        return False
    if _sounds_beside_a_lamp(one, other) or _sounds_beside_a_lamp(other, one):
        return False
    if one.lamps != other.lamps:
        return False
    return all(
        not getattr(one, slot)
        or not getattr(other, slot)
        or set(getattr(one, slot)) & set(getattr(other, slot))
        for slot in IDENTITY
    )


def _sounds_beside_a_lamp(one: Observation, other: Observation) -> bool:
    """Say whether one beeps and the other is a lamp by its colour or print."""
    printed = bool(other.colour or other.label)
    return one.emitter == "buzzer" != other.emitter and printed


def overlay(old: Observation, new: Observation, answers: str = "") -> Observation:
    """Return `new` with what it leaves open filled from `old`.

    A new count, state or code replaces the old pattern whole; an answer to a
    question about one slot keeps the rest of the old pattern.
    """
    told = {
        name: value
        for name in Observation.model_fields
        if (value := getattr(new, name)) not in ((), None)
    }
    repeated = bool(new.count) and new.count == old.count
    pattern_kept = bool(answers) or repeated or _only_identity(new)
    if pattern_kept and new.state in VAGUE and not _dims(answers, new):
        told.pop("state")
    if pattern_kept:
        return old.model_copy(update=told | _pair(old, new))
    identity = {slot: getattr(old, slot) for slot in KEPT}
    return new.model_copy(
        update={slot: value for slot, value in identity.items() if slot not in told}
    )


def tally(old: Observation, new: Observation) -> dict[str, object]:
    """Return the counts of two looks together, where they can be of one pattern.

    They can where the numbers differ by one at most; otherwise the lamp has changed
    and the new count stands alone.
    """
    rows = [one.counted or one.count[:1] for one in (old, new) if one.state == "count"]
    counted = tuple(number for row in rows for number in row)
    unsure = any(len(one.count) > 1 and not one.counted for one in (old, new))
    apart = max(counted, default=0) - min(counted, default=0)
    if len(rows) < BOTH or not all(rows) or unsure or apart > 1:
        return {}
    return {"count": tuple(sorted(set(counted))), "counted": counted}


def _only_identity(new: Observation) -> bool:
    told = any(getattr(new, slot) not in ((), None) for slot in PATTERN)
    return new.state in VAGUE and not told


def _dims(answers: str, new: Observation) -> bool:
    """Say whether it was asked if the lamp goes dark, and it does."""
    return answers == "state" and new.pause == "none"


def _pair(old: Observation, new: Observation) -> dict[str, object]:
    """Keep a number told for both digits as their sum, once one digit is told.

    Where one digit is told, the other is what the sum leaves.
    """
    if new.state != "short_long":
        return {}
    total = old.total or (old.count if old.state == "count" else ())
    slots: dict[str, object] = {"total": total}
    if old.state != "short_long" and not new.count:
        slots["count"] = ()
    return slots
