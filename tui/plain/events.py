"""Each event of a job in words. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pydantic import BaseModel

from assistant.facts import Fact
from assistant.jobs.events import (
    Answered,
    Asked,
    Body,
    CheckDone,
    Closed,
    Corrected,
    Entered,
    Found,
    Opened,
    Parked,
    Said,
    TimerChanged,
    TimerDue,
    Undone,
)
from assistant.timing.moment import Moment
from assistant.units.quantity import Quantity
from tui.plain.moments import local_time
from tui.plain.places import Frame, page_words
from tui.plain.render import amount
from tui.plain.text import count, excerpt, one_line

QUOTE_LENGTH = 160
_KEPT_OUT = frozenset({"kind", "at", "origin", "words"})


def event_title(body: Body) -> str:
    """Return what kind of event it is."""
    words = {"opened": "job opened"}
    return words.get(body.kind, body.kind.replace("_", " "))


def event_texts(body: Body, frame: Frame) -> Iterator[str]:
    """Yield what an event says, one thought a line."""
    match body:
        case Said() | Answered():
            yield f'"{one_line(body.text)}"'
            yield from _facts(body.facts, frame)
            if body.left_over:
                yield f"not understood: {one_line(body.left_over)}"
        case Entered():
            yield from _facts(body.facts, frame)
        case Asked():
            yield body.text
        case Found():
            yield from _found(body)
        case CheckDone():
            yield from _check(body)
        case _:
            yield from _other(body, frame)


def _other(body: Body, frame: Frame) -> Iterator[str]:
    match body:
        case Opened():
            yield from _opened(body)
        case TimerDue():
            yield f"{body.wait}: due at {local_time(body.due, frame.zone)}"
        case TimerChanged():
            until = f" until {local_time(body.until, frame.zone)}" if body.until else ""
            yield f"{body.wait}: {body.change} {body.name}{until}".rstrip()
        case Corrected():
            fact = _fact(body.fact, frame) if body.fact else "withdrawn"
            yield f"fact {body.index} of event {body.event}: {fact}"
        case Undone():
            yield f"the facts of event {body.event} are withdrawn"
        case Parked():
            yield body.why or "set aside"
        case Closed():
            yield from _closed(body)
        case _:
            pass


def _opened(body: Opened) -> Iterator[str]:
    if body.site:
        yield f"site: {body.site}"
    yield f"unit: {_fields(body.plate) or 'not told'}"
    yield f"role: {body.role or 'not told'}"
    for pack, digest in sorted(body.packs.items()):
        yield f"rests on rules {pack} ({digest[:12]})"


def _closed(body: Closed) -> Iterator[str]:
    yield body.outcome
    yield f"parts fitted: {', '.join(body.parts_fitted) or 'none'}"
    yield f"parts not needed: {', '.join(body.parts_not_needed) or 'none'}"


def _facts(facts: Sequence[Fact], frame: Frame) -> Iterator[str]:
    for fact in facts:
        yield f"- {_fact(fact, frame)}"


def _fact(fact: Fact, frame: Frame) -> str:
    told = [_fields(fact), _moment(fact.at, frame) if fact.at else ""]
    words = f' ("{one_line(fact.words)}")' if fact.words else ""
    parts = ", ".join(filter(None, told))
    return f"{fact.kind.replace('_', ' ')}: {parts}".rstrip(": ") + words


def _moment(at: Moment, frame: Frame) -> str:
    first = local_time(at.earliest, frame.zone, frame.now)
    last = local_time(at.latest, frame.zone, frame.now)
    return f"at {first}" if first == last else f"between {first} and {last}"


def _fields(record: BaseModel) -> str:
    """Return what a record says beside its defaults: ``colour amber, count 4``."""
    parts = []
    for name, field in type(record).model_fields.items():
        value = getattr(record, name)
        if name in _KEPT_OUT or value == field.default:
            continue
        parts.append(f"{name.replace('_', ' ')} {_value(value)}".strip())
    return ", ".join(parts)


def _value(value: object) -> str:
    match value:
        case Quantity():
            return value.text or amount(value.value, value.unit)
        case BaseModel():
            return _fields(value)
        case tuple():
            return " or ".join(_value(each) for each in value)
        case bool():
            return "yes" if value else "no"
        case float():
            return f"{value:g}"
        case _:
            return one_line(str(value))


def _found(body: Found) -> Iterator[str]:
    yield f'searched for: "{one_line(body.query)}"'
    if not body.hits:
        yield f"nothing found in {count(body.searched, 'document')}: {body.reason}"
    for hit in body.hits:
        revision = f" rev {hit.revision}" if hit.revision else ""
        yield (
            f"- {hit.title}{revision}, {page_words(hit.page, hit.label, hit.read_by)}: "
            f"{excerpt(hit.text, QUOTE_LENGTH)}"
        )


def _check(body: CheckDone) -> Iterator[str]:
    yield f"{body.check}: {body.result.replace('_', ' ')}"
    if body.reason:
        yield body.reason
    figures = [
        f"{name} {amount(value, body.unit)}"
        for name, value in (
            ("read", body.value),
            ("expected", body.expected),
            ("lowest allowed", body.low),
            ("highest allowed", body.high),
        )
        if value is not None
    ]
    if figures:
        yield ", ".join(figures)
    if body.formula:
        yield f"formula: {body.formula}"
