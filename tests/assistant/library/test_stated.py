"""Who says what of a document: a person before a page, and back again."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.errors import InputError, LibraryError
from assistant.library.sayings import (
    FIELDS,
    Origin,
    Place,
    Proposal,
    Saying,
    Value,
    accepted,
    in_force,
    sayings_of,
)
from assistant.library.store import LibraryStore
from assistant.record import Scope, SerialRange
from tests.literature import document, put

ABOUT = document(
    "a.pdf",
    title="Heron manual",
    revision="C",
    supersedes=("VSM-1406",),
    applies_to=(Scope(models=("VEH-O26",)),),
)
READ = {"title": Origin.FILE}


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path / "library", create=True) as opened:
        put(opened, ABOUT, "E4 fan", "E6 sensor")
        opened.put_said(ABOUT.sha256, sayings_of(ABOUT, READ))
        yield opened


def _said(field: str, value: Value) -> Saying:
    return Saying(field, Origin.PERSON, value, "A. Berg", "2026-03-01")


def test_a_person_stands_before_the_page_and_the_page_comes_back(
    store: LibraryStore,
) -> None:
    stated = store.put_said(ABOUT.sha256, [_said("revision", "D")])
    back = store.clear_said(ABOUT.sha256, ["revision"])

    assert stated.revision == "D"
    assert back == ABOUT
    assert store.documents() == (ABOUT,)


def test_a_new_title_is_found_by_its_words_and_forgotten_by_the_old(
    store: LibraryStore,
) -> None:
    store.put_said(ABOUT.sha256, [_said("title", "Tern handbook")])

    words = "SELECT count(*) FROM words WHERE words MATCH ?"
    assert store.query(words, ("title : handbook",))[0][0] == 2
    assert store.query(words, ("title : heron",))[0][0] == 0
    assert store.check() == []


def test_what_was_never_said_by_anyone_comes_back_too(tmp_path: Path) -> None:
    with LibraryStore.open(tmp_path / "other", create=True) as store:
        put(store, ABOUT, "words")
        store.put_said(ABOUT.sha256, [_said("title", "Other")])

        assert store.clear_said(ABOUT.sha256) == ABOUT


_TEXT = st.text(alphabet="abXY019-é°\"'[]%;中", min_size=1, max_size=12)
_VALUES: dict[str, st.SearchStrategy[Value]] = {
    field: _TEXT for field in FIELDS if field not in ("supersedes", "applies_to")
}
_VALUES["supersedes"] = st.lists(_TEXT, max_size=2).map(tuple)
_VALUES["applies_to"] = st.lists(
    st.sampled_from(
        (Scope(models=("KX-24",)), Scope(serial=SerialRange(first="2231")))
    ),
    unique=True,
    max_size=2,
).map(tuple)
_SAYINGS = st.lists(
    st.sampled_from(FIELDS).flatmap(
        lambda field: _VALUES[field].map(lambda value: _said(field, value))
    ),
    max_size=6,
    unique_by=lambda saying: saying.field,
)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=25)
@given(_SAYINGS)
def test_whatever_is_said_counts_and_clearing_undoes_all_of_it(
    store: LibraryStore, sayings: list[Saying]
) -> None:
    stated = store.put_said(ABOUT.sha256, sayings)

    assert all(getattr(stated, each.field) == each.value for each in sayings)
    kept = in_force(store.said(ABOUT.sha256))
    assert all(kept[each.field] == each for each in sayings)
    assert store.clear_said(ABOUT.sha256) == ABOUT
    assert store.check() == []


def test_proposals_state_nothing_until_they_are_accepted(store: LibraryStore) -> None:
    store.clear_said(ABOUT.sha256)
    bare = document("b.pdf")
    put(store, bare, "words")
    proposal = Proposal(Scope(models=("KX-24",)), 1, "Models: KX-24")

    store.put_proposals(bare.sha256, [proposal])
    before = store.document("b.pdf")
    after = store.accept_proposals(bare.sha256, "A. Berg", "2026-03-01")

    assert before is not None
    assert before.applies_to == ()
    assert after.applies_to == (proposal.scope,)
    (saying,) = [s for s in store.said(bare.sha256) if s.field == "applies_to"]
    assert (saying.source, saying.person) == (Origin.PERSON, "A. Berg")


def test_accepting_what_was_not_proposed_is_refused(store: LibraryStore) -> None:
    with pytest.raises(InputError, match="no page says which units"):
        store.accept_proposals(ABOUT.sha256, "A", "2026-03-01")


def test_serials_narrow_the_models_accepted_beside_them() -> None:
    late = SerialRange(first="2231")
    models = Proposal(Scope(models=("KX-24",), unit_role="outdoor"), 1, "")

    (scope,) = accepted([models, Proposal(Scope(serial=late), 1, "")])

    assert scope == Scope(models=("KX-24",), unit_role="outdoor", serial=late)


def test_what_is_said_goes_with_the_document(store: LibraryStore) -> None:
    store.put_place(ABOUT.sha256, Place("0123", "/shelf/a.pdf"))
    store.put_proposals(ABOUT.sha256, [Proposal(Scope(models=("K1",)), 1, "K1")])

    store.remove_document(ABOUT.sha256)

    for table in ("said", "proposal", "place", "earlier"):
        assert store.query(f"SELECT count(*) FROM {table}")[0][0] == 0  # noqa: S608
    assert store.check() == []


def test_nothing_can_be_said_of_what_is_not_there(store: LibraryStore) -> None:
    with pytest.raises(LibraryError, match="is in the library"):
        store.put_said("f" * 64, [_said("title", "T")])
    with pytest.raises(InputError, match="colour"):
        store.put_said(ABOUT.sha256, [_said("colour", "red")])
