"""Supply and bus laws against published limits."""

from __future__ import annotations

import pytest

from assistant.checks.bus import standby_band, standby_bus
from assistant.checks.supply import band, sag


@pytest.mark.parametrize(
    ("nominal", "low", "high"),
    # Service voltage +-5 %: COMAR 20.50.07.02, two-wire and 120/240 V rows.
    [(120.0, 114.0, 126.0), (240.0, 228.0, 252.0)],
)
def test_a_utilitys_five_percent_band_is_met(
    nominal: float, low: float, high: float
) -> None:
    assert band(nominal, 0.05) == pytest.approx((low, high))


@pytest.mark.parametrize(
    ("nominal", "low", "high"),
    # Motors +-10 % (NEMA MG 1-12.44.1); 230 V -> 207 to 253 V is printed by EASA, the
    # rest is arithmetic.
    [
        (230.0, 207.0, 253.0),
        (208.0, 187.2, 228.8),
        (220.0, 198.0, 242.0),
        (115.0, 103.5, 126.5),
        (460.0, 414.0, 506.0),
        (400.0, 360.0, 440.0),
    ],
)
def test_a_nameplate_ten_percent_band_is_met(
    nominal: float, low: float, high: float
) -> None:
    assert band(nominal, 0.10) == pytest.approx((low, high))


def test_a_makers_normal_range_is_ten_percent_of_220_volts() -> None:
    # Innovair inverter service manual p. 15: normal 198 to 242 V.
    assert band(220.0, 0.10) == pytest.approx((198.0, 242.0))


def test_a_drop_at_start_is_the_difference() -> None:
    # Voltage-drop note: 240 V falling to 228 V is 12 V, 5.0 %.
    assert sag(240.0, 228.0) == pytest.approx(12.0)
    assert sag(240.0, 228.0) / 240.0 == pytest.approx(0.05)


@pytest.mark.parametrize(
    ("supply", "peak", "low", "high"),
    # sqrt(2) V and 10 % either way, by arithmetic.
    [
        (115.0, 162.6, 146.4, 178.9),
        (120.0, 169.7, 152.7, 186.7),
        (200.0, 282.8, 254.6, 311.1),
        (208.0, 294.2, 264.7, 323.6),
        (220.0, 311.1, 280.0, 342.2),
        (230.0, 325.3, 292.7, 357.8),
        (240.0, 339.4, 305.5, 373.4),
        (380.0, 537.4, 483.7, 591.1),
        (400.0, 565.7, 509.1, 622.3),
        (460.0, 650.5, 585.5, 715.6),
    ],
)
def test_a_standby_bus_is_the_worked_value(
    supply: float, peak: float, low: float, high: float
) -> None:
    assert standby_bus(supply) == pytest.approx(peak, abs=0.051)
    assert standby_band(supply, 0.10) == pytest.approx((low, high), abs=0.051)


@pytest.mark.parametrize(
    ("supply", "printed"),
    # Cigweld Weldskill 180 p. 74: 240 V AC rectified gives 340 V DC; Sanyo
    # SAP-CMV2441G p. 46: 325 V DC on a 230 V unit.
    [(240.0, 340.0), (230.0, 325.0)],
)
def test_printed_bus_voltages_are_met_within_a_volt(
    supply: float, printed: float
) -> None:
    assert standby_bus(supply) == pytest.approx(printed, abs=1.0)
