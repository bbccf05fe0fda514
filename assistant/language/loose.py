"""Readings said in passing: "118 over 390", "300 and change", "baseline: 9.4 A"."""

from __future__ import annotations

from assistant.facts import ReadingFact
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.quantities import SPELLED, UNIT, possibilities, quantity
from assistant.language.tokens import Tokens
from assistant.units.quantity import Quantity

_PRESSURE = r"(?:psi|kpa|mpa|bar)"
_OTHER = (
    r"(?:kohm|megohm|ohm|k|v|dc|ac|amp|ma|a|deg|f|c|uf|hz|m|hours?|min|sec|days?|"
    r"weeks?|rpm|percent|%|phase)"
)
_PAIR = rx(
    rf"(?P<a>{NUMBER})(?: (?P<ua>{_PRESSURE}))? over (?P<b>{NUMBER})(?: "
    rf"(?P<ub>{_PRESSURE}))?(?! {_OTHER}(?!\S))"
)
_ROUGH = rx(
    r"(?:and )?(?:change|some ?thing|some odd|odd|ish|a bit|a little)(?: "
    rf"(?P<unit>{UNIT}))?"
)
_BASELINE = rx(
    r"baselines?|base line|as commissioned|commissioning (?:readings?|figures?)|when "
    r"(?:it was |the unit was )?commissioned"
)
_LEAST = 10.0
"""Below this a pair without a unit is hardly two gauges: common practice."""


def pressure_pairs(view: Tokens) -> list[Claim]:
    """Claim "118 over 390": the lower is the suction side, the higher the discharge.

    Without a unit each stays open between the units that are possible.
    """
    found: list[Claim] = []
    for match in _PAIR.finditer(view.folded):
        unit = match["ub"] or match["ua"]
        lower, higher = sorted((match["a"], match["b"]), key=float)
        if float(lower) == float(higher) or (not unit and float(higher) < _LEAST):
            continue
        for of, text in (("suction pressure", lower), ("discharge pressure", higher)):
            fact = _one_side(of, text, unit)
            if fact is not None and is_baseline(view, match.start()):
                fact = fact.model_copy(update={"baseline": True})
            found += [Claim(*match.span(), fact)] if fact else []
    return found


def _one_side(of: str, text: str, unit: str | None) -> ReadingFact | None:
    could: tuple[Quantity, ...] = possibilities(text, "pressure")
    if unit:
        told = quantity(text, SPELLED[unit])
        could = (told,) if told else ()
    if len(could) == 1:
        return ReadingFact(of=of, value=could[0])
    return ReadingFact(of=of, readings_possible=could) if could else None


def is_baseline(view: Tokens, at: int) -> bool:
    """Tell whether the sentence around a place tells what is kept with the unit."""
    start, end = view.sentence(at)
    return bool(_BASELINE.search(view.folded, start, end))


def rough_end(view: Tokens, end: int) -> tuple[int, str | None] | None:
    """Return where "and change" behind a number ends, and the unit it holds.

    Parameters
    ----------
    view : Tokens
        The text.
    end : int
        Where the number ends in `view.folded`.
    """
    match = _ROUGH.match(view.folded, end + 1) if end < len(view.folded) else None
    if match is None:
        return None
    unit = match["unit"]
    return match.end(), SPELLED[unit] if unit else None
