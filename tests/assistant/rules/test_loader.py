"""A pack's folder becomes one frozen value, and comes back from storage the same."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.checks.kinds import ResistanceTable
from assistant.errors import LibraryError
from assistant.rules.loader import load_pack, load_pack_with_lines
from assistant.rules.scalars import read_plain, readings_differ
from assistant.rules.stored import dump_pack, pack_sha256, read_stored
from assistant.signals.kinds import CountPerWindow
from tests.pack_folders import GOOD, write_pack


def test_a_pack_without_mistakes_is_loaded_whole(tmp_path: Path) -> None:
    pack = load_pack(write_pack(tmp_path))

    assert pack.head.id == "quellmar"
    assert [item.id for item in pack.signals] == [
        "amber-4",
        "amber-4-late",
        "green-on",
        "code-e4",
        "grid-1",
    ]
    amber = pack.signals[0]
    assert isinstance(amber, CountPerWindow)
    assert amber.window.value == 10.0
    assert amber.window.text == "10 s"


def test_a_table_is_filled_in_with_its_places(tmp_path: Path) -> None:
    pack, lines = load_pack_with_lines(write_pack(tmp_path))

    sensor = pack.sensors[0]
    assert isinstance(sensor, ResistanceTable)
    assert [point.resistance.value for point in sensor.points] == [
        180_000.0,
        68_000.0,
        14_500.0,
    ]
    assert sensor.points[1].temperature.value == pytest.approx(293.15)
    assert sensor.points[1].quote == "20 68"
    file, line = lines.point("discharge-table", 1)
    assert file.endswith("tables/discharge.csv")
    assert line == 3


def test_units_in_cells_are_read_as_well(tmp_path: Path) -> None:
    table = (
        "temperature,resistance,page,quote\n"
        "32 degF,180 kohm,40,a\n"
        "20 °C,68000 ohm,40,b\n"
    )

    pack = load_pack(write_pack(tmp_path, {**GOOD, "tables/discharge.csv": table}))

    sensor = pack.sensors[0]
    assert isinstance(sensor, ResistanceTable)
    assert sensor.points[0].temperature.value == pytest.approx(273.15)
    assert sensor.points[1].resistance.value == 68_000.0


def test_a_table_saved_by_a_spreadsheet_is_read(tmp_path: Path) -> None:
    folder = write_pack(tmp_path)
    path = folder / "tables/discharge.csv"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))

    assert len(load_pack(folder).sensors) == 1


def test_every_file_but_the_head_may_be_absent_or_empty(tmp_path: Path) -> None:
    head = 'schema: 1\nid: bare\nversion: "1"\ntitle: Bare\nkind: common\n'

    pack = load_pack(
        write_pack(tmp_path, {"pack.yaml": head, "waits.yaml": "# none\n"})
    )

    assert pack.waits == ()
    assert pack.head.kind == "common"


def test_the_place_of_a_value_is_its_line(tmp_path: Path) -> None:
    _, lines = load_pack_with_lines(write_pack(tmp_path))

    def line_of(file: str, text: str) -> int:
        return GOOD[file][: GOOD[file].index(text)].count("\n") + 1

    assert lines.place("amber-4", "window")[1] == line_of(
        "signals.yaml", "window: 10 s"
    )
    assert lines.place("code-e4")[1] == line_of("signals.yaml", "- id: code-e4")
    assert lines.head("supersedes", 0, "rows")[1] == line_of("pack.yaml", "rows:")


def test_a_stored_pack_comes_back_the_same(tmp_path: Path) -> None:
    pack = load_pack(write_pack(tmp_path))

    payload = dump_pack(pack)

    assert read_stored(payload) == pack
    assert dump_pack(read_stored(payload)) == payload
    assert len(pack_sha256(pack)) == 64


def test_the_hash_follows_the_content_and_not_the_layout(tmp_path: Path) -> None:
    spaced = GOOD["signals.yaml"].replace("\n- id", "\n\n# next\n- id")
    pack = load_pack(write_pack(tmp_path / "a"))
    same = load_pack(write_pack(tmp_path / "b", {**GOOD, "signals.yaml": spaced}))
    other = GOOD["signals.yaml"].replace("count: 4", "count: 5", 1)
    changed = load_pack(write_pack(tmp_path / "c", {**GOOD, "signals.yaml": other}))

    assert pack_sha256(pack) == pack_sha256(same)
    assert pack_sha256(pack) != pack_sha256(changed)


def test_stored_text_that_is_no_pack_is_refused() -> None:
    with pytest.raises(LibraryError, match="head"):
        read_stored(json.dumps({"signals": []}))


def test_reading_a_stored_pack_imports_neither_yaml_nor_units_library(
    tmp_path: Path,
) -> None:
    payload = tmp_path / "pack.json"
    payload.write_text(dump_pack(load_pack(write_pack(tmp_path / "pack"))), "utf-8")
    code = (
        "import sys; from pathlib import Path\n"
        "from assistant.rules.loader import read_stored\n"
        f"read_stored(Path({str(payload)!r}).read_text('utf-8'))\n"
        "bad = [m for m in ('yaml', 'pint') if m in sys.modules]\n"
        "sys.exit(', '.join(bad) or 0)"
    )

    ran = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )

    assert ran.returncode == 0, ran.stderr


@pytest.mark.parametrize(
    # The readings were seen with two YAML tools, one of each version of the standard.
    "text",
    [
        "off",
        "On",
        "NO",
        "y",
        "1:30",
        "010",
        "4E4",
        "1E4",
        "1_000",
        "2026-03-02",
        "0o17",
    ],
)
def test_a_scalar_that_yaml_versions_read_differently_is_known(text: str) -> None:
    assert readings_differ(text)


@pytest.mark.parametrize(
    "text", ["E4", "10 s", "4", "0.5", "true", "A1", "oN-1", "0x1F"]
)
def test_a_scalar_that_reads_the_same_is_let_through(text: str) -> None:
    assert not readings_differ(text)


@given(st.integers() | st.floats(allow_nan=False, allow_infinity=False))
def test_a_written_number_is_read_as_that_number(number: float) -> None:
    assert read_plain(str(number)) == number
