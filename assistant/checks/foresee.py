"""Says before a reading is taken that the tools at hand can never pass its band."""

from __future__ import annotations

from assistant.checks.comparing import shown, spread
from assistant.checks.instruments import never_decides
from assistant.checks.kinds import (
    BandCheck,
    CapacitorCheck,
    Check,
    CoilCheck,
    DiodesCheck,
    Meter,
    SupplyCheck,
    WindingCheck,
)
from assistant.checks.reading import bound_for
from assistant.checks.supply import band
from assistant.checks.uncertainty import expanded


def foreseen(check: Check, meter: Meter | None) -> str:
    """Return why no reading could ever pass a check, or nothing.

    Parameters
    ----------
    check : Check
        Of a pack; one without two limits can always be decided.
    meter : Meter or None
        The one at hand; 1 % + 3 digits are assumed when not told.
    """
    limits = _limits(check)
    if limits is None:
        return ""
    low, high, unit = limits
    a, assumed = bound_for(meter, high, unit)
    if unit in {"K", "dK"}:
        a = 1.0 if meter is None else meter.thermometer
        assumed = f"the thermometer is taken as good to {a:g} K"
    if not never_decides(low, high, a):
        return ""
    told = (
        f"no reading can pass {shown(low, unit)} to {shown(high, unit)} with these "
        f"tools: they are uncertain by {spread(expanded(a), unit)} either way; a finer "
        "one is needed"
    )
    return f"{told} ({assumed})" if assumed else told


def _limits(check: Check) -> tuple[float, float, str] | None:
    match check:
        case SupplyCheck():
            return (*band(check.nominal.value, check.tolerance.value), "V")
        case CapacitorCheck():
            rated, plus = check.rated.value, check.tolerance.value
            minus = plus if check.minus is None else check.minus.value
            return rated * (1 - minus), rated * (1 + plus), "F"
        case BandCheck() | CoilCheck() | DiodesCheck() | WindingCheck():
            low, high = check.low, check.high
            if low is None or high is None:
                return None
            return low.value, high.value, low.unit
        case _:
            return None
