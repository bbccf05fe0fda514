"""Whether the figures of a row are those of the words it quotes.

A quote that stands on its page proves the page, not the row: a count copied wrongly
beside a right quote would go unseen. So figures that the quote holds are looked for
in the row. A number of flashes and a point of a table must be the quote's own. Of
other figures, what the row has beyond its quote is not judged, and what the quote has
beyond the row is told as a warning, since a quote may speak of more than one row.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import product

from pydantic import BaseModel

from assistant.checks.kinds import CheckBase, SensorBase, TablePoint
from assistant.record import Item
from assistant.rules.findings import Finding
from assistant.signals.seven_segment import plain_code
from assistant.units.names import find_unit
from assistant.units.quantity import Quantity

_WORDS = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen "
    "fourteen fifteen sixteen seventeen eighteen nineteen twenty"
)
_SPELLED = {word: float(number) for number, word in enumerate(_WORDS.split())}
_SPELLED |= {"once": 1.0, "twice": 2.0, "single": 1.0, "double": 2.0}
_NUMBER = re.compile(
    rf"(?<![\w.,])(?<![A-Za-z]-)[-\u2212]?\d+(?:\.\d+)?(?![\w]*\d)|\b(?:{'|'.join(_SPELLED)})\b",
    re.IGNORECASE,
)
_UNIT = re.compile(r"\s?(°\s?[CF]|[A-Za-zµμΩΩ%]+)")
_COUNTED = ("count", "short", "long", "number", "limit")
"""Fields that hold a number as printed."""
SAME = 0.005
"""Two figures within this share are one figure rounded twice."""


def numbers_in(text: str) -> tuple[float, ...]:
    """Return the numbers that a text spells, in digits or in words.

    Examples
    --------
    >>> numbers_in("3 to 5 minutes, E4 twice, 4.15 MPa, M12")
    (3.0, 5.0, 2.0, 4.15)
    """
    return tuple(_value(match[0]) for match in _NUMBER.finditer(text))


def _value(spelled: str) -> float:
    word = spelled.casefold()
    return _SPELLED[word] if word in _SPELLED else float(word.replace("\u2212", "-"))


def quantities_in(text: str) -> tuple[tuple[float, str, str], ...]:
    """Return the quantities of a text: value, canonical unit, as written.

    Examples
    --------
    >>> quantities_in("leave it off for 2 minutes at 230 V")
    ((120.0, 's', '2 minutes'), (230.0, 'V', '230 V'))
    """
    found = []
    for match in _NUMBER.finditer(text):
        spelled = _UNIT.match(text, match.end())
        unit = find_unit(spelled[1]) if spelled is not None else None
        if spelled is not None and unit is not None:
            value = unit.to_canonical(_value(match[0]))
            written = f"{match[0]}{spelled[0]}"
            found.append((value, unit.canonical, written))
    return tuple(found)


def check_counts(item: Item) -> Iterator[Finding]:
    """Yield a number of flashes or stops that is not the one its quote says."""
    fields = vars(item)
    counts = [(n, v) for n in _COUNTED if isinstance(v := fields.get(n), int)]
    if not counts or item.source is None:
        return
    quote = item.source.quote
    held = numbers_in(quote)
    # Where the document adds an offset, the sum is the number that it prints.
    sums = [shown] if isinstance(shown := getattr(item, "shown", None), int) else []
    if held and not any(_among(one, held) for one in (*(v for _, v in counts), *sums)):
        name, value = counts[0]
        told = f"`{name}` is {value}, and the quote says `{quote}`"
        yield Finding((name,), told, "compare both with the page")


def check_figures(item: Item) -> Iterator[Finding]:
    """Yield figures of a row's quote that the row does not have."""
    if item.source is None:
        return
    quote = item.source.quote
    code = vars(item).get("code")
    if isinstance(code, str) and not _names(code, quote, item):
        told = f"`code` is {code}, and the quote does not name it"
        yield Finding(("code",), told, "compare both with the page")
    if isinstance(item, CheckBase | SensorBase):
        yield from _not_derived(item, quote)
    else:
        yield from _missing(item, quote)


def _names(code: str, quote: str, item: Item) -> bool:
    spelled = (code, *getattr(item, "glyph_equivalence", ()))
    words = {plain_code(word.strip("()[].,;:\"'")) for word in quote.split()}
    return any(plain_code(one) in words for one in spelled)


def _missing(item: Item, quote: str) -> Iterator[Finding]:
    """Yield quantities of the quote that stand in no field of the row."""
    told = quantities_in(quote)
    fields = list(_quantities(vars(item))) if told else []
    for value, unit, written in told:
        own = [one.value for one in fields if one.unit == unit]
        if own and not _among(value, own) and not _in_words(item, value, written):
            what = f"the quote says `{written}`, and no field of the row does"
            yield Finding(("source", "quote"), what, "compare both with the page")


def _in_words(item: Item, value: float, written: str) -> bool:
    """Return whether a quantity stands in one of the row's texts."""
    texts = " ".join(_texts(vars(item)))
    said = [one for one, *_ in quantities_in(texts)]
    return _among(value, said) or _among(numbers_in(written)[0], numbers_in(texts))


def _not_derived(item: Item, quote: str) -> Iterator[Finding]:
    """Yield limits of a check that are neither in its quote nor worked out from it.

    A document prints a band as ``46 ± 4`` or as a value and a percentage.
    """
    told = quantities_in(quote)
    for field in ("low", "high"):
        value = getattr(item, field, None)
        if not isinstance(value, Quantity):
            continue
        same = [one for one, unit, _ in told if unit == value.unit]
        if not same:
            continue
        same += [_scale(value) * number for number in numbers_in(quote)]
        shares = [one for one, unit, _ in told if unit == "1"]
        if not _among(value.value, [*same, *_worked_out(same, shares)]):
            what = f"`{field}` {value.text} is not in the quote `{quote}`"
            yield Finding((field,), what, "compare both with the page")


def _worked_out(values: Sequence[float], shares: Sequence[float]) -> Iterator[float]:
    """Yield sums and differences of the figures, and values with a percentage."""
    for one, other in product(values, values):
        yield from (one + other, one - other)
    for value, share in product(values, shares):
        yield from (value * (1 + share), value * (1 - share))


def _scale(value: Quantity) -> float:
    """Return what one of the unit written is in the canonical unit."""
    own = numbers_in(value.text)
    return value.value / own[0] if own and own[0] else 1.0


def _quantities(fields: Mapping[str, object]) -> Iterator[Quantity]:
    for value in fields.values():
        for one in value if isinstance(value, tuple) else (value,):
            if isinstance(one, Quantity):
                yield one
            elif isinstance(one, BaseModel):
                yield from _quantities(vars(one))


def _texts(fields: Mapping[str, object]) -> Iterator[str]:
    for name, value in fields.items():
        if name == "source":
            continue
        for one in value if isinstance(value, tuple) else (value,):
            if isinstance(one, str):
                yield one
            elif isinstance(one, BaseModel) and not isinstance(one, Quantity):
                yield from _texts(vars(one))


def _among(value: float, held: Iterable[float]) -> bool:
    return any(abs(value - one) <= SAME * max(abs(value), abs(one)) for one in held)


def check_point(point: TablePoint) -> str | None:
    """Return what a point of a table has that its quote has not, or None."""
    held = numbers_in(point.quote)
    if not held:
        return None
    for quantity in (point.temperature, point.resistance):
        own = numbers_in(quantity.text)
        if own and not _among(own[0], held):
            return f"{quantity.text} is not in the quote `{point.quote}`"
    return None
