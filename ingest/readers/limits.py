"""What a reading process may use, and how it holds itself to that."""

from __future__ import annotations

import os
import sys
import threading
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Limits:
    """Limits of one reading process."""

    memory: int = 1 << 30
    """Bytes of address space; of resident memory where the system limits neither."""
    page_seconds: float = 20.0
    """The longest silence between two pages, and before the first."""
    file_seconds: float = 300.0
    """Processor and wall time for a file, apart from its pages."""
    seconds_a_page: float = 0.5
    """What each page adds to it."""

    def seconds(self, pages: int) -> int:
        """Return the time that a file of so many pages may take."""
        return max(1, round(self.file_seconds + self.seconds_a_page * pages))


def hold_to(memory: int, seconds: int) -> None:
    """Limit this process for good: memory, processor time, files, core dumps.

    A system without such limits (Windows), or that takes them and does not keep to
    them (macOS and memory), is left to the parent's watch.
    """
    try:
        import resource
    except ImportError:
        return
    for name, value in (
        (resource.RLIMIT_AS, memory),
        (resource.RLIMIT_CPU, seconds + 1),
        (resource.RLIMIT_FSIZE, 0),
        (resource.RLIMIT_CORE, 0),
    ):
        _, hard = resource.getrlimit(name)
        lower = value if hard == resource.RLIM_INFINITY else min(value, hard)
        # Past the softer limit of processor time comes SIGXCPU, which has a name;
        # at the harder one a SIGKILL, which could be anyone's.
        soft = max(1, lower - 1) if name == resource.RLIMIT_CPU else lower
        try:
            resource.setrlimit(name, (soft, lower))
        except (OSError, ValueError):
            if sys.platform == "linux":
                raise  # macOS refuses some of them; Linux has no reason to


def end_with_parent(pipe: int) -> None:
    """Leave at once when the parent's end of the pipe is closed.

    The system closes it however the parent ends, so no reader outlives a kill.
    """

    def watch() -> None:
        while os.read(pipe, 1):
            pass
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()
