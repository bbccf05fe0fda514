"""The reading process: limits, deaths, and that it never outlives its parent."""

from __future__ import annotations

import os
import subprocess
import sys
import textwrap
import threading
from pathlib import Path

import pytest

from assistant.errors import InputError
from ingest.readers.base import FileFacts, RawPage, Read
from ingest.readers.isolation import Reading, read_file
from ingest.readers.limits import Limits
from ingest.readers.memory import resident
from tests.ingest.sample_pdfs import canvas_pdf

HERE = Path(__file__).parent
ROOT = HERE.parents[1]


@pytest.fixture(autouse=True)
def _hostile_readers(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONPATH", str(HERE))


def read(tmp_path: Path, reader: str, **limits: float) -> list[Read]:
    path = tmp_path / "file.pdf"
    path.touch()
    set_limits = Limits(**limits)  # type: ignore[arg-type]
    return list(read_file(path, f"hostile_readers:{reader}", limits=set_limits))


def pages(items: list[Read]) -> list[RawPage]:
    return [item for item in items if isinstance(item, RawPage)]


def test_a_silent_reader_is_killed_and_the_pages_behind_are_read(
    tmp_path: Path,
) -> None:
    found = pages(read(tmp_path, "hang", page_seconds=1.0))

    assert [page.text for page in found] == ["page 1", "", "page 3"]
    assert found[1].failure == "no page within 1 s"


def test_a_killed_reader_loses_one_page_and_names_the_signal(tmp_path: Path) -> None:
    items = read(tmp_path, "die_on_two")

    found = pages(items)
    assert [page.number for page in found] == [1, 2, 3, 4]
    assert [page.text for page in found] == ["page 1", "", "page 3", "page 4"]
    assert found[1].failure == "killed by signal 11 (SIGSEGV)"
    assert sum(isinstance(item, FileFacts) for item in items) == 1


def test_a_reader_that_dies_twice_ends_with_every_page_accounted_for(
    tmp_path: Path,
) -> None:
    found = pages(read(tmp_path, "die_always"))

    assert [page.number for page in found] == [1, 2, 3, 4]
    assert all(page.failure for page in found)
    assert found[3].failure == "not reached: killed by signal 11 (SIGSEGV)"


def test_behind_a_second_death_the_plain_reader_goes_on_to_the_end(
    tmp_path: Path,
) -> None:
    found = pages(with_plain(tmp_path, "die_on_even", "hardy"))

    assert [page.text for page in found] == [
        "page 1",
        "plain 2",
        "page 3",
        "plain 4",
        "plain 5",
        "plain 6",
    ]
    assert not any(page.failure for page in found)


def test_a_page_that_ends_both_readers_is_lost_and_the_rest_is_read(
    tmp_path: Path,
) -> None:
    found = pages(with_plain(tmp_path, "die_always", "die_on_four"))

    assert [page.text for page in found] == ["plain 1", "plain 2", "plain 3", ""]
    assert found[3].failure == "killed by signal 11 (SIGSEGV)"


def test_a_reader_that_cannot_begin_leaves_the_file_to_the_plain_one(
    tmp_path: Path,
) -> None:
    items = with_plain(tmp_path, "die_at_once", "hardy")

    assert [page.text for page in pages(items)] == [f"plain {n}" for n in range(1, 7)]


def test_a_file_that_neither_reader_can_begin_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"gave up.*signal 6 \(SIGABRT\)"):
        with_plain(tmp_path, "die_at_once", "die_at_once")


def test_a_death_behind_the_last_page_loses_nothing(tmp_path: Path) -> None:
    found = pages(read(tmp_path, "die_behind_the_last"))

    assert [(page.text, page.failure) for page in found] == [("page 1", "")]


@pytest.mark.parametrize(
    ("reader", "said"),
    [
        ("leave_quietly", "ended with code 0"),
        ("skip", "gave page 3 out of turn"),
    ],
)
def test_an_end_that_nobody_said_is_a_death(
    tmp_path: Path, reader: str, said: str
) -> None:
    found = pages(read(tmp_path, reader))

    assert found[0].failure == said
    assert all(page.failure for page in found)


def with_plain(tmp_path: Path, reader: str, plain: str) -> list[Read]:
    path = tmp_path / "file.pdf"
    path.touch()
    named, other = f"hostile_readers:{reader}", f"hostile_readers:{plain}"
    return list(Reading(path, named, plain=other).items())


@pytest.mark.skipif(sys.platform != "linux", reason="the reader needs setrlimit")
def test_where_the_system_limits_no_memory_the_parent_does(tmp_path: Path) -> None:
    path = tmp_path / "file.pdf"
    path.touch()
    limits = Limits(memory=100_000_000)

    found = pages(list(read_file(path, "unlimited_readers:hoard", limits=limits)))

    assert found[0].failure == "used more memory than a reader may"


def test_the_memory_of_a_process_is_known_from_outside() -> None:
    assert resident(os.getpid()) > 1_000_000


def test_a_reader_that_dies_before_the_first_page_refuses_the_file(
    tmp_path: Path,
) -> None:
    with pytest.raises(InputError, match=r"file\.pdf.*signal 6 \(SIGABRT\)"):
        read(tmp_path, "die_at_once")


@pytest.mark.skipif(sys.platform != "linux", reason="limits differ elsewhere")
def test_memory_beyond_the_limit_is_refused_by_name(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="more memory than a reader may use"):
        read(tmp_path, "eat_memory")


@pytest.mark.skipif(sys.platform != "linux", reason="limits differ elsewhere")
def test_processor_time_is_limited(tmp_path: Path) -> None:
    found = pages(read(tmp_path, "spin", file_seconds=1.0, seconds_a_page=0.0))

    assert found[0].failure in {
        "used more processor time than a file may",
        "the file took longer than it may",
    }


@pytest.mark.skipif(sys.platform != "linux", reason="limits differ elsewhere")
def test_a_reader_cannot_write_files(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"cannot be read \(File too large\)"):
        read(tmp_path, "write_much")

    written = tmp_path / "file.written"
    assert not written.exists() or written.stat().st_size == 0


def test_what_a_library_prints_reaches_nobody(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    found = pages(read(tmp_path, "chatter"))

    assert [page.text for page in found] == ["quiet"]
    assert capfd.readouterr() == ("", "")


def test_who_stops_listening_stops_the_reader(tmp_path: Path) -> None:
    path = tmp_path / "file.pdf"
    path.touch()
    items = read_file(path, "hostile_readers:tell_pid")
    next(items)
    page = next(items)
    assert isinstance(page, RawPage)

    items.close()  # type: ignore[attr-defined]

    assert not alive(int(page.text))


def test_a_reader_dies_with_its_parent(tmp_path: Path) -> None:
    path = tmp_path / "file.pdf"
    path.touch()
    parent = subprocess.Popen(
        [sys.executable, "-c", PARENT, str(path)],
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT), str(HERE)))},
    )
    assert parent.stdout is not None
    child = int(parent.stdout.readline())
    assert alive(child)

    parent.kill()
    parent.wait()
    parent.stdout.close()

    assert gone_within(child, seconds=5)


PARENT = textwrap.dedent(
    """
    import sys
    from pathlib import Path
    from ingest.readers.isolation import read_file
    items = read_file(Path(sys.argv[1]), "hostile_readers:tell_pid")
    next(items)
    print(next(items).text, flush=True)
    next(items)
    """
)


def alive(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text(encoding="ascii")
    except FileNotFoundError:
        return False
    return state.rsplit(")", 1)[1].split()[0] != "Z"


def gone_within(pid: int, seconds: float) -> bool:
    tick = threading.Event()
    for _ in range(int(seconds * 20)):
        if not alive(pid):
            return True
        tick.wait(0.05)
    return False


def test_the_reading_process_never_loads_the_heavy_libraries() -> None:
    """It must start fast and leave its memory to the file."""
    done = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys, ingest.readers.child, ingest.readers.pdf;"
            "print([m for m in ('torch', 'numpy', 'textual', 'pydantic', 'faiss')"
            " if m in sys.modules])",
        ],
        check=True,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )

    assert done.stdout.strip() == "[]"


@pytest.mark.skipif(sys.platform != "linux", reason="sizes are told in kilobytes here")
def test_hundreds_of_pages_take_no_more_memory_than_a_few(tmp_path: Path) -> None:
    path = canvas_pdf(tmp_path / "long.pdf", [[f"Page {n}"] for n in range(700)])

    done = subprocess.run(
        [sys.executable, "-c", MEASURE, str(path)],
        check=True,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )

    pages, kilobytes = map(int, done.stdout.split())
    assert pages == 700
    assert kilobytes < 100_000


MEASURE = textwrap.dedent(
    """
    import resource, sys
    from pathlib import Path
    from ingest.readers.isolation import read_file
    from ingest.readers.sniff import PDF
    pages = sum(1 for _ in read_file(Path(sys.argv[1]), PDF)) - 1
    print(pages, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
    """
)
