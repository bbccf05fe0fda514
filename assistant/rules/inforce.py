"""The items of all packs that apply, or may apply, to one unit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Generic, Literal, TypeVar, cast

from assistant.checks.kinds import (
    Check,
    CheckBase,
    DividerCheck,
    Sensor,
    SensorBase,
    ThermistorCheck,
    TwoSensorsCheck,
)
from assistant.record import Item, UnitMatch
from assistant.rules.applicability import Plate, match_both, missing_for
from assistant.rules.conflicts import parallel
from assistant.rules.kinds import (
    Card,
    Cause,
    Caution,
    CautionItem,
    ComplaintCall,
    PackDocument,
    PermittedTest,
    Procedure,
    StopCall,
)
from assistant.rules.pack import FILES, Pack, PackHead
from assistant.rules.trust import Trust, trust
from assistant.signals.kinds import Signal, SignalBase, SignalNote, TableNote
from assistant.signals.observation import SignalRow
from assistant.timing.stop_kinds import Stop, StopBase
from assistant.timing.stop_values import StopRow
from assistant.timing.values import WaitRow
from assistant.timing.wait_kinds.base import WaitBase
from assistant.timing.wait_kinds.every import Wait

PackKind = Literal["maker", "shop", "common"]
RANKS: Mapping[str, int] = {"maker": 0, "shop": 1, "common": 2}
"""Whose rule stands first: the maker's, then the shop's, then common practice."""

T_co = TypeVar("T_co", bound=Item, covariant=True)


@dataclass(frozen=True, slots=True)
class Row(Generic[T_co]):
    """An item in force, how it fits the unit, and whose rule it is."""

    gid: str
    """`pack/id`."""
    item: T_co
    unit_match: UnitMatch
    pack_kind: PackKind
    pack_id: str
    trust: Trust = Trust.NOT_CONFIRMED
    """How closely the row is about the unit."""


@dataclass(frozen=True, slots=True)
class InForce:
    """Rows of every kind, the maker's first, then by global id.

    `claims` pairs a row with one it replaces where the unit is not known well enough
    to say which holds; `parallel` pairs rows of two documents that differ and of which
    neither names the other. `deciding` names the plate fields that would say.
    """

    signals: tuple[SignalRow, ...] = ()
    notes: tuple[Row[TableNote], ...] = ()
    """What documents say of whole tables and boards."""
    waits: tuple[WaitRow, ...] = ()
    stops: tuple[StopRow, ...] = ()
    sensors: tuple[Row[Sensor], ...] = ()
    checks: tuple[Row[Check], ...] = ()
    causes: tuple[Row[Cause], ...] = ()
    procedures: tuple[Row[Procedure], ...] = ()
    cautions: tuple[Row[CautionItem], ...] = ()
    deciding: tuple[str, ...] = ()
    claims: tuple[tuple[str, str], ...] = ()
    parallel: tuple[tuple[str, str], ...] = ()
    undecided: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Row that is only possible -> plate fields that would confirm or exclude it."""
    heads: Mapping[str, PackHead] = field(default_factory=dict)
    rows: Mapping[str, Row[Item]] = field(default_factory=dict)
    """Every row by global id."""

    def by_gid(self, gid: str, within: str | None = None) -> Row[Item]:
        """Return the row of an id.

        Parameters
        ----------
        gid : str
            A global id, or a short one with `within`.
        within : str, optional
            The pack, or a row of it, that wrote a short id.

        Raises
        ------
        KeyError
            When no such row is in force for the unit.
        """
        return self.rows[resolve(gid, within)]

    def find(self, gid: str, within: str | None = None) -> Row[Item] | None:
        """Return the row of an id, or None when it is not in force."""
        return self.rows.get(resolve(gid, within))

    def check(self, gid: str, within: str | None = None) -> Row[Check] | None:
        """Return a check in force, or None."""
        wanted = resolve(gid, within)
        return next((row for row in self.checks if row.gid == wanted), None)

    def sensor_of(self, check: Row[Check]) -> Row[Sensor] | None:
        """Return the sensor that a check measures, the first of two, or None."""
        return next(iter(self.sensors_of(check)), None)

    def sensors_of(self, check: Row[Any]) -> tuple[Row[Sensor], ...]:
        """Return the sensors that a check measures and that are in force."""
        match check.item:
            case ThermistorCheck() | DividerCheck():
                names: tuple[str, ...] = (check.item.sensor,)
            case TwoSensorsCheck():
                names = check.item.sensors
            case _:
                return ()
        wanted = [resolve(name, check.gid) for name in names]
        return tuple(row for gid in wanted for row in self.sensors if row.gid == gid)

    def decides(self, gids: Iterable[str]) -> tuple[str, ...]:
        """Return the plate fields that decide between rows, in the order of `Plate`."""
        wanted = {name for gid in gids for name in self.undecided.get(gid, ())}
        return tuple(name for name in Plate.model_fields if name in wanted)

    def rank(self, gid: str) -> int:
        """Return 0 for a maker's row, 1 for a shop's, 2 for common practice."""
        return RANKS[self.rows[gid].pack_kind]

    def document_of(self, gid: str) -> PackDocument | None:
        """Return the document that a row names as its source, or None."""
        row = self.rows[gid]
        source = row.item.source
        if source is None:
            return None
        return self.heads[row.pack_id].documents.get(source.doc)


def resolve(name: str, within: str | None = None) -> str:
    """Return the global id of a name written in the pack of `within`.

    Examples
    --------
    >>> resolve("amber-4", "northlake/x"), resolve("common/no-cooling", "northlake")
    ('northlake/amber-4', 'common/no-cooling')
    """
    if "/" in name or within is None:
        return name
    return f"{within.partition('/')[0]}/{name}"


def in_force(packs: Sequence[Pack], plate: Plate) -> InForce:
    """Return what applies to a unit; what is excluded does not appear.

    A row that another one replaces by name is out where the newer one is confirmed
    for the unit; where it is only possible both stay, with what decides between them.
    """
    heads = {pack.head.id: pack.head for pack in packs}
    rows = {
        row.gid: row
        for pack in sorted(packs, key=lambda pack: pack.head.id)
        for row in _rows(pack, plate)
    }
    claims, deciding = _supersede(packs, rows, plate)
    ordered = sorted(rows.values(), key=_place)
    force = _sorted_out(ordered, heads, claims, deciding)
    undecided = _undecided(ordered, heads, plate)
    pairs = tuple(sorted(_parallel(ordered, heads, undecided)))
    return replace(force, parallel=pairs, undecided=undecided)


def _place(row: Row[Item]) -> tuple[int, int, str]:
    return (RANKS[row.pack_kind], row.trust, row.gid)


def _undecided(
    rows: Sequence[Row[Item]], heads: Mapping[str, PackHead], plate: Plate
) -> dict[str, tuple[str, ...]]:
    """Return what would decide each row that is only possible, once a model is known.

    Without a model nothing else decides: the model is asked for first.
    """
    if plate.outdoor_model is None and plate.indoor_model is None:
        return {}
    found = {}
    for row in rows:
        if row.unit_match == "possible":
            scopes = heads[row.pack_id].applies_to, row.item.applies_to
            missing = {name for held in scopes for name in missing_for(held, plate)}
            if missing:
                found[row.gid] = tuple(n for n in Plate.model_fields if n in missing)
    return found


_MODELS = frozenset({"outdoor_model", "indoor_model"})


def _parallel(
    rows: Sequence[Row[Item]],
    heads: Mapping[str, PackHead],
    undecided: Mapping[str, tuple[str, ...]],
) -> Iterator[tuple[str, str]]:
    """Yield what differs among rows that are about this unit, but for its label."""
    near = [
        (row.gid, row.item, _identity(heads[row.pack_id], row.item))
        for row in rows
        if row.pack_kind == "maker"
        and (row.unit_match == "confirmed" or row.gid in undecided)
        and not _MODELS & set(undecided.get(row.gid, ()))
    ]
    return parallel(near)


def _rows(pack: Pack, plate: Plate) -> Iterable[Row[Item]]:
    replaced = {
        older
        for document in pack.head.documents.values()
        for older in document.supersedes
    }
    for name in FILES:
        items: tuple[Item, ...] = getattr(pack, name)
        for item in items:
            scopes = (pack.head.applies_to, item.applies_to)
            match = match_both(*scopes, plate)
            outdated = item.source is not None and item.source.doc in replaced
            if match != "excluded" and not outdated:
                gid = f"{pack.head.id}/{item.id}"
                kind, close = pack.head.kind, trust(*scopes, plate)
                yield Row(gid, item, match, kind, pack.head.id, close)


def _supersede(
    packs: Sequence[Pack], rows: dict[str, Row[Item]], plate: Plate
) -> tuple[tuple[tuple[str, str], ...], tuple[str, ...]]:
    """Take replaced rows out of `rows`; return what stays in doubt."""
    claims: list[tuple[str, str]] = []
    wanted: set[str] = set()
    out: set[str] = set()
    for pack in packs:
        for entry in pack.head.supersedes:
            newer = rows.get(resolve(entry.by, pack.head.id))
            if newer is None:
                continue
            older = [resolve(name, pack.head.id) for name in entry.rows]
            if newer.unit_match == "confirmed" or _always(pack, newer):
                out.update(older)
                continue
            held = [gid for gid in older if gid in rows]
            claims.extend((newer.gid, gid) for gid in held)
            if held:
                wanted.update(missing_for(pack.head.applies_to, plate))
                wanted.update(missing_for(newer.item.applies_to, plate))
    for gid in out:
        rows.pop(gid, None)
    kept = tuple(sorted(pair for pair in claims if pair[1] in rows))
    return kept, tuple(name for name in Plate.model_fields if name in wanted)


def _always(pack: Pack, newer: Row[Item]) -> bool:
    """Return whether a replacement is written for every unit without condition."""
    return not pack.head.applies_to and not newer.item.applies_to


def _sorted_out(
    rows: Sequence[Row[Item]],
    heads: Mapping[str, PackHead],
    claims: tuple[tuple[str, str], ...],
    deciding: tuple[str, ...],
) -> InForce:
    return InForce(
        signals=tuple(
            SignalRow(
                row.gid,
                cast("Signal", row.item),
                row.unit_match,
                _identity(heads[row.pack_id], row.item),
                row.trust,
            )
            for row in _of(rows, SignalBase)
        ),
        notes=cast("tuple[Row[TableNote], ...]", _of(rows, SignalNote)),
        waits=tuple(
            WaitRow(row.gid, cast("Wait", row.item), row.unit_match)
            for row in _of(rows, WaitBase)
        ),
        stops=tuple(
            StopRow(row.gid, cast("Stop", row.item), row.unit_match)
            for row in _of(rows, StopBase)
        ),
        sensors=cast("tuple[Row[Sensor], ...]", _of(rows, SensorBase)),
        checks=cast("tuple[Row[Check], ...]", _of(rows, CheckBase)),
        causes=cast("tuple[Row[Cause], ...]", _of(rows, Cause)),
        procedures=cast("tuple[Row[Procedure], ...]", _of(rows, ComplaintCall, Card)),
        cautions=cast(
            "tuple[Row[CautionItem], ...]", _of(rows, Caution, StopCall, PermittedTest)
        ),
        deciding=deciding,
        claims=claims,
        heads=heads,
        rows={row.gid: row for row in rows},
    )


def _of(rows: Sequence[Row[Item]], *kinds: type[Item]) -> tuple[Row[Item], ...]:
    return tuple(row for row in rows if isinstance(row.item, kinds))


def _identity(head: PackHead, item: Item) -> str:
    """Return the document a row stands in; the pack for a row without a source."""
    named = head.documents.get(item.source.doc) if item.source is not None else None
    return f"{named.title} ({named.revision})" if named is not None else head.title
