"""Answers that are readings: "46k", "kilohms", "70F", as the question makes them."""

from __future__ import annotations

import re
from dataclasses import replace

from assistant.facts import ReadingFact
from assistant.language.asked import Asked
from assistant.language.choices import chosen
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.quantities import SPELLED, UNIT, possibilities, quantity
from assistant.language.readings import readings
from assistant.units.parse import parse_quantity
from assistant.units.quantity import Quantity

_UNNAMED = frozenset(
    {"resistance", "voltage", "current", "temperature", "pressure", "sensor"}
)
"""Measurands that say no more than the unit does."""
_VOLTAGES = frozenset({"supply", "bus"})
_LONE = rx(rf"(?P<n>{NUMBER})")
_NUMBER_UNIT = rx(rf"(?P<n>{NUMBER}) (?P<unit>{UNIT})")
_OPEN = rx(r"ol|o l|open(?: line)?|infinite|infinity|nothing|over limit")
_UNIT_ALONE = rx(UNIT)


def measured(asked: Asked) -> list[Claim]:
    """Return the reading that an answer gives, under the check that was asked for."""
    name, _ = asked.pending.about
    if name == "unit_of":
        return _unit_of(asked)
    if name == "temperature":
        return _temperature(asked)
    return _reading(asked) if name == "reading" else []


def _reading(asked: Asked) -> list[Claim]:
    """Read "46k at 70F" or "OL"; a number without a unit stays open."""
    told = readings(asked.view, asked.vocabulary)
    if told:
        return [_named(claim, asked.subject) for claim in told]
    match = _OPEN.search(asked.view.folded)
    if match:
        return [Claim(*match.span(), ReadingFact(of=asked.subject, open_line=True))]
    match = _LONE.search(asked.view.folded)
    if match is None:
        return []
    kind = "voltage" if asked.subject in _VOLTAGES else "anything"
    could = possibilities(match["n"], kind)
    fact = _one_or_open(asked.subject, could)
    return [Claim(*match.span(), fact)] if fact else []


def _named(claim: Claim, subject: str) -> Claim:
    if isinstance(claim.item, ReadingFact) and claim.item.of in _UNNAMED:
        return replace(claim, item=claim.item.model_copy(update={"of": subject}))
    return claim


def _one_or_open(of: str, could: tuple[Quantity, ...]) -> ReadingFact | None:
    if len(could) == 1:
        return ReadingFact(of=of, value=could[0])
    return ReadingFact(of=of, readings_possible=could) if could else None


def _temperature(asked: Asked) -> list[Claim]:
    """Read the temperature that a reading was taken at; it needs its unit."""
    for match in _NUMBER_UNIT.finditer(asked.view.folded):
        value = quantity(match["n"], SPELLED[match["unit"]])
        if value is not None and value.unit == "K":
            fact = ReadingFact(of="", at_temperature=value)
            return [Claim(*match.span(), fact)]
    return []


def _unit_of(asked: Asked) -> list[Claim]:
    """Read which of the quantities in question was meant."""
    match = _UNIT_ALONE.search(asked.view.folded)
    if match:
        value = _in_unit(asked, SPELLED[match[0]])
        span = match.span()
    else:
        option = chosen(asked.view, asked.pending.options)
        value = _parsed(option) if option else None
        span = (0, len(asked.view.folded))
    return [Claim(*span, ReadingFact(of=asked.subject, value=value))] if value else []


def _in_unit(asked: Asked, unit: str) -> Quantity | None:
    """Return the quantity in question that is stated in the unit."""
    wanted = quantity("1", unit)
    for text in (*asked.pending.options, asked.pending.last_reading):
        number = re.match(NUMBER, text.replace(",", ""))
        value = _parsed(text)
        if number and value and wanted and value.unit == wanted.unit:
            stated = quantity(number[0], unit)
            if stated and (len(asked.pending.options) == 1 or _agree(stated, asked)):
                return stated
    return None


def _agree(stated: Quantity, asked: Asked) -> bool:
    """Tell whether a quantity is one of those in question."""
    options = [_parsed(text) for text in asked.pending.options]
    known = [option.value for option in options if option is not None]
    return not known or any(
        abs(value - stated.value) <= _SHOWN * abs(value) for value in known
    )


_SHOWN = 0.006
"""Share by which a shown quantity may be rounded: three digits."""


def _parsed(text: str) -> Quantity | None:
    try:
        return parse_quantity(text)
    except ValueError:
        return None
