"""Judges a temperature split by the document's figures, never by a generic range."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from assistant.checks.air_side import SPLIT, temperature_split
from assistant.checks.comparing import because, compare, shown
from assistant.checks.kinds import Meter, SplitCheck
from assistant.checks.reading import RETURN_AIR, SUPPLY_AIR, WET_BULB, ReadingFor
from assistant.checks.uncertainty import expanded
from assistant.checks.verdict import Verdict, unjudged


def judge_split(
    check: SplitCheck,
    reading: ReadingFor,
    unmet: Mapping[str, bool | None],
    meter: Meter | None,
) -> Verdict:
    """Return the split, and its verdict when humidity, airflow and speed are known.

    Parameters
    ----------
    check : SplitCheck
        With the document's limits [dK] and the wet bulbs they hold for [K].
    reading : ReadingFor
        A set: return air, supply air and indoor wet bulb [K].
    unmet : mapping
        What must hold and does not (False) or is not known (None).
    meter : Meter or None
        Its thermometer error counts, twice.
    """
    none = unjudged(check.id, SPLIT, "dK", check.low, check.high)
    missing = tuple(
        name for name in (RETURN_AIR, SUPPLY_AIR) if reading.among(name) is None
    )
    if missing:
        reason = f"{', '.join(missing)} is not told"
        untold = tuple(f"reading {name}" for name in missing)
        return replace(none, reason=reason, missing=untold)
    back, supply = reading.among(RETURN_AIR), reading.among(SUPPLY_AIR)
    assert back is not None  # noqa: S101 - looked at above
    assert supply is not None  # noqa: S101 - looked at above
    value = temperature_split(back.value, supply.value, heating=check.mode == "heat")
    degrees = 1.0 if meter is None else meter.thermometer
    u = expanded(degrees, degrees)
    note = f"both thermometers are taken as good to {degrees:g} K"
    found = replace(none, value=value, uncertainty=u)
    reason, untold = _refused(check, reading, unmet)
    if reason:
        return replace(found, reason=because(reason, note), missing=untold)
    if none.low is None and none.high is None:
        reason = "the document states no split, and no generic one is a verdict"
        return replace(found, reason=because(reason, note))
    result, reason = compare(value, none.low, none.high, u, "dK")
    return replace(found, result=result, reason=because(reason, note))


def _refused(
    check: SplitCheck, reading: ReadingFor, unmet: Mapping[str, bool | None]
) -> tuple[str, tuple[str, ...]]:
    wet = reading.among(WET_BULB)
    low, high = check.wet_bulb_low, check.wet_bulb_high
    humid = low is not None and high is not None
    untold = (*unmet, *((f"reading {WET_BULB}",) if humid and wet is None else ()))
    if untold:
        reason = (
            "a split moves with humidity, airflow and compressor speed; this is not "
            f"known to hold: {', '.join(untold)}"
        )
        return reason, untold
    if low is None or high is None or wet is None:
        return "", ()
    if not low.value <= wet.value <= high.value:
        ends = f"{shown(low.value, 'K')} to {shown(high.value, 'K')}"
        reason = f"the document's figures hold for an indoor wet bulb of {ends}"
        return f"{reason}, and it is {shown(wet.value, 'K')}", ()
    return "", ()
