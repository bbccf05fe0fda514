"""`faultleaf job`: list, show and verify stored jobs."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, WITH_WARNINGS, UsageError
from tui.parser import common_options
from tui.plain.console import Console
from tui.wiring import frame_of, reading_jobs

if TYPE_CHECKING:
    from assistant.jobs.store import JobStore


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare `list`, `show JOB` and `verify JOB`."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)
    actions.add_parser(
        "list",
        parents=[common_options()],
        help="every job, the one worked on last first",
    )
    show = actions.add_parser(
        "show", parents=[common_options()], help="the whole record of one job"
    )
    verify = actions.add_parser(
        "verify", parents=[common_options()], help="prove that the record is unchanged"
    )
    for own in (show, verify):
        own.add_argument("job", help="its id, or the first or last characters of it")
    verify.add_argument("--head", help="a head noted earlier, to find a cut end")


def run(args: argparse.Namespace, console: Console) -> int:
    """Do what the action says."""
    store = reading_jobs(args)
    if args.action == "list":
        return _list(store, console)
    if store is None:
        raise UsageError(
            f"no job has an id that begins or ends with {args.job!r}: "
            "there are no jobs yet",
            "faultleaf ask TEXT opens one",
        )
    with store:
        job = store.resolve(args.job)
        if args.action == "show":
            return _show(store, job, console)
        return _verify(store, job, args.head, console)


def _list(store: JobStore | None, console: Console) -> int:
    from tui.plain.as_json import plain
    from tui.plain.record import list_lines

    jobs = store.jobs() if store else ()
    if store:
        store.close()
    if console.json:
        console.document({"jobs": plain(jobs)})
    else:
        console.lines(list_lines(jobs, frame_of(console)))
    return ANSWERED


def _show(store: JobStore, job: str, console: Console) -> int:
    from tui.plain.as_json import plain
    from tui.plain.record import record_lines

    events = store.events(job)
    head = store.head(job)
    if console.json:
        console.document({"job": job, "head": head, "events": plain(events)})
    else:
        console.lines(record_lines(events, head, frame_of(console)))
    return ANSWERED


def _verify(store: JobStore, job: str, head: str | None, console: Console) -> int:
    found = store.verify(job, head)
    if console.json:
        console.document({"job": job, "head": store.head(job), "problems": list(found)})
    elif found:
        console.lines(f"problem: {each}" for each in found)
    else:
        console.line(f"job {job}: every event follows the one before it, unchanged")
        console.line(f"head: {store.head(job)}")
    return WITH_WARNINGS if found else ANSWERED
