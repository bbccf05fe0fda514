"""The reading process: ``python -m ingest.readers.child``.

Takes one line of JSON on standard input: path, reader, first page, password and
limits. Gives one line for the facts, one a page, and one for the end.
"""

from __future__ import annotations

import importlib
import json
import os
import sys
from pathlib import Path
from typing import BinaryIO

from assistant.errors import InputError
from ingest.readers import wire
from ingest.readers.base import Reader
from ingest.readers.limits import end_with_parent, hold_to


def main() -> None:
    """Read one file as asked on standard input."""
    request = json.loads(_first_line(sys.stdin.fileno()))
    end_with_parent(sys.stdin.fileno())
    out = _own_output()
    module, _, function = str(request["reader"]).partition(":")
    # Imported before the limits hold, so that its compiled form can be kept.
    reader: Reader = getattr(importlib.import_module(module), function)
    hold_to(int(request["memory"]), int(request["seconds"]))
    path = Path(request["path"])
    _send(out, reader, path, int(request["first"]), request["password"])
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


def _send(
    out: BinaryIO, reader: Reader, path: Path, first: int, password: str | None
) -> None:
    try:
        for item in reader(path, first, password):
            out.write(wire.encode(item))
            out.flush()
        out.write(wire.END)
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
