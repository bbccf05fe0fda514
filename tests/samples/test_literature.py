"""The committed literature: what stands on its pages, and that it can be remade."""

from __future__ import annotations

import hashlib
import re
from dataclasses import replace
from importlib.metadata import version
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import Destination

from kb_samples.making.blocks import table
from kb_samples.making.catalogue import catalogue, write_all
from kb_samples.making.curves import Sensor

LITERATURE = Path(__file__).parents[2] / "kb_samples" / "literature"
HERON = "vellamere-heron-service-manual.pdf"
TERN = "vellamere-tern-service-manual.pdf"
BULLETIN = "vellamere-vsb-2231-blue-label.pdf"
LOMVI = "skarnvik-lomvi-handbook.pdf"
NOTE = "skarnvik-tn31-fan-board.pdf"
POCHARD = "ondreval-pochard-service-guide.pdf"
SMEW = "ondreval-smew-leak-sensor-guide.pdf"
PAGES = {
    HERON: 24,
    TERN: 23,
    BULLETIN: 3,
    LOMVI: 22,
    NOTE: 2,
    POCHARD: 19,
    SMEW: 7,
}

# The bytes depend on these writers; the words on the pages do not.
MADE_WITH = {"reportlab": "5.1.0", "fpdf2": "2.8.9", "pillow": "13.0.0"}


def page_text(file: str, page: int) -> str:
    """Text of a physical page, from 1, white space folded."""
    text = PdfReader(LITERATURE / file).pages[page - 1].extract_text()
    return " ".join(text.split())


def digests(folder: Path) -> dict[str, str]:
    return {
        path.name: hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.glob("*.pdf"))
    }


def test_every_document_has_its_pages_and_the_whole_is_a_small_library() -> None:
    counted = {
        path.name: len(PdfReader(path).pages) for path in LITERATURE.glob("*.pdf")
    }
    assert counted == PAGES
    assert sum(counted.values()) >= 50


@pytest.mark.parametrize(
    ("file", "page", "quote"),
    [
        (HERON, 1, "Document VSM-1407 Revision C Issued 2021-03-15"),
        (HERON, 2, "less than 42 V DC"),
        (HERON, 6, "nothing turns for 20 seconds"),
        (HERON, 7, "between 198 V and 253 V for 60 seconds"),
        (HERON, 8, "High pressure switch 63H opens at 4.15 MPa 6 in 60 minutes"),
        (HERON, 11, "4 Discharge temperature above 115 °C stops below 80 °C, 3 min"),
        (HERON, 12, "9 Outdoor fan motor gives no pulses stops after 3 tries"),
        (HERON, 17, "25 15.0 10.0"),
        (HERON, 18, "230 325"),
        (TERN, 11, "4 Discharge sensor TH3 out of range stops after 10 min"),
        (TERN, 12, "14 Four-way valve not shifted stops after 5 min reset only"),
        (BULLETIN, 1, "Replaces two rows of table 6-2, Service Manual VSM-1407"),
        (BULLETIN, 2, "6 Current sensor drifts, no overcurrent stops reset only"),
        (LOMVI, 8, "This pattern is not a fault and is not counted"),
        (LOMVI, 11, "Leave both off for at least 2 minutes and at most 10 minutes"),
        (LOMVI, 12, "6 Compressor does not start P6 by itself"),
        (LOMVI, 13, "flashing flashing defrost, both together no"),
        (LOMVI, 14, "E40 Wired remote gets no messages from indoor unit - stop"),
        (LOMVI, 15, "H11 No messages between main and drive board 9 stop"),
        (LOMVI, 18, "25 12.0 10.0"),
        (LOMVI, 21, "L3 is a leak until the opposite is proved"),
        (NOTE, 1, "count 15 seconds without power"),
        (POCHARD, 2, "each under 25 V before a hand goes in"),
        (POCHARD, 5, "4 white logic supply 14.5 to 16.0 V DC"),
        (POCHARD, 7, "second in the same call 6 min FL bright and dim"),
        (POCHARD, 8, "Overcurrent J13 19 A 3 stops in 20 min"),
        (POCHARD, 9, "SW2 and SW3 held for 8 s stays stay gone"),
        (POCHARD, 10, "OFF FL FL OFF air sensor RT3 yes"),
        (POCHARD, 11, "2 3 indoor fan gives no pulses - stops"),
        (POCHARD, 12, "ON 3 heat sink above 92 °C fins blocked, fan slow"),
        (POCHARD, 13, "by turns slow defrost or oil return no"),
        (POCHARD, 14, "A2 outdoor coil sensor RT4 open or short runs on, table L.1"),
        (POCHARD, 15, "A2 defrost by the clock, every 50 min 7 stops"),
        (POCHARD, 17, "25 20.0 2.50"),
        (SMEW, 3, "An alarm is counted by nothing and has no number of trials"),
        (SMEW, 4, "FL ON LEAK ALARM, gas at the sensor yes"),
        (SMEW, 6, "3 white reading 0.45 to 0.65 V DC, clean air"),
    ],
)
def test_a_key_line_stands_on_its_page_as_one_line_of_text(
    file: str, page: int, quote: str
) -> None:
    assert quote in page_text(file, page)


def test_the_printed_label_stands_at_the_foot_and_differs_from_the_page() -> None:
    for document, _ in catalogue():
        reader = PdfReader(LITERATURE / document.file)
        for page, sheet in zip(reader.pages, document.pages, strict=True):
            lines = page.extract_text().split("\n")
            if sheet.label and lines != [""]:
                assert any(
                    re.search(rf"(^|Page ){re.escape(sheet.label)}$", line)
                    for line in lines
                ), (document.file, sheet.label)


def test_one_manual_carries_page_labels_with_roman_front_matter() -> None:
    labels = PdfReader(LITERATURE / HERON).page_labels
    assert labels[:5] == ["i", "ii", "iii", "1", "2"]
    assert labels[-1] == "21"
    assert PdfReader(LITERATURE / TERN).page_labels[:3] == ["1", "2", "3"]


def test_outlines_exist_in_a_manual_of_each_writer() -> None:
    titles = {
        file: [
            entry.title
            for entry in PdfReader(LITERATURE / file).outline
            if isinstance(entry, Destination)
        ]
        for file in PAGES
    }
    assert "5 Reset" in titles[HERON]
    assert "14  Refrigerant leak sensor" in titles[LOMVI]
    assert titles[TERN] == []


def test_the_scanned_page_is_a_picture_without_text() -> None:
    page = PdfReader(LITERATURE / HERON).pages[23]
    assert page.extract_text().strip() == ""
    assert len(page.images) == 1


def test_every_other_page_has_words_with_their_spaces() -> None:
    for file in PAGES:
        for number, page in enumerate(PdfReader(LITERATURE / file).pages, 1):
            if (file, number) == (HERON, 24):
                continue
            words = page.extract_text().split()
            assert len(words) > 15, (file, number)
            assert max(len(word.strip(".")) for word in words) < 30, (file, number)


def test_the_sister_manuals_share_words_and_differ_in_figures() -> None:
    heron, tern = page_text(HERON, 6), page_text(TERN, 6)
    shared = set(heron.split()) & set(tern.split())
    assert len(shared) > 0.9 * len(set(heron.split()))
    assert "for at least 3 minutes" in heron
    assert "for at least 4 minutes" in tern


def test_text_and_chart_of_one_page_disagree_on_the_repeat_time() -> None:
    page = page_text(TERN, 10)
    assert "group of flashes is repeated every 8 seconds" in page
    assert "Repeat time of the group 10 s" in page


def test_handbook_and_note_disagree_on_the_clearing_time_of_the_fan_board() -> None:
    assert "40 seconds after H4 has gone dark" in page_text(LOMVI, 19)
    assert "from H4 dark 15 s" in page_text(NOTE, 2)


def test_the_two_columns_are_read_one_after_the_other() -> None:
    page = page_text(LOMVI, 22)
    marks = ["15.1 Does", "15.2 Breaker", "15.3 Stops", "15.4 Water", "15.7 No"]
    places = [page.index(mark) for mark in marks]
    assert places == sorted(places)


def test_printed_resistances_fall_with_temperature() -> None:
    for file, page in ((HERON, 17), (TERN, 17), (LOMVI, 18), (POCHARD, 17)):
        text = PdfReader(LITERATURE / file).pages[page - 1].extract_text()
        rows = re.findall(r"(?m)^(-?\d+) ([\d.]+)(?: ([\d.]+))?$", text)
        pairs = [(int(t), float(a), float(b or "nan")) for t, a, b in rows]
        for (t0, a0, _), (t1, a1, _) in pairwise(pairs):
            assert t1 < t0 or a1 < a0
        assert len(pairs) >= 24


@pytest.mark.slow
def test_a_second_run_of_the_maker_gives_the_same_bytes(tmp_path: Path) -> None:
    write_all(tmp_path / "one")
    write_all(tmp_path / "two")
    assert digests(tmp_path / "one") == digests(tmp_path / "two")


def test_the_committed_files_are_what_the_maker_writes(tmp_path: Path) -> None:
    write_all(tmp_path)
    for file in PAGES:
        made = [page.extract_text() for page in PdfReader(tmp_path / file).pages]
        kept = [page.extract_text() for page in PdfReader(LITERATURE / file).pages]
        assert made == kept, file
    if all(version(name) == wanted for name, wanted in MADE_WITH.items()):
        assert digests(tmp_path) == digests(LITERATURE)


def test_a_row_that_does_not_fit_its_table_is_refused() -> None:
    with pytest.raises(ValueError, match=r"row \('1',\) does not fit"):
        table("T", ("a", "b"), (("1",),), (1, 1))
    with pytest.raises(ValueError, match="1 widths for 2 columns"):
        table("T", ("a", "b"), (), (1,))


def test_a_page_that_is_too_long_is_refused_by_name(tmp_path: Path) -> None:
    for document, write in catalogue():
        page = document.pages[1]
        long = replace(page, blocks=page.blocks * 4)
        broken = replace(document, pages=(document.pages[0], long))
        with pytest.raises(ValueError, match=re.escape(document.file)):
            write(broken, tmp_path / "x.pdf")


def test_the_sensor_formula_gives_a_published_value() -> None:
    # 10 kohm at 25 degrees, Beta 3950: 33.62 kohm at 0 degrees, 2.486 at 60 (Beta
    # formula, plain arithmetic done apart from this code).
    sensor = Sensor("T", "any", 10.0, 25, 3950, 1, (0, 60))
    assert sensor.rows() == (("0", "33.6"), ("60", "2.49"))
