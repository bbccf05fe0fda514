"""`faultleaf doctor`: whether everything is there and whole."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import ANSWERED, WITH_WARNINGS, LibraryError
from tui.plain.console import Console
from tui.wiring import places

if TYPE_CHECKING:
    from tui.health import Finding

MARKS = {"ok": "ok     ", "warning": "WARNING", "failure": "FAILURE"}


def arguments(parser: argparse.ArgumentParser) -> None:
    """Say what the exit codes mean here."""
    parser.epilog = (
        "exit codes: 0 all is well, 3 something to see to, 4 the library cannot be used"
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Look at everything, print what was found, and the way out of it."""
    from dataclasses import asdict

    from tui.health import findings
    from tui.plain.text import wrap

    found = tuple(findings(places(args), SystemClock()))
    if console.json:
        console.document({"findings": [asdict(each) for each in found]})
        return exit_code(found)
    for each in found:
        lead = f"{MARKS[each.state]} {each.name}: "
        console.lines(wrap(each.text, console.width, lead, " " * 10))
        if each.hint:
            console.lines(wrap(f"try: {each.hint}", console.width, " " * 10))
    return exit_code(found)


def exit_code(found: Sequence[Finding]) -> int:
    """Return 4 when the library cannot be used, 3 when anything is amiss, else 0."""
    if any(each.unusable for each in found):
        return LibraryError.exit_code
    if any(each.state != "ok" for each in found):
        return WITH_WARNINGS
    return ANSWERED
