"""A draft as a folder that a person edits: pack format, and the doubts beside it."""

from __future__ import annotations

import csv
import io
import os
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from assistant.errors import InputError, PackError
from assistant.rules.loader import DRAFT_FILE
from assistant.rules.messages import explain
from assistant.rules.pack import FILES
from assistant.rules.yaml_lines import Written, read_text, read_yaml
from ingest.drafts.gather import DOC, item_of
from ingest.drafts.model import POINTS, Draft, DraftHead, DraftRow
from ingest.drafts.written import SCHEMA, WrittenHead, WrittenRow
from ingest.drafts.yaml_text import item_text, mapping_text

M = TypeVar("M", bound=BaseModel)
COLUMNS = (
    "row",
    "temperature",
    "resistance",
    "page",
    "quote",
    "confidence",
    "doubts",
    "left_out",
    "settled",
)
_ABOUT = """\
# A draft: nothing here answers anything until a person has accepted it, row by row:
#   faultleaf rules accept {folder} ROW... --by NAME
# A doubt is settled with --settle ROW DOUBT=VALUE, or here: write the value that
# the page has, then take the doubt's line out.
"""


def is_draft(folder: Path) -> bool:
    """Return whether a folder is a draft."""
    return (folder / DRAFT_FILE).is_file()


def write_draft(draft: Draft, folder: Path) -> None:
    """Write a draft into a new folder.

    Raises
    ------
    InputError
        The folder is there already and holds something.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise InputError(
            f"{folder} is there already: a draft is never written over one",
            "name another folder with --out FOLDER",
        )
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in sorted(draft_texts(draft, folder.name).items()):
        put(folder / name, text)


def draft_texts(draft: Draft, folder: str) -> dict[str, str]:
    """Return file name -> text of a draft; `draft.yaml` last when written in order."""
    texts: dict[str, str] = {}
    for file in dict.fromkeys(row.file for row in draft.rows):
        rows = [row for row in draft.rows if row.file == file]
        if file.startswith(f"{POINTS}/"):
            texts[file] = points_text(rows)
        else:
            about = _ABOUT.format(folder=folder)
            texts[f"{file}.yaml"] = about + "".join(
                f"\n{row_text(row)}" for row in rows
            )
    texts[DRAFT_FILE] = head_text(draft.head, folder)
    return texts


def head_text(head: DraftHead, folder: str) -> str:
    """Return the text of `draft.yaml`."""
    data: dict[str, Any] = {"schema": SCHEMA, "id": head.id, "title": head.title}
    data["document"] = dict(head.document)
    if head.applies_to:
        data["applies_to"] = [dict(scope) for scope in head.applies_to]
    if head.doubts:
        data["doubts"] = dict(head.doubts)
    return _ABOUT.format(folder=folder) + mapping_text(data)


def row_text(row: DraftRow) -> str:
    """Return the text of a row: its item, and under `draft` what is doubtful."""
    about: dict[str, Any] = {"confidence": row.confidence}
    if row.table:
        about["table"] = row.table
    if row.left_out:
        about["left_out"] = list(row.left_out)
    if row.settled:
        about["settled"] = list(row.settled)
    if row.doubts:
        about["doubts"] = dict(row.doubts)
    return item_text({**item_of(row), "draft": about})


def points_text(rows: Iterable[DraftRow]) -> str:
    """Return the CSV of a table's points."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for row in rows:
        doubts = " | ".join(f"{name}: {why}" for name, why in row.doubts.items())
        values = [row.fields.get(name, "") for name in ("temperature", "resistance")]
        writer.writerow(
            [
                row.id,
                *values,
                row.page,
                row.quote,
                row.confidence,
                doubts,
                " | ".join(row.left_out),
                " | ".join(row.settled),
            ]
        )
    return out.getvalue()


def put(path: Path, text: str) -> None:
    """Write a file whole or not at all: beside it first, then in its place."""
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_name(f".{path.name}.new")
    with beside.open("w", encoding="utf-8", newline="") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
    beside.replace(path)


def read_draft(folder: Path) -> Draft:
    """Return the draft of a folder, as a person may have edited it.

    Raises
    ------
    InputError
        It is no draft.
    PackError
        With every mistake that keeps a file of it from being read.
    """
    if not is_draft(folder):
        raise InputError(
            f"{folder} is no draft: it has no {DRAFT_FILE}",
            "faultleaf rules draft DOC makes one",
        )
    head = _head(_read(folder / DRAFT_FILE))
    rows: list[DraftRow] = []
    for name in FILES:
        path = folder / f"{name}.yaml"
        if path.is_file():
            rows += _rows(name, _read(path))
    for path in sorted((folder / POINTS).glob("*.csv")):
        rows += _points(path)
    times = Counter(row.id for row in rows)
    doubles = sorted(name for name, many in times.items() if many > 1)
    if doubles:
        named = ", ".join(doubles)
        raise PackError((f"{folder}: several rows are called {named}",), "rename them")
    return Draft(head, tuple(rows))


def _read(path: Path) -> Written:
    written = read_yaml(path, path.as_posix())
    _refuse_mistakes(written)
    return written


def _refuse_mistakes(written: Written) -> None:
    if written.mistakes:
        told = tuple(str(each) for each in written.mistakes)
        raise PackError(told, "mend the lines, or draft the document anew")


def _read_as(
    model: type[M], raw: object, place: tuple[int, ...], written: Written
) -> M | None:
    """Return what stands at a place; None, and the mistakes noted, when it is wrong."""
    try:
        # Cells of a CSV table are all text; what YAML holds has its types.
        return model.model_validate(raw, strict=not written.file.endswith(".csv"))
    except ValidationError as error:
        name = f"row {place[0] + 1}" if place else "the draft"
        if isinstance(raw, dict) and isinstance(raw.get("id"), str):
            name = raw["id"]
        written.mistakes.extend(explain(error, model, place, written, name))
        return None


def _head(written: Written) -> DraftHead:
    read = _read_as(WrittenHead, written.data, (), written)
    _refuse_mistakes(written)
    assert read is not None  # noqa: S101 - there were mistakes else
    return DraftHead(read.id, read.title, read.document, read.applies_to, read.doubts)


def _rows(name: str, written: Written) -> list[DraftRow]:
    rows: list[DraftRow] = []
    listed = written.data if written.data is not None else ()
    if not isinstance(listed, tuple):
        written.report(1, "is no list of rows", "each row begins with `- id:`")
        listed = ()
    for place, item in enumerate(listed):
        read = _read_as(WrittenRow, item, (place,), written)
        if read is not None:
            own = WrittenRow.model_fields
            fields = {key: value for key, value in item.items() if key not in own}
            rows.append(read.as_row(name, fields))
    _refuse_mistakes(written)
    return rows


def _points(path: Path) -> list[DraftRow]:
    written = Written(path.as_posix())
    lines = csv.reader(io.StringIO(read_text(path, written) or ""))
    rows: list[DraftRow] = []
    for place, cells in enumerate(lines):
        written.lines[(place,)] = lines.line_num
        if len(cells) != len(COLUMNS) or (not place and tuple(cells) != COLUMNS):
            what = f"the columns are {', '.join(COLUMNS)}"
            written.report(lines.line_num, what, "put them back")
        elif place:
            said = dict(zip(COLUMNS, cells, strict=True))
            read = _read_as(WrittenRow, _item_of_cells(said), (place,), written)
            held = {key: said[key] for key in ("temperature", "resistance")}
            fields = {key: value for key, value in held.items() if value}
            if read is not None:
                rows.append(read.as_row(f"{POINTS}/{path.name}", fields))
    _refuse_mistakes(written)
    return rows


def _item_of_cells(said: Mapping[str, str]) -> dict[str, Any]:
    """Return a table's row as an item of a list would be written."""
    doubts = [part.partition(": ") for part in _parts(said["doubts"])]
    return {
        "id": said["row"],
        "source": {"doc": DOC, "page": said["page"], "quote": said["quote"]},
        "draft": {
            "confidence": said["confidence"],
            "left_out": tuple(_parts(said["left_out"])),
            "settled": tuple(_parts(said["settled"])),
            "doubts": {name: why for name, _, why in doubts if name},
        },
    }


def _parts(cell: str) -> list[str]:
    return [part for part in (cell or "").split(" | ") if part]


def rewrite(folder: Path, draft: Draft, changed: Sequence[str]) -> None:
    """Write rows of a draft anew: those of `changed` that it still holds, or without.

    Other rows of a file stay as they are written, with whatever a person noted there.
    """
    rows = {row.id: row for row in draft.rows}
    texts = {called: row_text(row) for called, row in rows.items() if not row.is_point}
    for name in FILES:
        path = folder / f"{name}.yaml"
        if path.is_file():
            put_if_changed(path, _edited(path, changed, texts))
    for path in sorted((folder / POINTS).glob("*.csv")):
        held = [row for row in draft.rows if row.file == f"{POINTS}/{path.name}"]
        put_if_changed(path, points_text(held))


def put_if_changed(path: Path, text: str) -> None:
    """Write a file if it does not hold that text already."""
    if not path.is_file() or path.read_text(encoding="utf-8-sig") != text:
        put(path, text)


def _edited(path: Path, changed: Sequence[str], texts: Mapping[str, str]) -> str:
    written = _read(path)
    lines = path.read_text(encoding="utf-8-sig").splitlines(keepends=True)
    listed = written.data if isinstance(written.data, tuple) else ()
    starts = [written.lines[(place,)] - 1 for place in range(len(listed))]
    kept = lines[: starts[0]] if starts else lines
    for place, item in enumerate(listed):
        end = starts[place + 1] if place + 1 < len(starts) else len(lines)
        own, after = _parted(lines[starts[place] : end])
        called = str(item.get("id"))
        if called in changed:
            own = texts.get(called, "").splitlines(keepends=True)
        kept += [*own, *after]
    return "".join(kept)


def _parted(lines: list[str]) -> tuple[list[str], list[str]]:
    """Return a row's own lines, and the remarks and gaps before the next row."""
    end = len(lines)
    while end > 1 and (not lines[end - 1].strip() or lines[end - 1].startswith("#")):
        end -= 1
    return lines[:end], lines[end:]
