"""One turn's answer, put together in the order of what matters most."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.cautions import LIVE
from assistant.checks.kinds import Check
from assistant.dialogue import replies, sections
from assistant.dialogue.answer import (
    Answer,
    CautionShown,
    NextCheck,
    Question,
    Statement,
    Status,
)
from assistant.dialogue.asking import next_question
from assistant.dialogue.diagnosing import Diagnosis
from assistant.dialogue.safety import REFUSALS, STOP_LIST, TEACHES_DANGER
from assistant.dialogue.view import View
from assistant.facts import BypassFact, HazardFact
from assistant.jobs.events import Answered, CheckDone, Said
from assistant.rules.inforce import Row
from assistant.rules.kinds import Caution, PermittedTest, StopCall

HANDS_INSIDE = ("power_off", "live", "gauges", "opens_circuit", "swap")


def compose(view: View) -> Answer:
    """Compute the answer of the turn that `view` stands at."""
    danger = _stop(view)
    if danger is not None:
        return danger
    refused = _refusal(view)
    if refused is not None:
        return refused
    return _work(view)


# -- 1. the stop list ----------------------------------------------------------


def _stop(view: View) -> Answer | None:
    dangers = [
        held.fact for held in view.state.told_now() if isinstance(held.fact, HazardFact)
    ]
    if not dangers:
        return None
    statements: list[Statement] = []
    cautions: list[CautionShown] = []
    for fact in dangers:
        if fact.hazard is not None:
            entry = STOP_LIST[fact.hazard]
            lines = (entry.danger, *entry.do_now, f"Call: {entry.call}")
            cautions.append(CautionShown(text=entry.afterwards, basis=entry.basis))
            statements.extend(sections.computed(line) for line in lines)
        elif fact.phrase is not None:
            statements.extend(_pack_stop(view, fact.phrase))
    return Answer(
        job=view.state.job,
        status="stop",
        statements=tuple(statements),
        cautions=tuple(cautions),
    )


def _pack_stop(view: View, gid: str) -> Iterator[Statement]:
    for row in view.force.cautions:
        if row.gid == gid and isinstance(row.item, StopCall):
            for line in (*row.item.do_now, f"Call: {row.item.call}"):
                yield sections.rule(view, gid, line)


def _dangers_before(view: View) -> Iterator[CautionShown]:
    """Carry a danger told in an earlier turn along as a caution."""
    for held in view.state.of(HazardFact):
        fact = held.fact
        if isinstance(fact, HazardFact) and fact.hazard and held.turn < view.state.turn:
            entry = STOP_LIST[fact.hazard]
            text = replies.still_dangerous(entry.afterwards)
            yield CautionShown(text=text, basis=entry.basis)


# -- 2. the refusals -----------------------------------------------------------


def _refusal(view: View) -> Answer | None:
    asked = [
        held for held in view.state.told_now() if isinstance(held.fact, BypassFact)
    ]
    if not asked:
        return None
    permitted = _permitted(view)
    if permitted is not None:
        return permitted
    statements: list[Statement] = []
    cautions: list[CautionShown] = []
    for held in asked:
        fact = held.fact
        if isinstance(fact, BypassFact):
            refusal = REFUSALS[fact.act]
            statements.append(sections.computed(refusal.why))
            statements.append(sections.computed(f"Instead: {refusal.instead}"))
            cautions.append(CautionShown(text=refusal.why, basis=refusal.basis))
    return Answer(
        job=view.state.job,
        status="refused",
        statements=tuple(statements),
        cautions=tuple(cautions),
    )


def _permitted(view: View) -> Answer | None:
    """Answer a look-alike that a document allows, once the wiring is known."""
    text = _text(view).casefold()
    for row in view.force.cautions:
        item = row.item
        if not isinstance(item, PermittedTest) or view.role not in item.allowed_for:
            continue
        if row.unit_match != "confirmed":
            continue
        named = any(phrase.casefold() in text for phrase in item.phrases)
        if named and item.wiring.casefold() in text:
            return Answer(
                job=view.state.job,
                status="answered",
                statements=(sections.rule(view, row.gid, item.says),),
                cautions=(CautionShown(text=LIVE.text, basis=LIVE.basis),),
            )
    return None


# -- 3. the work ---------------------------------------------------------------


def _work(view: View) -> Answer:
    diagnosis = Diagnosis(view)
    locked = _locked(view)
    question = next_question(view, diagnosis, locked=locked)
    new_results = _results_now(view)
    check = None if _decode_open(question) else sections.next_check(view, diagnosis)
    causes = sections.causes(diagnosis)
    statements = [
        *sections.correction_lines(view),
        *sections.first_minute(view),
        *sections.decode_lines(view),
        *sections.wait_lines(view),
        *sections.stop_lines(view),
        *sections.reset_lines(view, locked=locked),
        *sections.result_lines(view, new_results),
        *_asked_for(view, diagnosis),
        *_for_others(view, diagnosis),
    ]
    grounded = bool(statements or causes or check or question)
    passages = tuple(_passages(view, grounded=grounded))
    statements.extend(passages)
    status = _status(view, question, locked=locked, grounded=grounded or bool(passages))
    if status == "not_found":
        statements.extend(_nothing(view))
    return Answer(
        job=view.state.job,
        status=status,
        statements=tuple(statements),
        question=question,
        decodes=sections.decodes(view),
        waits=sections.waits(view),
        stops=sections.stops(view),
        causes=causes,
        next_check=check,
        verdicts=sections.verdicts(view, new_results),
        cautions=_cautions(view, check, passages),
    )


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
    return by_lamp or by_count or view.context("locked out") is True


def _decode_open(question: Question | None) -> bool:
    """Say whether the question splits the decode: it comes before any check."""
    if question is None:
        return False
    slot = question.slot.partition(":")[0]
    return slot in {
        "unit",
        "pause",
        "count",
        "colour",
        "box",
        "board",
        "label",
        "code",
        "state",
        "lamp",
    }


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


def _asked_for(view: View, diagnosis: Diagnosis) -> Iterator[Statement]:
    """Answer what was asked by name: why, which page, how long."""
    acts = view.acts
    if "ask_why" in acts:
        yield from sections.why_lines(view, diagnosis)
    if "ask_next" in acts or diagnosis.done:
        yield from sections.before_ordering(diagnosis)
    if "ask_wait" in acts and not view.waits_shown:
        for row in view.force.waits:
            if row.unit_match == "confirmed":
                yield from sections.wait_rules(view, row)
    if "off_topic" in acts:
        yield sections.computed(replies.OFF_TOPIC)


def _for_others(view: View, diagnosis: Diagnosis) -> Iterator[Statement]:
    held_back = diagnosis.held_back
    if held_back is not None and view.state.role is not None:
        item = held_back.item
        yield sections.computed(replies.needs_other_role(item.name, item.allowed_for))


def _passages(view: View, *, grounded: bool) -> Iterator[Statement]:
    """Show passages where they were asked for, or where nothing else answers."""
    wanted = bool({"ask_page", "ask_meaning"} & set(view.acts))
    if wanted or not grounded:
        yield from sections.passage_lines(view)
    elif view.match is not None and view.match.verdict == "exact":
        yield from sections.passage_lines(view, most=1)


def _nothing(view: View) -> Iterator[Statement]:
    found = view.state.found
    if found is not None:
        yield sections.computed(replies.nothing_found(found))
        if found.reason == "nothing applies to this unit":
            unit = replies.unit_name(view.plate)
            yield sections.computed(replies.NOTHING_APPLIES.format(unit=unit))


def _text(view: View) -> str:
    words = view.state.words
    return words.text if isinstance(words, Said | Answered) else ""


# -- cautions ------------------------------------------------------------------


def _cautions(
    view: View, check: NextCheck | None, passages: tuple[Statement, ...]
) -> tuple[CautionShown, ...]:
    shown = [*_dangers_before(view)]
    if check is not None and check.needs in HANDS_INSIDE and _new_level(view, check):
        row = view.force.check(check.id)
        if row is not None:
            shown.extend(_order_cautions(view, row))
            shown.extend(_written_cautions(view, row))
    if any(
        word in passage.text.casefold()
        for passage in passages
        for word in TEACHES_DANGER
    ):
        shown.append(
            CautionShown(text=replies.TEACHES_CAUTION, basis="29 CFR 1910.333(a)(1)")
        )
    return tuple(dict.fromkeys(shown))


def _new_level(view: View, check: NextCheck) -> bool:
    """Cautions are shown once per power state, before the first step in it."""
    earlier = [
        asked.slot.partition(":")[2]
        for asked in view.state.asked
        if asked.slot.startswith(("look:", "reading:"))
    ]
    levels = {
        row.item.needs
        for gid in earlier
        if gid != check.id and (row := view.force.check(gid)) is not None
    }
    return check.needs not in levels


def _order_cautions(view: View, row: Row[Check]) -> Iterator[CautionShown]:
    for _, cautions in sections.work(view, row):
        for caution in cautions:
            yield CautionShown(text=caution.text, basis=caution.basis)


def _written_cautions(view: View, row: Row[Check]) -> Iterator[CautionShown]:
    named = set(row.item.cautions)
    needs = row.item.needs
    binding = {"power_off": "panel_off", "swap": "panel_off"}.get(needs, needs)
    for one in view.force.cautions:
        item = one.item
        if isinstance(item, Caution) and (
            item.when in (binding, "any") or item.id in named
        ):
            yield CautionShown(text=item.text, basis=item.basis)
