"""How a sight was read where that is more than a look-up, in a few words each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.signals.kinds import (
    AnalogRate,
    DigitPosition,
    DisplayValue,
    FlickerCount,
    MainSubCode,
    RateBlink,
    ShortLong,
    Signal,
    TensUnits,
    WeightedLamps,
)
from assistant.signals.observation import Observation
from assistant.signals.shown import read_value, signs_of


def notes_of(signal: Signal, seen: Sequence[Observation]) -> tuple[str, ...]:
    """Return the sums, bases and conditions that a candidate rests on."""
    found = [*_of_pattern(signal, seen)]
    found += [f"holds only with: {words}" for words in signal.precondition]
    if signal.unit_state_required:
        found.append(f"holds only while {' or '.join(signal.unit_state_required)}")
    return tuple(found)


def _of_pattern(signal: Signal, seen: Sequence[Observation]) -> Iterator[str]:
    code = next((one.code for one in seen if one.code is not None), "")
    match signal:
        case TensUnits():
            yield from _sum(signal)
        case ShortLong():
            yield f"{signal.short} quick and {signal.long} long flashes"
        case WeightedLamps():
            lit = zip(signal.lamps, signal.lit() or (), strict=True)
            weights = [str(entry.weight) for entry, on in lit if on]
            yield f"lit lamps {' + '.join(weights) or '0'} = {signal.number}"
        case DisplayValue():
            yield _value(signal, code)
        case DigitPosition():
            signs = signs_of(code, signal.of)
            shown = signs[signal.position - 1] if signs else signal.sign
            yield f"place {signal.position} of {signal.of} shows {shown or 'nothing'}"
        case MainSubCode():
            yield from _second(signal, seen)
        case _:
            yield from _how_it_goes(signal)


def _how_it_goes(signal: Signal) -> Iterator[str]:
    if isinstance(signal, AnalogRate):
        yield f"its rate follows {signal.shows}: it is no count"
    if isinstance(signal, FlickerCount) and signal.entry_action:
        yield f"{signal.display_level} display, by: {signal.entry_action}"
    if isinstance(signal, RateBlink):
        band = signal.rate.band() if signal.rate is not None else None
        if band is None:
            yield f"the document does not say how fast {signal.rate_class} is"
        else:
            low, high = (f"{10 * hertz:g}" for hertz in band)
            blinks = low if low == high else f"{low} to {high}"
            yield f"{signal.rate_class} is {blinks} blinks in 10 s here"


def _sum(signal: TensUnits) -> Iterator[str]:
    text = f"tens and units make {signal.shown}"
    if signal.offset:
        unit = (
            f" of the {signal.applies_to_unit} unit" if signal.applies_to_unit else ""
        )
        text += f"; {signal.shown} less {signal.offset} is {signal.number}{unit}"
    yield text


def _value(signal: DisplayValue, code: str) -> str:
    value = read_value(code, signal)
    told = (
        f"{value:g} {signal.unit or ''}".strip() if isinstance(value, float) else value
    )
    return f"may be a value and no code: {code!r} reads {told}"


def _second(signal: MainSubCode, seen: Sequence[Observation]) -> Iterator[str]:
    sub = next((one.sub for one in seen if one.sub is not None), None)
    if signal.sub_meaning_type != "finer cause":
        yield f"the second number is the {signal.sub_meaning_type}" + (
            f": {sub}" if sub else ""
        )
