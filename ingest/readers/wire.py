"""How facts and pages cross from the reading process: one line of JSON each.

JSON and not pickle: what comes from a hostile file's reader is only data.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from assistant.errors import InputError
from ingest.readers.base import FileFacts, Prominent, RawPage, RawRow, RawTable, Read

END = b'{"end":true}\n'


def encode(item: Read) -> bytes:
    """Return the line of facts or of a page."""
    name = "facts" if isinstance(item, FileFacts) else "page"
    return _line({name: asdict(item)})


def encode_refusal(error: InputError) -> bytes:
    """Return the line of a file that cannot be taken in."""
    return _line({"refused": [error.what, error.hint]})


def decode(line: bytes) -> Read | None:
    """Return what a line holds; None for the end.

    Raises
    ------
    InputError
        The line tells of a file that was refused.
    """
    message = json.loads(line)
    if "refused" in message:
        raise InputError(*message["refused"])
    if "facts" in message:
        return _facts(message["facts"])
    return _page(message["page"]) if "page" in message else None


def _line(message: dict[str, Any]) -> bytes:
    return json.dumps(message).encode("ascii") + b"\n"


def _facts(fields: dict[str, Any]) -> FileFacts:
    outline = tuple((str(title), int(page)) for title, page in fields.pop("outline"))
    return FileFacts(outline=outline, **fields)


def _page(fields: dict[str, Any]) -> RawPage:
    prominent = tuple(Prominent(**line) for line in fields.pop("prominent"))
    tables = tuple(_table(table) for table in fields.pop("tables"))
    return RawPage(prominent=prominent, tables=tables, **fields)


def _table(fields: dict[str, Any]) -> RawTable:
    rows = tuple(
        RawRow(int(row["line"]), tuple(map(str, row["cells"])))
        for row in fields.pop("rows")
    )
    columns = tuple(map(float, fields.pop("columns")))
    return RawTable(rows=rows, columns=columns, **fields)
