"""A changed file is a new state of its document: what stays, what is read anew."""

from __future__ import annotations

from pathlib import Path

from assistant.library.sayings import Earlier, Origin, Saying
from assistant.library.store import LibraryStore
from ingest.telling import state_text
from tests.shelves import note, take

OLD = "HERON MANUAL\nDocument VSM-1407 Revision B\nModels: VEH-O26, VEH-O35\nE4: board."
NEW = "HERON MANUAL\nDocument VSM-1407 Revision C\nModels: VEH-O26, VEH-O35\nE4: fan."
WIDER = f"{NEW}\nOutdoor units: VEH-O50"


def _said(field: str, value: object) -> Saying:
    return Saying(field, Origin.PERSON, value, "A. Berg", "2026-03-01")  # type: ignore[arg-type]


def _one(store: LibraryStore) -> str:
    (document,) = store.documents()
    return document.sha256


def test_the_current_state_is_named_and_the_earlier_one_answers_no_more(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = note(tmp_path / "heron.txt", OLD)
    take(store, file)
    old = _one(store)
    note(file, NEW)

    result = take(store, file)

    (told,) = result.states
    new = _one(store)
    assert f"{new[:12]} (rev C) is current" in told
    assert f"{old[:12]} (rev B) is gone" in told
    (earlier,) = store.earlier(new)
    assert (earlier.sha256, earlier.revision) == (old, "B")
    after = store.state_after(old[:12])
    assert after is not None
    assert after.sha256 == new


def test_a_state_is_named_without_a_revision_it_does_not_have() -> None:
    name = "ab" * 6

    assert state_text(Earlier("ab" * 32, "Heron", "", "2023-05")) == f"{name} (2023-05)"
    assert state_text(Earlier("ab" * 32, "Heron", "", "")) == name


def test_earlier_states_are_kept_through_several_changes(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = note(tmp_path / "heron.txt", OLD)
    for text in (OLD, NEW, WIDER):
        note(file, text)
        take(store, file)

    assert [each.revision for each in store.earlier(_one(store))] == ["B", "C"]


def test_a_state_that_comes_back_is_no_earlier_one(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = tmp_path / "heron.txt"
    for text in (OLD, NEW, OLD):
        note(file, text)
        take(store, file)

    assert [each.revision for each in store.earlier(_one(store))] == ["C"]


def test_what_a_person_said_of_the_work_stays_and_of_the_state_does_not(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = note(tmp_path / "heron.txt", OLD)
    take(store, file)
    said = [_said("maker", "Vellamere"), _said("revision", "B2")]
    store.put_said(_one(store), said)
    note(file, NEW)

    result = take(store, file)

    (document,) = store.documents()
    assert (document.maker, document.revision) == ("Vellamere", "C")
    assert "counts no more: revision" in result.warnings[0]


def test_accepted_units_stay_only_where_the_pages_name_the_same(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = note(tmp_path / "heron.txt", OLD)
    take(store, file)
    store.accept_proposals(_one(store), "A. Berg", "2026-03-01")
    note(file, NEW)
    take(store, file)
    (same,) = store.documents()
    note(file, WIDER)

    result = take(store, file)

    (wider,) = store.documents()
    assert same.applies_to[0].models == ("VEH-O26", "VEH-O35")
    assert wider.applies_to == ()
    assert "counts no more: applies to" in result.warnings[0]


def test_a_file_that_says_nearly_the_same_is_told(
    store: LibraryStore, tmp_path: Path
) -> None:
    lines = [f"Line {n}: the fan of unit {n} turns at {n * 10} rpm." for n in range(40)]
    take(store, note(tmp_path / "one.txt", "FANS\n" + "\n".join(lines)))

    result = take(store, note(tmp_path / "two.txt", "FANS\n" + "\n".join(lines[:-2])))

    (told,) = result.near
    assert told.startswith("two.txt: 100 % of it stands in one.txt too")
    assert result.exit_code == 0


def test_unlike_files_are_not_told(store: LibraryStore, folder: Path) -> None:
    assert take(store, folder).near == []
