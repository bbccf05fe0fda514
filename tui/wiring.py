"""What the commands open, from the words of the call."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from assistant.clock import Clock, SystemClock
from assistant.errors import UsageError
from assistant.settings import Settings, settings
from tui.plain.console import Console

if TYPE_CHECKING:
    from assistant.dialogue.session import Session
    from assistant.jobs.store import JobStore
    from assistant.library.store import LibraryStore
    from tui.plain.places import Frame


def places(args: argparse.Namespace) -> Settings:
    """Return where everything lies for this call."""
    return settings(library=args.library, jobs=args.jobs)


def reading_library(args: argparse.Namespace) -> LibraryStore:
    """Open the library for reading only.

    Raises
    ------
    LibraryError
        When there is none, or it cannot be used.
    """
    from assistant.library.store import LibraryStore

    return LibraryStore.open(places(args).library, read_only=True)


def reading_jobs(args: argparse.Namespace) -> JobStore | None:
    """Open the file of jobs for reading only; None when there is none yet."""
    from assistant.jobs.store import JobStore

    path = places(args).jobs
    if not path.exists():
        return None
    return JobStore.open(path, clock=SystemClock(), read_only=True)


def frame_of(console: Console) -> Frame:
    """Return what lines are made for: this terminal, this zone, this instant."""
    from tui.plain.places import Frame

    return Frame(width=console.width, now=SystemClock().now())


def readable(text: str) -> str:
    """Return typed text with undecodable bytes replaced, so that it can be stored."""
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "replace")


def words_of(words: Sequence[str], console: Console) -> str:
    """Return the words of a call as one text; a lone ``-`` reads stdin.

    Raises
    ------
    UsageError
        When there is no text.
    """
    text = " ".join(words)
    if text == "-":
        text = console.source.read()
    if not text.strip():
        raise UsageError("there is no text", "write it after the command, in quotes")
    return text.strip()


def open_conversation(
    args: argparse.Namespace, clock: Clock, meter: str | None = None
) -> Session:
    """Open a session over the library and the jobs of this call.

    Readings of its turns are taken with the saved `meter` of that name.
    """
    from assistant.dialogue.opening import open_session

    saved = None
    if meter is not None:
        from assistant.meters import read_meters

        saved = read_meters(places(args).config).find(meter)
    offset = clock.now().astimezone().utcoffset() or timedelta(0)
    minutes = round(offset.total_seconds() / 60)
    session = open_session(places(args), clock, utc_offset_minutes=minutes)
    session.meter = saved
    return session


def job_options(parser: argparse.ArgumentParser) -> None:
    """Declare what a turn may say of the job, the unit and the person."""
    from tui.unit_option import HELP, ROLES

    parser.add_argument("--job", metavar="ID", help="go on with a stored job")
    parser.add_argument("--unit", metavar="MODEL[,key=value...]", help=HELP)
    parser.add_argument(
        "--role", choices=ROLES, help="who is at the unit; until said, a customer"
    )
    parser.add_argument(
        "--meter", metavar="NAME", help="the saved meter that readings are taken with"
    )
    parser.add_argument("--site", default="", help="a label of the place, never a name")


def chosen_job(args: argparse.Namespace, session: Session, clock: Clock) -> str:
    """Return the job that the call names, or open one; note unit and role.

    Raises
    ------
    UsageError
        When `--job` names none or several, or `--unit` is off.
    """
    from assistant.facts import Fact, RoleFact, UnitFact
    from assistant.jobs.store import JobStore
    from tui.unit_option import parse_unit

    plate = parse_unit(args.unit) if args.unit is not None else None
    if args.job is None:
        return session.open_job(plate=plate, role=args.role, site=args.site)
    with JobStore.open(places(args).jobs, clock=clock) as store:
        job = store.resolve(args.job)
    told: list[Fact] = []
    if plate is not None:
        told.append(UnitFact(plate=plate, origin="form"))
    if args.role is not None:
        told.append(RoleFact(role=args.role, origin="form"))
    if told:
        session.enter(job, told)
    return job
