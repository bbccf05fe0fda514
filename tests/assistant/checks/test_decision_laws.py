"""Properties of supply, bus, meter and guard-band laws."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.checks.bus import standby_band, standby_bus
from assistant.checks.law import OutOfRangeError
from assistant.checks.supply import band, sag
from assistant.checks.uncertainty import expanded, guarded, meter_bound

VALUE = st.floats(min_value=-1e4, max_value=1e4)
SPREAD = st.floats(min_value=0.0, max_value=1e3)


@given(st.floats(min_value=24, max_value=690), st.floats(min_value=0, max_value=0.25))
def test_a_band_holds_its_nominal_in_the_middle(nominal: float, share: float) -> None:
    low, high = band(nominal, share)

    assert low <= nominal <= high
    assert (low + high) / 2 == pytest.approx(nominal)


@given(st.floats(min_value=80, max_value=690))
def test_a_bus_squared_is_twice_the_supply_squared(supply: float) -> None:
    assert standby_bus(supply) ** 2 == pytest.approx(2 * supply**2)


@given(st.floats(min_value=0, max_value=1000), st.floats(min_value=0, max_value=1000))
def test_a_sag_turned_round_changes_its_sign(rest: float, start: float) -> None:
    assert sag(rest, start) == -sag(start, rest)


@pytest.mark.parametrize("supply", [0.0, 79.9, 690.1, -230.0, math.nan, math.inf])
def test_a_supply_that_is_not_there_gives_no_bus(supply: float) -> None:
    with pytest.raises(OutOfRangeError, match="measured supply"):
        standby_bus(supply)


@pytest.mark.parametrize(
    ("nominal", "share"), [(12.0, 0.1), (230.0, 0.3), (230.0, -0.1)]
)
def test_a_band_is_given_inside_its_limits_only(nominal: float, share: float) -> None:
    with pytest.raises(OutOfRangeError, match="outside"):
        band(nominal, share)


def test_a_bus_tolerance_outside_its_limits_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="tolerance"):
        standby_band(230.0, 0.5)


@given(VALUE, st.floats(min_value=0, max_value=20), st.integers(0, 200))
def test_a_meter_bound_has_no_sign(value: float, percent: float, digits: int) -> None:
    bound = meter_bound(value, percent, digits, 0.1)

    assert bound >= 0
    assert bound == meter_bound(-value, percent, digits, 0.1)


@given(st.lists(SPREAD, min_size=1, max_size=5))
def test_more_bounds_never_make_less_uncertainty(bounds: list[float]) -> None:
    assert expanded(*bounds) <= expanded(*bounds, 1.0) + 1e-9
    assert expanded(*bounds) == pytest.approx(expanded(*reversed(bounds)))


@pytest.mark.parametrize(
    ("percent", "digits", "resolution"), [(-1, 2, 0.1), (1, -2, 0.1), (1, 2, -0.1)]
)
def test_a_meter_that_cannot_be_is_refused(
    percent: float, digits: float, resolution: float
) -> None:
    with pytest.raises(OutOfRangeError):
        meter_bound(230.0, percent, digits, resolution)


@given(VALUE, VALUE, st.floats(min_value=0, max_value=1e4), SPREAD, SPREAD)
def test_more_uncertainty_only_ever_takes_a_verdict_away(
    value: float, low: float, width: float, u: float, more: float
) -> None:
    sharp = guarded(value, low, low + width, u)
    blunt = guarded(value, low, low + width, u + more)

    assert blunt in {sharp, "inconclusive"}


@given(VALUE, VALUE, st.floats(min_value=0, max_value=1e4), SPREAD)
def test_a_band_narrower_than_two_u_is_always_inconclusive(
    value: float, low: float, width: float, u: float
) -> None:
    assume(low + width - low < 2 * u)

    assert guarded(value, low, low + width, u) == "inconclusive"


@given(VALUE, VALUE, SPREAD)
def test_a_lower_limit_mirrors_an_upper_one(
    value: float, limit: float, u: float
) -> None:
    assert guarded(value, limit, None, u) == guarded(-value, None, -limit, u)


@given(VALUE, VALUE, st.floats(min_value=1, max_value=1e3), st.floats(0.01, 0.4))
def test_a_change_of_unit_changes_no_verdict(
    value: float, low: float, width: float, share: float
) -> None:
    high, u = low + width, share * width
    edges = [low + u, high - u, low - u, high + u]
    assume(all(abs(value - edge) > 1e-6 * (abs(edge) + 1) for edge in edges))

    kilo = guarded(value * 1e3, low * 1e3, high * 1e3, u * 1e3)

    assert guarded(value, low, high, u) == kilo


@pytest.mark.parametrize(
    ("low", "high", "u"), [(None, None, 1.0), (2.0, 1.0, 0.1), (1.0, 2.0, -0.1)]
)
def test_limits_that_make_no_sense_are_refused(
    low: float | None, high: float | None, u: float
) -> None:
    with pytest.raises(ValueError, match=r"limit|uncertainty"):
        guarded(1.5, low, high, u)
