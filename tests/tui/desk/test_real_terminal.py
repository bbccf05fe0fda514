"""The real program in a real terminal, driven by keys through tmux."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.settings import Settings

pytestmark = [
    pytest.mark.model,
    pytest.mark.skipif(not shutil.which("tmux"), reason="no tmux here"),
]
ROOT = Path(__file__).parents[3]
PATIENCE_S = 40.0


class Terminal:
    """One tmux window with the program in it."""

    def __init__(self, name: str, places: Settings, folder: Path) -> None:
        self._name = name
        self._environment = {
            **os.environ,
            "PYTHONPATH": str(ROOT),
            "FAULTLEAF_LIBRARY": str(places.library),
            "FAULTLEAF_JOBS": str(folder / "jobs.sqlite"),
            "FAULTLEAF_CACHE": str(folder / "none"),
            "LANG": "C.UTF-8",
            # Of another terminal; this one has its own size.
            "COLUMNS": "80",
            "LINES": "24",
        }

    def tmux(self, *words: str) -> str:
        done = subprocess.run(
            ["tmux", "-L", self._name, *words],
            env=self._environment,
            capture_output=True,
            text=True,
            check=False,
        )
        return done.stdout

    def open(self, width: int, height: int) -> None:
        command = f"{sys.executable} -m tui; echo LEFT WITH $?; sleep 60"
        size = ("-x", str(width), "-y", str(height))
        self.tmux("-f", os.devnull, "new-session", "-d", *size, command)

    def keys(self, *names: str) -> None:
        self.tmux("send-keys", *names)

    def type(self, text: str) -> None:
        self.tmux("send-keys", "-l", text)
        self.keys("Enter")

    def text(self) -> str:
        return self.tmux("capture-pane", "-p")

    def wait_for(self, wanted: str) -> str:
        ends = time.monotonic() + PATIENCE_S
        pause = 0.1
        while time.monotonic() < ends:
            if wanted in " ".join(self.text().split()):
                return self.text()
            subprocess.run(["sleep", str(pause)], check=True)
        raise AssertionError(f"{wanted!r} never came; in view:\n{self.text()}")


@pytest.fixture
def terminal(sample_places: Settings, tmp_path: Path) -> Iterator[Terminal]:
    made = Terminal(f"{os.getpid()}-{tmp_path.name}", sample_places, tmp_path)
    yield made
    made.tmux("kill-server")


@pytest.mark.parametrize(("width", "height"), [(80, 24), (40, 20)])
def test_a_job_is_worked_in_a_real_terminal(
    terminal: Terminal, width: int, height: int
) -> None:
    terminal.open(width, height)
    terminal.wait_for("Say what the unit shows")
    terminal.type("unit VET-O50, amber light LD2 flashes 4 times [sic], then a pause")
    terminal.wait_for("flashes 4 times [sic]")
    terminal.type("I reset it 2 minutes ago")
    text = terminal.wait_for("> I reset it 2 minutes ago")
    assert len(text.splitlines()) <= height
    assert max(map(len, text.splitlines())) <= width
    terminal.wait_for("WAIT. It is too early to judge.")
    terminal.keys("Tab")
    terminal.keys("v")
    terminal.wait_for("TIMERS")
    terminal.keys("j")
    terminal.wait_for("JOBS")
    terminal.keys("q")
    terminal.keys("t")
    terminal.wait_for("TAP COUNTER")
    terminal.keys("Space")
    terminal.keys("Space")
    terminal.wait_for("Round 1: 2 taps")
    terminal.keys("q")
    terminal.keys("q")
    text = terminal.wait_for("LEFT WITH 0")
    # The terminal is as it was: no screen of ours is left behind.
    assert "WAIT." not in text
