"""The files of a pack with rows added to them, as texts: nothing is written here."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import astuple, dataclass
from pathlib import Path
from typing import Any

from assistant.errors import InputError
from assistant.rules.pack import FILES
from assistant.rules.yaml_lines import read_yaml
from ingest.drafts.gather import DOC, frozen, item_of
from ingest.drafts.model import DraftHead, DraftRow
from ingest.drafts.yaml_text import item_text, mapping_text

RECORD = "accepted.csv"
"""In the pack's folder: who accepted which row, when, with what settled."""
_RECORD_COLUMNS = ("at", "by", "row", "file", "page", "settled", "sha256")
_POINT_COLUMNS = ("temperature", "resistance", "doc", "page", "quote")


@dataclass(frozen=True, slots=True)
class Record:
    """Who accepted a row, when, and what they settled in it."""

    at: str
    by: str
    row: str
    file: str
    page: int
    settled: tuple[str, ...]
    sha256: str


def pack_texts(
    pack: Path,
    head: DraftHead,
    rows: Sequence[DraftRow],
    who: str,
    records: Sequence[Record],
) -> dict[str, str]:
    """Return file name -> text of what changes, in the order to write it.

    What an item names is written before it: the head, tables, items, the record.

    Raises
    ------
    InputError
        An id of the pack is used for something else, or it is no pack that a draft
        can go into.
    """
    texts: dict[str, str] = {}
    alias = DOC
    if (pack / "pack.yaml").is_file():
        alias = _alias_in(pack, head)
    else:
        texts["pack.yaml"] = _head_text(head)
    for file in sorted({row.file for row in rows if row.is_point}):
        points = [row for row in rows if row.file == file]
        texts[file] = _with_points(pack / file, points, alias)
    for name in FILES:
        items = [row for row in rows if row.file == name]
        if items:
            texts[f"{name}.yaml"] = _with_items(
                pack / f"{name}.yaml", items, alias, who
            )
    texts[RECORD] = _with_records(pack / RECORD, records)
    return texts


def _head_text(head: DraftHead) -> str:
    data: dict[str, Any] = {
        "schema": 1,
        "id": head.id,
        "version": "1",
        "title": head.title,
        "kind": "maker",
    }
    if head.applies_to:
        data["applies_to"] = [dict(scope) for scope in head.applies_to]
    data["documents"] = {DOC: dict(head.document)}
    return "# Accepted row by row from a draft; accepted.csv says by whom.\n" + (
        mapping_text(data)
    )


def _alias_in(pack: Path, head: DraftHead) -> str:
    """Return how the pack calls the draft's document."""
    written = read_yaml(pack / "pack.yaml", (pack / "pack.yaml").as_posix())
    data = written.data if isinstance(written.data, dict) else {}
    documents = data.get("documents")
    for alias, named in (documents if isinstance(documents, dict) else {}).items():
        same = named.get("sha256") == head.document["sha256"]
        if same or all(
            named.get(key) == head.document.get(key) for key in ("title", "revision")
        ):
            return str(alias)
    raise InputError(
        f"{pack}: the pack does not rest on {head.document['title']}",
        "name that document under `documents` in pack.yaml, or take another --into",
    )


def _with_points(path: Path, rows: Sequence[DraftRow], alias: str) -> str:
    held = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    lines = list(csv.reader(io.StringIO(held)))
    if lines and tuple(lines[0]) != _POINT_COLUMNS:
        what = f"{path}:1: the columns are not {', '.join(_POINT_COLUMNS)}"
        raise InputError(what, "add the rows to that table by hand")
    lines = lines or [list(_POINT_COLUMNS)]
    for row in rows:
        values = [str(row.fields[name]) for name in ("temperature", "resistance")]
        line = [*values, alias, str(row.page), row.quote]
        if line not in lines:
            lines.append(line)
    return _csv(lines)


def _with_items(path: Path, rows: Sequence[DraftRow], alias: str, who: str) -> str:
    held = path.read_text(encoding="utf-8-sig") if path.is_file() else ""
    written = read_yaml(path, path.as_posix()) if held else None
    data = written.data if written is not None else ()
    items = {
        item.get("id"): item
        for item in (data if isinstance(data, tuple) else ())
        if isinstance(item, dict)
    }
    text = held if not held or held.endswith("\n") else f"{held}\n"
    for row in rows:
        item = _item(row, alias)
        if row.id not in items:
            settled = "".join(f"\n#   settled: {each}" for each in row.settled)
            text += f"\n# accepted by {who}{settled}\n{item_text(item)}"
        elif items[row.id] != frozen(item):
            what = f"{path}: id `{row.id}` is used already, for something else"
            raise InputError(what, "rename the row in the draft")
    return text.lstrip("\n")


def _item(row: DraftRow, alias: str) -> dict[str, Any]:
    item = item_of(row)
    return {**item, "source": {**item["source"], "doc": alias}}


def _with_records(path: Path, records: Sequence[Record]) -> str:
    held = path.read_text(encoding="utf-8") if path.is_file() else ""
    lines = list(csv.reader(io.StringIO(held))) or [list(_RECORD_COLUMNS)]
    known = {(line[2], line[6]) for line in lines[1:]}
    for record in records:
        if (record.row, record.sha256) not in known:
            values = [str(v) for v in astuple(record)]
            values[5] = " | ".join(record.settled)
            lines.append(values)
    return _csv(lines)


def _csv(lines: Sequence[Sequence[str]]) -> str:
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(lines)
    return out.getvalue()
