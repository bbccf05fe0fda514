"""Search: what applies, in order, once; or not found, and why."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.errors import InputError
from assistant.library.fusion import Thresholds
from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.library.types import Document, PageStatus
from assistant.record import Scope
from ingest.embedding import embed_missing
from tests.fakes import HashEncoder
from tests.literature import document, page, put, whole

TERN = document(
    "tern.pdf", title="Tern service manual", applies_to=(Scope(models=("VT-*",)),)
)
HERON = document("heron.pdf", title="Heron service manual")
NOTE = document("note.txt", title="Crew note")
TERN_PAGES = (
    "Flashes | Meaning\n4 | discharge sensor out of range\n6 | outdoor fan stalled",
    "After a stop the compressor waits three minutes before it starts again.",
    "Check the drain pan and the float switch for water.",
)
HERON_PAGES = (
    "Code P-6 on the display: outdoor fan stalled. Code E40: pressure switch.",
    "After a stop the compressor waits four minutes before it starts again.",
)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path, create=True) as opened:
        put(opened, TERN, *TERN_PAGES)
        put(opened, HERON, *HERON_PAGES)
        put(opened, NOTE, TERN_PAGES[2])
        yield opened


@pytest.fixture
def search(store: LibraryStore) -> Search:
    encoder = HashEncoder(dimension=128)
    list(embed_missing(store, encoder))
    # The fake's cosines are lower than the model's that the default is fitted on.
    return Search(store, encoder, Thresholds(least=1.1))


def only(*confirmed: Document, possible: tuple[Document, ...] = ()) -> object:
    def match(each: Document) -> str:
        if each in confirmed:
            return "confirmed"
        return "possible" if each in possible else "excluded"

    return match


@pytest.mark.parametrize("asked", ["P6?", "what is p-6", "shows P 6", "p six"])
def test_a_code_is_found_in_any_spelling(search: Search, asked: str) -> None:
    result = search.search(asked)

    assert result.found
    assert (result.hits[0].document, result.hits[0].page) == ("heron.pdf", 1)
    assert result.hits[0].evidence["code"] == 1.0


@pytest.mark.parametrize("asked", ["E4 on the display", "E9", "it winks eleven times"])
def test_a_code_or_count_that_stands_nowhere_is_not_found(
    search: Search, asked: str
) -> None:
    result = search.search(asked)

    assert not result.found
    assert result.reason == "code not in these documents"
    assert result.missing in {("E4",), ("E9",), ("#11",)}
    assert result.hits == ()


def test_a_model_that_a_document_is_about_is_no_missing_code(search: Search) -> None:
    assert search.search("VT-24 four flashes").found


def test_workshop_words_find_the_page(search: Search) -> None:
    result = search.search("LED blinks six times")

    assert (result.hits[0].document, result.hits[0].page) == ("tern.pdf", 1)


def test_what_does_not_apply_never_appears(search: Search) -> None:
    result = search.search(
        "compressor waits minutes",
        match=only(possible=(HERON,)),  # type: ignore[arg-type]
    )

    assert {hit.document for hit in result.hits} == {"heron.pdf"}
    assert result.searched == 1


def test_of_two_that_say_the_same_the_one_that_surely_applies_is_shown(
    search: Search,
) -> None:
    def first(confirmed: Document, possible: Document) -> str:
        match = only(confirmed, possible=(possible,))
        return search.search("drain pan water", match=match).hits[0].document  # type: ignore[arg-type]

    assert first(TERN, NOTE) == "tern.pdf"
    assert first(NOTE, TERN) == "note.txt"


def test_a_unit_for_which_nothing_applies_is_told_so(search: Search) -> None:
    result = search.search("compressor", match=lambda _: "excluded")

    assert (result.found, result.reason) == (False, "nothing applies to this unit")


def test_an_empty_library_is_told_so(tmp_path: Path) -> None:
    with LibraryStore.open(tmp_path / "empty", create=True) as store:
        assert Search(store).search("compressor").reason == "library empty"


def test_what_has_nothing_to_do_with_it_is_not_found(search: Search) -> None:
    for asked in ("who won the match last night", "zebra quantum violin", "", "?!"):
        result = search.search(asked)

        assert not result.found
        assert result.reason in {"no match", "below threshold"}
        assert result.hits == ()


def test_the_same_text_is_shown_once_with_its_places(search: Search) -> None:
    result = search.search("water in the drain pan, float switch")

    texts = [hit.text for hit in result.hits]
    assert texts.count(TERN_PAGES[2]) == 1
    assert result.hits[0].also in {("tern.pdf p. 3",), ("note.txt p. 1",)}


def test_superseded_documents_come_last_and_say_by_what(
    store: LibraryStore, search: Search
) -> None:
    newer = document("b.pdf", title="Bulletin 9", supersedes=("Heron service manual",))
    put(store, newer, "The compressor is given longer.")

    result = search.search("after a stop the compressor waits four minutes")

    assert result.hits[-1].document == "heron.pdf"
    assert result.hits[-1].superseded_by == "Bulletin 9"
    assert all(not hit.superseded_by for hit in result.hits[:-2])


def test_one_document_can_be_searched_alone(search: Search) -> None:
    result = search.search("compressor waits", document="heron")

    assert {hit.document for hit in result.hits} == {"heron.pdf"}
    with pytest.raises(InputError, match="no document 'gull'"):
        search.search("compressor", document="gull")


def test_pages_that_cannot_be_searched_are_named(
    store: LibraryStore, search: Search
) -> None:
    scanned = document("scan.pdf")
    text = "Wiring"
    store.add_document(
        scanned,
        [page(1, text), page(2, "", PageStatus.PICTURE), page(3, "", PageStatus.BLANK)],
        [whole(1, text)],
    )

    assert search.search("zebra").unreadable == {"scan.pdf": (2,)}


def test_without_an_encoder_keywords_are_searched_and_it_is_said(
    store: LibraryStore,
) -> None:
    result = Search(store, None).search("outdoor fan stalled")

    assert result.found
    assert not result.vectors_used
    assert "faultleaf" in result.note


@pytest.mark.usefixtures("search")
def test_vectors_of_another_encoder_are_not_used(store: LibraryStore) -> None:
    result = Search(store, HashEncoder(dimension=16)).search("outdoor fan stalled")

    assert result.found
    assert not result.vectors_used
    assert "dimension 128 in the library, 16 in the encoder" in result.note


def test_a_question_too_long_to_embed_is_searched_by_keyword(search: Search) -> None:
    result = search.search("outdoor fan stalled " * 500)

    assert result.found
    assert "too long" in result.note


def test_the_order_of_adding_does_not_matter(tmp_path: Path) -> None:
    orders = []
    for nth, order in enumerate(((TERN, HERON), (HERON, TERN))):
        with LibraryStore.open(tmp_path / str(nth), create=True) as store:
            for each in order:
                put(store, each, "the same words", "and other words")
            encoder = HashEncoder()
            list(embed_missing(store, encoder))
            result = Search(store, encoder).search("words")
            orders.append([(hit.document, hit.page, hit.score) for hit in result.hits])

    assert orders[0] == orders[1]


def test_the_first_hits_are_each_from_another_page(store: LibraryStore) -> None:
    text = "fan motor one\nfan motor two\nfan motor six"
    parts = [whole(1, text)]
    parts = [type(parts[0])(1, at, at + 13, text[at : at + 13]) for at in (0, 14, 28)]
    store.add_document(document("fan.pdf"), [page(1, text)], parts)

    hits = Search(store).search("fan motor").hits

    pages = [(hit.document, hit.page) for hit in hits[:3]]
    assert len(set(pages)) == 3


@given(asked=st.text(max_size=200))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=40)
def test_no_question_breaks_the_search(search: Search, asked: str) -> None:
    first = search.search(asked)

    assert search.search(asked) == first
    assert first.found == bool(first.hits)
