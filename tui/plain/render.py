"""An answer as plain lines: our own layout, any width, no colour needed. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, tzinfo

from assistant.dialogue.answer import (
    Answer,
    CauseShown,
    CautionShown,
    Decode,
    NextCheck,
    SourceRef,
    Statement,
    Status,
    StopShown,
    VerdictShown,
    WaitShown,
)
from assistant.units.quantity import Quantity
from assistant.units.show import format_quantity
from tui.plain.moments import length, local_time
from tui.plain.text import excerpt, wrap

STATUS_WORDS: dict[Status, str] = {
    "stop": "STOP. Do this first; the rest waits.",
    "refused": "NO. That is not done; here is the safe way.",
    "unit_lockout": "LOCKED OUT. The unit will not start by itself.",
    "waiting": "WAIT. Do not judge it before the time below.",
    "asking": "QUESTION. One thing is needed first.",
    "answered": "ANSWER.",
    "not_found": "NOT FOUND in this library.",
}
"""What each status says on its own line."""
STATUS_KINDS: dict[Status, str] = {
    "stop": "alarm",
    "refused": "alarm",
    "unit_lockout": "alarm",
    "waiting": "wait",
    "asking": "bold",
    "answered": "good",
    "not_found": "bold",
}
"""How a terminal with colours may set it off; the words alone suffice."""
NEEDS_WORDS = {
    "look": "look only, covers stay on",
    "power_off": "power off and proved dead, covers off",
    "live": "live measurement",
    "gauges": "gauges",
    "opens_circuit": "opens the refrigerant circuit",
    "swap": "swap of a part",
}
VERDICT_WORDS = {
    "pass": "PASS",
    "fail": "FAIL",
    "inconclusive": "TOO CLOSE TO CALL",
    "no_verdict": "NO VERDICT",
}
DECODE_WORDS = {
    "exact": "Decoded",
    "several": "Could be any of these",
    "none": "Not in this manual",
    "not_decodable": "Cannot tell yet",
}
RANK_WORDS = {
    "maker": "from the manual",
    "shop": "shop rule",
    "common": "common practice",
}
QUOTE_LENGTH = 220
INDENT = "  "


@dataclass(frozen=True, slots=True)
class Frame:
    """What lines are made for: columns, the zone of the clock, the present."""

    width: int
    now: datetime
    zone: tzinfo | None = None
    """None is the machine's own zone."""


def answer_lines(answer: Answer, frame: Frame) -> list[str]:
    """Return an answer as lines, the status first."""
    first = [STATUS_WORDS[answer.status]]
    cautions = list(_cautions(answer.cautions, frame))
    blocks = [
        list(_statements(answer.statements, frame)),
        list(_decodes(answer.decodes, frame)),
        list(_waits(answer.waits, frame)),
        list(_stops(answer.stops, frame)),
        list(_verdicts(answer.verdicts, frame)),
        list(_causes(answer.causes, frame)),
        list(_next_check(answer.next_check, frame)),
        list(_question(answer, frame)),
    ]
    # In danger the warning comes first; before a step it stands above the step.
    blocks.insert(0 if answer.status == "stop" else 6, cautions)
    lines = first
    for block in blocks:
        if block:
            lines += ["", *block]
    return lines


def place_of(source: SourceRef) -> str:
    """Return ``Title rev B, p. 12 (PDF page 15)``."""
    revision = f" rev {source.revision}" if source.revision else ""
    return f"{source.title}{revision}, {page_words(source.page, source.label)}"


def page_words(page: int, label: str) -> str:
    """Return the printed page beside the physical one, or one where they agree."""
    if label and label != str(page):
        return f"p. {label} (PDF page {page})"
    return f"p. {page}"


def basis_words(statement: Statement) -> str:
    """Say what a statement rests on."""
    if statement.basis == "computed":
        return "worked out"
    if statement.basis == "passage":
        return "from the page"
    ranks = [source.rank for source in statement.sources if source.rank]
    return RANK_WORDS.get(ranks[0], "rule") if ranks else "rule"


def _statements(statements: Sequence[Statement], frame: Frame) -> Iterator[str]:
    for statement in statements:
        yield from wrap(statement.text, frame.width, "* ")
        yield from wrap(f"[{basis_words(statement)}]", frame.width, INDENT)
        yield from _sources(statement.sources, frame)


def _sources(sources: Sequence[SourceRef], frame: Frame) -> Iterator[str]:
    shown: set[tuple[str, str]] = set()
    for source in sources:
        quote = excerpt(source.quote, QUOTE_LENGTH)
        key = (place_of(source), quote)
        if key in shown:
            continue
        shown.add(key)
        yield from wrap(key[0] + (":" if quote else ""), frame.width, INDENT)
        if quote:
            yield from wrap(f'"{quote}"', frame.width, INDENT * 2)


def _decodes(decodes: Sequence[Decode], frame: Frame) -> Iterator[str]:
    for decode in decodes:
        doubt = "" if decode.unit_confirmed else " (unit not confirmed)"
        yield from wrap(f"{DECODE_WORDS[decode.verdict]}{doubt}:", frame.width)
        if decode.reason:
            yield from wrap(decode.reason, frame.width, INDENT)
        for candidate in decode.candidates:
            kind = "fault" if candidate.is_fault else "no fault"
            yield from wrap(
                f"{candidate.id}: {candidate.meaning} ({kind})", frame.width, "- "
            )
            if candidate.matched:
                fits = ", ".join(candidate.matched)
                yield from wrap(f"fits: {fits}", frame.width, INDENT)
            if candidate.assumed:
                taken = ", ".join(candidate.assumed)
                yield from wrap(f"assumed, not told: {taken}", frame.width, INDENT)
            for source in candidate.sources[:1]:
                yield from wrap(place_of(source), frame.width, INDENT)


def _waits(waits: Sequence[WaitShown], frame: Frame) -> Iterator[str]:
    if waits:
        yield "Timers:"
    for wait in waits:
        yield from wrap(f"{wait.name}: {wait_words(wait, frame)}", frame.width, "- ")


def wait_words(wait: WaitShown, frame: Frame) -> str:
    """Say how a timer stands, with the local time it is ready at."""
    ready = wait.usual or wait.earliest
    match wait.state:
        case "start_unknown":
            return "its start is not known, so its end is not either"
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


def _clock(at: datetime, frame: Frame) -> str:
    return local_time(at, frame.zone, frame.now)


def _stops(stops: Sequence[StopShown], frame: Frame) -> Iterator[str]:
    if stops:
        yield "Protection stops:"
    for stop in stops:
        low, high = stop.count.min, stop.count.max
        told = str(low) if low == high else f"{low} to {high}"
        text = f"{stop.name}: {told} of {stop.limit}, {_lock_words(stop)}"
        if stop.oldest_leaves is not None and stop.state == "open":
            text += (
                f"; the oldest stops counting at {_clock(stop.oldest_leaves, frame)}"
            )
        yield from wrap(text, frame.width, "- ")


def _lock_words(stop: StopShown) -> str:
    if stop.state == "locked":
        return "locked out by the rule"
    if stop.state == "unknown":
        return "cannot tell whether it is locked out"
    return f"{stop.left} left before lockout: find the cause, do not use them as tests"


def _causes(causes: Sequence[CauseShown], frame: Frame) -> Iterator[str]:
    if causes:
        yield "Causes, most likely first:"
    for number, cause in enumerate(causes, start=1):
        yield from wrap(f"{cause.name} - {cause.standing}", frame.width, f"{number}. ")


def _next_check(check: NextCheck | None, frame: Frame) -> Iterator[str]:
    if check is None:
        return
    needs = NEEDS_WORDS[check.needs]
    yield from wrap(f"Next check: {check.name}", frame.width)
    yield from wrap(
        f"Needs: {needs}. About {check.minutes:g} min.", frame.width, INDENT
    )
    for number, step in enumerate(check.steps, start=1):
        yield from wrap(step, frame.width, f"{INDENT}{number}. ")
    if check.ask:
        yield from wrap(f"Tell: {check.ask}", frame.width, INDENT)
    yield from _sources(check.sources, frame)


def _verdicts(verdicts: Sequence[VerdictShown], frame: Frame) -> Iterator[str]:
    for verdict in verdicts:
        yield from wrap(
            f"Verdict: {VERDICT_WORDS[verdict.result]} ({verdict.check})", frame.width
        )
        figures = figures_words(verdict)
        for text in (verdict.reason, figures):
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


def _cautions(cautions: Sequence[CautionShown], frame: Frame) -> Iterator[str]:
    for caution in cautions:
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
