"""Wording about lamps and displays beyond the row itself."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.rules.examples import in_words
from assistant.signals.kinds import (
    CodeFamily,
    DisplayDelay,
    LostCounts,
    MultiFault,
    Signal,
    StoredHistory,
)
from assistant.signals.observation import Candidate
from assistant.signals.sights import sight_of

MORE_QUESTIONS = {
    "short": "Of the quick flashes, how many are there in one group?",
    "long": "Of the long flashes, how many are there in one group?",
    "phase": "Do both lamps flash at the same moment, or do they take turns?",
    "rate": "How many times does it flash in 10 s?",
    "window": "How many seconds are there from one flash to the next?",
    "emitter": "Is it a light or a sound?",
    "sub": "Is there a second number, beside the code or in turn with it?",
    "display_level": "Was a button on the board pressed before it showed this?",
    "stored": "Is it shown now, or did you read it from the history?",
}
DIMS_QUESTION = "Does the lamp go fully dark in between, or does it only dim?"
RUNNING_QUESTION = "Is the compressor running right now?"
CODES_QUESTION = (
    "Does the display go on to another code? Watch one whole round and tell every code."
)
_POLICIES = {
    "cyclic": (
        "This board shows several faults in turn: note every code it shows before "
        "deciding. One code seen does not make it the only fault."
    ),
    "priority": (
        "This board shows only the most urgent fault: others may stand behind it."
    ),
    "latest": "This board shows only the newest fault: older ones may still be there.",
    "last_kept": "This board keeps only the last fault: earlier ones are gone.",
}


def slot_question(slot: str, options: Iterable[str]) -> str | None:
    """Return the question for a slot about signals, or None where it is another."""
    name, _, subject = slot.partition(":")
    if name == "precondition":
        return f"Is this so: {subject}?"
    if slot == "context:compressor running":
        return RUNNING_QUESTION
    if slot == "state" and set(options) == {"blink", "heartbeat"}:
        return DIMS_QUESTION
    return MORE_QUESTIONS.get(name)


def read_as(candidate: Candidate) -> str:
    """Say how the sight was read: a sum, a base, a condition."""
    text = "; ".join(candidate.notes)
    return f"{text[0].upper()}{text[1:]}."


def runs_on(signal: Signal) -> str:
    """Say that the unit runs on a substitute, and for how long."""
    days = signal.limit_days
    if days is None:
        return ""
    spell = "1 day" if days == 1 else f"{days} days"
    return f"It runs on a substitute for {spell} at most, then it stops."


def same_elsewhere(others: Iterable[Signal]) -> str:
    """Say how another board shows the same fault."""
    told = "; ".join(in_words(sight_of(one)) for one in others)
    return f"The same fault shows elsewhere as: {told}."


def looks_alike(words: Iterable[str]) -> str:
    """Name what is easily taken for the row."""
    return f"Easily confused with: {'; '.join(words)}."


def meaning_of(signal: Signal) -> str:
    """Return a row in a few words: what is seen, and what it means."""
    return f"{in_words(sight_of(signal))}, {signal.meaning}"


def policy(note: MultiFault) -> str:
    """Say what a board does with several faults."""
    text = _POLICIES[note.multi_fault_policy]
    if note.priority:
        text += f" The order: {', '.join(note.priority)}."
    return text


def late(note: DisplayDelay) -> str:
    """Say when a code appears at all."""
    parts = []
    if note.display_delay is not None:
        after = f" after {note.delay_trigger}" if note.delay_trigger else ""
        parts.append(f"a code appears only {note.display_delay.text}{after}")
    if note.only_when:
        parts.append(f"it is shown only {note.only_when}")
    if note.cancelled_by:
        parts.append(f"taken back by {', '.join(note.cancelled_by)}")
    return f"No code yet is not no fault: {'; '.join(parts)}."


def history(note: StoredHistory) -> str:
    """Say how earlier faults are read, and what erases them, that first."""
    text = ""
    if note.erased_by:
        erased = " or ".join(note.erased_by)
        text = f"The history is erased by {erased}: read it before any reset. "
    text += f"Earlier faults: {', then '.join(note.entry_steps)}"
    if note.depth is not None:
        text += f" (the last {note.depth} are kept)"
    if note.exit:
        text += f". To leave: {note.exit}"
    return f"{text}."


def lost(note: LostCounts) -> str:
    """Name the rows of a table whose number is lost; never in an order."""
    rows = "; ".join(sorted(note.meanings))
    return (
        f"Rows of this table whose number cannot be read: {rows}. One of them may be "
        "meant; which one cannot be told from their place."
    )


def family(note: CodeFamily, checks: Iterable[str]) -> str:
    """Say that codes of their own meaning share a check."""
    shared = ", ".join(checks)
    codes = f"{', '.join(note.codes[:-1])} and {note.codes[-1]}"
    return f"{codes} share one check: {shared}."
