"""Rows that are right in form and at odds with themselves."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from assistant.checks.comparing import STORED_CHARGE_LIMIT
from assistant.checks.kinds import CheckBase, TablePoint
from assistant.record import Item
from assistant.rules.figures import numbers_in, quantities_in
from assistant.rules.findings import Finding
from assistant.signals.kinds import SignalBase
from assistant.units.quantity import Quantity

_MORE = r"(?:more than|above|over|higher than|greater than)"
_LESS = r"(?:less than|below|under|lower than)"
_AT_LEAST = re.compile(
    rf"\b(?:at least|or more|or above|minimum|not {_LESS}|(?<!not ){_MORE})\b|[≥>]",
    re.IGNORECASE,
)
_AT_MOST = re.compile(
    rf"\b(?:at most|or less|or below|maximum|up to|not {_MORE}|(?<!not ){_LESS})\b"
    r"|[≤<]",
    re.IGNORECASE,
)
FEWEST = 4
"""Points of a table from which most of them show where its quotes hold the figures."""


def check_sense(item: Item) -> Iterator[Finding]:
    """Yield what speaks against a row from within; each is a warning."""
    if isinstance(item, SignalBase) and not item.is_fault and item.causes:
        told = "it is no fault, and names causes of one"
        yield Finding(("is_fault",), told, "write `is_fault: true`, or no causes")
    if isinstance(item, CheckBase):
        yield from _moves(item)
        yield from _direction(item)
        yield from _live_words(item)


def _live_words(check: CheckBase) -> Iterator[Finding]:
    """Yield a check with the power off that asks for what only a live unit shows."""
    if check.needs != "power_off":
        return
    told = quantities_in(check.ask)
    if _TESTER.search(check.ask) or any(unit == "ohm" for _, unit, _ in told):
        return
    volts = [value for value, unit, _ in told if unit == "V"]
    if max(volts, default=0.0) > STORED_CHARGE_LIMIT or _LIVE.search(check.ask):
        what = "it asks for what is there only while the supply is on"
        yield Finding(("needs",), what, "write `needs: live`")


_TESTER = re.compile(
    r"\b(?:insulation|tester|(?:to|against) (?:ground|earth|frame))\b", re.I
)
"""An insulation tester brings its own volts."""
_LIVE = re.compile(r"\b(?:the same voltage|voltage between|while running)\b", re.I)


def _moves(check: CheckBase) -> Iterator[Finding]:
    """Yield results that move the causes the wrong way about."""
    for place, outcome in enumerate(check.outcomes):
        moves = set(outcome.moves.values())
        against = {move for move in moves if move.endswith("against")}
        spoken_for = {move for move in moves if move.endswith("for")}
        at = ("outcomes", place, "moves")
        if outcome.result == "fail" and against and not spoken_for:
            told = "a check that fails speaks against causes and for none"
            yield Finding(at, told, "compare it with the page")
        if outcome.result == "pass" and "strongly for" in moves and not against:
            told = "a check that passes speaks strongly for a cause and against none"
            yield Finding(at, told, "compare it with the page")


def _direction(check: CheckBase) -> Iterator[Finding]:
    """Yield a single limit that is written the other way round than it is quoted."""
    low, high = (vars(check).get(name) for name in ("low", "high"))
    if check.source is None or isinstance(low, Quantity) == isinstance(high, Quantity):
        return
    quote = check.source.quote
    least, most = _AT_LEAST.search(quote), _AT_MOST.search(quote)
    if isinstance(high, Quantity) and least and not most:
        told = f"`high` {high.text}, and the quote says `{least[0]}`"
        yield Finding(("high",), told, "write it as `low`")
    if isinstance(low, Quantity) and most and not least:
        told = f"`low` {low.text}, and the quote says `{most[0]}`"
        yield Finding(("low",), told, "write it as `high`")


def misplaced(points: Sequence[TablePoint]) -> Iterator[int]:
    """Yield points whose figures stand in other places of the quote than the rest.

    A row of a table is quoted as it is printed, so temperature and resistance have
    their places in it; a point with the two exchanged has them the other way round.
    """
    places = [_places(point) for point in points]
    counted = Counter(pair for held in places for pair in held)
    if len(points) < FEWEST or not counted:
        return
    usual, times = min(counted.items(), key=lambda entry: (-entry[1], entry[0]))
    if times <= len(points) // 2:
        return
    for number, held in enumerate(places):
        if held and usual not in held:
            yield number


def _places(point: TablePoint) -> frozenset[tuple[int, int]]:
    """Return where in its quote a point has its temperature and its resistance."""
    held = numbers_in(point.quote)
    own = [numbers_in(q.text) for q in (point.temperature, point.resistance)]
    if not all(own):
        return frozenset()
    first, second = (
        [place for place, number in enumerate(held) if number == figure[0]]
        for figure in own
    )
    return frozenset((a, b) for a in first for b in second if a != b)
