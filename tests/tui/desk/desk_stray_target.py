"""The screen in a process that writes past it all the while, in every way there is.

Run as ``python desk_stray_target.py LIBRARY JOBS``.
"""

from __future__ import annotations

import ctypes
import os
import subprocess
import sys
import threading
from pathlib import Path

from assistant.settings import Settings
from tui.desk.start import open_screen


def stray(ended: threading.Event) -> None:
    """Write to both streams: from Python, from C, from a child that inherits them."""
    library = ctypes.CDLL(None)
    while not ended.wait(0.1):
        print("STRAY by print")  # noqa: T201
        print("STRAY by stderr", file=sys.stderr)  # noqa: T201
        os.write(1, b"STRAY to 1\n")
        os.write(2, b"STRAY to 2\n")
        library.puts(b"STRAY from C")
        library.fflush(None)
        subprocess.run(["sh", "-c", "echo STRAY of a child; echo x >&2"], check=False)


def main(library: Path, jobs: Path) -> None:
    """Run the screen; then write as usual."""
    ended = threading.Event()
    writing = threading.Thread(target=stray, args=(ended,))

    def begin() -> None:
        writing.start()

    starting = threading.Timer(1.0, begin)
    starting.start()
    open_screen(Settings(library=library, jobs=jobs, cache=jobs.parent / "none"))
    starting.cancel()
    ended.set()
    os.write(1, b"AFTER on 1\n")
    os.write(2, b"AFTER on 2\n")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
