"""A question in, cited passages out: or "not found", with the reason.

Applicability comes first, so what does not apply to the unit is never a
candidate. Keywords, codes and vectors then each name candidates; the same raw
evidence is gathered for all of them; `fusion` orders them and decides whether
anything was found.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from assistant.errors import InputError, LibraryError
from assistant.library.asked import asked
from assistant.library.candidates import Gathered, gather
from assistant.library.encoder import EXPORT, Encoder
from assistant.library.fusion import Thresholds, Weights, enough, fused
from assistant.library.hits import Field, Scored, hits
from assistant.library.lookup import Found, Lookup
from assistant.library.named import unknown, without_models
from assistant.library.store import EMBED_AGAIN, LibraryStore, mismatch
from assistant.library.superseded import superseded
from assistant.library.types import Document, Hit, SearchResult
from assistant.library.vectors import VectorIndex

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Match = Callable[[Document], str]
"""Whether a document applies to the unit: confirmed, possible or excluded."""

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
        vector, note = self._vector(query)
        question = without_models(asked(query), tuple(field.documents.values()))
        gathered = gather(self._lookup, self._index, question, vector, field.documents)
        missing = unknown(question, gathered.having)
        best = self._hits(gathered, field, limit)
        reason = self._reason(gathered, missing, vectors=vector is not None)
        return SearchResult(
            found=not reason,
            hits=() if reason else best,
            reason=reason,
            searched=len(field.documents),
            unreadable=self._lookup.unreadable(field.documents),
            vectors_used=vector is not None,
            note=note,
            missing=missing,
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
        )

    def _vector(self, query: str) -> tuple[NDArray[np.float32] | None, str]:
        """Return the question's vector, or None and why there is none."""
        if self._encoder is None:
            return None, f"keywords only: the encoder is not exported; run: {EXPORT}"
        pinned = self._store.manifest()
        if pinned is None:
            return None, "keywords only: nothing has been embedded yet"
        difference = mismatch(pinned, self._encoder.manifest)
        if difference:
            return None, f"keywords only: {difference}; {EMBED_AGAIN}"
        if not query.strip():
            return None, "keywords only: nothing was asked"
        try:
            return self._encoder.embed_query(query), ""
        except InputError:
            return None, "keywords only: the question is too long to be embedded"
        except LibraryError as error:
            return None, f"keywords only: {error.what}; {error.hint}"

    def _hits(self, gathered: Gathered, field: Field, limit: int) -> tuple[Hit, ...]:
        found = self._lookup.passages(gathered.evidence.keys())
        scored = [
            Scored(
                found=found[key],
                evidence=evidence,
                score=fused(
                    evidence,
                    self._weights,
                    confirmed=found[key].document in field.confirmed,
                ),
            )
            for key, evidence in gathered.evidence.items()
        ]

        def same(hashes: Sequence[str]) -> Mapping[str, tuple[Found, ...]]:
            return self._lookup.same_text(hashes, field.documents)

        return hits(scored, field, limit, same)

    def _reason(
        self, gathered: Gathered, missing: tuple[str, ...], *, vectors: bool
    ) -> str:
        """Return why nothing was found, '' when something was."""
        if missing:
            return "code not in these documents"
        evidence = list(gathered.evidence.values())
        if not any(each.coverage or each.cosine or each.code for each in evidence):
            return "no match"
        if not enough(evidence, self._thresholds, vectors=vectors):
            return "below threshold"
        return ""
