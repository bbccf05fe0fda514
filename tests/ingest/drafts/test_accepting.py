"""Rows leave a draft by name only, without doubts, and into a pack that stands."""

from __future__ import annotations

import csv
from contextlib import suppress
from pathlib import Path

import pytest

from assistant.errors import InputError, PackError
from assistant.library.store import LibraryStore
from assistant.rules.loader import load_pack
from ingest.collect import collect
from ingest.drafts import folder as folders
from ingest.drafts.accept import Settling, Taken, accept, settle_in
from ingest.drafts.folder import read_draft, write_draft
from ingest.drafts.make import draft_document
from ingest.packs import take_pack
from tests.draft_shelf import NOW, draft_in, stock

BY = "R. Ashdown"
LOST = "ld3-outdoor-fan-blocked"
POINTS = ("rt3", "rt3:0", "rt3:10", "rt3:20", "rt3:30")


@pytest.fixture
def draft(tmp_path: Path, store: LibraryStore) -> Path:
    return draft_in(tmp_path, store)


def taken(draft: Path, store: LibraryStore, *names: str) -> Taken:
    return accept(draft, names, BY, NOW, (draft.parent / "us", store))


def ids(folder: Path) -> set[str]:
    return {row.id for row in read_draft(folder).rows}


def records_of(pack: Path) -> list[dict[str, str]]:
    with (pack / "accepted.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def files(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def test_an_accepted_row_is_in_the_pack_and_no_longer_in_the_draft(
    draft: Path, store: LibraryStore
) -> None:
    before = ids(draft)

    taken(draft, store, "ld3-1", "ld3-2")

    pack = load_pack(draft.parent / "us")
    assert [(row.id, row.meaning) for row in pack.signals] == [  # type: ignore[union-attr]
        ("ld3-1", "Coil sensor open"),
        ("ld3-2", "Discharge sensor open"),
    ]
    assert ids(draft) == before - {"ld3-1", "ld3-2"}


def test_the_record_says_who_accepted_what_and_when(
    draft: Path, store: LibraryStore
) -> None:
    taken(draft, store, "ld3-1")

    (record,) = records_of(draft.parent / "us")
    assert (record["by"], record["row"], record["at"]) == (
        BY,
        "ld3-1",
        "2031-04-02T10:00:00+00:00",
    )


def test_the_pack_of_accepted_rows_can_be_put_in_force(
    draft: Path, store: LibraryStore
) -> None:
    taken(draft, store, "ld3-1", *POINTS)

    proved = take_pack(draft.parent / "us", store)

    assert proved.errors == ()
    assert [len(getattr(each, "points", ())) for each in proved.pack.sensors] == [4]


def test_a_row_with_a_doubt_is_refused_and_nothing_changes(
    draft: Path, store: LibraryStore
) -> None:
    before = files(draft)

    with pytest.raises(InputError, match=f"{LOST}: count"):
        taken(draft, store, "ld3-1", LOST)

    assert files(draft) == before
    assert not (draft.parent / "us").exists()


def test_all_at_once_is_refused_while_a_doubt_stands(
    draft: Path, store: LibraryStore
) -> None:
    with pytest.raises(InputError, match="all rows at once are refused"):
        accept(draft, None, BY, NOW, (draft.parent / "us", store))


def test_all_at_once_is_taken_once_no_doubt_stands(
    draft: Path, store: LibraryStore
) -> None:
    settle_in(
        draft,
        [Settling(LOST, "count", "3")],
        BY,
        NOW,
    )
    rows = draft / "tables" / "rt3.csv"
    text = rows.read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("rt3:40")]
    rows.write_text("\n".join(lines) + "\n", encoding="utf-8")

    done = accept(draft, None, BY, NOW, (draft.parent / "us", store))

    assert done.left == 0
    assert len(done.accepted) == 10


def test_a_settled_doubt_is_the_persons_word_and_stays_on_record(
    draft: Path, store: LibraryStore
) -> None:
    settle_in(draft, [Settling(LOST, "count", "3")], BY, NOW)

    taken(draft, store, LOST)

    (row,) = load_pack(draft.parent / "us").signals
    assert getattr(row, "count", None) == 3
    (record,) = records_of(draft.parent / "us")
    assert record["settled"] == "count=3, R. Ashdown at 2031-04-02T10:00+00:00"


def test_a_doubt_is_settled_by_editing_the_draft_too(
    draft: Path, store: LibraryStore
) -> None:
    path = draft / "signals.yaml"
    text = path.read_text(encoding="utf-8")
    start = text.index(f"- id: {LOST}")
    own = text[start:].replace("  meaning:", "  count: 3\n  meaning:", 1)
    own = own.replace("    doubts:\n      count: the count is not on the page\n", "", 1)
    path.write_text(text[:start] + own, encoding="utf-8")

    taken(draft, store, LOST)

    assert load_pack(draft.parent / "us").signals[0].id == LOST


def test_a_doubt_taken_out_without_its_value_still_stands(
    draft: Path, store: LibraryStore
) -> None:
    path = draft / "signals.yaml"
    text = path.read_text(encoding="utf-8")
    gone = text.replace("    doubts:\n      count: the count is not on the page\n", "")
    path.write_text(gone, encoding="utf-8")

    with pytest.raises(InputError, match="`count` is not on the page"):
        taken(draft, store, LOST)


@pytest.mark.parametrize(
    ("row", "doubt", "value"),
    [
        (LOST, "count", "many"),
        (LOST, "count", "seen"),
        (LOST, "window", "3 s"),
        ("nobody", "count", "3"),
        ("rt3:40", "order", "26.5 kohm"),
        ("pack", "revision", "B"),
    ],
)
def test_what_does_not_settle_a_doubt_is_refused(
    draft: Path, row: str, doubt: str, value: str
) -> None:
    before = files(draft)

    with pytest.raises(InputError):
        settle_in(draft, [Settling(row, doubt, value)], BY, NOW)

    assert files(draft) == before


def test_a_misread_point_that_was_looked_at_is_still_no_curve(
    draft: Path, store: LibraryStore
) -> None:
    seen = [Settling("rt3:40", name, "seen") for name in ("order", "smooth")]
    settle_in(draft, seen, BY, NOW)

    with pytest.raises(PackError, match="does not fall"):
        taken(draft, store, *POINTS, "rt3:40")

    assert not (draft.parent / "us").exists()


def test_a_quote_changed_by_hand_is_found_by_the_pack_and_refused(
    draft: Path, store: LibraryStore
) -> None:
    path = draft / "signals.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("1 Coil sensor open", "1 Coil sensor shut"), "utf-8")

    with pytest.raises(PackError, match="does not stand on page 1"):
        taken(draft, store, "ld3-1")


def test_nobody_is_no_name(draft: Path, store: LibraryStore) -> None:
    with pytest.raises(InputError, match="nobody is named"):
        accept(draft, ["ld3-1"], "  ", NOW, (draft.parent / "us", store))


def test_a_name_of_two_lines_cannot_write_rules(
    draft: Path, store: LibraryStore
) -> None:
    name = "R. Ashdown\n- id: smuggled"

    accept(draft, ["ld3-1"], name, NOW, (draft.parent / "us", store))

    assert [row.id for row in load_pack(draft.parent / "us").signals] == ["ld3-1"]


def test_for_which_units_is_a_doubt_until_somebody_says_so(
    tmp_path: Path, store: LibraryStore
) -> None:
    draft = draft_in(tmp_path, store, scopes=False)

    with pytest.raises(InputError, match="pack: applies_to"):
        taken(draft, store, "ld3-1")
    settle_in(draft, [Settling("pack", "applies_to", "ULO-20, ULO-28")], BY, NOW)
    taken(draft, store, "ld3-1")

    (scope,) = load_pack(tmp_path / "us").head.applies_to
    assert scope.models == ("ULO-20", "ULO-28")


def test_rows_go_into_a_pack_that_rests_on_the_same_document(
    draft: Path, store: LibraryStore
) -> None:
    taken(draft, store, "ld3-1")
    pack = draft.parent / "us" / "pack.yaml"
    text = pack.read_text(encoding="utf-8").replace("  manual:", "  sheet:")
    pack.write_text(text, encoding="utf-8")
    signals = draft.parent / "us" / "signals.yaml"
    kept = signals.read_text(encoding="utf-8").replace("manual", "sheet")
    signals.write_text(kept + "# a remark of the shop\n", encoding="utf-8")

    taken(draft, store, "ld3-2")

    rows = load_pack(draft.parent / "us").signals
    assert [row.source.doc for row in rows if row.source] == ["sheet", "sheet"]
    assert "# a remark of the shop" in signals.read_text(encoding="utf-8")


def test_a_pack_about_another_document_takes_no_row(
    draft: Path, store: LibraryStore
) -> None:
    pack = draft.parent / "us"
    pack.mkdir()
    head = "schema: 1\nid: us\nversion: '1'\ntitle: US\nkind: shop\nauthor: A\n"
    (pack / "pack.yaml").write_text(f'{head}date: "2031-01-01"\n', encoding="utf-8")

    with pytest.raises(InputError, match="does not rest on"):
        taken(draft, store, "ld3-1")


def test_an_id_used_for_something_else_is_not_overwritten(
    draft: Path, store: LibraryStore
) -> None:
    taken(draft, store, "ld3-1")
    again = draft.parent / "again"
    write_draft(draft_document("us-12.pdf", store), again)
    path = again / "signals.yaml"
    text = path.read_text(encoding="utf-8").replace(
        "Coil sensor open", "Coil frozen", 1
    )
    path.write_text(text, encoding="utf-8")

    with pytest.raises(InputError, match="used already"):
        accept(again, ["ld3-1"], BY, NOW, (draft.parent / "us", store))


def test_what_a_person_noted_beside_other_rows_stays(
    draft: Path, store: LibraryStore
) -> None:
    path = draft / "signals.yaml"
    text = path.read_text(encoding="utf-8")
    noted = text.replace("- id: ld3-2", "# ask the maker about this one\n- id: ld3-2")
    path.write_text(noted, encoding="utf-8")

    taken(draft, store, "ld3-1")

    assert "# ask the maker about this one\n- id: ld3-2" in path.read_text("utf-8")


class Killed(BaseException):
    """The process ends here."""


@pytest.mark.parametrize("after", range(8))
def test_killed_between_two_files_nothing_is_lost_and_the_same_call_goes_on(
    draft: Path,
    store: LibraryStore,
    monkeypatch: pytest.MonkeyPatch,
    after: int,
) -> None:
    before = ids(draft)
    names = ("ld3-1", *POINTS)
    written = 0
    real = folders.put

    def failing(path: Path, text: str) -> None:
        nonlocal written
        if "faultleaf-" not in str(path):
            if written == after:
                raise Killed
            written += 1
        real(path, text)

    monkeypatch.setattr(folders, "put", failing)
    with suppress(Killed):
        taken(draft, store, *names)
    monkeypatch.setattr(folders, "put", real)
    pack = draft.parent / "us"
    held = set()
    if (pack / "signals.yaml").is_file():
        held = {row.id for row in load_pack(pack).signals}
    assert before <= ids(draft) | held | set(POINTS)

    left = [name for name in names if name in ids(draft)]
    if left:
        taken(draft, store, *left)

    whole = load_pack(pack)
    assert [row.id for row in whole.signals] == ["ld3-1"]
    assert [len(getattr(each, "points", ())) for each in whole.sensors] == [4]
    assert ids(draft) == before - set(names)
    assert sorted(each["row"] for each in records_of(pack)) == sorted(names)


def test_a_draft_is_refused_as_a_pack_and_by_add(draft: Path) -> None:
    with pytest.raises(PackError, match="a draft is no pack"):
        load_pack(draft)
    for path in (draft, draft / "signals.yaml", draft / "tables" / "rt3.csv"):
        with pytest.raises(InputError, match="a draft answers nothing"):
            collect([path])


def test_a_draft_renamed_to_a_pack_is_still_refused(
    draft: Path, store: LibraryStore
) -> None:
    taken(draft, store, "ld3-1")
    head = (draft.parent / "us" / "pack.yaml").read_text(encoding="utf-8")
    (draft / "pack.yaml").write_text(head, encoding="utf-8")
    (draft / "draft.yaml").unlink()

    with pytest.raises(PackError, match="unknown key `draft`"):
        load_pack(draft)


def test_a_draft_in_a_shelf_is_passed_over_and_said(draft: Path) -> None:
    shelf = draft.parent / "shelf"
    shelf.mkdir()
    (shelf / "note.txt").write_text("Lamp notes", encoding="utf-8")
    draft.rename(shelf / "us-draft")

    with collect([shelf]) as found:
        assert [each.path for each in found.files] == ["note.txt"]
        assert found.packs == []
        assert ["us-draft" in each.path for each in found.refused] == [True]


def test_a_draft_is_never_written_over_one(draft: Path, store: LibraryStore) -> None:
    with pytest.raises(InputError, match="there already"):
        write_draft(draft_document("us-12.pdf", store), draft)


def test_rows_of_a_page_read_by_ocr_wait_for_a_person(
    tmp_path: Path, store: LibraryStore
) -> None:
    made = draft_document(stock(store, ocr=True), store)
    write_draft(made, tmp_path / "us-draft")

    with pytest.raises(InputError, match="ocr: page 1 was read by OCR"):
        taken(tmp_path / "us-draft", store, "ld3-1")
    settle_in(tmp_path / "us-draft", [Settling("p1-t1", "ocr", "seen")], BY, NOW)
    done = taken(tmp_path / "us-draft", store, "ld3-1")

    assert done.proved is not None
    assert [each.severity for each in done.proved.mistakes] == ["warning"]
