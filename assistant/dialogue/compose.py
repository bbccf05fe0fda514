"""One turn's answer, put together in the order of what matters most."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue import claims, replies
from assistant.dialogue.answer import (
    Answer,
    Question,
    Statement,
    Status,
)
from assistant.dialogue.asking import next_question
from assistant.dialogue.cautions import cautions
from assistant.dialogue.danger import refuse, stop
from assistant.dialogue.diagnosing import Diagnosis
from assistant.dialogue.sections import (
    checks,
    lamps,
    passages,
    resets,
    said,
    signals,
    stops,
    times,
    waits,
)
from assistant.dialogue.view import View
from assistant.jobs.events import CheckDone, Said
from assistant.signals.bearings import RUNNING
from assistant.signals.questions import ORDER

SPLITTING = frozenset(ORDER) - {"context", "mode"}
"""Slots whose answers split a decode; what runs is asked for by its whole name."""


def compose(view: View) -> Answer:
    """Compute the answer of the turn that `view` stands at."""
    danger = stop(view)
    if danger is not None:
        return danger
    refused = refuse(view)
    if refused is not None:
        return refused
    return _work(view)


def wants_literature(view: View) -> bool:
    """Say whether the turn needs a search: rules and results do not answer it.

    A decoded row brings its own page; a search beside it would add nothing.
    """
    decoded = view.match is not None and bool(view.match.candidates)
    asked = bool({"ask_page", "ask_meaning"} & set(view.acts))
    if not _understood(view) or (asked and not decoded):
        return True
    return compose(view).status == "not_found"


def _work(view: View) -> Answer:
    diagnosis = Diagnosis(view)
    locked = _locked(view)
    question = next_question(view, diagnosis, locked=locked)
    new_results = _results_now(view)
    check = None if _decode_open(question) else checks.next_check(view, diagnosis)
    causes = checks.causes(diagnosis)
    statements = [
        *checks.correction_lines(view),
        *signals.late_lines(view),
        *lamps.decode_lines(view),
        *waits.wait_lines(view),
        *stops.breaker_lines(view),
        *stops.stop_lines(view),
        *resets.taken_lines(view),
        *resets.reset_lines(view, locked=locked),
        *checks.result_lines(view, new_results),
        *checks.kept_lines(view),
        *checks.foreseen_lines(view, check),
        *claims.claim_lines(view, claims.touched(view, _checked(diagnosis))),
        *_asked_for(view, diagnosis),
        *_for_others(view, diagnosis),
    ]
    known = bool(statements or causes or check or question)
    grounded = known and _understood(view)
    passages = tuple(_passages(view, grounded=grounded))
    statements = [*times.first_minute(view), *statements, *passages]
    status = _status(view, question, locked=locked, grounded=grounded or bool(passages))
    unanswered = not _understood(view) and not passages
    if status == "not_found" or unanswered:
        statements.extend(_nothing(view))
    return Answer(
        job=view.state.job,
        status=status,
        statements=tuple(statements),
        question=question,
        decodes=lamps.decodes(view),
        waits=waits.waits(view),
        stops=stops.stops(view),
        causes=causes,
        next_check=check,
        verdicts=checks.verdicts(view, new_results),
        cautions=cautions(view, check, passages),
    )


def _understood(view: View) -> bool:
    """Say whether the turn told or asked anything but words to search for."""
    words = view.state.words
    if not isinstance(words, Said):
        return True
    return bool(words.facts or words.acts)


def _locked(view: View) -> bool:
    """Say whether the unit is locked out: by its lamp, by count, or by word."""
    match = view.match
    by_lamp = (
        match is not None
        and match.verdict in ("exact", "several")
        and bool(match.candidates)
        and bool(view.observations)
        and all(candidate.row.signal.latched for candidate in match.candidates)
    )
    by_count = any(count.state == "locked" for count in view.stops)
    by_count = by_count or any(state.latched == "yes" for state in view.waits)
    return by_lamp or by_count or view.context("locked out") is True


def _decode_open(question: Question | None) -> bool:
    """Say whether the question splits the decode: it comes before any check."""
    if question is None:
        return False
    slot = question.slot.partition(":")[0]
    return slot in SPLITTING or question.slot == RUNNING


def _status(
    view: View, question: Question | None, *, locked: bool, grounded: bool
) -> Status:
    match = view.match
    unknown_code = match is not None and match.verdict == "none" and question is None
    if locked:
        return "unit_lockout"
    if any(state.state == "running" for state in view.waits):
        return "waiting"
    if question is not None:
        return "asking"
    return "answered" if grounded and not unknown_code else "not_found"


def _results_now(view: View) -> tuple[CheckDone, ...]:
    return tuple(
        done
        for turn, done in view.state.checks_by_turn
        if turn == view.state.turn and done in view.state.checks
    )


def _checked(diagnosis: Diagnosis) -> tuple[str, ...]:
    return tuple(done.check for done in diagnosis.done)


def _asked_for(view: View, diagnosis: Diagnosis) -> Iterator[Statement]:
    """Answer what was asked by name: why, which page, how long."""
    acts = view.acts
    if "ask_why" in acts:
        yield from checks.why_lines(view, diagnosis)
    if "ask_next" in acts or diagnosis.done:
        yield from checks.before_ordering(diagnosis)
    if "ask_wait" in acts:
        yield from waits.asked_rules(view)
    if "off_topic" in acts:
        yield said.computed(replies.OFF_TOPIC)


def _for_others(view: View, diagnosis: Diagnosis) -> Iterator[Statement]:
    held_back = diagnosis.held_back
    if held_back is not None and view.state.role is not None:
        item = held_back.item
        yield said.computed(replies.needs_other_role(item.name, item.allowed_for))


def _passages(view: View, *, grounded: bool) -> Iterator[Statement]:
    """Show passages where they were asked for, or where nothing else answers."""
    wanted = bool({"ask_page", "ask_meaning"} & set(view.acts))
    if wanted or not grounded:
        yield from passages.passage_lines(view)


def _nothing(view: View) -> Iterator[Statement]:
    found = view.state.found
    if found is not None:
        yield said.computed(replies.nothing_found(found))
        if found.reason == "nothing applies to this unit":
            unit = replies.unit_name(view.plate)
            yield said.computed(replies.NOTHING_APPLIES.format(unit=unit))
