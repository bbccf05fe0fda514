"""The file of jobs: what goes in stays in, in order, and only ours is opened."""

from __future__ import annotations

import os
import signal
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.clock import FixedClock
from assistant.errors import JobsError, UsageError
from assistant.facts import UnitFact
from assistant.formats import version
from assistant.jobs.connection import file_system
from assistant.jobs.events import (
    Body,
    Closed,
    Corrected,
    Entered,
    Opened,
    Parked,
    Said,
    Undone,
)
from assistant.jobs.migrations import FORMAT
from assistant.jobs.store import JobStore
from assistant.rules.applicability import Plate
from tests.formats import stepped

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
MACHINE = "01MACHINE00000000000000001"


def said(text: str) -> Said:
    return Said(text=text, parser="1")


class Desk:
    """A store with a clock, and the shortest way to put an event in."""

    def __init__(self, store: JobStore, clock: FixedClock) -> None:
        self.store = store
        self.clock = clock

    def put(self, job: str, body: Body) -> str:
        event = self.store.append(
            job, body, noted=self.clock.now(), event_id=self.clock.new_id()
        )
        self.clock.advance(timedelta(seconds=1))
        return event.id


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "deep" / "jobs.sqlite"


@pytest.fixture
def desk(path: Path) -> Iterator[Desk]:
    clock = FixedClock(START)
    with JobStore.open(path, clock=clock, machine=MACHINE) as store:
        yield Desk(store, clock)


def test_events_come_back_as_they_went_in_and_chained(desk: Desk, path: Path) -> None:
    desk.put("JOB1", Opened(site="boathouse"))
    desk.put("JOB1", said("the amber light flashes 4 times"))

    with JobStore.open(path, clock=desk.clock) as other:
        first, second = other.events("JOB1")

    assert (first.seq, second.seq) == (1, 2)
    assert (first.prev, second.prev) == ("", first.digest())
    assert first.machine == second.machine == MACHINE
    assert second.body == said("the amber light flashes 4 times")
    assert second.noted == START + timedelta(seconds=1)


def test_a_time_in_another_zone_is_stored_as_utc(desk: Desk) -> None:
    there = timezone(timedelta(hours=2))

    event = desk.store.append(
        "JOB1", Opened(), noted=START.astimezone(there), event_id="E1"
    )

    assert event.noted == START
    assert desk.store.events("JOB1")[0].noted.utcoffset() == timedelta(0)


def test_a_clock_set_back_does_not_turn_the_order_round(desk: Desk) -> None:
    desk.put("JOB1", Opened())
    desk.put("JOB1", said("first"))
    desk.clock.advance(timedelta(hours=-1))
    desk.put("JOB1", said("second"))

    kinds = [event.body for event in desk.store.events("JOB1")]

    assert kinds == [Opened(), said("first"), said("second")]


def test_a_job_must_be_opened_and_only_once(desk: Desk) -> None:
    with pytest.raises(JobsError, match="there is no job JOB1"):
        desk.put("JOB1", said("hello"))
    desk.put("JOB1", Opened())
    with pytest.raises(JobsError, match="already open"):
        desk.put("JOB1", Opened())

    assert len(desk.store.events("JOB1")) == 1


def test_an_event_id_is_used_once(desk: Desk) -> None:
    desk.store.append("JOB1", Opened(), noted=START, event_id="E1")

    with pytest.raises(JobsError, match="E1 is already"):
        desk.store.append("JOB1", said("again"), noted=START, event_id="E1")

    assert len(desk.store.events("JOB1")) == 1


def test_the_table_refuses_change_and_deletion(desk: Desk, path: Path) -> None:
    desk.put("JOB1", Opened())

    with sqlite3.connect(path) as connection:
        for statement in ("UPDATE event SET seq = 9", "DELETE FROM event"):
            with pytest.raises(sqlite3.IntegrityError, match="never"):
                connection.execute(statement)
    connection.close()


def test_the_list_tells_unit_state_and_count_with_the_latest_first(
    desk: Desk,
) -> None:
    desk.put("JOB1", Opened(plate=Plate(outdoor_model="QX-9"), site="pier"))
    told = desk.put(
        "JOB1", Entered(facts=(UnitFact(plate=Plate(indoor_model="IN-1")),))
    )
    wrong = desk.put(
        "JOB1", Entered(facts=(UnitFact(plate=Plate(indoor_model="XX-0")),))
    )
    desk.put("JOB1", Undone(event=wrong))
    right = UnitFact(plate=Plate(indoor_model="IN-2"))
    desk.put("JOB1", Corrected(event=told, index=0, fact=right))
    desk.put("JOB1", Parked(why="parts"))
    desk.put("JOB2", Opened())
    desk.put("JOB3", Opened())
    desk.put("JOB3", Closed(outcome="fan motor replaced"))

    third, second, first = desk.store.jobs()

    assert (first.outdoor_model, first.indoor_model) == ("QX-9", "IN-2")
    assert (first.site, first.state, first.events) == ("pier", "parked", 6)
    assert (second.state, third.state) == ("open", "closed")
    assert first.opened == START


def test_a_parked_job_is_open_again_when_someone_speaks(desk: Desk) -> None:
    desk.put("JOB1", Opened())
    desk.put("JOB1", Parked())
    desk.put("JOB1", said("back on site"))

    assert desk.store.jobs()[0].state == "open"


@pytest.mark.parametrize("part", ["01ABCDEF", "01abc", "EF01", "01ABCDEF01"])
def test_a_job_is_named_by_either_end_of_its_id(desk: Desk, part: str) -> None:
    desk.put("01ABCDEF01", Opened())
    desk.put("01XYZ00002", Opened())

    assert desk.store.resolve(part) == "01ABCDEF01"


@pytest.mark.parametrize(
    ("part", "says"),
    [
        ("01", "too short"),
        ("ZZZZ", "no job has an id"),
        ("01AB", "fits 2 jobs: 01ABC00001, 01ABC00002"),
        ("", "too short"),
    ],
)
def test_a_name_that_fits_no_single_job_is_refused(
    desk: Desk, part: str, says: str
) -> None:
    desk.put("01ABC00001", Opened())
    desk.put("01ABC00002", Opened())

    with pytest.raises(UsageError, match=says):
        desk.store.resolve(part)


def test_a_newer_file_is_refused_by_name(desk: Desk, path: Path) -> None:
    desk.store.close()
    with sqlite3.connect(path) as connection:
        connection.execute("PRAGMA user_version = 99")
    connection.close()

    with pytest.raises(JobsError, match=r"jobs format 99; .* up to 1") as caught:
        JobStore.open(path, clock=desk.clock)

    assert "newer faultleaf" in caught.value.hint


def test_an_older_file_is_migrated_after_a_backup(desk: Desk, path: Path) -> None:
    desk.put("JOB1", Opened())
    desk.store.close()

    def m002_more(connection: sqlite3.Connection) -> None:
        connection.execute("CREATE TABLE more (a)")

    connection = sqlite3.connect(path, isolation_level=None)
    stepped(FORMAT, m002_more).migrate(connection, path)

    assert version(connection) == 2
    connection.close()
    backup = sqlite3.connect(path.with_name("jobs.sqlite.format-1.backup"))
    assert version(backup) == 1
    assert backup.execute("SELECT count(*) FROM event").fetchone() == (1,)
    backup.close()


def test_a_migration_that_fails_leaves_the_file_at_the_old_number(
    desk: Desk, path: Path
) -> None:
    desk.store.close()

    def m002_breaks(connection: sqlite3.Connection) -> None:
        connection.execute("CREATE TABLE half (a)")
        raise RuntimeError("power cut")

    connection = sqlite3.connect(path, isolation_level=None)
    with pytest.raises(RuntimeError):
        stepped(FORMAT, m002_breaks).migrate(connection, path)

    assert version(connection) == 1
    names = [row[0] for row in connection.execute("SELECT name FROM sqlite_schema")]
    assert "half" not in names
    connection.close()


def test_other_files_are_refused_with_the_way_out(tmp_path: Path) -> None:
    clock = FixedClock(START)
    text = tmp_path / "notes.txt"
    text.write_text("not a database, but long enough to be read as one" * 30)
    foreign = tmp_path / "other.sqlite"
    with sqlite3.connect(foreign) as connection:
        connection.execute("CREATE TABLE song (title)")
    connection.close()

    for path, says in ((text, "damaged or not ours"), (foreign, "not a faultleaf")):
        with pytest.raises(JobsError, match=says) as caught:
            JobStore.open(path, clock=clock)
        assert "--jobs" in caught.value.hint


def test_a_folder_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")

    with pytest.raises(JobsError, match="cannot be made"):
        JobStore.open(tmp_path / "file" / "jobs.sqlite", clock=FixedClock(START))


def test_reading_only_needs_the_file_and_writes_nothing(desk: Desk, path: Path) -> None:
    with pytest.raises(JobsError, match="no file of jobs"):
        JobStore.open(path.with_name("no"), clock=desk.clock, read_only=True)
    desk.put("JOB1", Opened())

    with JobStore.open(path, clock=desk.clock, read_only=True) as reader:
        assert len(reader.events("JOB1")) == 1
        with pytest.raises(JobsError, match="cannot be written"):
            reader.append("JOB1", said("x"), noted=START, event_id="E9")


def test_a_file_in_use_is_said_to_be_locked(
    desk: Desk, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.jobs.connection.BUSY_SECONDS", 0.05)
    desk.put("JOB1", Opened())
    with JobStore.open(path, clock=desk.clock) as other:
        holder = sqlite3.connect(path, isolation_level=None)
        holder.execute("BEGIN IMMEDIATE")

        with pytest.raises(JobsError, match="locked: another process"):
            other.append("JOB1", said("x"), noted=START, event_id="E9")

        holder.close()


MOUNTS = "/dev/a / ext4 rw 0 0\nhost:/x /mnt/the\\040share nfs4 rw 0 0\n"


def test_the_file_system_is_that_of_the_nearest_mount() -> None:
    assert file_system(Path("/mnt/the share/jobs.sqlite"), MOUNTS) == "nfs4"
    assert file_system(Path("/mnt/the share two/jobs.sqlite"), MOUNTS) == "ext4"
    assert file_system(Path("/home/jobs.sqlite"), "") == ""


@given(st.lists(st.tuples(st.integers(0, 2), st.text(max_size=30)), max_size=12))
def test_whatever_is_said_is_read_back_in_order_with_a_sound_chain(
    tmp_path_factory: pytest.TempPathFactory, turns: list[tuple[int, str]]
) -> None:
    clock = FixedClock(START)
    path = tmp_path_factory.mktemp("jobs") / "jobs.sqlite"
    expected: dict[str, list[str]] = {"JOB0": [], "JOB1": [], "JOB2": []}
    with JobStore.open(path, clock=clock) as store:
        desk = Desk(store, clock)
        for job in expected:
            desk.put(job, Opened())
        for number, text in turns:
            desk.put(f"JOB{number}", said(text))
            expected[f"JOB{number}"].append(text)

        for job, texts in expected.items():
            bodies = [event.body for event in store.events(job)]
            assert bodies == [Opened(), *map(said, texts)]
            assert store.verify(job, store.head(job)) == ()


WRITER = """
import sys
from pathlib import Path
from assistant.clock import SystemClock
from assistant.jobs.events import Said
from assistant.jobs.store import JobStore

clock = SystemClock()
with JobStore.open(Path(sys.argv[1]), clock=clock) as store:
    for number in range(int(sys.argv[3])):
        body = Said(text=f"{sys.argv[2]} {number}", parser="1")
        event = store.append("JOB1", body, noted=clock.now(), event_id=clock.new_id())
        print(event.id, flush=True)
"""


def writer(path: Path, name: str, turns: int) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", WRITER, str(path), name, str(turns)],
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[3],
    )


def test_two_processes_write_one_chain_together(desk: Desk, path: Path) -> None:
    desk.put("JOB1", Opened())

    both = [writer(path, name, 25) for name in ("ann", "ben")]
    for process in both:
        process.communicate(timeout=60)

    assert [process.returncode for process in both] == [0, 0]
    texts = [
        event.body.text
        for event in desk.store.events("JOB1")
        if isinstance(event.body, Said)
    ]
    assert sorted(texts) == sorted(
        f"{name} {number}" for name in ("ann", "ben") for number in range(25)
    )
    assert desk.store.verify("JOB1") == ()


@pytest.mark.skipif(os.name == "nt", reason="no SIGKILL there")
@pytest.mark.parametrize("after", [1, 3, 8])
def test_a_killed_process_loses_nothing_it_had_committed(
    desk: Desk, path: Path, after: int
) -> None:
    desk.put("JOB1", Opened())
    process = writer(path, "ann", 100_000)
    assert process.stdout is not None

    told = [process.stdout.readline().strip() for _ in range(after)]
    process.send_signal(signal.SIGKILL)
    told += [line.strip() for line in process.stdout if line.endswith("\n")]
    process.wait(timeout=10)
    process.stdout.close()

    stored = [event.id for event in desk.store.events("JOB1")][1:]
    assert stored[: len(told)] == told
    assert len(stored) - len(told) in (0, 1)
    assert desk.store.verify("JOB1") == ()
