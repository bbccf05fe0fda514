"""Which rows of a table can be one sight at all: the few pairs worth comparing.

Two rows are compared in full only where they share what one look would show, a
number, a state or the shape of a code, on lamps that can be one lamp. What is left
out here can never be one sight, so nothing is lost, and ten thousand rows are
verified without looking at fifty million pairs.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, product

from assistant.signals.cells import Shown, Together, cells_of, lamp_of
from assistant.signals.fits import board_words, colours_near, label_forms
from assistant.signals.kinds import (
    AnalogRate,
    Beeps,
    CountPerWindow,
    DigitPosition,
    DisplayCode,
    DisplayValue,
    EvenBlink,
    GroupThenPause,
    Heartbeat,
    Lamp,
    LampState,
    MainSubCode,
    RateBlink,
    ShortLong,
    Signal,
    SingleFlash,
)
from assistant.signals.seven_segment import plain_code, shapes
from assistant.signals.shown import read_value

Key = tuple[object, ...]
CONDITIONS = (
    "mode",
    "unit_state",
    "unit_state_required",
    "precondition",
    "stored",
)
"""What a row may state beside its lamps that tells it from another row."""


def candidate_pairs(rows: Sequence[Signal]) -> Iterator[tuple[Signal, Signal]]:
    """Yield the pairs of rows, in the order written, that one look might not tell.

    Rows whose circumstances (mode, unit state, settings, history) are written
    differently are told apart and not yielded.
    """
    lamps = _Lamps()
    kinds: dict[Key, list[int]] = defaultdict(list)
    displays: dict[Key, list[int]] = defaultdict(list)
    for place, row in enumerate(rows):
        held = conditions(row)
        for sign in _signs(row):
            kinds[(*held, *sign)].append(place)
        if isinstance(row, Shown):
            displays[held].append(place)
    found: set[tuple[int, int]] = set()
    for places in kinds.values():
        found.update(_by_lamp(rows, places, lamps))
    for places in displays.values():
        found.update(_codes_read_otherwise(rows, places))
    for one, other in sorted(found):
        yield rows[one], rows[other]


def conditions(row: Signal) -> Key:
    """Return what a row states of its circumstances."""
    return tuple(getattr(row, name) for name in CONDITIONS)


def _signs(row: Signal) -> Iterable[Key]:
    """Return what a look at the row shows; rows that share none are told apart."""
    match row:
        case CountPerWindow() | GroupThenPause():
            return [("count", row.count)]
        case SingleFlash():
            return [("count", 1), ("even",)]
        case EvenBlink() | RateBlink() | Heartbeat():
            return [("even",)]
        case AnalogRate():
            return [("analogue",)]
        case ShortLong():
            return [("short and long", row.short, row.long)]
        case Beeps():
            return [("beeps", row.count)]
        case _:
            return _other_signs(row)


def _other_signs(row: Signal) -> Iterable[Key]:
    if isinstance(row, Together):
        return [("together",)]
    match row:
        case DisplayCode():
            codes = (row.code, *row.glyph_equivalence)
            return {("code", shape) for code in codes for shape in shapes(code)}
        case MainSubCode():
            return {("code", shape) for shape in shapes(row.code)}
        case DigitPosition():
            signs = shapes(row.sign.strip() or "_")
            return {("place", row.position, row.of, shape) for shape in signs}
        case DisplayValue():
            return [("value",)]
        case _:
            return [(row.kind,)]


def _codes_read_otherwise(
    rows: Sequence[Signal], places: Sequence[int]
) -> Iterator[tuple[int, int]]:
    """Yield a code with each value, and each sign at its place, that it may be."""
    codes = [
        (place, row.code)
        for place in places
        if isinstance(row := rows[place], DisplayCode | MainSubCode)
    ]
    numbers = [(place, code) for place, code in codes if not code.isalpha()]
    at_place: dict[Key, list[int]] = defaultdict(list)
    for place in places:
        row = rows[place]
        if isinstance(row, DigitPosition):
            at_place[row.of, row.position].append(place)
        if isinstance(row, DisplayValue):
            for number, code in numbers:
                if read_value(code, row) is not None:
                    yield (min(place, number), max(place, number))
    for (of, _), held in at_place.items():
        short = [number for number, code in codes if len(plain_code(code)) == of]
        yield from _ordered(product(held, short))


@dataclass(frozen=True, slots=True)
class _Looks:
    """A lamp's names folded for comparison."""

    labels: frozenset[str]
    board: frozenset[str]
    box: str | None
    colour: str | None


class _Lamps:
    """Every lamp of a pack once, with the lamps that may be the same one."""

    def __init__(self) -> None:
        self._looks: dict[Lamp, _Looks] = {}

    def looks(self, lamp: Lamp) -> _Looks:
        """Return a lamp's folded names."""
        if lamp not in self._looks:
            names = [name for name in (lamp.label, lamp.role) if name is not None]
            forms = frozenset(form for name in names for form in label_forms(name))
            board = frozenset(board_words(lamp.board or ""))
            colour = lamp.colour.strip().casefold() if lamp.colour else None
            self._looks[lamp] = _Looks(forms, board, lamp.box, colour)
        return self._looks[lamp]

    def may_be_one(self, one: Lamp, other: Lamp) -> bool:
        """Return whether nothing that both say differs."""
        a, b = self.looks(one), self.looks(other)
        if a.labels and b.labels and not a.labels & b.labels:
            return False
        if a.board and b.board and not (a.board <= b.board or b.board <= a.board):
            return False
        if a.box and b.box and a.box != b.box:
            return False
        return not (a.colour and b.colour and not colours_near(a.colour, b.colour))

    def alike(self, lamps: Iterable[Lamp]) -> Iterator[tuple[Lamp, Lamp]]:
        """Yield pairs of lamps that may be one; lamps with a print by that print."""
        named: dict[str, list[Lamp]] = defaultdict(list)
        nameless = []
        every = list(dict.fromkeys(lamps))
        for lamp in every:
            forms = self.looks(lamp).labels
            for form in sorted(forms):
                named[form].append(lamp)
            if not forms:
                nameless.append(lamp)
        pairs = [pair for held in named.values() for pair in combinations(held, 2)]
        pairs += [(one, two) for one in nameless for two in every if one is not two]
        for one, other in pairs:
            if self.may_be_one(one, other):
                yield one, other


def _by_lamp(
    rows: Sequence[Signal], places: Sequence[int], lamps: _Lamps
) -> Iterator[tuple[int, int]]:
    """Yield pairs among rows that look alike whose lamps can be one lamp."""
    if len(places) > 1 and isinstance(rows[places[0]], Together):
        yield from _together(rows, places, lamps)
        return
    whose: dict[Lamp, list[int]] = defaultdict(list)
    for place in places:
        whose[_lamp(rows[place])].append(place)
    for held in whose.values():
        yield from combinations(held, 2)
    for one, other in lamps.alike(whose):
        yield from _ordered(product(whose[one], whose[other]))


_NO_LAMP = Lamp()


def _lamp(row: Signal) -> Lamp:
    return (None if isinstance(row, Together) else lamp_of(row)) or _NO_LAMP


def _ordered(pairs: Iterable[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    for one, other in pairs:
        if one != other:
            yield (one, other) if one < other else (other, one)


def _together(
    rows: Sequence[Signal], places: Sequence[int], lamps: _Lamps
) -> Iterator[tuple[int, int]]:
    """Yield pairs of rows of several lamps with a lamp in both and no lamp at odds."""
    states: dict[int, dict[Lamp, LampState]] = {}
    whose: dict[Lamp, list[int]] = defaultdict(list)
    for place in places:
        row = rows[place]
        if isinstance(row, Together):
            states[place] = {cell.lamp: cell for cell in cells_of(row)}
            for lamp in states[place]:
                whose[lamp].append(place)
    tried: set[tuple[int, int]] = set()
    for held in whose.values():
        tried.update(combinations(held, 2))
    for one, other in lamps.alike(whose):
        tried.update(_ordered(product(whose[one], whose[other])))
    for first, second in tried:
        mine, theirs = states[first], states[second]
        if not any(at_odds(mine[lamp], theirs[lamp]) for lamp in mine.keys() & theirs):
            yield first, second


_STILL = frozenset({"on", "off"})


def at_odds(one: LampState, other: LampState) -> bool:
    """Return whether one lamp cannot do both at once."""
    if "any" in (one.state, other.state):
        return False
    if one.state in _STILL or other.state in _STILL:
        return one.state != other.state
    if one.state == other.state == "count":
        return one.count != other.count
    return False
