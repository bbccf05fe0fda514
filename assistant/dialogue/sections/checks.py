"""Results, causes and the next check, as data and as lines."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.cautions import Caution
from assistant.checks.foresee import foreseen
from assistant.checks.kinds import Check
from assistant.checks.order import safe_order
from assistant.dialogue import replies
from assistant.dialogue.answer import (
    CauseShown,
    NextCheck,
    Statement,
    VerdictShown,
)
from assistant.dialogue.diagnosing import Diagnosis
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.view import View
from assistant.facts import ReadingFact
from assistant.jobs.events import Answered, CheckDone
from assistant.rules.inforce import Row
from assistant.rules.kinds import Caution as WrittenCaution


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


def kept_lines(view: View) -> Iterator[Statement]:
    """Say which readings are kept with the unit, and what they still lack."""
    kept = [
        fact
        for held in view.state.told_now()
        if isinstance(fact := held.fact, ReadingFact) and fact.baseline
    ]
    if kept:
        yield computed(replies.kept(kept, view.plate.serial))


def foreseen_lines(view: View, check: NextCheck | None) -> Iterator[Statement]:
    """Say before it is tried that the meter at hand can never pass the check."""
    row = view.force.check(check.id) if check else None
    if row is None:
        return
    meters = [
        held.fact.meter
        for held in view.facts
        if isinstance(held.fact, ReadingFact) and held.fact.meter is not None
    ]
    told = foreseen(row.item, meters[-1] if meters else None)
    if told:
        text = replies.cannot_decide(row.item.name, told)
        yield computed(text, view.cite(row.gid))


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
