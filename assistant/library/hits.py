"""From ordered candidates to hits: one a text, pages spread, replaced ones last."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from assistant.library.fusion import Evidence
from assistant.library.lookup import Found
from assistant.library.types import OCR, Document, Hit

SPREAD = 3
"""So many first hits are each from another page."""


@dataclass(frozen=True, slots=True)
class Field:
    """What one search may look at."""

    documents: Mapping[int, Document]
    confirmed: frozenset[int]
    """Keys of documents that surely apply to the unit."""
    replaced: Mapping[int, str]
    """Key of a superseded document -> title of the one that replaces it."""
    unconfirmed: bool = False
    """The unit is told, some documents do not apply to it, and none surely does."""


@dataclass(frozen=True, slots=True)
class Scored:
    """A candidate with its evidence and the score that orders it."""

    found: Found
    evidence: Evidence
    score: float


def order(scored: Sequence[Scored], field: Field) -> list[Scored]:
    """Sort best first: what is in force before what is replaced, then by score.

    Ties go by path, page and place on the page, so that the order in which
    documents were added does not matter.
    """

    def key(each: Scored) -> tuple[bool, float, str, int, int, int]:
        found = each.found
        path = field.documents[found.document].path
        place = (path, found.passage.page, found.passage.start, found.id)
        return (found.document in field.replaced, -each.score, *place)

    return sorted(scored, key=key)


def spread(ordered: Sequence[Scored]) -> list[Scored]:
    """Move a second passage of a page behind the first hits of other pages.

    A page is what a person opens; three hits on one page are one suggestion.
    """
    first: list[Scored] = []
    later: list[Scored] = []
    pages: set[tuple[int, int]] = set()
    for each in ordered:
        page = (each.found.document, each.found.passage.page)
        if len(first) < SPREAD and page not in pages:
            first.append(each)
            pages.add(page)
        else:
            later.append(each)
    return first + later


def once(ordered: Sequence[Scored]) -> list[tuple[Scored, list[Found]]]:
    """Keep the first of each text, with the others that say the same."""
    kept: dict[str, tuple[Scored, list[Found]]] = {}
    for each in ordered:
        text = " ".join(each.found.passage.text.split())
        if text in kept:
            kept[text][1].append(each.found)
        else:
            kept[text] = (each, [])
    return list(kept.values())


def hits(
    scored: Sequence[Scored],
    field: Field,
    limit: int,
    same: Callable[[Sequence[str]], Mapping[str, tuple[Found, ...]]],
) -> tuple[Hit, ...]:
    """Return the best hits of scored candidates.

    Parameters
    ----------
    same : callable
        Gives by text hash every searched passage that has that text: the best of
        them need not all have been candidates.
    """
    singles = once(order(scored, field))
    others = {each.found.id: also for each, also in singles}
    best = spread([each for each, _ in singles])[:limit]
    twins = same([each.found.text_hash for each in best])
    return tuple(
        _hit(
            each, [*others[each.found.id], *twins.get(each.found.text_hash, ())], field
        )
        for each in best
    )


def _hit(each: Scored, others: Sequence[Found], field: Field) -> Hit:
    found = each.found
    document = field.documents[found.document]
    own = _place(found, field)
    also = sorted({_place(other, field) for other in others} - {own})
    return Hit(
        passage_id=found.id,
        document=document.path,
        document_id=document.document_id,
        title=document.title,
        revision=document.revision,
        page=found.passage.page,
        label=found.label,
        section=found.passage.section,
        text=found.passage.text,
        score=each.score,
        unit_match="confirmed" if found.document in field.confirmed else "possible",
        also=tuple(also),
        evidence={
            name: round(value, 4) for name, value in each.evidence._asdict().items()
        },
        superseded_by=field.replaced.get(found.document, ""),
        read_by=found.read_by,
    )


def _place(found: Found, field: Field) -> str:
    said = " (read by OCR)" if found.read_by == OCR else ""
    return f"{field.documents[found.document].path} p. {found.passage.page}{said}"
