"""`faultleaf ask`: one turn of a stored job."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import ANSWERED, NOT_FOUND
from tui.plain.console import Console
from tui.wiring import (
    chosen_job,
    frame_of,
    job_options,
    open_conversation,
    readable,
    words_of,
)

if TYPE_CHECKING:
    from assistant.dialogue.answer import Answer
    from assistant.dialogue.curves import Drawn


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the text, the job, the unit, the role and the time."""
    parser.add_argument("text", nargs="+", help="what you see or ask; - reads stdin")
    job_options(parser)
    parser.add_argument(
        "--plot", action="store_true", help="draw each judged reading on its curve"
    )
    parser.add_argument(
        "--at", metavar="TIME", help="when this is so: 10:35, 2031-06-14T10:35Z"
    )


def run(args: argparse.Namespace, console: Console) -> int:
    """Take one turn and print its answer."""
    text = readable(words_of(args.text, console))
    clock = SystemClock()
    at = None
    if args.at is not None:
        from tui.plain.moments import parse_at

        at = parse_at(args.at, clock.now())
    session = open_conversation(args, clock, args.meter)
    job = chosen_job(args, session, clock)
    answer = session.say(job, text, at=at)
    show(answer, console)
    if not console.json:
        if args.plot:
            _plots(answer, session.curves(job), console)
        console.line()
        console.line(f"Job {job}; go on with: faultleaf ask --job {job} TEXT")
    return NOT_FOUND if answer.status == "not_found" else ANSWERED


def _plots(answer: Answer, drawn: tuple[Drawn, ...], console: Console) -> None:
    """Draw the readings that this answer judges."""
    from tui.plain.plot import plot_lines

    judged = {verdict.check for verdict in answer.verdicts}
    for done, curve in drawn:
        if done.check in judged:
            console.lines(["", *plot_lines(curve, console.width)])


def show(answer: Answer, console: Console) -> None:
    """Print an answer as lines, or as the one JSON document."""
    if console.json:
        from tui.plain.as_json import answer_fields

        console.document(answer_fields(answer))
        return
    from tui.plain.render import answer_lines
    from tui.plain.words import STATUS_KINDS

    first, *rest = answer_lines(answer, frame_of(console))
    console.line(console.emphasis(first, STATUS_KINDS[answer.status]))
    console.lines(rest)
