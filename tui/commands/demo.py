"""`faultleaf demo`: a worked case on the sample library, turn by turn."""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Iterable
from dataclasses import replace
from datetime import timedelta, timezone
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED
from tui.plain.console import Console
from tui.wiring import places

if TYPE_CHECKING:
    from tui.plain.script import Script
    from tui.playing import Played

FIRST = "first-case"
"""The case that is played when none is named."""
AFTERWARDS = """\
Everything above is invented: makers, models and figures. The same case by hand:
  faultleaf talk --library {library}
Literature of your own goes in with: faultleaf add PATH..."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the case."""
    parser.add_argument("name", nargs="?", default=FIRST, help="the case to play")
    parser.add_argument("--list", action="store_true", help="every packaged case")
    parser.add_argument(
        "--fresh", action="store_true", help="build the sample library anew"
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Build the sample library when it is not there, and play a case on it."""
    from tui.plain.script import read_script
    from tui.samples import dialogue, dialogues, sample_library

    if args.list:
        return _list(dialogues(), console)
    script = read_script(dialogue(args.name))
    settings = places(args)
    library = sample_library(settings, console, fresh=args.fresh)
    from tui.playing import play

    with tempfile.TemporaryDirectory() as aside:
        played = play(
            script, replace(settings, library=library), Path(aside) / "jobs.sqlite"
        )
        if console.json:
            _document(args.name, script, played, console)
        else:
            _print(script, played, console)
            console.line(AFTERWARDS.format(library=library))
    return ANSWERED


def _list(known: dict[str, Path], console: Console) -> int:
    from tui.plain.script import read_script
    from tui.plain.text import wrap

    scripts = {name: read_script(path) for name, path in known.items()}
    if console.json:
        cases = [
            {"name": name, "title": script.title, "about": script.about}
            for name, script in scripts.items()
        ]
        console.document({"cases": cases})
        return ANSWERED
    for name, script in scripts.items():
        console.lines(
            wrap(f"{script.title}. {script.about}", console.width, f"{name}: ")
        )
    return ANSWERED


def _print(script: Script, played: Iterable[Played], console: Console) -> None:
    from tui.plain.moments import local_time
    from tui.plain.places import Frame
    from tui.plain.render import answer_lines
    from tui.plain.text import wrap
    from tui.plain.words import STATUS_KINDS

    zone = timezone(timedelta(minutes=script.utc_offset))
    console.lines(wrap(f"{script.title}. {script.about}", console.width))
    before = None
    for each in played:
        words = each.turn.say or "(from a form) " + ", ".join(
            fact.kind for fact in each.turn.enter or ()
        )
        console.line()
        console.line(local_time(each.at, zone))
        console.lines(wrap(words, console.width, "> "))
        frame = Frame(width=console.width, now=each.at, zone=zone)
        first, *rest = answer_lines(each.answer, frame, before)
        console.line(console.emphasis(first, STATUS_KINDS[each.answer.status]))
        console.lines(rest)
        before = each.answer
    console.line()


def _document(
    name: str, script: Script, played: Iterable[Played], console: Console
) -> None:
    from tui.plain.as_json import answer_fields, plain

    turns = [
        {
            "at": plain(each.at),
            "said": each.turn.say,
            "entered": plain(each.turn.enter),
            "answer": answer_fields(each.answer),
        }
        for each in played
    ]
    console.document({"case": name, "title": script.title, "turns": turns})
