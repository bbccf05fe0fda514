"""The README's commands are those every change runs; it names every command."""

from __future__ import annotations

import re
from pathlib import Path

from tui.parser import COMMANDS

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"
CI = ROOT / ".ci" / "run"
_BLOCK = re.compile(r"^```(\w*)\n(.*?)^```", re.DOTALL | re.MULTILINE)


def commands() -> list[str]:
    """Return the shell commands of the README, continued lines joined."""
    found = _BLOCK.findall(README.read_text("utf-8"))
    blocks = [text for kind, text in found if kind == "sh"]
    joined = "\n".join(blocks).replace("\\\n", " ")
    return [" ".join(line.removeprefix("$ ").split()) for line in joined.splitlines()]


def test_the_test_command_is_what_every_change_runs() -> None:
    (command,) = (line for line in commands() if line.endswith(".venv/bin/pytest"))
    steps = CI.read_text("utf-8").splitlines()

    places = [steps.index(step) for step in command.split(" && ")]

    assert places == sorted(places)


def test_the_first_command_installs_and_plays_the_demo() -> None:
    (command,) = (line for line in commands() if line.endswith("faultleaf demo"))

    assert command.startswith("python3 -m venv ")


def test_every_command_stands_in_the_readme() -> None:
    text = README.read_text("utf-8")
    lacking = [name for name in COMMANDS if not re.search(rf"faultleaf {name}\b", text)]

    assert lacking == []
