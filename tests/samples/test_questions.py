"""The committed questions: that they can be counted on as a measure of search.

A question that repeats the words of its page measures string matching, so the share
of words in common is held down here.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from pathlib import Path
from statistics import median
from typing import Any

import pytest
import snowballstemmer
from pypdf import PdfReader
from ruamel.yaml import YAML

SAMPLES = Path(__file__).parents[2] / "kb_samples"
LITERATURE = SAMPLES / "literature"
QUESTIONS = SAMPLES / "questions"

# Function words of English and the ways they are clipped in a workshop.
WORDS_WITHOUT_CONTENT = """
a about above after again all also am an and any are as at be been before below
being but by can could d did do does doing down each else em for from get gets go
goes going gonna got gotta had has have he her here him his how i if in into is it
its itself just ll m may me might my n no not nothing now of off on once one ones
only onto or other our out over own pls re s same she should so some t than that
the their them then there these they thing this those through thru til to too u
under until up us ve very was we were what whats when where which while who why
will with without would yes you your
"""
STOPWORDS = frozenset(WORDS_WITHOUT_CONTENT.split())
STEMMER = snowballstemmer.stemmer("english")

Entry = dict[str, Any]


def entries(name: str) -> list[Entry]:
    """Questions of a file, as they stand."""
    found: list[Entry] = YAML(typ="safe").load(QUESTIONS / name)
    return found


ANSWERABLE = entries("answerable.yaml")
UNANSWERABLE = entries("unanswerable.yaml")
EVERY = ANSWERABLE + UNANSWERABLE


@cache
def pages(document: str) -> tuple[str, ...]:
    """Text of every page; a plain text is one page."""
    path = LITERATURE / document
    if path.suffix == ".txt":
        return (path.read_text(encoding="utf-8"),)
    return tuple(page.extract_text() for page in PdfReader(path).pages)


def stems(text: str) -> set[str]:
    """Snowball stems of the words that carry content."""
    words = set(re.findall(r"[a-z0-9]+", text.lower())) - STOPWORDS
    return set(STEMMER.stemWords(sorted(words)))


@cache
def page_stems(document: str, page: int) -> frozenset[str]:
    return frozenset(stems(pages(document)[page - 1]))


def share_in_common(entry: Entry) -> float:
    """Part of a question's stems that its page has too, 0 to 1."""
    asked = stems(entry["text"])
    shared = asked & page_stems(entry["document"], entry["page"])
    return len(shared) / len(asked)


def targets(entry: Entry) -> list[tuple[str, int]]:
    """Every page that answers a question, the first one first."""
    also = [(each["document"], each["page"]) for each in entry.get("also", [])]
    return [(entry["document"], entry["page"]), *also]


def part_kept(group: list[Entry]) -> float:
    return [entry["set"] for entry in group].count("kept") / len(group)


def test_there_are_questions_enough() -> None:
    assert len(ANSWERABLE) >= 110
    assert len(UNANSWERABLE) >= 44


def test_no_id_and_no_text_is_used_twice() -> None:
    ids = Counter(entry["id"] for entry in EVERY)
    asked = Counter((entry["text"], entry.get("unit")) for entry in EVERY)
    assert max(ids.values()) == 1
    assert max(asked.values()) == 1


def test_entries_have_their_keys_and_no_others() -> None:
    common = {"id", "text", "document", "set"}
    for entry in ANSWERABLE:
        assert common | {"page"} <= set(entry) <= common | {"page", "also", "unit"}
    for entry in UNANSWERABLE:
        assert common | {"why"} <= set(entry) <= common | {"why", "unit"}
        assert entry["document"] is None
        assert entry["why"]
    assert {entry["set"] for entry in EVERY} == {"tune", "kept"}


@pytest.mark.parametrize("entry", ANSWERABLE, ids=lambda entry: str(entry["id"]))
def test_every_target_is_a_page_with_text(entry: Entry) -> None:
    named = targets(entry)
    assert len(set(named)) == len(named)
    for document, page in named:
        assert 1 <= page <= len(pages(document))
        assert pages(document)[page - 1].strip()


def test_every_document_is_asked_about() -> None:
    held = {path.name for path in LITERATURE.iterdir() if path.is_file()}
    assert {entry["document"] for entry in ANSWERABLE} == held


def test_a_third_is_kept_apart_in_the_whole_and_in_every_document() -> None:
    trade = [entry for entry in UNANSWERABLE if entry["id"].startswith("trade-")]
    off = [entry for entry in UNANSWERABLE if entry["id"].startswith("off-")]
    for group in (ANSWERABLE, UNANSWERABLE, trade, off):
        assert part_kept(group) == pytest.approx(1 / 3, abs=0.03)
    for document in sorted({entry["document"] for entry in ANSWERABLE}):
        group = [entry for entry in ANSWERABLE if entry["document"] == document]
        assert part_kept(group) == pytest.approx(1 / 3, abs=0.1), document


def test_about_half_of_the_unanswerable_is_of_the_trade() -> None:
    kinds = Counter(entry["id"].split("-")[0] for entry in UNANSWERABLE)
    assert set(kinds) == {"trade", "off"}
    assert kinds["trade"] / len(UNANSWERABLE) == pytest.approx(0.5, abs=0.05)


@pytest.mark.parametrize("part", ["tune", "kept"])
def test_questions_do_not_repeat_the_words_of_their_pages(part: str) -> None:
    asked = [entry for entry in ANSWERABLE if entry["set"] == part]
    assert median(map(share_in_common, asked)) <= 0.4


def test_a_question_that_repeats_its_page_would_be_seen() -> None:
    copied = {
        "text": "After every stop the compressor stays off for at least 3 minutes",
        "document": "vellamere-heron-service-manual.pdf",
        "page": 6,
    }
    assert share_in_common(copied) == 1.0
