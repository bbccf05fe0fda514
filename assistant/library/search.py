"""A question in, cited passages out: or "not found", with the reason.

Applicability comes first, so what does not apply to the unit is never a
candidate. Keywords, codes and vectors then each name candidates; the same raw
evidence is gathered for all of them; `fusion` orders them and decides whether
anything was found.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.errors import InputError, LibraryError
from assistant.library.asked import Asked, asked
from assistant.library.candidates import Gathered, Vectors, gather
from assistant.library.encoder import EXPORT, Encoder
from assistant.library.fusion import (
    Evidence,
    Thresholds,
    Weights,
    enough,
    fused,
    strongest,
)
from assistant.library.hits import Field, Scored, hits
from assistant.library.lookup import Found, Lookup
from assistant.library.named import without_models
from assistant.library.store import EMBED_AGAIN, LibraryStore, mismatch
from assistant.library.superseded import superseded
from assistant.library.types import Document, Hit, Match, SearchResult
from assistant.library.vectors import VectorIndex

NEAR = 3
"""How many near misses are kept for `--why`."""


class Search:
    """Search over one open library.

    Parameters
    ----------
    store : LibraryStore
    encoder : Encoder or None
        None searches keywords and codes only, and says so.
    thresholds, weights : optional
        As calibrated on the sample questions.
    """

    def __init__(
        self,
        store: LibraryStore,
        encoder: Encoder | None = None,
        thresholds: Thresholds | None = None,
        weights: Weights | None = None,
    ) -> None:
        self._store = store
        self._lookup = Lookup(store)
        self._encoder = encoder
        self._thresholds = thresholds or Thresholds()
        self._weights = weights or Weights()
        self._index: VectorIndex | None = None
        if encoder is not None:
            self._index = VectorIndex(store, encoder.model_hash, encoder.dimension)

    def search(
        self,
        query: str,
        *,
        match: Match | None = None,
        limit: int = 10,
        document: str | None = None,
    ) -> SearchResult:
        """Find the passages that answer a question.

        Parameters
        ----------
        query : str
            Anything at all; nothing in it is special.
        match : callable, optional
            Says of each document whether it applies to the unit. None: the unit
            is not known, everything is possible.
        limit : int
            The most hits given.
        document : str, optional
            The only document searched, by any name `LibraryStore.document` takes.

        Raises
        ------
        LibraryError
            The library cannot be read.
        InputError
            `document` names none or several.
        """
        field = self._field(match, document)
        if not field.documents:
            empty = not self._lookup.documents()
            reason = "library empty" if empty else "nothing applies to this unit"
            return SearchResult(False, (), reason, 0, vectors_used=False)
        question = without_models(asked(query), tuple(field.documents.values()))
        vectors, note = self._vectors(question)
        gathered = gather(
            self._lookup,
            question,
            vectors,
            field.documents,
            unconfirmed=field.unconfirmed,
        )
        best = self._hits(gathered, field, limit)
        reason = self._reason(gathered, vectors=vectors is not None)
        return SearchResult(
            found=not reason,
            hits=() if reason else best,
            reason=reason,
            searched=len(field.documents),
            unreadable=self._lookup.unreadable(field.documents),
            vectors_used=vectors is not None,
            note=note,
            missing=gathered.missing,
            near=best[:NEAR] if reason else (),
        )

    def _field(self, match: Match | None, document: str | None) -> Field:
        documents: Mapping[int, Document] = self._lookup.documents()
        if document is not None:
            named = self._store.document(document)
            if named is None:
                raise InputError(
                    f"no document {document!r} in the library", "faultleaf library"
                )
            documents = {
                key: each
                for key, each in documents.items()
                if each.sha256 == named.sha256
            }
        verdicts = {
            key: match(each) if match else "possible" for key, each in documents.items()
        }
        applying = {
            key: each for key, each in documents.items() if verdicts[key] != "excluded"
        }
        return Field(
            documents=applying,
            confirmed=frozenset(
                key for key in applying if verdicts[key] == "confirmed"
            ),
            replaced=superseded(applying),
            unconfirmed=len(applying) < len(documents)
            and "confirmed" not in verdicts.values(),
        )

    def _vectors(self, question: Asked) -> tuple[Vectors | None, str]:
        """Return the question's vectors, or None and why there are none."""
        if self._encoder is None or self._index is None:
            return None, f"keywords only: the encoder is not exported; run: {EXPORT}"
        pinned = self._store.manifest()
        if pinned is None:
            return None, "keywords only: nothing has been embedded yet"
        difference = mismatch(pinned, self._encoder.manifest)
        if difference:
            return None, f"keywords only: {difference}; {EMBED_AGAIN}"
        if not question.text.strip():
            return None, "keywords only: nothing was asked"
        try:
            typed = self._encoder.embed_query(question.text)
            printed = (
                self._encoder.embed_query(question.said) if question.said else typed
            )
        except InputError:
            return None, "keywords only: the question is too long to be embedded"
        except LibraryError as error:
            return None, f"keywords only: {error.what}; {error.hint}"
        return Vectors(self._index, typed, printed), ""

    def _hits(self, gathered: Gathered, field: Field, limit: int) -> tuple[Hit, ...]:
        pages: dict[tuple[int, int], list[Evidence]] = {}
        for key, evidence in gathered.evidence.items():
            pages.setdefault(_page(gathered.found[key]), []).append(evidence)
        best = {page: strongest(each) for page, each in pages.items()}
        scored = [
            Scored(
                found=gathered.found[key],
                evidence=evidence,
                score=fused(
                    evidence,
                    best[_page(gathered.found[key])],
                    self._weights,
                    confirmed=gathered.found[key].document in field.confirmed,
                ),
            )
            for key, evidence in gathered.evidence.items()
        ]

        def same(hashes: Sequence[str]) -> Mapping[str, tuple[Found, ...]]:
            return self._lookup.same_text(hashes, field.documents)

        return hits(scored, field, limit, same)

    def _reason(self, gathered: Gathered, *, vectors: bool) -> str:
        """Return why nothing was found, '' when something was."""
        best = gathered.best
        if gathered.missing:
            return "code not in these documents"
        if not any(best.evidence):
            return "no match"
        if not enough(best, self._thresholds, vectors=vectors):
            return "below threshold"
        return ""


def _page(found: Found) -> tuple[int, int]:
    return found.document, found.passage.page
