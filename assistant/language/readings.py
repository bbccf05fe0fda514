"""Readings: a number, its unit if told, and what it is of."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Literal

from assistant.facts import Fact, ReadingFact, TemperatureFact
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.loose import is_baseline, pressure_pairs, rough_end
from assistant.language.measurands import Measurand, measurands
from assistant.language.quantities import (
    DIMENSION,
    SPELLED,
    UNIT,
    possibilities,
    quantity,
)
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.units.quantity import Quantity

_OPEN = (
    r"(?:(?<=ground )open|(?<=sensor )open|(?<=sensor is )open|ol|o ?\.? ?l|open line|"
    r"open circuit|infinite|infinity|infinite ohm|over limit|(?:reads?|reading|shows?|"
    r"measures?|reads as|read) open|(?:reads?|reading|shows?|get|got|getting) nothing|"
    r"no continuity)"
)
_NUMBERS = rx(
    rf"(?P<n>{NUMBER})(?P<of> of)?(?: (?P<unit>{UNIT})(?P<kind> ac| dc)?(?! (?:flashes|"
    r"times)))?"
    rf"|(?P<open>{_OPEN})"
)
_NOT_A_READING = rx(
    r"(?:flashes|flash|flashing|times|x|sec|min|hour|day|week|month|year|reds|greens|"
    r"red|green|amber|yellow|orange|blue|lights?|beeps?|longs?|shorts?|quick|long|"
    r"short|fast|slow|of them|percent|%|lights|wires?|pins?|phase|trips?|stops?|units?|"
    r"sizes|ton|tons|ago|other|others|and again|past|/|s|h|am|pm|resets?|more|boards?|"
    r"guys|people|things|codes?)"
)
_NOT_BEFORE = rx(
    r"(?:flash|flashes|flashing|flashed|beeps?|beeping|code|codes|fault|error|at a "
    r"time|pin|pins|terminal|terminals|number|step|page|table|week|serial|model|light|"
    r"or so|cn|tb|switch|sw|type|the|after|last|every|in|for|within)"
)
_LOAD = rx(
    r"under load|while (?:it is )?running|when (?:it )?(?:starts|runs|kicks in)|with "
    r"(?:the )?compressor (?:on|running)|at start(?: ?up)?|loaded|running|on start"
)
_VOLTS = rx(r"dc|ac|v|volts|voltage")
_LIVE = rx(r"live|power on|with (?:the )?power on|powered(?: up)?|energi[sz]ed|running")
_DEAD = rx(
    r"power off|with (?:the )?(?:power|breaker) (?:off|pulled)|unplugged|disconnected|"
    r"isolated|dead|breaker off|deenergi[sz]ed"
)
_SWINGS = rx(
    r"(?:jump|jumps|jumping|swing|swings|swinging|bounces?|bouncing|moves?|moving|goes|"
    r"going|fluctuat\w+|varies|ranges) (?:about |around |from |between |like "
    rf")*(?P<a>{NUMBER})(?: v)? (?:to|and|-|or) (?P<b>{NUMBER})(?: v(?: dc)?)?"
)
_AT = re.compile(
    r"(?:^|.* )(?:at|(?:with|and|,)(?: the)? (?:pipe|it|sensor|coil)(?: "
    r"temperature)?(?: is| at| about| around| being)*|temperature(?: is| at)*)$"
)
_LINK = re.compile(
    r"^(?: (?:is|was|are|at|reads?|reading|of|a|about|like|around|,|the|now|outside|"
    r"inside|here|only|just|it|shows?|showing|measures?|measured|says?|got|i|get|dc|ac|"
    r"on|sitting|coming|in|up|down|to|across|meter|and|roughly|approx|as|side|both|all|"
    r"there|from|comes|out|sensor|pin|pins|[uvw]|has|with|under|unplugged|disconnected|"
    r"voltage|temperature|pressure|current|drops|dropped|sags|sagged|sits))* ?$"
)
_CAN_BE_OPEN = frozenset({"", "unknown", "resistance", "winding", "named check"})
_DIFFERENCES = {
    "C": "K difference",
    "F": "F difference",
    "kohm": "K difference",
}
"""Units of a superheat, which is no temperature; a folded `K` is a `k`."""
_NEAR = 40
"""Letters of folded text between a number and its measurand in a list."""
_COMMA = 3
"""A comma between counts as so many words."""
_LISTED = re.compile(
    rf"{NUMBER}|,|and|k|ohm|kohm|v|across|on|at|the|all|for|i|got|get|about|like|"
    r"drops?|dropped|dips?|sags?|falls?|to|then|down"
)
_PLACES: dict[str, Literal["indoor", "outdoor"]] = {
    "room temperature": "indoor",
    "outdoor temperature": "outdoor",
}


@dataclass(frozen=True, slots=True)
class _Number:
    start: int
    end: int
    text: str
    unit: str | None
    is_open: bool
    rough: bool = False


def readings(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim every number that has a unit or a measurand, and every open line."""
    swings = [*_swings(view, vocabulary), *pressure_pairs(view)]
    rest = view.without([(claim.start, claim.end) for claim in swings])
    named = measurands(rest.folded, vocabulary)
    numbers = _numbers(rest, named)
    claims: list[Claim] = []
    skip = -1
    for at, number in enumerate(numbers):
        if at == skip:
            continue
        after = numbers[at + 1] if at + 1 < len(numbers) else None
        basis = _temperature_of(rest, number, after)
        bare_basis = _is_bare_basis(rest, number, after)
        skip = at + 1 if basis or bare_basis else skip
        claim = _reading(rest, number, _measurand(number, named, rest, numbers), basis)
        if claim and basis and after:
            claim = replace(claim, end=max(claim.end, after.end))
        claims += [claim] if claim else []
    return [*swings, *claims]


def _numbers(view: Tokens, named: list[Measurand]) -> list[_Number]:
    found = []
    for match in _NUMBERS.finditer(view.folded):
        inside = any(m.start <= match.start() and match.end() <= m.end for m in named)
        if inside or (match["n"] and _is_other(view, match)):
            continue
        unit = _unit(view, match)
        end = match.end() if unit or match["open"] else match.end("n")
        loose = None if match["open"] else rough_end(view, end)
        if loose is not None:
            end, unit = loose[0], unit or loose[1]
        number = match["n"] or ""
        is_open, rough = bool(match["open"]), loose is not None
        found.append(_Number(match.start(), end, number, unit, is_open, rough))
    return found


def _is_other(view: Tokens, match: re.Match[str]) -> bool:
    """Tell whether a number counts flashes, times or things, and is no reading."""
    after = view.folded[match.end() + 1 : match.end() + 20]
    before = view.folded[max(0, match.start() - 16) : match.start()].split()
    if not match["unit"] and _NOT_A_READING.match(after):
        return True
    return (
        bool(before) and not match["unit"] and bool(_NOT_BEFORE.fullmatch(before[-1]))
    )


def _unit(view: Tokens, match: re.Match[str]) -> str | None:
    """Return the unit as `assistant.units` spells it; "4 a ..." is no ampere."""
    unit = match["unit"]
    if not unit:
        return None
    at = match.start("unit")
    glued = view.source[view.span(at, at + 1)[0] - 1].strip() != ""
    if unit in {"a", "m"} and not glued:
        return None
    if match["kind"] and unit == "v":
        return SPELLED["v" + match["kind"]]
    return SPELLED[unit]


def _measurand(
    number: _Number, named: list[Measurand], view: Tokens, numbers: list[_Number]
) -> Measurand | None:
    """Return what a number is of: the nearest fitting name in its sentence."""
    start, end = view.sentence(number.start)
    ranked: list[tuple[int, int, Measurand]] = []
    for measurand in named:
        if (
            start <= measurand.start
            and measurand.end <= end
            and _fits(measurand, number)
        ):
            before = measurand.end <= number.start
            low, high = (
                (measurand.end, number.start)
                if before
                else (number.end, measurand.start)
            )
            gap = view.folded[low:high] if low <= high else "?"
            if _LINK.match(gap) or _is_list(gap, numbers, low, high):
                far = len(gap.split()) + _COMMA * gap.count(",") + (not before)
                ranked.append((far, measurand.start, measurand))
    return min(ranked)[2] if ranked else None


def _is_list(gap: str, numbers: list[_Number], low: int, high: int) -> bool:
    """Tell whether only numbers, units and "and" stand between."""
    between = any(low <= other.start and other.end <= high for other in numbers)
    return between and len(gap) <= _NEAR and all(map(_LISTED.fullmatch, gap.split()))


def _fits(measurand: Measurand, number: _Number) -> bool:
    told = DIMENSION.get(number.unit or "", "")
    if number.is_open:
        return "ground" in measurand.dimension or measurand.dimension in _CAN_BE_OPEN
    if measurand.dimension == "named check":
        return bool(told)
    if not told or not measurand.dimension or measurand.dimension == "unknown":
        return True
    if measurand.dimension == "winding":
        return told == "resistance"
    if measurand.dimension == "difference":
        return number.unit in _DIFFERENCES
    return told in measurand.dimension


def _temperature_of(
    view: Tokens, number: _Number, after: _Number | None
) -> Quantity | None:
    """Return the temperature of "12.4k at 70F"."""
    if after is None or after.unit not in {"F", "C"} or number.is_open:
        return None
    gap = view.folded[number.end : after.start].strip()
    ohmic = DIMENSION.get(number.unit or "") == "resistance"
    return quantity(after.text, after.unit) if ohmic and _AT.match(gap) else None


def _is_bare_basis(view: Tokens, number: _Number, after: _Number | None) -> bool:
    """Tell whether "8.7k at 40" names a temperature whose scale was left out."""
    if after is None or after.unit is not None or number.is_open:
        return False
    gap = view.folded[number.end : after.start].strip()
    return DIMENSION.get(number.unit or "") == "resistance" and gap == "at"


def _reading(
    view: Tokens, number: _Number, named: Measurand | None, basis: Quantity | None
) -> Claim | None:
    told = number.unit or number.is_open
    fact = _fact(view, number, named, basis) if named or told else None
    if fact is None:
        return None
    start = min(number.start, named.start) if named else number.start
    end = max(number.end, named.end) if named else number.end
    return Claim(start, end, fact)


def _fact(
    view: Tokens, number: _Number, named: Measurand | None, basis: Quantity | None
) -> Fact | None:
    dimension = DIMENSION.get(number.unit or "", "resistance")
    of = named.of if named else dimension
    could = _values(view, number, named)
    place = named.dimension if named else ""
    if place in _PLACES and len(could) == 1 and not number.rough:
        return TemperatureFact(where=_PLACES[place], value=could[0])
    if not could and not number.is_open:
        return None
    exact = not number.rough
    return ReadingFact(
        of=f"{of} temperature" if place == "room temperature" else of,
        value=could[0] if exact and len(could) == 1 else None,
        readings_possible=could if exact and len(could) > 1 else (),
        rough=() if exact else could,
        open_line=number.is_open,
        baseline=is_baseline(view, number.start),
        at_temperature=basis,
        under_load=_near(view, number, _LOAD),
        power_state=_power_state(view, number),
    )


def _values(
    view: Tokens, number: _Number, named: Measurand | None
) -> tuple[Quantity, ...]:
    if number.is_open:
        return ()
    if number.unit:
        differs = named is not None and named.dimension == "difference"
        unit = _DIFFERENCES.get(number.unit) if differs else None
        value = quantity(number.text, unit or number.unit)
        return (value,) if value else ()
    dimension = named.dimension if named else ""
    volts = dimension == "unknown" and _near(view, number, _VOLTS)
    return possibilities(number.text, "voltage" if volts else dimension or "unknown")


def _near(view: Tokens, number: _Number, pattern: re.Pattern[str]) -> bool:
    start, end = view.clause(number.start)
    return bool(pattern.search(view.folded, start, end))


def _power_state(view: Tokens, number: _Number) -> Literal["off", "live"] | None:
    if _near(view, number, _DEAD):
        return "off"
    return "live" if _near(view, number, _LIVE) else None


def _swings(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim both ends of "between 2 and 3 it jumps 20 to minus 15": volts."""
    found: list[Claim] = []
    for match in _SWINGS.finditer(view.folded):
        start, end = view.sentence(match.start())
        named = [m for m in measurands(view.folded[start:end], vocabulary)
                 if m.dimension in {"unknown", "voltage"}]  # fmt: skip
        signed = match["a"].startswith("-") or match["b"].startswith("-")
        if not named and not (signed and " v" in match[0]):
            continue
        of = named[-1].of if named else "voltage"
        begin = min(match.start(), start + named[-1].start) if named else match.start()
        for text in (match["a"], match["b"]):
            fact = ReadingFact(of=of, value=quantity(text, "V"))
            found.append(Claim(begin, match.end(), fact))
    return found
