"""Finds rows that one look at the lamps cannot tell apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from typing import Literal

from assistant.rules.examples import example_of, grid_example, in_words
from assistant.rules.mistakes import Mistake, PackLines
from assistant.rules.pack import Pack
from assistant.rules.pairs import candidate_pairs
from assistant.rules.scopes import apart
from assistant.signals.cells import Together
from assistant.signals.counting import same_window
from assistant.signals.fits import Fit
from assistant.signals.kinds import (
    AnalogRate,
    CountPerWindow,
    DisplayCode,
    DisplayValue,
    MainSubCode,
    Signal,
)
from assistant.signals.observation import Observation
from assistant.signals.trains import fit_row


def find_overlaps(pack: Pack, lines: PackLines) -> Iterator[Mistake]:
    """Yield pairs of rows that the same sight decodes to, with that sight."""
    replaced = _replaced_pairs(pack)
    for one, other in candidate_pairs(pack.rows):
        if (one.id, other.id) in replaced or units_apart(one, other):
            continue
        seen = common_sight(one, other)
        if seen is not None:
            yield _overlap(one, other, seen, lines)


def _replaced_pairs(pack: Pack) -> set[tuple[str, str]]:
    pairs = set()
    for entry in pack.head.supersedes:
        for row in entry.rows:
            short = row.removeprefix(f"{pack.head.id}/")
            pairs |= {(entry.by, short), (short, entry.by)}
    return pairs


def units_apart(one: Signal, other: Signal) -> bool:
    """Return whether no unit is written to be that of both rows."""
    if not one.applies_to or not other.applies_to:
        return False
    return all(apart(a, b) for a, b in product(one.applies_to, other.applies_to))


def common_sight(one: Signal, other: Signal) -> tuple[Observation, ...] | None:
    """Return what somebody would see that is both rows, or None."""
    if isinstance(one, Together) and isinstance(other, Together):
        return grid_example(one, other)
    if isinstance(one, Together) or isinstance(other, Together):
        return None
    if isinstance(one, AnalogRate) != isinstance(other, AnalogRate):
        return None
    if isinstance(one, CountPerWindow) and isinstance(other, CountPerWindow):
        seconds = Observation(state="count", window_s=one.window.value)
        if not same_window(seconds, other.window):
            return None
    whole = (DisplayCode, MainSubCode)
    if isinstance(other, whole) and not isinstance(one, whole):
        one, other = other, one
    seen = example_of(one, other)
    if seen is None:
        return None
    fits = [fit_row(seen, signal, signal.mode) for signal in (one, other)]
    return (seen,) if all(fit is not None and _plain(fit) for fit in fits) else None


def _plain(fit: Fit) -> bool:
    """Return whether a row fits as it stands, be it a value or a code drawn alike."""
    return fit.near <= {"glyph", "value"}


def _overlap(
    one: Signal, other: Signal, seen: Sequence[Observation], lines: PackLines
) -> Mistake:
    first, second = sorted((one, other), key=lambda row: lines.place(row.id))
    file, line = lines.place(second.id)
    severe = _is_severe(one, other)
    hint = "both are shown side by side"
    told = f"`{second.id}` cannot be told from `{first.id}`"
    if one.applies_to != other.applies_to:
        told = f"`{second.id}` and `{first.id}` may both hold for one unit"
        hint += "; to replace a row, name it under `supersedes` in pack.yaml"
    elif severe:
        hint = "name what tells them apart: applies_to, mode, unit_state or supersedes"
    where = f"on line {lines.place(first.id)[1]}: both are {in_words(seen)}"
    severity: Literal["error", "warning"] = "error" if severe else "warning"
    return Mistake(file, line, f"{told} {where}", hint, severity)


def _is_severe(one: Signal, other: Signal) -> bool:
    """Return whether two rows keep a pack out of force, and are not shown as two.

    Two documents may differ, a row may be for some units only, and a code may be
    drawn like another or like a value.
    """
    docs = {row.source.doc if row.source is not None else "" for row in (one, other)}
    if len(docs) > 1 or one.applies_to != other.applies_to:
        return False
    if isinstance(one, DisplayCode) and isinstance(other, DisplayCode):
        return one.code == other.code
    return isinstance(one, DisplayValue) == isinstance(other, DisplayValue)
