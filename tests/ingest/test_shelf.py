"""A whole shelf: what is there costs nothing, what repeats is embedded once.

`python tests/evaluation/shelf_speed.py` does it at full size, and measures.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.library.store import LibraryStore
from ingest.embedding import embed_missing
from ingest.outcome import Ingested
from ingest.pipeline import Options, add
from ingest.progress import Pace, Progress, Tally
from tests.evaluation.shelf_made import notes, shelf
from tests.fakes import HashEncoder
from tests.ingest.sample_pdfs import encrypted_pdf
from tests.shelves import ENCODER, note, take


def embedded(folder: Path, library: Path) -> int:
    encoder = HashEncoder(dimension=8)
    with LibraryStore.open(library, create=True) as store:
        take(store, folder)
        list(embed_missing(store, encoder))
    return encoder.embedded


def test_embeddings_fall_by_the_share_of_text_that_repeats(tmp_path: Path) -> None:
    shelf(tmp_path / "distinct", 4, 10, 0.0)
    shelf(tmp_path / "repeated", 4, 10, 0.3)

    whole = embedded(tmp_path / "distinct", tmp_path / "one")
    fewer = embedded(tmp_path / "repeated", tmp_path / "two")

    assert fewer == pytest.approx(0.7 * whole, rel=0.01)


def test_adding_what_is_there_writes_nothing(
    store: LibraryStore, tmp_path: Path
) -> None:
    notes(tmp_path / "notes", 20)
    take(store, tmp_path / "notes")
    before = store.change_mark()

    result = take(store, tmp_path / "notes")

    assert len(result.unchanged) == 20
    assert store.change_mark() == before


def test_one_worker_and_two_make_the_same_library(tmp_path: Path) -> None:
    notes(tmp_path / "notes", 8)
    made = []
    for workers in (1, 2):
        library = tmp_path / f"library-{workers}"
        with LibraryStore.open(library, create=True) as store:
            take(store, tmp_path / "notes", options=Options(workers=workers))
            rows = store.query("SELECT id, text_hash FROM passage ORDER BY id")
            made.append((store.stamp(), [tuple(row) for row in rows]))

    assert made[0] == made[1]


def test_a_build_tells_documents_pages_and_passages(
    store: LibraryStore, tmp_path: Path
) -> None:
    for name in "abc":
        text = f"Lamp {name} flashes.\fIt is the sensor of board {name}."
        note(tmp_path / "shelf" / f"{name}.txt", text)

    steps = list(add([tmp_path / "shelf"], store, count=ENCODER.count_tokens))

    told = [step.tally for step in steps if isinstance(step, Progress) and step.tally]
    assert told[0].of == 3
    assert [t.documents for t in told if t.pages == 4][-1] == 2
    assert (told[-1].documents, told[-1].pages, told[-1].about) == (3, 6, 6)
    result = steps[-1]
    assert isinstance(result, Ingested)
    assert told[-1].passages == result.passages


def test_pages_of_files_still_shut_are_estimated_by_their_size() -> None:
    pace = Pace([1000, 3000])

    pace.open(0, 10)
    pace.page()

    assert pace.tally() == Tally(0, 2, 1, 40, 0)


def test_a_build_that_is_stopped_keeps_what_it_stored_and_goes_on(
    store: LibraryStore, tmp_path: Path
) -> None:
    notes(tmp_path / "notes", 6)
    steps = add([tmp_path / "notes"], store, count=ENCODER.count_tokens)
    for step in steps:
        if isinstance(step, Progress) and (step.stage, step.done) == ("store", 2):
            break

    steps.close()

    assert len(store.documents()) == 2
    result = take(store, tmp_path / "notes")
    assert (len(result.unchanged), len(result.added)) == (2, 4)


def test_a_locked_file_is_asked_about_until_it_opens(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = encrypted_pdf(tmp_path / "locked.pdf", "heron")
    answers = ["tern", "heron"]
    asked = []

    def ask(name: str) -> str:
        asked.append(name)
        return answers[len(asked) - 1]

    result = take(store, path, options=Options(ask_password=ask))

    assert asked == ["locked.pdf", "locked.pdf"]
    assert result.added == ["locked.pdf"]


def test_a_locked_file_that_nobody_opens_is_left_out(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = encrypted_pdf(tmp_path / "locked.pdf", "heron")

    result = take(store, path, options=Options(ask_password=lambda _: None))

    assert result.refused[0].reason == "locked.pdf: encrypted, it needs a password"
    assert "--password" in result.refused[0].hint
