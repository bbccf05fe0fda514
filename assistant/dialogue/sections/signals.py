"""What documents say beside a row: alike, elsewhere, late, in turn, stored."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.dialogue import signal_replies
from assistant.dialogue.answer import Statement
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.view import View
from assistant.rules.inforce import Row, resolve
from assistant.signals.cells import lamps_of
from assistant.signals.fits import fit_lamp
from assistant.signals.kinds import (
    CodeFamily,
    DisplayCode,
    DisplayDelay,
    Lamp,
    LostCounts,
    MainSubCode,
    MultiFault,
    Signal,
    StoredHistory,
    TableNote,
)
from assistant.signals.observation import Candidate


def beside_lines(view: View, candidate: Candidate) -> Iterator[Statement]:
    """Say what belongs to one candidate."""
    signal, gid = candidate.row.signal, candidate.row.gid
    if candidate.notes:
        yield computed(signal_replies.read_as(candidate))
    if signal.limit_days is not None:
        yield rule(view, gid, signal_replies.runs_on(signal))
    twins = [twin for name in signal.same_as if (twin := _row(view, name, gid))]
    if twins:
        yield rule(view, gid, signal_replies.same_elsewhere(twins))
    if signal.confusable_with:
        words = [_alike(view, name, gid) for name in signal.confusable_with]
        yield rule(view, gid, signal_replies.looks_alike(words))


def _row(view: View, name: str, within: str) -> Signal | None:
    wanted = resolve(name, within)
    return next((r.signal for r in view.force.signals if r.gid == wanted), None)


def _alike(view: View, name: str, within: str) -> str:
    """Return a row in words where the name is one, else the name's own words."""
    found = _row(view, name, within)
    return name if found is None else signal_replies.meaning_of(found)


def table_lines(view: View, candidates: Sequence[Candidate]) -> Iterator[Statement]:
    """Say what a note tells of the boards that the candidates stand on."""
    for row in view.force.notes:
        about = [one for one in candidates if _speaks_of(row, one)]
        note = row.item
        if not about:
            continue
        if isinstance(note, MultiFault):
            if any(one.row.signal.is_fault for one in about):
                yield rule(view, row.gid, signal_replies.policy(note))
        elif isinstance(note, StoredHistory):
            if any(one.row.signal.stored for one in about):
                yield rule(view, row.gid, signal_replies.history(note))
        elif isinstance(note, CodeFamily):
            yield from _family(view, row.gid, note)


def shown_in_turn(view: View) -> bool:
    """Say whether a board that shows its faults in turn was seen to show one code.

    Whether there is another is then not known.
    """
    if view.match is None:
        return False
    told = [one for one in view.observations if one.state == "display"]
    if len(told) != 1 or told[0].shown_in_turn is not None or told[0].stored:
        return False
    return any(
        isinstance(row.item, MultiFault)
        and row.item.multi_fault_policy == "cyclic"
        and any(
            one.row.signal.is_fault and _speaks_of(row, one)
            for one in view.match.candidates
        )
        for row in view.force.notes
    )


def _family(view: View, gid: str, note: CodeFamily) -> Iterator[Statement]:
    names = [*note.checks, *([note.procedure] if note.procedure else [])]
    held = [found for name in names if (found := view.force.find(name, gid))]
    told = [str(getattr(found.item, "name", found.gid)) for found in held]
    if told and len(note.codes) > 1:
        yield rule(view, gid, signal_replies.family(note, told))


def _speaks_of(row: Row[TableNote], candidate: Candidate) -> bool:
    """Return whether a note is about a candidate's row."""
    note, signal = row.item, candidate.row.signal
    if candidate.row.gid.partition("/")[0] != row.pack_id:
        return False
    if isinstance(note, CodeFamily):
        coded = isinstance(signal, DisplayCode | MainSubCode)
        return coded and getattr(signal, "code", None) in note.codes
    if note.signals and signal.id not in {n.rpartition("/")[2] for n in note.signals}:
        return False
    lamp = note.lamp
    return lamp is None or any(_within(lamp, one) for one in lamps_of(signal))


def _within(wide: Lamp, lamp: Lamp) -> bool:
    """Return whether a lamp is one of those that a note names."""
    told = wide.model_dump(exclude_none=True)
    return all(getattr(lamp, name) == value for name, value in told.items())


def lost_lines(view: View) -> Iterator[Statement]:
    """Say which rows of the board's table cannot be read, where none that can fits."""
    match = view.match
    if match is None or match.verdict not in ("none", "not_decodable"):
        return
    seen = [one for one in view.observations if one.state not in ("on", "off")]
    for row in view.force.notes:
        note = row.item
        if not isinstance(note, LostCounts):
            continue
        if any(note.lamp is None or fit_lamp(one, note.lamp) for one in seen):
            yield rule(view, row.gid, signal_replies.lost(note))


def late_lines(view: View) -> Iterator[Statement]:
    """Say when a code appears and how history is read, where none was seen."""
    if not any(one.state == "no_code" for one in view.observations):
        return
    if not view.told_lamp_now:
        return
    for row in view.force.notes:
        if isinstance(row.item, DisplayDelay):
            yield rule(view, row.gid, signal_replies.late(row.item))
    for row in view.force.notes:
        if isinstance(row.item, StoredHistory):
            yield rule(view, row.gid, signal_replies.history(row.item))
