"""Drafts of the sample literature beside the packs that were written by hand.

Whoever wrote those packs read the pages; a drafted row without a doubt must say what
they wrote.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from assistant.checks.kinds import ResistanceTable
from assistant.library.store import LibraryStore
from assistant.rules.loader import load_pack
from assistant.rules.pack import Pack
from assistant.signals.kinds import DisplayCode, MainSubCode, SeveralLamps
from assistant.timing.stop_kinds import SlidingWindow
from assistant.units.parse import parse_quantity
from ingest.drafts.make import draft_document
from ingest.drafts.model import DraftRow
from tests.shelves import take

SAMPLES = Path(__file__).parents[2] / "kb_samples"
BOOKS = {
    "vellamere-heron": "vellamere-heron-service-manual.pdf",
    "vellamere-tern": "vellamere-tern-service-manual.pdf",
    "skarnvik-lomvi": "skarnvik-lomvi-handbook.pdf",
}
CODES = {
    "skarnvik-lomvi": "skarnvik-lomvi-handbook.pdf",
    "ondreval-pochard": "ondreval-pochard-service-guide.pdf",
    "ondreval-smew": "ondreval-smew-leak-sensor-guide.pdf",
}


WRITTEN_INSIDE = {("defrost_ended", 60.0)}
"""Printed as a wait of its own on page 7; the pack says it within its defrost."""


@cache
def pack_of(name: str) -> Pack:
    return load_pack(SAMPLES / "packs" / name)


@cache
def rows_of(name: str) -> tuple[DraftRow, ...]:
    """Return what is drafted from a manual, read anew into a library of its own."""
    with (
        TemporaryDirectory() as place,
        LibraryStore.open(Path(place) / "library", create=True) as store,
    ):
        file = {**BOOKS, **CODES}[name]
        take(store, SAMPLES / "literature" / file)
        return draft_document(file, store).rows


def sure(name: str, file: str) -> list[DraftRow]:
    return [row for row in rows_of(name) if row.file == file and not row.doubts]


@pytest.mark.parametrize("name", BOOKS)
def test_counts_without_a_doubt_are_those_of_the_pack(name: str) -> None:
    written = {
        (row.lamp.label, row.count, row.is_fault)
        for row in pack_of(name).rows
        if row.kind in ("count_per_window", "group_then_pause")
    }
    drafted = {
        (row.fields["lamp"]["label"], row.fields["count"], row.fields["is_fault"])
        for row in sure(name, "signals")
        if "count" in row.fields
    }

    assert len(drafted) >= 9
    assert drafted <= written


@pytest.mark.parametrize("name", CODES)
def test_codes_without_a_doubt_are_those_of_the_pack(name: str) -> None:
    written = {
        (row.code, row.is_fault)
        for row in pack_of(name).rows
        if isinstance(row, DisplayCode | MainSubCode)
    }
    drafted = {
        (row.fields["code"], row.fields["is_fault"])
        for row in sure(name, "signals")
        if "code" in row.fields
    }

    assert len(drafted) >= 7
    assert drafted <= written


def looks(name: str) -> Iterator[tuple[frozenset[tuple[str | None, str]], bool]]:
    for row in pack_of(name).rows:
        if isinstance(row, SeveralLamps):
            lamps = ((each.lamp.label, each.state) for each in row.lamps)
            yield frozenset(lamps), row.is_fault


@pytest.mark.parametrize("name", BOOKS)
def test_lamps_without_a_doubt_are_those_of_the_pack(name: str) -> None:
    drafted = {
        (
            frozenset(
                (each["lamp"]["label"], each["state"]) for each in row.fields["lamps"]
            ),
            row.fields["is_fault"],
        )
        for row in sure(name, "signals")
        if "lamps" in row.fields
    }

    assert drafted
    assert drafted <= set(looks(name))


@pytest.mark.parametrize("name", BOOKS)
def test_points_of_sensors_are_those_of_the_pack(name: str) -> None:
    written = {
        (round(point.temperature.value, 6), round(point.resistance.value, 6))
        for sensor in pack_of(name).sensors
        if isinstance(sensor, ResistanceTable)
        for point in sensor.points
    }
    points = [row for row in rows_of(name) if row.is_point and not row.doubts]
    drafted = {
        (
            round(parse_quantity(row.fields["temperature"]).value, 6),
            round(parse_quantity(row.fields["resistance"]).value, 6),
        )
        for row in points
    }

    assert drafted == written


@pytest.mark.parametrize("name", BOOKS)
def test_limits_of_stops_are_those_of_the_pack(name: str) -> None:
    written = sorted(
        (stop.limit, stop.window.value)
        for stop in pack_of(name).stops
        if isinstance(stop, SlidingWindow)
    )
    drafted = sorted(
        (row.fields["limit"], parse_quantity(row.fields["window"]).value)
        for row in rows_of(name)
        if row.fields.get("kind") == "sliding_window" and row.table
    )

    assert drafted == written


def lengths(name: str) -> set[tuple[str, float]]:
    return {
        (wait.trigger, value.value)
        for wait in pack_of(name).waits
        for value in (wait.minimum, wait.usual, wait.give_up)
        if value is not None
    }


@pytest.mark.parametrize("name", BOOKS)
def test_waits_without_a_doubt_are_those_of_the_pack(name: str) -> None:
    drafted = {
        (row.fields["trigger"], parse_quantity(row.fields[key]).value)
        for row in sure(name, "waits")
        if row.fields["kind"] != "detection_time"
        for key in ("minimum", "usual", "give_up")
        if key in row.fields
    }

    assert drafted
    assert drafted - WRITTEN_INSIDE <= lengths(name)
