"""Adding: what is new, what is known, what moved, what changed, what is refused."""

from __future__ import annotations

from pathlib import Path

from assistant.library.store import LibraryStore
from assistant.library.texts import embedded_text
from assistant.library.types import PageStatus
from ingest.collect import collect
from ingest.embedding import embed_missing
from ingest.library_report import coverage
from ingest.outcome import Ingested
from ingest.pipeline import add
from ingest.plan import Action, plan
from ingest.progress import Progress
from tests.fakes import HashEncoder
from tests.ingest.sample_pdfs import canvas_pdf, table_pdf
from tests.shelves import ENCODER, note, paths, take, text


def test_a_folder_is_walked_and_each_file_keeps_its_path_below_it(
    store: LibraryStore, folder: Path
) -> None:
    result = take(store, folder)

    assert result.added == ["cedar/manual.txt", "larch/manual.txt", "shop.txt"]
    assert paths(store) == result.added
    assert result.pages == {PageStatus.TEXT: 3}
    assert result.exit_code == 0


def test_unchanged_files_cost_no_reading_and_no_embedding(
    store: LibraryStore, folder: Path
) -> None:
    encoder = HashEncoder()
    take(store, folder)
    list(embed_missing(store, encoder))
    before = encoder.embedded, store.stamp()

    *told, result = add([folder], store, count=ENCODER.count_tokens)
    list(embed_missing(store, encoder))

    assert isinstance(result, Ingested)
    assert result.unchanged == ["cedar/manual.txt", "larch/manual.txt", "shop.txt"]
    assert not any(isinstance(p, Progress) and p.stage == "read" for p in told)
    assert (encoder.embedded, store.stamp()) == before


def test_a_moved_file_gets_its_new_path_and_nothing_is_embedded(
    store: LibraryStore, folder: Path
) -> None:
    encoder = HashEncoder()
    take(store, folder)
    list(embed_missing(store, encoder))
    embedded = encoder.embedded
    (folder / "shop.txt").rename(folder / "larch" / "boathouse.txt")

    result = take(store, folder)
    list(embed_missing(store, encoder))

    assert result.renamed == ["larch/boathouse.txt"]
    assert paths(store) == [
        "cedar/manual.txt",
        "larch/boathouse.txt",
        "larch/manual.txt",
    ]
    assert encoder.embedded == embedded


def test_a_changed_file_replaces_its_earlier_state(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    note(folder / "shop.txt", "Boathouse notes\nThe new cable ended the dips.")

    result = take(store, folder)

    assert result.replaced == ["shop.txt"]
    assert "new cable" in text(store)
    assert "lift starts" not in text(store)
    assert len(paths(store)) == 3


def test_adding_one_file_never_touches_the_others(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)

    take(store, note(folder / "later.txt", "Later\nA word more."))

    assert paths(store) == [
        "cedar/manual.txt",
        "larch/manual.txt",
        "later.txt",
        "shop.txt",
    ]


def test_a_file_gone_from_the_folder_stays_until_it_is_removed(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    (folder / "shop.txt").unlink()

    take(store, folder)

    assert "shop.txt" in paths(store)


def test_files_of_one_name_from_two_folders_both_stay(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder / "larch")
    result = take(store, folder / "cedar")

    assert result.added == ["cedar/manual.txt"]
    assert paths(store) == ["cedar/manual.txt", "manual.txt"]
    assert "stays in the library beside it" in result.warnings[0]
    assert result.exit_code == 3
    assert take(store, folder / "cedar").unchanged == ["cedar/manual.txt"]


def test_a_new_state_of_the_second_namesake_replaces_only_that_one(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder / "larch")
    take(store, folder / "cedar")
    note(folder / "cedar" / "manual.txt", "CEDAR MANUAL\nLamp H1 is dark.")

    result = take(store, folder / "cedar")

    assert result.replaced == ["cedar/manual.txt"]
    assert "flashes four times" in text(store)
    assert "flashes in groups" not in text(store)


def test_the_same_content_twice_is_one_document(
    store: LibraryStore, folder: Path
) -> None:
    copy = folder / "larch" / "shop copy.txt"
    copy.write_bytes((folder / "shop.txt").read_bytes())

    result = take(store, folder)

    assert len(store.documents()) == 3
    assert result.duplicates == ["shop.txt: the same content as larch/shop copy.txt"]
    assert result.exit_code == 0
    again = take(store, folder)
    assert again.renamed == []
    assert len(again.unchanged) == 3


def test_two_files_that_changed_places_keep_their_content(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    one, two = folder / "larch" / "manual.txt", folder / "cedar" / "manual.txt"
    one.rename(folder / "aside")
    two.rename(one)
    (folder / "aside").rename(two)

    result = take(store, folder)

    assert sorted(result.renamed) == ["cedar/manual.txt", "larch/manual.txt"]
    (cedar,) = [each for each in store.documents() if each.path == "cedar/manual.txt"]
    assert "LARCH" in store.pages(cedar.sha256)[0].text


def test_the_plan_changes_nothing(store: LibraryStore, folder: Path) -> None:
    take(store, folder)
    note(folder / "shop.txt", "Boathouse notes\nThe new cable ended the dips.")
    note(folder / "new.txt", "New\nwords")
    note(folder / "rules" / "pack.yaml", "schema: 1")
    (folder / "zero.pdf").touch()
    (folder / "cedar" / "manual.txt").rename(folder / "cedar.txt")
    before = store.stamp()

    steps = plan(collect([folder]), store)

    assert {(step.path, step.action) for step in steps} == {
        ("cedar.txt", Action.RENAME),
        ("larch/manual.txt", Action.UNCHANGED),
        ("new.txt", Action.ADD),
        ("shop.txt", Action.REPLACE),
        ("rules", Action.PACK),
        ("zero.pdf", Action.REFUSE),
    }
    assert store.stamp() == before


def test_who_stops_listening_keeps_every_document_so_far(
    store: LibraryStore, folder: Path
) -> None:
    work = add([folder], store, count=ENCODER.count_tokens)
    for step in work:
        if isinstance(step, Progress) and step.stage == "store":
            break
    work.close()

    assert paths(store) == ["cedar/manual.txt"]
    assert take(store, folder).added == ["larch/manual.txt", "shop.txt"]


def test_pictures_without_text_are_warned_of(
    store: LibraryStore, tmp_path: Path
) -> None:
    from reportlab.pdfgen.canvas import Canvas

    path = tmp_path / "scan.pdf"
    canvas = Canvas(str(path))
    canvas.drawString(60, 700, "The only page with words on it.")
    canvas.showPage()
    for _ in range(3):
        canvas.rect(60, 60, 300, 300)
        canvas.showPage()
    canvas.save()

    result = take(store, path)

    assert result.warnings == ["scan.pdf: 3 of 4 pages cannot be searched (no text)"]
    assert result.exit_code == 3
    (covered,) = coverage(store, ENCODER.count_tokens)
    assert covered.pages == {PageStatus.TEXT: 1, PageStatus.PICTURE: 3}
    assert sorted(covered.lost) == [2, 3, 4]


def test_every_stored_passage_is_the_span_it_says_and_fits_the_encoder(
    store: LibraryStore, tmp_path: Path
) -> None:
    lines = [[f"Line {n} of page {p} about the bus." for n in range(40)] for p in "ab"]
    (tmp_path / "lit").mkdir()
    canvas_pdf(tmp_path / "lit" / "a.pdf", lines, running=True)
    rows = [[str(n), f"Sensor {n} is open or short", f"CN{n}"] for n in range(30)]
    table_pdf(tmp_path / "lit" / "t.pdf", [["Flashes", "Meaning", "Plug"], *rows])

    take(store, tmp_path / "lit")

    for document in store.documents():
        pages = {page.number: page.text for page in store.pages(document.sha256)}
        for each in store.passages(document.sha256):
            span = each.passage
            assert pages[span.page][span.start : span.end] == span.text
            assert ENCODER.count_tokens(embedded_text(span)) <= 250
    table = store.document("t.pdf")
    assert table is not None
    assert [row.cells for row in store.table_rows(table.sha256)] == [
        tuple(row) for row in rows
    ]


def test_the_report_names_the_longest_passage(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)

    with_counts = coverage(store, ENCODER.count_tokens)
    without = coverage(store)

    assert [each.passages for each in with_counts] == [1, 1, 1]
    assert all(each.longest and each.longest <= 250 for each in with_counts)
    assert {each.longest for each in without} == {None}
