"""The parts of an answer, each computed from the view of the turn."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.cautions import Caution
from assistant.checks.kinds import Check
from assistant.checks.order import safe_order
from assistant.dialogue import replies
from assistant.dialogue.answer import (
    CauseShown,
    CountRange,
    Decode,
    DecodeCandidate,
    NextCheck,
    SourceRef,
    Statement,
    StopShown,
    VerdictShown,
    WaitShown,
)
from assistant.dialogue.diagnosing import Diagnosis
from assistant.dialogue.view import View
from assistant.facts import LampFact
from assistant.jobs.events import Answered, CheckDone, FoundHit
from assistant.rules.inforce import Row
from assistant.rules.kinds import Card
from assistant.rules.kinds import Caution as WrittenCaution
from assistant.signals.observation import Candidate
from assistant.timing.kinds import StartUpOrder
from assistant.timing.values import StopCount, WaitRow, WaitState

PASSAGES_SHOWN = 3


def rule(view: View, gid: str, text: str) -> Statement:
    """Make a statement that rests on a written rule."""
    return Statement(text=text, basis="rule", sources=view.cite(gid))


def computed(text: str, sources: tuple[SourceRef, ...] = ()) -> Statement:
    """Make a statement that was worked out."""
    return Statement(text=text, basis="computed", sources=sources)


# -- the decode ----------------------------------------------------------------


def decodes(view: View) -> tuple[Decode, ...]:
    """Return the decode of the lamps as data."""
    match = view.match
    if match is None:
        return ()
    confirmed = bool(match.candidates) and all(
        candidate.row.unit_match == "confirmed" for candidate in match.candidates
    )
    return (
        Decode(
            verdict=match.verdict,
            unit_confirmed=confirmed,
            candidates=tuple(_candidate(view, one) for one in match.candidates),
            reason=match.reason,
        ),
    )


def _candidate(view: View, candidate: Candidate) -> DecodeCandidate:
    signal = candidate.row.signal
    return DecodeCandidate(
        id=candidate.row.gid,
        meaning=signal.meaning,
        is_fault=signal.is_fault,
        matched=candidate.matched,
        assumed=candidate.assumed,
        sources=view.cite(candidate.row.gid),
    )


def decode_lines(view: View) -> Iterator[Statement]:
    """Say what the lamps can mean, each line with its page."""
    match = view.match
    if match is None:
        return
    if view.older_observations:
        yield computed("This was seen before the reset, not now.")
    exact = match.verdict == "exact"
    for candidate in match.candidates:
        yield rule(view, candidate.row.gid, replies.decoded(candidate, exact=exact))
        if candidate.assumed and not exact:
            yield computed(replies.assumed(candidate))
    if match.verdict in ("none", "not_decodable"):
        yield computed(replies.not_decoded(match))
    elif any(one.row.unit_match != "confirmed" for one in match.candidates):
        yield computed(replies.UNIT_NOT_CONFIRMED)


# -- waits and stops -----------------------------------------------------------


def waits(view: View) -> tuple[WaitShown, ...]:
    """Return the waits in force as data."""
    return tuple(_wait(view, state) for state in view.waits_shown)


def _wait(view: View, state: WaitState) -> WaitShown:
    return WaitShown(
        id=state.row.gid,
        name=state.row.wait.name,
        started=state.started.latest if state.started else None,
        earliest=state.earliest,
        usual=state.usual,
        give_up=state.give_up,
        state=state.state,
        sources=view.cite(state.row.gid),
    )


def wait_lines(view: View) -> Iterator[Statement]:
    """Say what is running, what is over, and by which rule."""
    for state in view.waits_shown:
        gid = state.row.gid
        text = replies.waiting(state, view.utc_offset)
        yield computed(text, view.cite(gid))
        if state.state == "start_unknown":
            yield rule(view, gid, replies.wait_rule(state))
        if isinstance(state.row.wait, StartUpOrder):
            yield rule(view, gid, replies.order_of_start(state.row.wait.order))


def wait_rules(view: View, row: WaitRow) -> Iterator[Statement]:
    """Say a wait's rule where nothing has started it yet."""
    state = WaitState(row, None, None, None, None, "start_unknown")
    yield rule(view, row.gid, replies.wait_rule(state))


def stops(view: View) -> tuple[StopShown, ...]:
    """Return the protection-stop counters as data."""
    return tuple(_stop(view, count) for count in view.stops)


def _stop(view: View, count: StopCount) -> StopShown:
    return StopShown(
        id=count.row.gid,
        name=count.row.stop.name,
        count=CountRange(min=count.low, max=count.high),
        limit=count.limit,
        state=count.state,
        left=count.left,
        oldest_leaves=count.oldest_leaves,
        sources=view.cite(count.row.gid),
    )


def stop_lines(view: View) -> Iterator[Statement]:
    """Say how near a lockout the stops told are, and whether the lamp agrees."""
    for count in view.stops:
        yield computed(
            replies.counted(count, view.utc_offset), view.cite(count.row.gid)
        )
        match = view.match
        if count.state == "locked" and match is not None and match.verdict == "exact":
            signal = match.candidates[0].row.signal
            if not signal.latched:
                yield computed(replies.lockout_conflict(signal.meaning))


def reset_lines(view: View, *, locked: bool) -> Iterator[Statement]:
    """Word the resets of what is locked, the record of what is seen first."""
    if not locked:
        return
    if view.role == "customer":
        yield computed(replies.RESET_FOR_TECHNICIAN)
        return
    yield from _card_steps(view, "before_reset")
    locking = {count.row.gid for count in view.stops if count.state == "locked"}
    locking |= set(view.stops_of_decode)
    for row in view.force.stops:
        if row.gid in locking:
            for reset in sorted(row.stop.resets, key=lambda one: one.order):
                yield rule(view, row.gid, replies.reset_step(reset))


def _card_steps(view: View, when: str) -> Iterator[Statement]:
    for row in view.force.procedures:
        if isinstance(row.item, Card) and row.item.when == when:
            for step in row.item.steps:
                yield rule(view, row.gid, step)


def first_minute(view: View) -> Iterator[Statement]:
    """Show the card for the first minute on site, in the first turn of a job.

    Where the lamps were already reported it is too late for it.
    """
    told = any(isinstance(held.fact, LampFact) for held in view.state.held)
    if view.state.turn == 1 and not told:
        yield from _card_steps(view, "first_minute")


# -- checks and causes ---------------------------------------------------------


def verdicts(view: View, done: tuple[CheckDone, ...]) -> tuple[VerdictShown, ...]:
    """Return the verdicts of measured checks as data."""
    return tuple(
        VerdictShown(
            check=one.check,
            result=one.result,  # type: ignore[arg-type]  # filtered just below
            reason=one.reason,
            value=one.value,
            expected=one.expected,
            low=one.low,
            high=one.high,
            unit=one.unit,
            formula=one.formula,
            sources=view.cite(one.check),
        )
        for one in done
        if one.result in ("pass", "fail", "inconclusive", "no_verdict")
    )


def result_lines(view: View, done: tuple[CheckDone, ...]) -> Iterator[Statement]:
    """Say what each check came to, and what the document makes of it."""
    for one in done:
        row = view.force.check(one.check)
        if row is None:
            continue
        if one.unit or one.result == "no_verdict":
            yield computed(replies.verdict(one, row.item.name), view.cite(one.check))
        for outcome in row.item.outcomes:
            if outcome.result == one.result:
                yield rule(view, one.check, outcome.says)


def correction_lines(view: View) -> Iterator[Statement]:
    """Name corrected facts and the verdicts taken back with them."""
    for old, new in view.state.corrected:
        if old.turn == view.state.turn or isinstance(view.state.words, Answered):
            continue
        words = (new.words if new else "") or "nothing"
        yield computed(replies.replaced(old.fact.words or old.fact.kind, words))
    for done in view.state.taken_back:
        row = view.force.check(done.check)
        name = row.item.name if row else done.check
        yield computed(replies.taken_back(done, name))


def causes(diagnosis: Diagnosis) -> tuple[CauseShown, ...]:
    """Return the causes in order as data."""
    return tuple(
        CauseShown(
            id=one.cause,
            name=diagnosis.causes[one.cause].item.name,
            standing=one.standing,
            weight=round(one.weight, 4),
        )
        for one in diagnosis.ranked
    )


def next_check(view: View, diagnosis: Diagnosis) -> NextCheck | None:
    """Return the next check as data."""
    choice = diagnosis.choice
    row = view.force.check(choice.check) if choice else None
    if row is None:
        return None
    item = row.item
    return NextCheck(
        id=row.gid,
        name=item.name,
        minutes=item.minutes,
        needs=item.needs,
        ask=item.ask,
        steps=tuple(step for step, _ in work(view, row)),
        sources=view.cite(row.gid),
    )


def work(view: View, row: Row[Check]) -> tuple[tuple[str, tuple[Caution, ...]], ...]:
    """Return a check's steps inside the safe order of work, each with its cautions."""
    steps: list[tuple[str, tuple[Caution, ...]]] = []
    for safe in safe_order(row.item.needs, discharge_limit(view)):
        if safe.id == "work" and row.item.steps:
            steps.extend((step, safe.cautions) for step in row.item.steps)
        else:
            steps.append((safe.text, safe.cautions))
    return tuple(steps) or tuple((step, ()) for step in row.item.steps)


def discharge_limit(view: View) -> float | None:
    """Return the lowest discharge limit of the documents in force, in volts."""
    stated = [
        row.item.discharge_limit.value
        for row in view.force.cautions
        if isinstance(row.item, WrittenCaution) and row.item.discharge_limit
    ]
    return min(stated, default=None)


def before_ordering(diagnosis: Diagnosis) -> Iterator[Statement]:
    """Say what must be proved before the part of the leading cause is ordered."""
    if not diagnosis.ranked:
        return
    gid = diagnosis.ranked[0].cause
    item = diagnosis.causes[gid].item
    if item.part and item.before_ordering:
        yield rule(
            diagnosis.view,
            gid,
            f"Before ordering {item.part}: {item.before_ordering}",
        )


def why_lines(view: View, diagnosis: Diagnosis) -> Iterator[Statement]:
    """Explain the order of causes and the choice of the next check."""
    if diagnosis.ranked:
        shares = [
            (diagnosis.causes[one.cause].item.name, one.weight)
            for one in diagnosis.ranked
        ]
        moved = [
            (row.item.name, done.result)
            for done in diagnosis.done
            if (row := view.force.check(done.check)) is not None
        ]
        yield computed(replies.why_causes(shares, moved))
    choice = diagnosis.choice
    row = view.force.check(choice.check) if choice else None
    if choice is not None and row is not None:
        yield computed(
            replies.why_check(
                row.item.name,
                choice.gain_bits,
                row.item.minutes,
                by_document=choice.named_by_document,
            ),
            view.cite(row.gid),
        )


# -- passages ------------------------------------------------------------------


def passage_lines(view: View, most: int = PASSAGES_SHOWN) -> Iterator[Statement]:
    """Show the passages found, verbatim, with their pages."""
    found = view.state.found
    for hit in found.hits[:most] if found else ():
        yield Statement(text=hit.text, basis="passage", sources=(source_of(hit),))


def source_of(hit: FoundHit) -> SourceRef:
    """Cite a passage that was found."""
    return SourceRef(
        document=hit.document,
        document_id=hit.document_id,
        title=hit.title,
        revision=hit.revision,
        page=hit.page,
        label=hit.label,
        quote=hit.text,
    )
