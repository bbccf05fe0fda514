"""`faultleaf talk`: a job worked line by line, with timers that speak up."""

from __future__ import annotations

import argparse

from assistant.errors import ANSWERED, UsageError
from tui.plain.colon_lines import COMMAND_HELP
from tui.plain.console import Console
from tui.wiring import chosen_job, job_options, open_conversation


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the job, the unit and the role."""
    parser.formatter_class = argparse.RawDescriptionHelpFormatter
    parser.epilog = COMMAND_HELP
    job_options(parser)


def run(args: argparse.Namespace, console: Console) -> int:
    """Converse until the lines end."""
    if console.json:
        raise UsageError("talk prints lines, not JSON", "faultleaf ask --json TEXT")
    from assistant.clock import SystemClock
    from tui.plain.lines_in import LinesIn
    from tui.plain.talking import Talk

    clock = SystemClock()
    session = open_conversation(args, clock, args.meter)
    job = chosen_job(args, session, clock)
    talk = Talk(session, job, clock, console)
    talk.begin(resumed=args.job is not None)
    for line in LinesIn(console.source, clock).read(talk.next_due, talk.tell_due):
        if not talk.take(line):
            break
    return ANSWERED
