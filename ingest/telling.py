"""What adding warns of, in sentences: pure."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence

from assistant.library.sayings import Earlier
from assistant.library.types import ID_DIGITS, TEXTLESS, Document, Page, PageStatus
from ingest.keeping import Kept
from ingest.near import NearPair, near_pairs

WARN_SHARE = 0.2
WARN_PAGES = 10


def textless_warning(path: str, pages: Sequence[Page], way: str = "") -> Iterator[str]:
    """Give a warning when too much of a document cannot be searched.

    That is ten pages, or more than a fifth of those that are not blank. The `way`
    out is said behind it.
    """
    counts: Mapping[PageStatus, int] = Counter(page.status for page in pages)
    lost = sum(counts.get(status, 0) for status in TEXTLESS)
    written = len(pages) - counts.get(PageStatus.BLANK, 0)
    if lost >= WARN_PAGES or lost > WARN_SHARE * written:
        out = f"; {way}" if way else ""
        yield f"{path}: {lost} of {written} pages cannot be searched (no text){out}"


def namesake(path: str, other: Document) -> str:
    """Warn of a file that has the path of another one, and is not its next state."""
    return (
        f"{path}: {other.path} from another folder stays in the library beside it; "
        f"if this is its new edition: faultleaf remove {other.document_id}"
    )


def replaced_line(kept: Kept, before: Document) -> str:
    """Say which state is current now and which one it took the place of."""
    now = kept.document
    if now.sha256 == before.sha256:
        return f"{now.path}: read again"
    return (
        f"{now.path}: {state_text(now)} is current; {state_text(before)} is gone "
        "from the library"
    )


def lapsed_warning(kept: Kept) -> Iterator[str]:
    """Warn that what a person said of the state before does not hold any more."""
    if kept.lapsed:
        fields = ", ".join(kept.lapsed)
        yield (
            f"{kept.document.path}: stated of its earlier state, counts no more: "
            f"{fields}; look at it: faultleaf library show {kept.document.document_id}"
        )


def gone_warning(document: Document) -> str:
    """Warn of a document without a file."""
    return (
        f"{document.path}: its file is gone from the folder and it still answers; "
        "the same command with --prune takes such documents out"
    )


def near_lines(
    documents: Collection[Document],
    units: Mapping[str, frozenset[str]],
    among: Collection[str] = (),
) -> list[str]:
    """Say which documents say nearly the same, in order of their paths."""
    known = {each.sha256: each for each in documents}
    return sorted(_near_line(pair, known) for pair in near_pairs(units, among))


def _near_line(pair: NearPair, known: Mapping[str, Document]) -> str:
    """Say of two documents how much they share, and what may be done."""
    share, back = pair.share_of_one, pair.share_of_other
    first, second = known[pair.one], known[pair.other]
    if share < back:
        share, back, first, second = back, share, second, first
    return (
        f"{first.path}: {round(100 * share)} % of it stands in {second.path} too "
        f"({round(100 * back)} % the other way); if one replaces the other: "
        "faultleaf library set NEW --supersedes OLD"
    )


def state_text(state: Document | Earlier) -> str:
    """Name one state of a file: its identity, revision and date."""
    revision = f"rev {state.revision}" if state.revision else ""
    told = ", ".join(filter(None, (revision, state.date)))
    identity = state.sha256[:ID_DIGITS]
    return f"{identity} ({told})" if told else identity
