"""The reading process: ``python -m ingest.readers.child``.

Takes one line of JSON on standard input: path, readers, pages, password and
limits. Gives one line for the facts, one a page, and one for the end.
"""

from __future__ import annotations

import importlib
import json
import os
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any, BinaryIO, cast

from assistant.errors import InputError
from ingest.readers import wire
from ingest.readers.base import RawPage, Read, Reader
from ingest.readers.limits import end_with_parent, hold_to
from ingest.readers.memory import resident


def main() -> None:
    """Read one file as asked on standard input."""
    request = json.loads(_first_line(sys.stdin.fileno()))
    end_with_parent(sys.stdin.fileno())
    out = _own_output()
    # Imported before the limits hold, so that its compiled form can be kept.
    reader = _named(request["reader"])
    wanted = int(request["first"]) < int(request["plain_until"])
    plain = _named(request["plain"]) if wanted else reader
    hold_to(int(request["memory"]), int(request["seconds"]))
    _send(out, Path(request["path"]), _items(request, reader, plain))
    os._exit(0)


def _first_line(pipe: int) -> bytes:
    """Read without a buffer: the rest of the pipe belongs to the parent's watch."""
    line = bytearray()
    while not line.endswith(b"\n"):
        char = os.read(pipe, 1)
        if not char:
            os._exit(1)
        line += char
    return bytes(line)


def _own_output() -> BinaryIO:
    """Keep the pipe to ourselves; what a library prints goes nowhere."""
    out = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    return out


def _named(name: str) -> Reader:
    module, _, function = name.partition(":")
    return cast("Reader", getattr(importlib.import_module(module), function))


def _items(request: dict[str, Any], reader: Reader, plain: Reader) -> Iterator[Read]:
    """Give the pages before `plain_until` by the plain reader, then the rest."""
    path, password = Path(request["path"]), request["password"]
    if "pages" in request:  # only a reader of single pages is asked for them
        reader = partial(cast("Any", reader), pages=tuple(request["pages"]))
    first, until = int(request["first"]), int(request["plain_until"])
    if first < until:
        for item in plain(path, first, password):
            if isinstance(item, RawPage) and item.number >= until:
                break
            yield item
        else:
            return  # it gave the file's last page
    yield from reader(path, max(first, until), password)


def _send(out: BinaryIO, path: Path, items: Iterator[Read]) -> None:
    try:
        for item in items:
            out.write(wire.encode(item))
            out.flush()
        out.write(wire.encode_end(resident(os.getpid())))
    except InputError as error:
        out.write(wire.encode_refusal(error))
    except MemoryError:
        what = f"{path.name}: needs more memory than a reader may use"
        out.write(wire.encode_refusal(InputError(what)))
    except OSError as fault:
        what = f"{path.name}: cannot be read ({fault.strerror})"
        out.write(wire.encode_refusal(InputError(what)))
    out.flush()


if __name__ == "__main__":
    main()
