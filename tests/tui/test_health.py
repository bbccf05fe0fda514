"""The doctor finds what is wrong and names the way out; broken is never well."""

from __future__ import annotations

import json
import shutil
import sqlite3
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.clock import FixedClock
from assistant.jobs.events import Opened
from assistant.jobs.store import JobStore
from assistant.library.encoder import export_folder
from assistant.library.store import LibraryStore
from assistant.settings import Settings
from tests.literature import document, put
from tui.commands.doctor import exit_code
from tui.health import Finding, findings, homely
from tui.main import main
from tui.offline import imported, is_network, network_imports

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


@pytest.fixture
def places(tmp_path: Path) -> Settings:
    return Settings(
        library=tmp_path / "library",
        jobs=tmp_path / "jobs.sqlite",
        cache=tmp_path / "cache",
    )


def look(places: Settings, name: str, now: datetime = NOW) -> Finding:
    """Return what one look finds."""
    (found,) = findings(places, FixedClock(now), only=name)
    return found


def test_nothing_there_yet_is_a_warning_with_the_next_step(places: Settings) -> None:
    assert look(places, "library").state == "warning"
    assert look(places, "library").hint == "faultleaf add PATH..."
    assert look(places, "encoder").state == "warning"
    assert look(places, "encoder").hint == "faultleaf library embed"
    assert look(places, "jobs").state == "ok"


def test_a_library_that_is_no_library_cannot_be_used(
    places: Settings, capsys: pytest.CaptureFixture[str]
) -> None:
    places.library.mkdir()
    (places.library / "library.sqlite").write_bytes(b"no database at all" * 300)

    assert look(places, "library").unusable
    words = ["doctor", "--json", "--library", str(places.library)]
    assert main(words) == 4
    told = json.loads(capsys.readouterr().out)["findings"]
    assert [each["state"] for each in told if each["name"] == "library"] == ["failure"]


def test_a_library_whose_parts_disagree_cannot_be_used(places: Settings) -> None:
    with LibraryStore.open(places.library, create=True) as store:
        put(store, document("a.pdf"), "the amber lamp flashes four times")
    with sqlite3.connect(places.library / "library.sqlite") as connection:
        connection.execute("DELETE FROM words")
    connection.close()

    found = look(places, "library")

    assert (found.state, found.unusable) == ("failure", True)


def test_texts_without_vectors_are_said(places: Settings) -> None:
    with LibraryStore.open(places.library, create=True) as store:
        put(store, document("a.pdf"), "the amber lamp flashes four times")

    found = look(places, "library")

    assert (found.state, found.hint) == ("warning", "faultleaf library embed")
    assert "1 texts lack a vector" in found.text


def test_a_job_that_was_changed_is_named(places: Settings) -> None:
    with JobStore.open(places.jobs, clock=FixedClock(NOW)) as store:
        store.append("JOB1", Opened(), noted=NOW, event_id="E1")
    with sqlite3.connect(places.jobs) as connection:
        connection.execute("DROP TRIGGER event_kept")
        connection.execute(
            "UPDATE event SET payload = replace(payload, 'site', 'sife')"
        )
    connection.close()

    # Its events cannot even be read any more.
    assert look(places, "jobs").state == "failure"
    with sqlite3.connect(places.jobs) as connection:
        connection.execute(
            "UPDATE event SET payload = replace(payload, 'sife', 'site')"
        )
        connection.execute("UPDATE event SET digest = 'f'")
    connection.close()
    found = look(places, "jobs")
    assert (found.state, found.hint) == ("warning", "faultleaf job verify JOB1")


def test_a_clock_that_cannot_be_right_is_said(places: Settings) -> None:
    assert look(places, "clock").state == "ok"
    assert look(places, "clock", datetime(1999, 1, 1, tzinfo=UTC)).state == "warning"
    with JobStore.open(places.jobs, clock=FixedClock(NOW)) as store:
        store.append("JOB1", Opened(), noted=NOW, event_id="E1")

    early = look(places, "clock", NOW - timedelta(hours=1))

    assert "earlier than the last event of a job" in early.text


def test_another_model_than_the_packaged_one_is_not_held_to_its_hash(
    places: Settings, tmp_path: Path
) -> None:
    folder = tmp_path / "model"
    folder.mkdir()
    (folder / "modules.json").write_text("[]")
    (folder / "model.safetensors").write_bytes(b"weights")

    assert look(replace(places, model=folder), "model").state == "ok"
    missing = look(replace(places, model=tmp_path / "none"), "model")
    assert (missing.state, missing.unusable) == ("failure", False)


def test_the_exit_code_is_that_of_the_worst_finding() -> None:
    well = Finding("a", "ok", "")
    warned = Finding("b", "warning", "")
    failed = Finding("c", "failure", "")
    useless = Finding("d", "failure", "", unusable=True)

    assert exit_code([well]) == 0
    assert exit_code([well, warned]) == 3
    assert exit_code([failed, well]) == 3
    assert exit_code([warned, useless]) == 4


def test_a_path_does_not_tell_whose_home_it_is() -> None:
    assert homely(Path.home() / "x" / "y") == str(Path("~/x/y"))
    assert homely(Path("/srv/x")) == str(Path("/srv/x"))


def test_our_code_imports_no_door_to_a_network() -> None:
    assert network_imports() == ()


@pytest.mark.parametrize(
    ("source", "caught"),
    [
        ("import urllib.request", True),
        ("from urllib import request", True),
        ("def f():\n    import socket", True),
        ("from http.client import HTTPConnection", True),
        ("import requests as r", True),
        ("from urllib.parse import quote", False),
        ("import httpsomething", False),
    ],
)
def test_the_proof_sees_every_form_of_import(source: str, caught: bool) -> None:
    assert any(is_network(name) for name in imported(source)) is caught


@pytest.mark.model
def test_an_export_with_one_wrong_byte_is_found(
    sample_places: Settings, tmp_path: Path
) -> None:
    shutil.copytree(sample_places.cache, tmp_path / "cache")
    places = replace(sample_places, cache=tmp_path / "cache")
    folder = export_folder(places)
    assert folder is not None
    file = folder / "tokenizer.json"
    text = bytearray(file.read_bytes())
    text[len(text) // 2] ^= 1
    file.write_bytes(text)

    finding = look(places, "encoder")

    assert finding.state == "failure"
    assert "tokenizer.json" in finding.text
