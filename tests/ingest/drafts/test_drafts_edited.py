"""A draft that a person edited is read with its mistakes told by line."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import PackError
from assistant.library.store import LibraryStore
from ingest.drafts.accept import Settling, settle_in
from ingest.drafts.folder import read_draft
from tests.draft_shelf import NOW, draft_in

BY = "R. Ashdown"


@pytest.fixture
def draft(tmp_path: Path, store: LibraryStore) -> Path:
    return draft_in(tmp_path, store)


@pytest.mark.parametrize(
    ("file", "written", "spoilt", "told"),
    [
        ("signals.yaml", "page: 1", "page: two", r":\d+: .*`source.page` is `two`"),
        ("signals.yaml", "confidence: ", "confidence: hm", "expected a number"),
        ("signals.yaml", "  draft:\n", "  draft: looked\n  was:\n", "`draft` is"),
        ("draft.yaml", "schema: 1", "schema: 2", r":\d+: .*`schema` is `2`"),
        ("draft.yaml", "document:\n", "paper:\n", "`document`|`paper`"),
        ("tables/rt3.csv", ",1,", ",two,", r"rt3.csv:2: .*`source.page` is `two`"),
        ("tables/rt3.csv", ",1,", ",", "rt3.csv:2: the columns are"),
    ],
)
def test_a_draft_edited_out_of_shape_is_refused_at_its_line(
    draft: Path, file: str, written: str, spoilt: str, told: str
) -> None:
    text = (draft / file).read_text(encoding="utf-8")
    assert written in text
    (draft / file).write_text(text.replace(written, spoilt), encoding="utf-8")

    with pytest.raises(PackError, match=told):
        read_draft(draft)


def test_a_file_of_a_draft_that_is_no_list_or_no_text_is_refused(draft: Path) -> None:
    (draft / "signals.yaml").write_text("a: 5\n", encoding="utf-8")
    with pytest.raises(PackError, match="is no list of rows"):
        read_draft(draft)

    (draft / "signals.yaml").unlink()
    (draft / "tables" / "rt3.csv").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(PackError, match="is not UTF-8 text"):
        read_draft(draft)


@pytest.mark.parametrize("value", ["ULO-20, ULO-28", "[ULO-20, ULO-28]"])
def test_units_are_named_by_their_models_alone(draft: Path, value: str) -> None:
    text = (draft / "draft.yaml").read_text(encoding="utf-8")
    if "applies_to: " not in text.partition("doubts:")[2]:
        text += 'doubts:\n  applies_to: "not confirmed"\n'
        (draft / "draft.yaml").write_text(text, encoding="utf-8")

    settle_in(draft, [Settling("pack", "applies_to", value)], BY, NOW)

    head = read_draft(draft).head
    assert head.applies_to == ({"models": ("ULO-20", "ULO-28")},)
    assert "applies_to" not in head.doubts
