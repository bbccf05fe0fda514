"""Sensor tables of the invented makers, computed from invented constants."""

from __future__ import annotations

import math
from dataclasses import dataclass

ZERO_C = 273.15


@dataclass(frozen=True)
class Sensor:
    """A negative-temperature-coefficient sensor.

    `kohm` is the resistance at `at_c`; `beta` in kelvin; `tolerance` in percent.
    """

    label: str
    role: str
    kohm: float
    at_c: float
    beta: float
    tolerance: int
    temps: tuple[int, ...]

    def resistance(self, temp_c: float) -> float:
        """Return the resistance in kohm at `temp_c` by the Beta formula."""
        inverse = 1 / (temp_c + ZERO_C) - 1 / (self.at_c + ZERO_C)
        return self.kohm * math.exp(self.beta * inverse)

    def rows(self) -> tuple[tuple[str, str], ...]:
        """Return (degrees C, kohm) as printed: three figures."""
        return tuple((str(t), three_figures(self.resistance(t))) for t in self.temps)


def three_figures(value: float) -> str:
    """Return a positive value with three significant figures, plain notation.

    >>> three_figures(153.27), three_figures(9.996), three_figures(0.6134)
    ('153', '10.0', '0.613')
    """
    rounded = float(f"{value:.3g}")
    digits = 2 - math.floor(math.log10(rounded))
    return f"{rounded:.{max(digits, 0)}f}"


def bus_volts(supply: float) -> str:
    """Return the rectified peak of a supply in volts, whole."""
    return f"{supply * math.sqrt(2):.0f}"
