"""Which of several lengths a wait has: by attempt, by what was off, by which time."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.timing.values import Choice, Happening, Known, WaitRow
from assistant.timing.wait_kinds.holds import SoftStop
from assistant.timing.wait_kinds.starts import RestartDelay, StartDelay

OFF_BEFORE = "off before the outage"
_ORDINALS = ("1st", "2nd", "3rd")


def ordinal(number: int) -> str:
    """Return ``1st``, ``2nd``, ``3rd``, ``4th``, ``21st``.

    Examples
    --------
    >>> ordinal(2), ordinal(11), ordinal(22)
    ('2nd', '11th', '22nd')
    """
    if number % 100 in (11, 12, 13) or number % 10 not in (1, 2, 3):
        return f"{number}th"
    return f"{number // 10 or ''}{_ORDINALS[number % 10 - 1]}"


def choices(
    row: WaitRow, known: Known, told: Sequence[Happening]
) -> tuple[Choice, ...]:
    """Return the lengths that the wait may have; none where it has only one way.

    One choice is certain. Several mean that it was not said which applies; a choice
    without a length is no restart at all.
    """
    match row.wait:
        case StartDelay() as wait if wait.if_off_before is not None:
            return _off_before(wait, known)
        case RestartDelay() as wait:
            return _by_attempt(wait, known)
        case SoftStop() as wait:
            return _by_time(wait, known, told)
        case _:
            return ()


def _off_before(wait: StartDelay, known: Known) -> tuple[Choice, ...]:
    usual = Choice("running before the outage", wait.usual or wait.minimum)
    shorter = Choice(OFF_BEFORE, wait.if_off_before)
    match known.said.get(OFF_BEFORE):
        case None:
            return (usual, shorter)
        case True:
            return (shorter,)
        case _:
            return (usual,)


def _by_attempt(wait: RestartDelay, known: Known) -> tuple[Choice, ...]:
    listed = len(wait.by_attempt)
    attempts = known.attempts or tuple(range(1, listed + 1 + (wait.then is not None)))
    found: dict[str, Choice] = {}
    for attempt in attempts:
        choice = _attempt(wait, attempt)
        found.setdefault(choice.words, choice)
    return tuple(found.values())


def _attempt(wait: RestartDelay, attempt: int) -> Choice:
    listed = len(wait.by_attempt)
    if attempt <= listed:
        return Choice(f"{ordinal(attempt)} restart", wait.by_attempt[attempt - 1])
    if wait.then == "repeats":
        return Choice(f"each restart after the {ordinal(listed)}", wait.by_attempt[-1])
    words = f"after the {ordinal(listed)} restart"
    if wait.then == "no_retry":
        return Choice(f"{words} it does not try again", None)
    return Choice(f"{words} the document names no delay", None)


def _by_time(
    wait: SoftStop, known: Known, told: Sequence[Happening]
) -> tuple[Choice, ...]:
    """Return whether it retries: stops told since the last reset are a least count."""
    least = _stops_since_reset(wait, told)
    counts = known.attempts or tuple(range(max(1, least), wait.retries + 2))
    retry = Choice(
        f"up to the {ordinal(wait.retries)} stop", wait.usual or wait.minimum
    )
    stays = Choice(f"from the {ordinal(wait.retries + 1)} stop on: no retry", None)
    found = [retry] if any(count <= wait.retries for count in counts) else []
    if not counts or any(count > wait.retries for count in counts):
        found.append(stays)
    return tuple(found)


def _stops_since_reset(wait: SoftStop, told: Sequence[Happening]) -> int:
    count = 0
    for one in told:
        if one.trigger in ("reset", "second_reset"):
            count = 0
        elif one.trigger == wait.trigger:
            count += 1
    return count
