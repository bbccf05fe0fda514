"""Printed page numbers."""

from __future__ import annotations

from ingest.labels import printed_labels
from ingest.running import running_lines


def labels(feet: list[str], given: list[str] | None = None) -> list[str]:
    words = "alder beech cedar elder hazel holly larch maple".split()  # noqa: SIM905 - reads better
    pages = [f"own {words[at]}\n{foot}" for at, foot in enumerate(feet)]
    plain = [str(at + 1) for at in range(len(pages))]
    return printed_labels(given or plain, pages, running_lines(pages))


def test_feet_that_count_from_another_page_give_the_printed_number() -> None:
    assert labels(["Page 7", "Page 8", "Page 9"]) == ["7", "8", "9"]


def test_roman_front_matter_is_printed_as_it_stands() -> None:
    feet = ["SM-1 i", "SM-1 ii", "SM-1 1", "SM-1 2", "SM-1 3", "SM-1 4"]

    assert labels(feet) == ["i", "ii", "1", "2", "3", "4"]


def test_labels_of_the_file_stand() -> None:
    assert labels(["1", "2", "3"], ["A-1", "A-2", "A-3"]) == ["A-1", "A-2", "A-3"]


def test_without_agreement_the_physical_number_is_given() -> None:
    assert labels(["4", "9", "2"]) == ["1", "2", "3"]
