"""What comes before all work: the stop list, then the refusals."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.cautions import LIVE
from assistant.dialogue.answer import (
    Answer,
    CautionShown,
    Statement,
)
from assistant.dialogue.safety import REFUSALS, REFUSED, STOP_LIST
from assistant.dialogue.sections import said
from assistant.dialogue.view import View
from assistant.facts import BypassFact, HazardFact
from assistant.rules.kinds import PermittedTest, StopCall


def stop(view: View) -> Answer | None:
    """Return the answer to a danger told in this turn, or None."""
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
            statements.extend(_own_rule(line) for line in lines)
        elif fact.phrase is not None:
            statements.extend(_pack_stop(view, fact.phrase))
    return Answer(
        job=view.state.job,
        status="stop",
        statements=tuple(statements),
        cautions=tuple(cautions),
    )


def _own_rule(text: str) -> Statement:
    """Make a statement of the program's own stop list or refusals."""
    return Statement(text=text, basis="rule")


def _pack_stop(view: View, gid: str) -> Iterator[Statement]:
    for row in view.force.cautions:
        if row.gid == gid and isinstance(row.item, StopCall):
            for line in (*row.item.do_now, f"Call: {row.item.call}"):
                yield said.rule(view, gid, line)


def refuse(view: View) -> Answer | None:
    """Return the refusal of an unsafe wish told in this turn, or None."""
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
            statements.append(_own_rule(refusal.why))
            statements.append(_own_rule(f"Instead: {refusal.instead}"))
            cautions.append(CautionShown(text=REFUSED, basis=refusal.basis))
    return Answer(
        job=view.state.job,
        status="refused",
        statements=tuple(statements),
        cautions=tuple(cautions),
    )


def _permitted(view: View) -> Answer | None:
    """Answer a look-alike that a document allows, once the wiring is known."""
    text = view.text.casefold()
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
                statements=(said.rule(view, row.gid, item.says),),
                cautions=(CautionShown(text=LIVE.text, basis=LIVE.basis),),
            )
    return None
