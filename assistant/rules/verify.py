"""Verifies a loaded pack: sources proved, overlaps and gaps, safe order, dead rows."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Literal

from assistant.rules.figures import check_counts, check_figures, check_point
from assistant.rules.gaps import find_gaps
from assistant.rules.mistakes import Mistake, PackLines, suggest
from assistant.rules.overlaps import find_overlaps
from assistant.rules.pack import Pack
from assistant.rules.reach import check_times, find_unreachable
from assistant.rules.references import items_of, references
from assistant.rules.safe_steps import check_power_order, check_wording
from assistant.rules.sense import check_sense, misplaced
from assistant.rules.sources import PageText, Recognised, prove_sources

__all__ = ["Elsewhere", "PageText", "Recognised", "verify_pack"]

Elsewhere = Callable[[str], frozenset[str] | None]
"""The ids of a pack in force by its own id, or None."""


def verify_pack(
    pack: Pack,
    page_text: PageText,
    lines: PackLines | None = None,
    recognised: Recognised | None = None,
    elsewhere: Elsewhere | None = None,
) -> tuple[Mistake, ...]:
    """Return everything that speaks against a pack, errors and warnings.

    Parameters
    ----------
    pack : Pack
        As `assistant.rules.loader.load_pack` gives it.
    page_text : callable
        ``page_text(document, page)`` gives the text of a physical page of a
        `PackDocument`, or None where the library has no such page.
    lines : PackLines, optional
        As `load_pack_with_lines` gives them; without them mistakes name the file
        and line 0.
    recognised : callable, optional
        Whether a page was read by OCR; a quote on it is to be confirmed by a person.
    elsewhere : callable, optional
        ``elsewhere(pack)`` gives the ids of another pack in force, or None where no
        such pack is; without it names of other packs are not judged.

    Returns
    -------
    tuple of Mistake
        In the order of files and lines. A pack with a mistake of severity `error`
        is not to be put in force.
    """
    places = lines if lines is not None else _by_file(pack)
    found = {
        *prove_sources(pack, page_text, places, recognised),
        *find_overlaps(pack, places),
        *find_gaps(pack, places),
        *_to_other_packs(pack, places, elsewhere),
        *_each_item(pack, places),
        *_points(pack, places),
        *_unreachable(pack, places),
    }
    return tuple(sorted(found))


def _by_file(pack: Pack) -> PackLines:
    """Return places that know the file of each item and no line."""
    return PackLines(
        items={
            item.id: (f"{name}.yaml", ())
            for name, items in items_of(pack).items()
            for item in items
        }
    )


def _to_other_packs(
    pack: Pack, lines: PackLines, elsewhere: Elsewhere | None
) -> Iterator[Mistake]:
    """Yield names of rows of other packs that are not there, or not yet."""
    if elsewhere is None:
        return
    named = [
        (lines.head("supersedes", place, "rows", number), "supersedes", row)
        for place, entry in enumerate(pack.head.supersedes)
        for number, row in enumerate(entry.rows)
    ]
    named += [
        (lines.place(item.id, *reference.path), f"`{item.id}`", reference.name)
        for file, items in items_of(pack).items()
        for item in items
        for reference in references(file, vars(item))
    ]
    for where, label, name in named:
        other, slash, short = name.rpartition("/")
        if not slash or other == pack.head.id:
            continue
        ids = elsewhere(other)
        if ids is None:
            told = f"{label}: no pack `{other}` is in force, which `{name}` names"
            yield Mistake(*where, told, "add that pack as well", "warning")
        elif short not in ids:
            told = f"{label}: pack `{other}` has no `{short}`"
            yield Mistake(*where, told, suggest(short, ids))


def _each_item(pack: Pack, lines: PackLines) -> Iterator[Mistake]:
    for items in items_of(pack).values():
        for item in items:
            for finding in (*check_wording(item), *check_counts(item)):
                where = lines.place(item.id, *finding.path)
                yield Mistake(*where, f"`{item.id}`: {finding.what}", finding.hint)
            for finding in (*check_figures(item), *check_sense(item)):
                where = lines.place(item.id, *finding.path)
                told = f"`{item.id}`: {finding.what}"
                yield Mistake(*where, told, finding.hint, "warning")
            for finding, severe in check_times(item):
                where = lines.place(item.id, *finding.path)
                told = f"`{item.id}`: {finding.what}"
                yield Mistake(*where, told, finding.hint, _severity(severe))
    for check in pack.checks:
        for finding in check_power_order(check):
            where = lines.place(check.id, *finding.path)
            yield Mistake(*where, f"`{check.id}`: {finding.what}", finding.hint)


def _points(pack: Pack, lines: PackLines) -> Iterator[Mistake]:
    """Yield points of tables whose figures are not those of their quotes."""
    for sensor in pack.sensors:
        for number, point in enumerate(vars(sensor).get("points", ())):
            told = check_point(point)
            if told is not None:
                where = lines.point(sensor.id, number)
                hint = "compare both with the page"
                yield Mistake(*where, f"`{sensor.id}`: {told}", hint)
        for number in misplaced(vars(sensor).get("points", ())):
            where = lines.point(sensor.id, number)
            told = "temperature and resistance stand elsewhere in its quote than"
            told = f"`{sensor.id}`: {told} in the other rows"
            yield Mistake(*where, told, "were the two exchanged?")


def _severity(severe: bool) -> Literal["error", "warning"]:
    return "error" if severe else "warning"


def _unreachable(pack: Pack, lines: PackLines) -> Iterator[Mistake]:
    for item, finding, severe in find_unreachable(pack):
        where = lines.place(item.id, *finding.path)
        told = f"`{item.id}`: {finding.what}"
        yield Mistake(*where, told, finding.hint, _severity(severe))
