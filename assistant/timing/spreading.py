"""Whether uncertain instants can lie so that no window holds too many of them."""

from __future__ import annotations

from collections.abc import Sequence

Span = tuple[int, int]

MOST_STEPS = 20_000
"""Placements tried before the answer is left open."""


def can_be_spread(spans: Sequence[Span], limit: int, apart: int) -> bool:
    """Return whether no `limit` of the instants need lie closer than `apart`.

    Each is placed within its span; of any `limit` in a row the last must lie at
    least `apart` after the first. Placing them from left to right, each as early as
    it may be, in every order that can matter, finds a placement if there is one:
    moving an instant earlier never brings it closer to those after it. Where the
    search is cut short the answer is True, which claims least.

    Parameters
    ----------
    spans : sequence of (int, int)
        Earliest and latest place of each instant; both inclusive.
    limit : int
        At least 1; with 1 nothing may be placed at all.
    apart : int
        In the unit of `spans`.

    Examples
    --------
    >>> can_be_spread([(0, 0), (0, 20)], 2, 10), can_be_spread([(0, 5), (0, 9)], 2, 10)
    (True, False)
    """
    if limit == 1:
        return not spans
    budget = [MOST_STEPS]
    return _place(tuple(sorted(spans)), (), limit, apart, budget)


def _place(
    left: tuple[Span, ...],
    placed: tuple[int, ...],
    limit: int,
    apart: int,
    budget: list[int],
) -> bool:
    if not left:
        return True
    budget[0] -= 1
    if budget[0] < 0:
        return True
    floor = placed[-1] if placed else left[0][0]
    if len(placed) >= limit - 1:
        floor = max(floor, placed[-(limit - 1)] + apart)
    if any(late < max(floor, early) for early, late in left):
        return False
    return any(
        _place(
            tuple(span for other, span in enumerate(left) if other != number),
            (*placed, max(floor, left[number][0])),
            limit,
            apart,
            budget,
        )
        for number in _choices(left, floor)
    )


def _choices(left: Sequence[Span], floor: int) -> list[int]:
    """Return which spans are worth placing next.

    Of those open at `floor` the one that closes first stands for all; a span that
    opens later competes only if it opens before every other choice would close.
    """
    open_now = [n for n, (early, _) in enumerate(left) if early <= floor]
    later = [n for n, (early, _) in enumerate(left) if early > floor]
    first = min(open_now, key=lambda n: left[n][1], default=None)
    return [*([first] if first is not None else []), *later]
