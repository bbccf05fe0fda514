"""A draft as a person works through it: each row, where it stands, its doubts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ingest.drafts.gather import item_of
from ingest.drafts.model import Draft, DraftRow
from tui.plain.text import count, wrap

NOTHING = "A draft answers nothing until its rows are accepted, one by one, by name."


def draft_lines(draft: Draft, width: int) -> list[str]:
    """Return a draft in lines of at most `width`."""
    lines = wrap(f"Draft {draft.head.id}, from {draft.head.title}. {NOTHING}", width)
    for name, why in draft.head.doubts.items():
        lines += wrap(f"? pack {name}: {why}", width, "  ", "    ")
    for row in draft.rows:
        lines += ["", *_row_lines(row, width)]
    return [*lines, "", *wrap(summary(draft), width)]


def summary(draft: Draft) -> str:
    """Return how many rows there are and how many have doubts."""
    doubtful = sum(bool(row.doubts) for row in draft.rows)
    return f"{count(len(draft.rows), 'row')}, {doubtful} with doubts"


def _row_lines(row: DraftRow, width: int) -> list[str]:
    lines = wrap(f"{row.id} ({row.file}, page {row.page}): {_said(row)}", width)
    lines += wrap(f'"{row.quote}"', width, "  ", "    ")
    for name, why in row.doubts.items():
        lines += wrap(f"? {name}: {why}", width, "  ", "    ")
    for left in row.left_out:
        lines += wrap(f"left out: {left}", width, "  ", "    ")
    for settled in row.settled:
        lines += wrap(f"settled: {settled}", width, "  ", "    ")
    return lines


def _said(row: DraftRow) -> str:
    parts = [f"{key} {_value(held)}" for key, held in row.fields.items()]
    return ", ".join(parts) or "nothing that could be read"


def _value(held: object) -> str:
    if isinstance(held, bool):
        return "yes" if held else "no"
    if isinstance(held, Mapping):
        return " ".join(str(_value(each)) for each in held.values()) or "?"
    if isinstance(held, list | tuple):
        return "; ".join(_value(each) for each in held)
    return str(held)


def draft_fields(draft: Draft) -> dict[str, Any]:
    """Return a draft as plain fields for JSON."""
    return {
        "id": draft.head.id,
        "title": draft.head.title,
        "document": dict(draft.head.document),
        "applies_to": [dict(scope) for scope in draft.head.applies_to],
        "doubts": dict(draft.head.doubts),
        "rows": [row_fields(row) for row in draft.rows],
    }


def row_fields(row: DraftRow) -> dict[str, Any]:
    """Return a drafted row as plain fields for JSON."""
    item = row.fields if row.is_point else item_of(row)
    return {
        "row": row.id,
        "file": row.file,
        "item": item,
        "page": row.page,
        "quote": row.quote,
        "confidence": row.confidence,
        "table": row.table,
        "doubts": dict(row.doubts),
        "left_out": list(row.left_out),
        "settled": list(row.settled),
    }
