"""How facts and pages cross from the reading process: one line of JSON each.

JSON and not pickle: what comes from a hostile file's reader is only data.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import Any

from assistant.errors import InputError
from ingest.readers.base import (
    FileFacts,
    LockedError,
    Prominent,
    RawPage,
    RawRow,
    RawTable,
    Read,
)


@dataclass(frozen=True, slots=True)
class End:
    """The last line: everything was given."""

    peak: int = 0
    """The most memory the process held, in bytes; 0 where it cannot know."""


def encode(item: Read) -> bytes:
    """Return the line of facts or of a page."""
    name = "facts" if isinstance(item, FileFacts) else "page"
    return _line({name: asdict(item)})


def encode_end(peak: int) -> bytes:
    """Return the line that says the end."""
    return _line({"end": peak})


def encode_refusal(error: InputError) -> bytes:
    """Return the line of a file that cannot be taken in."""
    locked = isinstance(error, LockedError)
    return _line({"refused": [error.what, error.hint], "locked": locked})


def decode(line: bytes) -> Read | End:
    """Return what a line holds.

    Raises
    ------
    InputError
        The line tells of a file that was refused.
    ValueError
        The line is nothing that a reader gives.
    """
    try:
        message = json.loads(line)
        if "refused" in message:
            what, hint = map(str, message["refused"])
        elif "facts" in message:
            return _facts(message["facts"])
        else:
            return _page(message["page"]) if "page" in message else _end(message)
    except (AttributeError, LookupError, TypeError, RecursionError) as fault:
        raise ValueError("a line that no reader gives") from fault
    raise (LockedError if message.get("locked") else InputError)(what, hint)


def _line(message: dict[str, Any]) -> bytes:
    return json.dumps(message).encode("ascii") + b"\n"


def _end(message: dict[str, Any]) -> End:
    return End(int(message["end"]))


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
    names = tuple(map(str, fields.pop("names")))
    return RawTable(rows=rows, columns=columns, names=names, **fields)
