"""Saturation in °F and psi, and charts typed as lines, for the tests of references."""

from __future__ import annotations

from assistant.checks.saturation import (
    Side,
    saturation_pressure,
    saturation_temperature,
)

PSI = 6894.757293168361
SEA = 14.6959 * PSI
BOTH: tuple[Side, Side] = ("bubble", "dew")


def kelvin(fahrenheit: float) -> float:
    """Return a temperature [K] of °F."""
    return (fahrenheit + 459.67) / 1.8


def fahrenheit(temperature: float) -> float:
    """Return a temperature [°F] of K."""
    return temperature * 1.8 - 459.67


def psig(refrigerant: str, degrees: float, side: Side) -> float:
    """Return the gauge pressure [psi] at sea level of a temperature [°F]."""
    return (saturation_pressure(refrigerant, kelvin(degrees), side) - SEA) / PSI


def degrees(refrigerant: str, gauge: float, side: Side, air: float = SEA) -> float:
    """Return the temperature [°F] of a gauge pressure [psi]."""
    return fahrenheit(saturation_temperature(refrigerant, gauge * PSI + air, side))


def rows(text: str) -> list[list[float]]:
    """Return the figures of a chart typed as lines."""
    return [[float(cell) for cell in line.split()] for line in text.split("\n") if line]
