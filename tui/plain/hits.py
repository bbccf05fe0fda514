"""Passages found, as plain lines. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from assistant.library.types import Hit, SearchResult
from tui.plain.places import INDENT, page_words
from tui.plain.text import count, excerpt_lines, numbers, wrap, wrap_kept

EXCERPT_LENGTH = 420
NOT_YET = "nothing has been embedded yet"
EMBED = "faultleaf library embed"
UNIT_WORDS = {"confirmed": "for this unit", "possible": "unit not confirmed"}


def found_lines(result: SearchResult, width: int, *, why: bool = False) -> list[str]:
    """Return the hits, best first, or what was searched in vain.

    Parameters
    ----------
    result : SearchResult
        What the search gave.
    width : int
        Columns.
    why : bool
        Show the raw evidence of each hit and how the search went.
    """
    lines: list[str] = []
    if not result.found:
        lines += wrap(_nothing(result), width)
    shown = result.hits
    if why and result.near:
        lines += ["", "What came closest, shown only to explain:"]
        shown = result.near
    for number, hit in enumerate(shown, start=1):
        if lines:
            lines.append("")
        lines += _hit(hit, number, width, why=why)
    if result.note:
        way_out = f" ({EMBED})" if NOT_YET in result.note else ""
        lines += ["", *wrap(result.note + way_out, width)]
    unreadable = list(unreadable_lines(result.unreadable, width))
    return [*lines, "", *unreadable] if unreadable else lines


def unreadable_lines(
    unreadable: Mapping[str, tuple[int, ...]], width: int
) -> Iterator[str]:
    """Name the pages that no search can look into."""
    if unreadable:
        yield "Pages that cannot be searched:"
    for document, pages in sorted(unreadable.items()):
        yield from wrap(f"{document}: PDF page {numbers(pages)}", width, "- ")


def _nothing(result: SearchResult) -> str:
    text = f"Not found in {count(result.searched, 'document')}"
    if result.reason:
        text += f": {result.reason}"
    if result.missing:
        text += f" ({', '.join(_code_words(code) for code in result.missing)})"
    if result.reason == "nothing applies to this unit":
        text += ". --all-units looks through the literature of every unit"
    return f"{text}."


def _code_words(code: str) -> str:
    return f"{code[1:]} flashes" if code.startswith("#") else code


def _hit(hit: Hit, number: int, width: int, *, why: bool) -> Iterator[str]:
    revision = f" rev {hit.revision}" if hit.revision else ""
    place = page_words(hit.page, hit.label, hit.read_by)
    lead = f"{number}. "
    rest = " " * len(lead)
    yield from wrap(f"{hit.title}{revision}, {place}", width, lead)
    told = f"{hit.document}, {UNIT_WORDS.get(hit.unit_match, hit.unit_match)}"
    yield from wrap(told, width, rest)
    if hit.superseded_by:
        yield from wrap(f"SUPERSEDED by {hit.superseded_by}", width, rest)
    if hit.section:
        yield from wrap(f"Section: {hit.section}", width, rest)
    for line in excerpt_lines(hit.text, EXCERPT_LENGTH):
        yield from wrap_kept(line, width, rest + INDENT)
    if hit.also:
        yield from wrap(f"The same text stands in: {'; '.join(hit.also)}", width, rest)
    if why:
        evidence = ", ".join(
            f"{name} {value:.3f}" for name, value in sorted(hit.evidence.items())
        )
        yield from wrap(f"Why: score {hit.score:.4f}; {evidence}", width, rest)
