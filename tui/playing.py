"""Plays a written dialogue through a real session, with a clock that stands still."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.clock import FixedClock
from assistant.dialogue.opening import open_session
from assistant.jobs.store import JobStore
from assistant.settings import Settings
from tui.plain.script import Script, Turn

if TYPE_CHECKING:
    from assistant.dialogue.answer import Answer
    from assistant.dialogue.session import Session

MACHINE = "01DEMQ00000000000000000000"
"""The machine id of every replay."""


@dataclass(frozen=True, slots=True)
class Played:
    """One turn as it went."""

    turn: Turn
    at: datetime
    answer: Answer


def play(script: Script, places: Settings, jobs: Path) -> Iterator[Played]:
    """Play a dialogue and yield each turn with its answer.

    Parameters
    ----------
    script : Script
        The dialogue; its expectations are not looked at.
    places : Settings
        The library and the encoder; its file of jobs is not used.
    jobs : Path
        A new file of jobs: with the fixed clock and machine, every replay writes
        the same bytes into its events.
    """
    clock = FixedClock(script.start)
    JobStore.open(jobs, clock=clock, machine=MACHINE).close()
    session = open_session(
        replace(places, jobs=jobs), clock, utc_offset_minutes=script.utc_offset
    )
    job = session.open_job(plate=script.unit, role=script.role)
    for turn in script.turns:
        if turn.after is not None:
            clock.advance(timedelta(seconds=turn.after.value))
        yield Played(turn, clock.now(), _take(session, job, turn))


def _take(session: Session, job: str, turn: Turn) -> Answer:
    if turn.enter is not None:
        return session.enter(job, turn.enter)
    return session.say(job, turn.say or "")
