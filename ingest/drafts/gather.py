"""Everything in a document that looks like a rule, as rows with their doubts. Pure."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from typing import Any, Protocol

from pydantic import ValidationError

from assistant.library.types import TableRow
from assistant.rules.shapes import KINDS
from ingest.drafts import (
    bands,
    codes,
    curves,
    flashes,
    lamp_grids,
    shown_lines,
    stop_limits,
    wait_times,
)
from ingest.drafts.columns import Printed, printed_tables
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.sentences import sentences


class _TableKind(Protocol):
    """What a module about one kind of table offers."""

    def looks_like(self, table: Printed) -> bool: ...

    def draft(self, table: Printed, page: PageView) -> list[DraftRow]: ...


class _SentenceKind(Protocol):
    """What a module about one kind of sentence offers."""

    def of_sentence(self, sentence: str, page: PageView) -> DraftRow | None: ...


_TABLES: tuple[_TableKind, ...] = (
    flashes,
    codes,
    lamp_grids,
    curves,
    wait_times,
    bands,
)
"""Each kind of table, the surest first; the first that fits takes the table.

Limits of stops may stand in a column of any of them."""
_SENTENCES: tuple[_SentenceKind, ...] = (shown_lines, stop_limits, wait_times)
DOC = "manual"
"""The alias under which a draft names its document."""


def draft_rows(pages: Sequence[PageView], rows: Sequence[TableRow]) -> list[DraftRow]:
    """Return the drafted rows of a document in the order of its pages.

    Every row quotes words of its page; what cannot be read is a doubt of the row and
    not a field of it.
    """
    by_number = {page.number: page for page in pages}
    drafted: list[DraftRow] = []
    for table in printed_tables(rows):
        page = by_number.get(table.page)
        if page is not None and _quotable(table):
            drafted += _of_table(table, page)
    for page in pages:
        for sentence in sentences(page, rows):
            found = _of_sentence(sentence, page)
            if found is not None:
                drafted.append(found)
    kept = [row for row in drafted if row.quote and _stands(row, by_number[row.page])]
    _refuse_doubles(kept)
    _own_ids(kept)
    for row in kept:
        _complete(row)
        row.confidence = round(row.confidence, 2)
    order = {page.number: place for place, page in enumerate(pages)}
    return sorted(kept, key=lambda row: order[row.page])


def _quotable(table: Printed) -> bool:
    """Return whether every row's place in the page's text is known."""
    return all(row.end > row.start for row in table.rows)


def _stands(row: DraftRow, page: PageView) -> bool:
    return row.quote in page.folded


def _of_table(table: Printed, page: PageView) -> list[DraftRow]:
    limits = stop_limits.draft(table, page) if stop_limits.looks_like(table) else []
    for kind in _TABLES:
        if kind.looks_like(table):
            return [*kind.draft(table, page), *limits]
    return limits


def _of_sentence(sentence: str, page: PageView) -> DraftRow | None:
    for kind in _SENTENCES:
        row = kind.of_sentence(sentence, page)
        if row is not None:
            return row
    return None


def _look(row: DraftRow) -> str | None:
    """Return what somebody would see of a row, as a key; None: nothing to compare."""
    fields = row.fields
    if row.is_point:
        shown = fields.get("temperature")
        return None if shown is None else f"{row.file} {shown}"
    if row.file != "signals":
        return None
    keys = ("lamp", "count", "short", "long", "code", "sub", "lamps", "display")
    if not any(key in fields for key in ("count", "code", "lamps", "short")):
        return None
    if any(name == "count" or name.startswith("lamp-") for name in row.doubts):
        return None
    return repr([fields.get(key) for key in keys])


def _refuse_doubles(rows: list[DraftRow]) -> None:
    """Doubt rows that look the same and say different things; drop true repeats."""
    alike: dict[str, list[DraftRow]] = defaultdict(list)
    for row in rows:
        look = _look(row)
        if look is not None:
            alike[look].append(row)
    for group in alike.values():
        if len({_says(row) for row in group}) > 1:
            where = ", ".join(sorted({f"p. {row.page}" for row in group}))
            for row in group:
                told = (
                    f"{len(group)} rows look the same ({where}): when does each hold?"
                )
                row.doubt("condition", told, costs=0.5)
        else:
            for again in group[1:]:
                rows.remove(again)


def _says(row: DraftRow) -> str:
    said = row.fields.get("meaning" if not row.is_point else "resistance", "")
    return " ".join(str(said).casefold().split())


def _own_ids(rows: list[DraftRow]) -> None:
    """Give each row an id of its own: the later ones of a name get a letter."""
    taken: set[str] = set()
    for row in rows:
        name, nth = row.id, 0
        while row.id in taken:
            nth += 1
            row.id = f"{name}-{_letters(nth)}"
        taken.add(row.id)
        if row.id != name and row.file == "sensors":
            _rename_table(rows, row, name)


def _rename_table(rows: list[DraftRow], sensor: DraftRow, old: str) -> None:
    """Let a renamed sensor keep its own table: its points stand right behind it."""
    sensor.fields["table"] = f"{sensor.id}.csv"
    at = next(place for place, row in enumerate(rows) if row is sensor)
    for row in rows[at + 1 :]:
        if row.file != f"tables/{old}.csv":
            break
        row.file = f"tables/{sensor.id}.csv"
        row.id = row.id.replace(f"{old}:", f"{sensor.id}:", 1)


def _letters(number: int) -> str:
    """Return b, c, … z, bb, … for 1, 2, …: a number would look like a count."""
    text = ""
    while number > 0:
        number, rest = divmod(number - 1, 25)
        text = chr(ord("b") + rest) + text
    return text


def _complete(row: DraftRow) -> None:
    """Turn everything that the item's model still asks for into a doubt."""
    if row.is_point:
        return
    for name, why in shortcomings(row.file, item_of(row)):
        if not _covered(name, row.doubts):
            row.doubt(name, why, costs=0.9)


_COVERS = {
    "edge": ("edge",),
    "name": ("event", "name", "sensor"),
    "event": ("event",),
    "needs": ("unit",),
    "": ("reset", "band"),
    "lamp": ("lamp",),
}
"""Field the model asks for -> doubts that already ask the person for it."""


def _covered(name: str, doubts: Mapping[str, str]) -> bool:
    if name in doubts or any(other in doubts for other in _COVERS.get(name, ())):
        return True
    if name in ("low", "high"):
        return "unit" in doubts or "band" in doubts
    return name == "lamps" and any(
        each.startswith(("lamp-", "legend")) for each in doubts
    )


def item_of(row: DraftRow) -> dict[str, Any]:
    """Return the item of a row as it would be written, with id and source."""
    source = {"doc": DOC, "page": row.page, "quote": row.quote}
    kind = {"kind": row.fields["kind"]} if "kind" in row.fields else {}
    return {"id": row.id, **kind, **row.fields, "source": source}


def shortcomings(file: str, item: Mapping[str, Any]) -> list[tuple[str, str]]:
    """Return (key, why) of everything that keeps an item from being one."""
    model = KINDS[file].get(str(item.get("kind")))
    if model is None:
        return [("kind", f"`{item.get('kind')}` is no kind of {file}")]
    try:
        model.model_validate(frozen(dict(item)))
    except ValidationError as error:
        found = Counter[str]()
        told = []
        for detail in error.errors(include_url=False):
            key = str(detail["loc"][0]) if detail["loc"] else ""
            found[key] += 1
            if found[key] == 1:
                missing = detail["type"] == "missing"
                why = "is not on the page" if missing else str(detail["msg"])
                told.append((key, f"`{key}` {why}" if key else why))
        return told
    return []


def frozen(value: object) -> Any:  # noqa: ANN401 - whatever was written
    """Return plain data with tuples for lists, as the loader reads them."""
    if isinstance(value, dict):
        return {key: frozen(held) for key, held in value.items()}
    if isinstance(value, list | tuple):
        return tuple(frozen(held) for held in value)
    return value
