"""`faultleaf job`: list, show and verify stored jobs, and what is kept with a unit."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, NOT_FOUND, WITH_WARNINGS, UsageError
from tui.parser import common_options
from tui.plain.console import Console
from tui.wiring import frame_of, open_conversation, reading_jobs

if TYPE_CHECKING:
    from assistant.jobs.baselines import Baseline
    from assistant.jobs.store import JobStore


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare `list`, `show JOB`, `verify JOB` and `baseline SERIAL`."""
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
    baseline = actions.add_parser(
        "baseline",
        parents=[common_options()],
        help="the readings kept with a unit from commissioning",
    )
    baseline.add_argument("serial", help="serial number of the unit")
    for own in (show, verify):
        own.add_argument("job", help="its id, or the first or last characters of it")
    show.add_argument(
        "--png", metavar="FOLDER", help="write each judged reading on its curve there"
    )
    verify.add_argument("--head", help="a head noted earlier, to find a cut end")


def run(args: argparse.Namespace, console: Console) -> int:
    """Do what the action says."""
    store = reading_jobs(args)
    if args.action == "list":
        return _list(store, console)
    if args.action == "baseline":
        return _baseline(store, args.serial, console)
    if store is None:
        raise UsageError(
            f"no job has an id that begins or ends with {args.job!r}: "
            "there are no jobs yet",
            "faultleaf ask TEXT opens one",
        )
    with store:
        job = store.resolve(args.job)
        if args.action == "show":
            pictures = _pictures(args, job) if args.png else ()
            return _show(store, job, console, pictures)
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


def _baseline(store: JobStore | None, serial: str, console: Console) -> int:
    from assistant.jobs.baselines import baselines
    from tui.plain.as_json import plain
    from tui.plain.record import baseline_lines

    found: tuple[Baseline, ...] = ()
    if store is not None:
        with store:
            jobs = [store.events(line.id) for line in store.jobs()]
        found = baselines(jobs, serial)
    if console.json:
        console.document({"serial": serial, "baselines": plain(found)})
    else:
        console.lines(baseline_lines(found, serial, frame_of(console)))
    return ANSWERED if found else NOT_FOUND


def _show(
    store: JobStore, job: str, console: Console, pictures: tuple[str, ...]
) -> int:
    from tui.plain.as_json import plain
    from tui.plain.record import record_lines

    events = store.events(job)
    head = store.head(job)
    if console.json:
        told = {"job": job, "head": head, "events": plain(events)}
        console.document(told | ({"pictures": list(pictures)} if pictures else {}))
    else:
        console.lines(record_lines(events, head, frame_of(console)))
        console.lines(f"picture: {each}" for each in pictures)
    return ANSWERED


def _pictures(args: argparse.Namespace, job: str) -> tuple[str, ...]:
    """Write a picture for each result that lies on a curve; return where.

    Raises
    ------
    UsageError
        When the folder cannot be written.
    """
    from assistant.clock import SystemClock
    from tui.plain.picture import write_png
    from tui.plain.words import VERDICT_WORDS

    written = []
    folder = Path(args.png)
    drawn = open_conversation(args, SystemClock()).curves(job)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for done, curve in drawn:
            place = folder / f"{job}-{done.check.replace('/', '-')}.png"
            verdict = VERDICT_WORDS.get(done.result, done.result)
            write_png(curve, place, note=f"{verdict}. {done.reason}")
            written.append(str(place))
    except OSError as error:
        raise UsageError(
            f"the pictures cannot be written to {args.png!r}: {error}",
            "name another folder",
        ) from error
    return tuple(written)


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
