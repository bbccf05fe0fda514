"""A technician's meters: saved by name, found again, used on the right range."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.checks.metering import figures_of
from assistant.checks.reading import meter_for
from assistant.checks.registry import run_named
from assistant.errors import UsageError
from assistant.meters import FILE, MeterBook, MetersError, read_meters, write_meters

VOLTS = {"percent": "0.5 %", "digits": "2", "resolution": "0.1 V", "up_to": "600 V"}
FINE = {"percent": "0.9 %", "digits": "3", "resolution": "0.01 ohm", "up_to": "60 ohm"}
COARSE = {"percent": "0.9 %", "digits": "2", "resolution": "10 ohm"}


@pytest.fixture
def book() -> MeterBook:
    kept = MeterBook()
    for figures in (VOLTS, FINE, COARSE):
        kept = kept.saving("Kittiwake", figures_of(figures))
    return kept


def test_a_meter_keeps_its_ranges_and_the_finest_that_fits_is_used(
    book: MeterBook,
) -> None:
    meter = book.find("kittiwake")

    fine, told = meter_for(meter, 0.65, "ohm")
    coarse, _ = meter_for(meter, 12_400.0, "ohm")
    volts, _ = meter_for(meter, 230.0, "V")

    assert told == ""
    assert fine.resolution.value == 0.01
    assert coarse.resolution.value == 10.0
    assert (volts.percent, volts.digits) == (0.5, 2)


def test_beyond_its_ranges_it_is_said_that_figures_are_assumed(
    book: MeterBook,
) -> None:
    meter = book.find("Kittiwake")

    _, beyond = meter_for(meter, 900.0, "V")
    _, other = meter_for(meter, 3.0, "A")

    assert "no range told of Kittiwake reaches this far" in beyond
    assert "figures are for V, ohm" in other


def test_new_figures_of_a_range_replace_the_old_ones(book: MeterBook) -> None:
    again = book.saving("KITTIWAKE", figures_of(VOLTS | {"percent": "0.2 %"}))

    meter = again.find("kittiwake")
    assert len(again.meters) == 1
    assert len(meter.others) == 2
    assert meter_for(meter, 230.0, "V")[0].percent == pytest.approx(0.2)


def test_a_saved_meter_decides_where_an_assumed_one_cannot(book: MeterBook) -> None:
    told = {"nominal": "230 V", "reading": "209.0 V"}

    assumed = run_named("supply-voltage", told)
    saved = run_named("supply-voltage", told, book.find("Kittiwake"))

    # 1 % + 3 digits: U = 2.76 V; 0.5 % + 2 digits: U = 1.44 V. 209.0 V is 2.0 V in.
    assert assumed.result == "inconclusive"
    assert saved.result == "pass"


def test_what_is_written_is_read_again(book: MeterBook, tmp_path: Path) -> None:
    write_meters(tmp_path / "config", book)

    assert read_meters(tmp_path / "config") == book
    assert read_meters(tmp_path / "other") == read_meters(None) == MeterBook()
    assert [path.name for path in (tmp_path / "config").iterdir()] == [FILE]


def test_a_spoilt_file_is_named_and_left_alone(tmp_path: Path) -> None:
    (tmp_path / FILE).write_text("{", "utf-8")

    with pytest.raises(MetersError) as caught:
        read_meters(tmp_path)

    assert FILE in caught.value.what
    assert (tmp_path / FILE).read_text("utf-8") == "{"


def test_a_folder_that_is_a_file_is_named(book: MeterBook, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")

    with pytest.raises(MetersError, match="cannot be written"):
        write_meters(tmp_path / "file", book)
    with pytest.raises(MetersError, match="no folder"):
        write_meters(None, book)


def test_a_mistyped_name_brings_the_nearest(book: MeterBook) -> None:
    with pytest.raises(UsageError) as caught:
        book.find("kitiwake")

    assert "Kittiwake" in caught.value.hint
    assert book.without("kittiwake") == MeterBook()
    with pytest.raises(UsageError):
        book.without("other")


@pytest.mark.parametrize(
    ("change", "what"),
    [
        ({"up_to": "60 ohm"}, "not in the unit"),
        ({"resolution": "1 C"}, "resolution"),
        ({"percent": "2 V"}, "percent"),
        ({"scale": "2"}, "scale"),
    ],
)
def test_figures_that_are_none_are_refused(change: dict[str, str], what: str) -> None:
    with pytest.raises(UsageError) as caught:
        figures_of(VOLTS | change)

    assert what in caught.value.what


@pytest.mark.parametrize("name", ["", "  ", "m" * 61])
def test_a_name_that_is_none_is_refused(name: str) -> None:
    with pytest.raises(UsageError, match="no name"):
        MeterBook().saving(name, figures_of(VOLTS))


@given(st.lists(st.sampled_from(["a", "b", "C", "c"]), max_size=6))
def test_a_book_holds_each_name_once_and_in_order(names: list[str]) -> None:
    book = MeterBook()
    for name in names:
        book = book.saving(name, figures_of(FINE))

    kept = [meter.name.casefold() for meter in book.meters]
    assert kept == sorted({name.casefold() for name in names})
