"""Which of the rows that fit have a right to stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.signals.cells import Together, lamp_of
from assistant.signals.fits import Fit
from assistant.signals.kinds import DigitPosition
from assistant.signals.observation import Observation, SignalRow


@dataclass(frozen=True, slots=True)
class Placed:
    """A row and how it fits."""

    row: SignalRow
    fit: Fit


def standing(
    seen: Observation, rows: Sequence[SignalRow], found: Sequence[Placed]
) -> list[Placed]:
    """Return those of the rows that fit which have a right to stand.

    Parameters
    ----------
    rows : sequence of SignalRow
        Every row that was compared.
    found : sequence of Placed
        The rows that fit, near ones too.
    """
    kept = _of_history(without_near(found, _own_colour(seen, rows)))
    kept = _of_whole_display(rows, _of_several(seen, kept))
    if seen.state != "heartbeat" or all("state" in one.fit.near for one in kept):
        return kept
    return [one for one in kept if "state" not in one.fit.near]


def _of_history(found: Sequence[Placed]) -> list[Placed]:
    """Drop the rows of what is shown now where history was read that has its own."""
    own = {one.row.document for one in found if "stored" in one.fit.matched}
    return [
        one for one in found if one.row.document not in own or one.row.signal.stored
    ]


def _of_several(seen: Observation, found: list[Placed]) -> list[Placed]:
    """Drop the rows of one lamp where what was told is of several.

    Flashing together or in turn is never one lamp's; of every lamp, a document that
    has a row for them all says it there.
    """
    if seen.lamps is None and seen.phase is None:
        return found
    whole = [one for one in found if isinstance(one.row.signal, Together)]
    if seen.phase is not None and seen.state == "blink":
        return whole
    documents = {one.row.document for one in whole}
    return [one for one in found if one in whole or one.row.document not in documents]


def _of_whole_display(rows: Sequence[SignalRow], found: list[Placed]) -> list[Placed]:
    """Drop places of a display that is no row of places but one code.

    Beside a row for the whole display, single signs count only where every place that
    the document has a table for shows a sign of it: in "J13" no place may be read.
    """
    told = {one.row.document for one in found if not _is_place(one.row)}
    known = {_place_of(row) for row in rows if _is_place(row)}
    read = {_place_of(one.row) for one in found if _is_place(one.row)}
    cut = {document for document, _ in known - read if document in told}
    return [
        one for one in found if not (_is_place(one.row) and one.row.document in cut)
    ]


def _is_place(row: SignalRow) -> bool:
    return isinstance(row.signal, DigitPosition)


def _place_of(row: SignalRow) -> tuple[str, int]:
    place = row.signal.position if isinstance(row.signal, DigitPosition) else 0
    return row.document, place


def _own_colour(seen: Observation, rows: Sequence[SignalRow]) -> set[str]:
    """Return the documents that have a lamp of the very colour reported."""
    told = {colour.strip().casefold() for colour in seen.colour}
    return {
        row.document
        for row in rows
        if (lamp := lamp_of(row.signal)) is not None
        and (lamp.colour or "").strip().casefold() in told
    }


def without_near(found: Sequence[Placed], own_colour: set[str]) -> list[Placed]:
    """Drop near rows that have no right to stand: never round, never recolour.

    A count one off stands only beside the exact count for the same unit, a rate called
    by the other word only beside the rate told; a colour called by another name only
    where the document has no lamp of the very colour. A code that looks the same, or
    may be a value, stands alone at full weight where none is the same.
    """
    kept = []
    for one in found:
        peers = [other for other in found if _of_one_table(one.row, other.row)]
        exact = [other for other in peers if not other.fit.near]
        if not _has_its_exact_row(one, exact):
            continue
        if "colour" in one.fit.near and one.row.document in own_colour:
            continue
        alone = bool({"glyph", "value"} & one.fit.near) and not exact
        kept.append(replace(one, fit=replace(one.fit, weight=1.0)) if alone else one)
    return kept


def _has_its_exact_row(one: Placed, exact: Sequence[Placed]) -> bool:
    """Return whether a row that fits nearly stands beside the one that fits fully."""
    near = one.fit.near
    if "flicker" in near and exact:
        return False
    if "count" in near and not any(_COUNTED & other.fit.matched for other in exact):
        return False
    if "rate" in near:
        return any("rate" in other.fit.assumed | other.fit.matched for other in exact)
    return not ("sub" in near and exact)


_COUNTED = frozenset({"count", "short", "long"})


def _of_one_table(one: SignalRow, other: SignalRow) -> bool:
    """Return whether two rows stand in one document, or surely speak of one unit."""
    confirmed = one.unit_match == other.unit_match == "confirmed"
    return confirmed or one.document == other.document
