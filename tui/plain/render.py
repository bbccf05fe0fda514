"""An answer as plain lines: our own layout, any width, no colour needed. Pure."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from datetime import datetime

from assistant.dialogue.answer import (
    Answer,
    CauseShown,
    CautionShown,
    CountRange,
    Decode,
    NextCheck,
    Statement,
    StopShown,
    VerdictShown,
    WaitShown,
)
from assistant.units.quantity import Quantity
from assistant.units.show import format_quantity
from tui.plain.moments import length, local_time
from tui.plain.places import INDENT, Frame, place_of, source_lines
from tui.plain.text import count, excerpt_lines, one_line, wrap, wrap_kept
from tui.plain.words import (
    DECODE_WORDS,
    NEEDS_WORDS,
    STATUS_WORDS,
    VERDICT_WORDS,
    basis_words,
)

PASSAGE_LENGTH = 420


def answer_lines(
    answer: Answer, frame: Frame, before: Answer | None = None
) -> list[str]:
    """Return an answer as lines, the status first.

    Parameters
    ----------
    answer : Answer
        Shown whole, save what `before` showed already.
    frame : Frame
        Columns, zone and present.
    before : Answer, optional
        The answer shown just before on the same screen: of a check that is still the
        next one the steps are not repeated, nor the cautions that still hold.
    """
    said = [one_line(each.text).casefold() for each in answer.statements]
    cautions = list(_cautions(answer, frame, before))
    blocks = [
        list(_statements(answer.statements, frame)),
        list(_decodes(answer.decodes, said, frame)),
        list(_waits(answer.waits, frame)),
        list(_stops(answer.stops, frame)),
        list(_verdicts(answer.verdicts, said, frame)),
        list(_causes(answer.causes, frame)),
        list(_next_check(answer.next_check, frame, before)),
        list(_question(answer, frame)),
    ]
    # In danger the warning comes first; before a step it stands above the step.
    blocks.insert(0 if answer.status == "stop" else 6, cautions)
    lines = [STATUS_WORDS[answer.status]]
    for block in blocks:
        if block:
            lines += ["", *block]
    return lines


def _statements(statements: Sequence[Statement], frame: Frame) -> Iterator[str]:
    quoted: set[tuple[str, str]] = set()
    for statement in statements:
        if statement.basis == "passage":
            yield from _passage(statement, frame)
            continue
        yield from wrap(statement.text, frame.width, "* ")
        yield from wrap(f"[{basis_words(statement)}]", frame.width, INDENT)
        yield from source_lines(statement.sources, frame, quoted)


def _passage(statement: Statement, frame: Frame) -> Iterator[str]:
    """Yield a passage verbatim, line by line, under its place."""
    places = "; ".join(place_of(source) for source in statement.sources)
    yield from wrap(f"{places} [{basis_words(statement)}]", frame.width, "* ")
    for line in excerpt_lines(statement.text, PASSAGE_LENGTH):
        yield from wrap_kept(line, frame.width, INDENT * 2)


def _decodes(
    decodes: Sequence[Decode], said: Collection[str], frame: Frame
) -> Iterator[str]:
    """Name the rows; what they mean is left out where a statement says it."""
    for decode in decodes:
        doubt = "" if decode.unit_confirmed else " (unit not confirmed)"
        told = DECODE_WORDS[decode.verdict] + doubt
        reason = decode.reason if _unsaid(decode.reason, said) else ""
        if not reason and not decode.candidates:
            continue  # the statements have said it all
        yield from wrap(f"{told}: {reason}", frame.width)
        for candidate in decode.candidates:
            text = candidate.id
            if _unsaid(candidate.meaning, said):
                kind = "fault" if candidate.is_fault else "no fault"
                text += f": {candidate.meaning} ({kind})"
            if candidate.matched:
                text += f"; fits {', '.join(candidate.matched)}"
            if candidate.assumed:
                text += f"; not told: {', '.join(candidate.assumed)}"
            yield from wrap(text.replace("_", " "), frame.width, "- ")


def _unsaid(text: str, said: Collection[str]) -> bool:
    """Whether no statement holds a text already."""
    wanted = one_line(text).casefold().rstrip(".")
    return bool(wanted) and not any(wanted in each for each in said)


def _waits(waits: Sequence[WaitShown], frame: Frame) -> Iterator[str]:
    if waits:
        yield "Timers:"
    for wait in waits:
        yield from wrap(f"{wait.name}: {wait_words(wait, frame)}", frame.width, "- ")


def wait_words(wait: WaitShown, frame: Frame) -> str:
    """Say how a timer stands, with the local time it is ready at."""
    ready = wait.usual or wait.earliest
    if wait.latched is not None:
        return _latched_words(wait)
    match wait.state:
        case "start_unknown":
            return "its start is not known, so its end is not either"
        case "running" if ready is not None and ready <= frame.now and wait.holds:
            over = _clock(ready, frame)
            return f"its time is over since {over}; it needs {' and '.join(wait.holds)}"
        case "running" if ready is not None:
            return f"ready at {_clock(ready, frame)}, in {length(ready - frame.now)}"
        case "running" if wait.give_up is not None:
            return f"running; give up at {_clock(wait.give_up, frame)}"
        case "ready" if ready is not None:
            return f"READY since {_clock(ready, frame)}"
        case "overdue" if wait.give_up is not None:
            late = length(frame.now - wait.give_up)
            return f"OVERDUE by {late}; it should have ended by " + _clock(
                wait.give_up, frame
            )
        case _:
            return wait.state


def _latched_words(wait: WaitShown) -> str:
    if wait.latched == "yes":
        return "LATCHED: it does not start again by itself"
    return "cannot tell whether it latched: when did the value come back?"


def _clock(at: datetime, frame: Frame) -> str:
    return local_time(at, frame.zone, frame.now)


def _stops(stops: Sequence[StopShown], frame: Frame) -> Iterator[str]:
    if stops:
        yield "Protection stops:"
    for stop in stops:
        counts = [f"{stop.name}: {_counted(stop.count, stop.limit)}, {_locks(stop)}"]
        counts += [
            f"{level.name}: {_counted(level.count, level.limit)}"
            for level in stop.further
        ]
        if stop.oldest_leaves is not None and stop.state == "open":
            leaves = _clock(stop.oldest_leaves, frame)
            counts.append(f"the oldest stops counting at {leaves}")
        if stop.conflict:
            counts.append(f"but {' and '.join(stop.conflict)}")
        yield from wrap("; ".join(counts), frame.width, "- ")


def _counted(count: CountRange, limit: int) -> str:
    told = str(count.min) if count.min == count.max else f"{count.min} to {count.max}"
    return f"{told} of {limit}"


def _locks(stop: StopShown) -> str:
    match stop.state:
        case "locked":
            return "locked out by the rule"
        case "unknown":
            return "cannot tell whether it is locked out"
        case _ if stop.kind == "duration_latch":
            return "not latched"
        case _ if stop.left == 0:
            return "kept in the history only"
    return f"{stop.left} left before lockout: find the cause, do not use them as tests"


def _causes(causes: Sequence[CauseShown], frame: Frame) -> Iterator[str]:
    if causes:
        yield "Causes, most likely first:"
    for number, cause in enumerate(causes, start=1):
        yield from wrap(f"{cause.name} - {cause.standing}", frame.width, f"{number}. ")


def _next_check(
    check: NextCheck | None, frame: Frame, before: Answer | None
) -> Iterator[str]:
    if check is None:
        return
    again = before is not None and before.next_check == check
    lead = "Next check, as before" if again else "Next check"
    yield from wrap(f"{lead}: {check.name}", frame.width)
    if not again:
        needs = NEEDS_WORDS[check.needs]
        told = f"Needs: {needs}. About {check.minutes:g} min."
        yield from wrap(told, frame.width, INDENT)
        for number, step in enumerate(check.steps, start=1):
            yield from wrap(step, frame.width, f"{INDENT}{number}. ")
    if check.ask:
        yield from wrap(f"Tell: {check.ask}", frame.width, INDENT)
    if not again:
        yield from source_lines(check.sources, frame)


def _verdicts(
    verdicts: Sequence[VerdictShown], said: Collection[str], frame: Frame
) -> Iterator[str]:
    for verdict in verdicts:
        yield from wrap(
            f"Verdict: {VERDICT_WORDS[verdict.result]} ({verdict.check})", frame.width
        )
        reason = verdict.reason if _unsaid(verdict.reason, said) else ""
        for text in (reason, figures_words(verdict)):
            if text:
                yield from wrap(text, frame.width, INDENT)
        if verdict.formula:
            yield from wrap(f"Formula: {verdict.formula}", frame.width, INDENT)
        for source in verdict.sources[:1]:
            yield from wrap(place_of(source), frame.width, INDENT)


def figures_words(verdict: VerdictShown) -> str:
    """Return value, expected value and limits of a verdict in a person's units."""
    parts = [
        f"{name} {amount(value, verdict.unit)}"
        for name, value in (
            ("Read", verdict.value),
            ("expected", verdict.expected),
            ("lowest allowed", verdict.low),
            ("highest allowed", verdict.high),
        )
        if value is not None
    ]
    return ", ".join(parts) + "." if parts else ""


def amount(value: float, unit: str) -> str:
    """Write a value of a canonical unit as a person would."""
    if not unit:
        return f"{value:g}"
    return format_quantity(Quantity(value=value, unit=unit))


def _cautions(answer: Answer, frame: Frame, before: Answer | None) -> Iterator[str]:
    shown = set(before.cautions) if before else set()
    for caution in answer.cautions:
        if caution not in shown:
            yield from _caution(caution, frame)
    held = sum(caution in shown for caution in answer.cautions)
    if held:
        yield from wrap(
            f"{count(held, 'caution')} above: still in force.", frame.width, "! "
        )


def _caution(caution: CautionShown, frame: Frame) -> Iterator[str]:
    yield from wrap(caution.text, frame.width, "! ")
    if caution.basis:
        yield from wrap(f"[{caution.basis}]", frame.width, INDENT)


def _question(answer: Answer, frame: Frame) -> Iterator[str]:
    if answer.question is None:
        return
    yield from wrap(f"Question: {answer.question.text}", frame.width)
    for split in answer.question.splits:
        yield from wrap(split, frame.width, f"{INDENT}- ")


def due_lines(waits: Sequence[WaitShown], frame: Frame) -> list[str]:
    """Return what to say of timers whose end has come."""
    return [
        line
        for wait in waits
        if wait.state in {"ready", "overdue"}
        for line in wrap(
            f"{wait.name}: {wait_words(wait, frame)}", frame.width, "Timer "
        )
    ]
