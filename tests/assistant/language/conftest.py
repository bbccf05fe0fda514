"""Short spellings of facts, so that a table of sentences can be read at a glance."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime

import pytest

from assistant.facts import Fact, LampFact, ReadingFact, UnitFact
from assistant.language.understand import Pending, Vocabulary, understand
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment

NOW = datetime(2024, 6, 3, 14, 17, tzinfo=UTC)
"""A Monday; every time in these tables counts back from it."""
SKIPPED = {"kind", "origin", "words", "at"}
NAMED = {"ran_s", "within_s", "off_s", "cycles", "cleared", "supplies", "off_from"}
"""Fields spelled with their name."""
FLAGS = {"in_a_row", "one_call"}
"""Fields whose name stands for yes; a no is left out."""


def _when(fact: Fact) -> str:
    if fact.at is None:
        return ""
    last = (NOW - fact.at.latest).total_seconds() / 60
    first = (NOW - fact.at.earliest).total_seconds() / 60
    span = f"{last:g}" if last == first else f"{last:g}..{first:g}"
    return f" @{span} min ago"


def _more(seen: Observation) -> list[str]:
    found = [f"phase={seen.phase}"] if seen.phase else []
    found += [f"starts={seen.code_starts}"] if seen.code_starts else []
    found += [f"sub={seen.sub}"] if seen.sub else []
    found += [f"level={seen.display_level}"] if seen.display_level else []
    found += [f"counted={seen.counted}"] if seen.counted else []
    found += [f"to={seen.window_to_s:g}"] if seen.window_to_s else []
    found += ["buzzer"] if seen.emitter == "buzzer" else []
    return [*found, "in turn"] if seen.shown_in_turn else found


def _lamp(fact: LampFact) -> str:
    seen = fact.observation
    slots: list[str] = [seen.state]
    slots += [f"count={'/'.join(map(str, seen.count))}"] if seen.count else []
    slots += [f"long={'/'.join(map(str, seen.long_count))}"] if seen.long_count else []
    for name in ("colour", "label", "board", "box"):
        values = getattr(seen, name)
        slots += [f"{name}={'/'.join(map(str, values))}"] if values else []
    for name in ("pause", "rate", "code"):
        slots += [f"{name}={getattr(seen, name)}"] if getattr(seen, name) else []
    slots += [f"window={seen.window_s:g}"] if seen.window_s is not None else []
    slots += [f"rounds={seen.groups_watched}"] if seen.groups_watched else []
    slots += ["stored"] if seen.stored else []
    slots += _more(seen)
    order = {True: ["before reset"], False: ["after reset"], None: []}
    return " ".join(["lamp", *slots, *order[fact.before_reset]])


def _reading(fact: ReadingFact) -> str:
    could = [q.text for q in fact.readings_possible]
    value = fact.value.text if fact.value else "|".join(could)
    parts = [f"reading {fact.of}: {'open' if fact.open_line else value}"]
    if fact.at_temperature:
        parts.append(f"at {fact.at_temperature.text}")
    if fact.under_load:
        parts.append("loaded")
    if fact.power_state:
        parts.append(fact.power_state)
    return " ".join(parts)


def _plain(fact: Fact) -> str:
    values = []
    for name, value in fact:
        if name in SKIPPED or value is None:
            continue
        text = getattr(value, "text", value)
        if name in FLAGS or value == ():
            values += [name] if value else []
            continue
        if isinstance(value, Moment):
            since = (NOW - value.earliest).total_seconds() / 60
            values.append(f"{name}={since:g}min")
            continue
        line = "/".join(map(str, text)) if isinstance(text, tuple) else str(text)
        values.append(f"{name}={line}" if name in NAMED else line)
    return f"{fact.kind} {' '.join(values)}".strip()


def spelled(fact: Fact) -> str:
    """Return one line for a fact."""
    if isinstance(fact, LampFact):
        line = _lamp(fact)
    elif isinstance(fact, ReadingFact):
        line = _reading(fact)
    elif isinstance(fact, UnitFact):
        items = fact.plate.model_dump(exclude_none=True)
        told = " ".join(f"{name}={value}" for name, value in items.items())
        line = f"unit {told}{'' if fact.sure else ' unsure'}"
    else:
        line = _plain(fact)
    return line + _when(fact)


Tell = Callable[..., tuple[list[str], list[str]]]


@pytest.fixture
def tell() -> Tell:
    """Return a function from a text to its facts and acts in short spelling."""

    def read(
        text: str,
        pending: Pending | None = None,
        vocabulary: Vocabulary | None = None,
        utc_offset_minutes: int = 0,
    ) -> tuple[list[str], list[str]]:
        found = understand(
            text,
            now=NOW,
            utc_offset_minutes=utc_offset_minutes,
            pending=pending,
            vocabulary=vocabulary or Vocabulary(),
        )
        return [spelled(fact) for fact in found.facts], list(found.acts)

    return read
