"""An answer as plain lines: our own layout, any width, no colour needed. Pure."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
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
from tui.plain.text import excerpt, excerpt_lines, one_line, wrap, wrap_kept

STATUS_WORDS: dict[Status, str] = {
    "stop": "STOP. Do this first.",
    "refused": "NO. Here is the safe way.",
    "unit_lockout": "LOCKED OUT. It will not start by itself.",
    "waiting": "WAIT. It is too early to judge.",
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
PASSAGE_LENGTH = 420
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
    said = [one_line(each.text).casefold() for each in answer.statements]
    cautions = list(_cautions(answer.cautions, frame))
    blocks = [
        list(_statements(answer.statements, frame)),
        list(_decodes(answer.decodes, said, frame)),
        list(_waits(answer.waits, frame)),
        list(_stops(answer.stops, frame)),
        list(_verdicts(answer.verdicts, said, frame)),
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
    quoted: set[tuple[str, str]] = set()
    for statement in statements:
        if statement.basis == "passage":
            yield from _passage(statement, frame)
            continue
        yield from wrap(statement.text, frame.width, "* ")
        yield from wrap(f"[{basis_words(statement)}]", frame.width, INDENT)
        yield from _sources(statement.sources, frame, quoted)


def _passage(statement: Statement, frame: Frame) -> Iterator[str]:
    """Yield a passage verbatim, line by line, under its place."""
    places = "; ".join(place_of(source) for source in statement.sources)
    yield from wrap(f"{places} [{basis_words(statement)}]", frame.width, "* ")
    for line in excerpt_lines(statement.text, PASSAGE_LENGTH):
        yield from wrap_kept(line, frame.width, INDENT * 2)


def _sources(
    sources: Sequence[SourceRef],
    frame: Frame,
    quoted: set[tuple[str, str]] | None = None,
) -> Iterator[str]:
    """Yield places with their words; words already `quoted` are not repeated."""
    seen = set() if quoted is None else quoted
    for source in dict.fromkeys(sources):
        place = place_of(source)
        quote = excerpt(source.quote, QUOTE_LENGTH)
        fresh = bool(quote) and (place, quote) not in seen
        seen.add((place, quote))
        yield from wrap(place + (":" if fresh else ""), frame.width, INDENT)
        if fresh:
            yield from wrap(f'"{quote}"', frame.width, INDENT * 2)


def _decodes(
    decodes: Sequence[Decode], said: Collection[str], frame: Frame
) -> Iterator[str]:
    """Name the rows; what they mean is left out where a statement says it."""
    for decode in decodes:
        doubt = "" if decode.unit_confirmed else " (unit not confirmed)"
        told = DECODE_WORDS[decode.verdict] + doubt
        reason = decode.reason if _unsaid(decode.reason, said) else ""
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
