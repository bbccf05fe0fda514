"""The units that people write, as data: no library is needed to read these."""

from __future__ import annotations

import math
from dataclasses import dataclass

PSI = 6894.757293168361
"""Pascal in one psi: 0.45359237 kg x 9.80665 m/s2 over (0.0254 m)2, all exact."""
POUND = 0.45359237
"""Kilogram in one pound, exact by definition."""
CIRCULAR_MIL = math.pi / 4 * 25.4e-6**2
"""Square metre in one circular mil, exact: a circle of 0.001 in."""
INCH_OF_WATER = 249.08891
"""Pascal in one inch of water at 4 °C, conventional."""
INCH_OF_MERCURY = 3386.389
"""Pascal in one inch of mercury at 0 °C, conventional."""
BTU = 1055.05585262
"""Joule in one Btu of the International Table, exact."""
ZERO_CELSIUS = 273.15
ZERO_FAHRENHEIT = 459.67


@dataclass(frozen=True, slots=True)
class Unit:
    """A written unit: canonical value = (written value + `shift`) x `factor`.

    Attributes
    ----------
    canonical : str
        One of the values of `assistant.units.quantity.CANONICAL`.
    factor : float
        Canonical units in one of these.
    shift : float
        Added before the factor; zero for all but thermometer scales.
    sign : str
        How this unit is shown to a person.
    """

    canonical: str
    factor: float
    sign: str
    shift: float = 0.0

    def to_canonical(self, value: float) -> float:
        """Return `value` in the canonical unit."""
        return (value + self.shift) * self.factor

    def from_canonical(self, value: float) -> float:
        """Return a canonical `value` in this unit."""
        return value / self.factor - self.shift


_ROWS: tuple[tuple[Unit, str], ...] = (
    (Unit("s", 1.0, "s"), "s sec secs second seconds"),
    (Unit("s", 0.001, "ms"), "ms millisecond milliseconds"),
    (Unit("s", 60.0, "min"), "min mins minute minutes"),
    (Unit("s", 3600.0, "h"), "h hr hrs hour hours"),
    (Unit("s", 86400.0, "d"), "d day days"),
    (Unit("s", 604800.0, "weeks"), "week weeks"),
    (Unit("ohm", 1.0, "Ω"), "ohm ohms Ω"),
    (Unit("ohm", 1e3, "kΩ"), "k kohm kohms kΩ KΩ kilohm kilohms"),
    (Unit("ohm", 1e6, "MΩ"), "Mohm Mohms MΩ megohm megohms megaohm megaohms"),
    (Unit("ohm", 1e-3, "milliohm"), "milliohm milliohms"),
    (Unit("V", 1.0, "V"), "V v volt volts"),
    (Unit("V", 1.0, "V AC"), "VAC Vac vac V~"),
    (Unit("V", 1.0, "V DC"), "VDC Vdc vdc"),
    (Unit("V", 1e-3, "mV"), "mV millivolt millivolts"),
    (Unit("V", 1e3, "kV"), "kV kilovolt kilovolts"),
    (Unit("A", 1.0, "A"), "A amp amps ampere amperes"),
    (Unit("A", 1e-3, "mA"), "mA milliamp milliamps"),
    (Unit("A", 1e-6, "µA"), "uA µA microamp microamps"),
    (Unit("K", 1.0, "K"), "K kelvin kelvins"),
    (
        Unit("K", 1.0, "°C", ZERO_CELSIUS),
        "C °C degC celsius degree_Celsius ℃",
    ),
    (
        Unit("K", 5 / 9, "°F", ZERO_FAHRENHEIT),
        "F °F degF fahrenheit degree_Fahrenheit ℉",
    ),
    (Unit("dK", 1.0, "K difference"), "dK delta_degC delta_C"),
    (Unit("dK", 5 / 9, "°F difference"), "delta_degF delta_F"),
    (Unit("PaG", PSI, "psig"), "psi psig PSI PSIG"),
    (Unit("PaG", 1.0, "Pa gauge"), "Pa PaG pascal pascals"),
    (Unit("PaG", 1e3, "kPa gauge"), "kPa kPaG kPag"),
    (Unit("PaG", 1e6, "MPa gauge"), "MPa MPaG MPag"),
    (Unit("PaG", 1e5, "bar gauge"), "bar barg barG"),
    (Unit("PaG", 98066.5, "kgf/cm2 gauge"), "kgf/cm2 kgf/cm² kg/cm2 kg/cm²"),
    (Unit("PaG", INCH_OF_WATER, "inwc"), "inwc inWC inH2O inwg"),
    (Unit("PaG", -INCH_OF_MERCURY, "inHg_vacuum"), "inHg_vacuum inHgV"),
    (Unit("Pa", PSI, "psia"), "psia PSIA"),
    (Unit("Pa", 1.0, "Pa absolute"), "PaA"),
    (Unit("Pa", 1e3, "kPa absolute"), "kPaA kPaa"),
    (Unit("Pa", 1e6, "MPa absolute"), "MPaA MPaa"),
    (Unit("Pa", 1e5, "bar absolute"), "bara barA"),
    (Unit("Pa", 101325 / 760e3, "micron"), "micron microns"),
    (Unit("1", 0.01, "%"), "% percent pct"),
    (Unit("Hz", 1.0, "Hz"), "Hz hz hertz"),
    (Unit("Hz", 1e3, "kHz"), "kHz"),
    (Unit("F", 1e-6, "µF"), "uF µF mfd MFD microfarad microfarads"),
    (Unit("F", 1e-9, "nF"), "nF nanofarad nanofarads"),
    (Unit("F", 1e-12, "pF"), "pF picofarad picofarads"),
    (Unit("F", 1.0, "farad"), "farad farads"),
    (Unit("kg", 1.0, "kg"), "kg kilogram kilograms"),
    (Unit("kg", 1e-3, "g"), "g gram grams"),
    (Unit("kg", POUND, "lb"), "lb lbs pound pounds"),
    (Unit("kg", POUND / 16, "oz"), "oz ounce ounces"),
    (Unit("m2", 1.0, "m²"), "m2 m² sqm"),
    (Unit("m2", 1e-6, "mm²"), "mm2 mm² sqmm"),
    (Unit("m2", 0.3048**2, "ft²"), "ft2 ft² sqft"),
    (Unit("m2", CIRCULAR_MIL, "cmil"), "cmil"),
    (Unit("m2", 1e3 * CIRCULAR_MIL, "kcmil"), "kcmil MCM"),
    (Unit("J", 1.0, "J"), "J joule joules"),
    (Unit("J", 1e-3, "mJ"), "mJ"),
    (Unit("1/s", 1 / 60, "rpm"), "rpm RPM r/min"),
    (Unit("W", 1.0, "W"), "W watt watts"),
    (Unit("W", 1e3, "kW"), "kW kilowatt kilowatts"),
    (Unit("W", BTU / 3600, "Btu/h"), "Btu/h btu/h BTU/h Btuh btuh BTUH"),
    (Unit("m3/s", 1.0, "m³/s"), "m3/s m³/s"),
    (Unit("m3/s", 1 / 3600, "m³/h"), "m3/h m³/h"),
    (Unit("m3/s", 1e-3, "L/s"), "L/s l/s"),
    (Unit("m3/s", 0.3048**3 / 60, "cfm"), "cfm CFM ft3/min"),
    (Unit("kg/m3", 1.0, "kg/m³"), "kg/m3 kg/m³"),
    (Unit("kg/m3", 1e-3, "g/m³"), "g/m3 g/m³"),
    (Unit("kg/m", 1.0, "kg/m"), "kg/m"),
    (Unit("kg/m", 1e-3, "g/m"), "g/m"),
    (Unit("kg/m", POUND / 16 / 0.3048, "oz/ft"), "oz/ft"),
    (Unit("J/kg", 1.0, "J/kg"), "J/kg"),
    (Unit("J/kg", 1e3, "kJ/kg"), "kJ/kg"),
    (Unit("m", 1.0, "m"), "m metre metres meter meters"),
    (Unit("m", 1e-2, "cm"), "cm"),
    (Unit("m", 1e-3, "mm"), "mm"),
    (Unit("m", 0.3048, "ft"), "ft foot feet"),
    (Unit("m", 0.0254, "in"), "in inch inches"),
)

UNITS: dict[str, Unit] = {name: unit for unit, names in _ROWS for name in names.split()}
"""Every spelling, case kept, to its unit.

A pressure written without "absolute" is what a service gauge shows.
"""

AMBIGUOUS = {
    "mohm": "write Mohm for a million ohms or milliohm for a thousandth",
    "mohms": "write Mohm for a million ohms or milliohm for a thousandth",
    "mΩ": "write MΩ for a million ohms or milliohm for a thousandth",
    "inHg": "write inHg vacuum below the air pressure, or psig, psia or micron",
    "f": "write °F for a temperature or uF for a capacitance",
    "°": "write °C or °F",
    "deg": "write °C or °F",
    "degree": "write °C or °F",
    "degrees": "write °C or °F",
}
"""Spellings that two people read two ways, with the way out."""

_SYMBOL = 2
WORDS = frozenset(name for name in UNITS if len(name) > _SYMBOL and name.islower())
"""Spellings in which case carries no meaning."""
