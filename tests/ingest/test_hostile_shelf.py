"""Hostile files among good ones: each is named with its reason, the good ones answer.

`python tests/evaluation/hostile.py` does it with all of them, and measures.
"""

from __future__ import annotations

from pathlib import Path

from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.library.types import PageStatus
from tests.ingest.hostile_files import good_files, hostile_files
from tests.shelves import take

REFUSED = {
    "cut-at-1-tenths.pdf": "damaged PDF",
    "head-only.pdf": "damaged PDF",
    "locked-user.pdf": "encrypted, it needs a password",
    "no-bytes.pdf": "the file is empty",
    "no-pages.pdf": "damaged PDF",
    "noise.txt": "neither a PDF nor plain text",
    "page-tree-loop.pdf": "damaged PDF",
    "wrong-kind-office.pdf": "named .pdf, but it is an old office document",
}
LOST = ("length-of-itself.pdf", "nested-arrays.pdf", "predictor-huge.pdf")
READ = ("box-huge.pdf", "font-of-itself.pdf", "outline-loop.pdf", "xref-loop.pdf")


def test_every_hostile_file_is_named_and_nothing_else_is_lost(
    store: LibraryStore, tmp_path: Path
) -> None:
    shelf = tmp_path / "shelf"
    files = hostile_files(shelf / "hostile", (*REFUSED, *LOST, *READ))
    good_files(shelf / "good", 3)

    result = take(store, shelf)

    assert len(files) == len(REFUSED) + len(LOST) + len(READ)
    reasons = {Path(each.path).name: each.reason for each in result.refused}
    assert sorted(reasons) == sorted(REFUSED)
    assert all(REFUSED[name] in reason for name, reason in reasons.items())
    added = {Path(path).name for path in result.added}
    assert added == {*LOST, *READ, "good-1.pdf", "good-2.pdf", "good-3.pdf"}
    for document in store.documents():
        name = Path(document.path).name
        for page in store.pages(document.sha256):
            lost = page.status is PageStatus.UNREADABLE
            assert lost == (name in LOST)
            assert page.reason or not lost


def test_good_files_between_hostile_ones_answer(
    store: LibraryStore, tmp_path: Path
) -> None:
    shelf = tmp_path / "shelf"
    hostile_files(shelf / "hostile", LOST)
    good_files(shelf / "good", 3)

    take(store, shelf)

    for number in (1, 2, 3):
        found = Search(store).search(f"lamp LD{number} flashes, sensor open")
        assert found.hits[0].document == f"good/good-{number}.pdf"
