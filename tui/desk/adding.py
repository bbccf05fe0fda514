"""Adding to the library in a process of its own: stopped by one closed pipe.

The parent keeps the child's stdin open; when it closes, or the parent dies, the child
stops between two pages. What was stored is whole either way.
"""

from __future__ import annotations

import contextlib
import json
import os
import signal
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

from textual.message import Message

from assistant.settings import Settings
from tui.desk.messages import Adding

PATIENCE = 0.4
"""Seconds a child has to stop by itself."""


class Adder:
    """Starts, follows and stops one child that adds."""

    def __init__(self, settings: Settings, post: Callable[[Message], object]) -> None:
        self._settings = settings
        self._post = post
        self._child: subprocess.Popen[str] | None = None

    def start(self, path: Path) -> None:
        """Add what lies under a path; progress and outcome come as `Adding`."""
        if self._child is not None and self._child.poll() is None:
            self._post(Adding("something is being added already; s stops it"))
            return
        settings = self._settings
        words = (str(path), str(settings.library), str(settings.cache))
        model = str(settings.model) if settings.model else ""
        self._child = subprocess.Popen(  # noqa: S603 - ourselves
            [sys.executable, "-m", "tui.desk.add_child", *words, model],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
            encoding="utf-8",
            env={**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
            start_new_session=True,
        )
        self._post(Adding(f"adding {path}"))
        follow = threading.Thread(
            target=self._follow, args=(self._child,), daemon=True, name="adding"
        )
        follow.start()

    def stop(self, patience: float = PATIENCE) -> bool:
        """Stop the child, by force after some seconds; False when none runs."""
        child = self._child
        if child is None or child.poll() is not None:
            return False
        with contextlib.suppress(OSError):
            if child.stdin is not None:
                child.stdin.close()
        try:
            child.wait(patience)
        except subprocess.TimeoutExpired:
            _kill(child)
            with contextlib.suppress(subprocess.TimeoutExpired):
                child.wait(PATIENCE)
        return True

    def _follow(self, child: subprocess.Popen[str]) -> None:
        lines: tuple[str, ...] = ()
        for line in child.stdout or ():
            with contextlib.suppress(ValueError):
                told = json.loads(line)
                if "lines" in told:
                    lines = tuple(told["lines"])
                elif told.get("text"):
                    self._post(Adding(told["text"]))
        child.wait()
        said = "; ".join(lines) or "adding was stopped; what is stored stays"
        self._post(Adding(said, done=True, lines=lines))
        if child.stdout is not None:
            child.stdout.close()


def _kill(child: subprocess.Popen[str]) -> None:
    """Kill the child with the readers it started."""
    try:
        os.killpg(child.pid, signal.SIGKILL)
    except (AttributeError, OSError):
        child.kill()
