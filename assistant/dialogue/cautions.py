"""Cautions of a turn: once per power state, each with its published basis."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.kinds import Check
from assistant.dialogue import replies
from assistant.dialogue.answer import (
    CautionShown,
    NextCheck,
    Statement,
)
from assistant.dialogue.safety import STOP_LIST, TEACHES_DANGER
from assistant.dialogue.sections import checks
from assistant.dialogue.view import View
from assistant.facts import HazardFact
from assistant.rules.inforce import Row, resolve
from assistant.rules.kinds import Caution

BINDING = {"power_off": "panel_off", "swap": "panel_off"}
HANDS_INSIDE = ("power_off", "live", "gauges", "opens_circuit", "swap")


def cautions(
    view: View, check: NextCheck | None, passages: tuple[Statement, ...]
) -> tuple[CautionShown, ...]:
    """Return the cautions of a turn.

    Parameters
    ----------
    view : View
    check : NextCheck or None
        The check that comes next; its safe order of work binds.
    passages : tuple of Statement
        Passages shown; one that teaches a bypass is shown with a caution.
    """
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
    for _, cautions in checks.work(view, row):
        for caution in cautions:
            yield CautionShown(text=caution.text, basis=caution.basis)


def _written_cautions(view: View, row: Row[Check]) -> Iterator[CautionShown]:
    """Yield the written cautions that bind a check.

    Those it names, and those of its level that no check claims for itself.
    """
    named = _names(row)
    claimed = {name for other in view.force.checks for name in _names(other)}
    needs = row.item.needs
    levels = {"any", BINDING.get(needs, needs)}
    for one in view.force.cautions:
        item = one.item
        general = one.gid not in claimed
        if isinstance(item, Caution) and (
            one.gid in named or (general and item.when in levels)
        ):
            yield CautionShown(text=item.text, basis=item.basis)


def _names(row: Row[Check]) -> frozenset[str]:
    return frozenset(resolve(name, row.gid) for name in row.item.cautions)


def _dangers_before(view: View) -> Iterator[CautionShown]:
    """Carry a danger told in an earlier turn along as a caution."""
    for held in view.state.of(HazardFact):
        fact = held.fact
        if isinstance(fact, HazardFact) and fact.hazard and held.turn < view.state.turn:
            entry = STOP_LIST[fact.hazard]
            text = replies.still_dangerous(entry.afterwards)
            yield CautionShown(text=text, basis=entry.basis)
