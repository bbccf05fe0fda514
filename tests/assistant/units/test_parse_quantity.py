"""Quantities are read strictly: a number, a unit, and nothing guessed."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.units.parse import find_unit, parse_number, parse_quantity
from assistant.units.quantity import CANONICAL
from assistant.units.table import UNITS

READ = [
    ("8 s", 8.0, "s"),
    ("3 min", 180.0, "s"),
    ("30 Minutes", 1800.0, "s"),
    ("2 h", 7200.0, "s"),
    ("1 d", 86400.0, "s"),
    ("1 h 30 min", 5400.0, "s"),
    ("15 kohm", 15000.0, "ohm"),
    ("15kΩ", 15000.0, "ohm"),
    ("15 kΩ", 15000.0, "ohm"),
    ("4.7 k", 4700.0, "ohm"),
    ("1 Mohm", 1e6, "ohm"),
    ("12,400 ohm", 12400.0, "ohm"),
    ("1e3 ohm", 1000.0, "ohm"),
    ("230 V AC", 230.0, "V"),
    ("230VAC", 230.0, "V"),
    ("325 V DC", 325.0, "V"),
    ("12 mV", 0.012, "V"),
    ("1.5 A", 1.5, "A"),
    ("20 mA", 0.02, "A"),
    ("25 °C", 298.15, "K"),
    ("25 degC", 298.15, "K"),
    ("-5 C", 268.15, "K"),
    ("−5 C", 268.15, "K"),
    ("77 F", 298.15, "K"),
    ("77 degrees F", 298.15, "K"),
    ("300 K", 300.0, "K"),
    ("5 K difference", 5.0, "dK"),
    ("9 °F difference", 5.0, "dK"),
    ("18 F diff", 10.0, "dK"),
    ("10 %", 0.1, "1"),
    ("45 uF", 45e-6, "F"),
    ("45 μF", 45e-6, "F"),
    ("60 Hz", 60.0, "Hz"),
    ("2 kg", 2.0, "kg"),
    ("1 oz", 0.028349523125, "kg"),
    ("7.5 m", 7.5, "m"),
    ("25 ft", 7.62, "m"),
    # 1 psi = 6.894757 kPa and 1 kgf/cm2 = 98.0665 kPa, from memory
    ("1 psig", 6894.757, "PaG"),
    ("1 psi", 6894.757, "PaG"),
    ("1 psia", 6894.757, "Pa"),
    ("1 kgf/cm2", 98066.5, "PaG"),
    ("800 kPa", 800e3, "PaG"),
    ("2.5 MPa gauge", 2.5e6, "PaG"),
    ("2.5 MPa absolute", 2.5e6, "Pa"),
    ("2.5 bar(a)", 2.5e5, "Pa"),
    # 500 micron = 0.5 Torr, and 760 Torr = 101325 Pa by definition
    ("500 micron", 66.66118, "Pa"),
]


@pytest.mark.parametrize(("text", "value", "unit"), READ)
def test_what_people_write_is_read(text: str, value: float, unit: str) -> None:
    found = parse_quantity(text)

    assert found.value == pytest.approx(value, rel=1e-6)
    assert (found.unit, found.text) == (unit, text)


REFUSED = [
    ("", "not a quantity"),
    ("ohm", "not a quantity"),
    ("15", "no unit"),
    ("4,7 kohm", "not a quantity"),
    ("1 2 V", "not a quantity"),
    ("--5 V", "not a quantity"),
    ("nan V", "not a quantity"),
    ("15 furry", "not known"),
    ("5 kohm 3", "not known"),
    ("1 min 2 h", "not known"),
    ("3 m 20 s", "not known"),
    ("5 pi", "not known"),
    ("1 mohm", "two ways"),
    ("1 mOhm", "two ways"),
    ("20 f", "two ways"),
    ("20 °", "two ways"),
    ("20 degrees", "two ways"),
    ("-500 F", "absolute zero"),
    ("-1 K", "absolute zero"),
    ("-1 psia", "absolute zero"),
    ("1e999 V", "too large"),
    ("1e308 kV", "too large"),
]


@pytest.mark.parametrize(("text", "why"), REFUSED)
def test_what_cannot_be_read_is_refused_by_name(text: str, why: str) -> None:
    with pytest.raises(ValueError, match=why) as caught:
        parse_quantity(text)

    assert repr(text.strip()) in str(caught.value) or "1e" in str(caught.value)


def test_a_difference_of_temperatures_is_never_a_temperature() -> None:
    # 10 K of superheat is 18 °F, not 50 °F
    assert parse_quantity("10 K difference") != parse_quantity("10 K")
    assert parse_quantity("18 F difference").value == pytest.approx(10.0)
    assert parse_quantity("50 F").value == pytest.approx(283.15)


def test_kelvin_and_kilohm_are_told_apart_by_case() -> None:
    assert parse_quantity("15 K").unit == "K"
    assert parse_quantity("15 k").unit == "ohm"


def test_every_spelling_leads_to_a_canonical_unit() -> None:
    for name, unit in UNITS.items():
        assert unit.canonical in CANONICAL.values(), name
        assert find_unit(name) == unit
        assert unit.from_canonical(unit.to_canonical(3.5)) == pytest.approx(3.5)


def test_every_shown_sign_is_read_back_as_the_same_unit() -> None:
    for unit in UNITS.values():
        found = find_unit(unit.sign)
        assert found is not None, unit.sign
        assert found.to_canonical(2.0) == pytest.approx(unit.to_canonical(2.0))


@given(st.text(max_size=30))
def test_no_text_breaks_the_reader(text: str) -> None:
    try:
        found = parse_quantity(text)
    except ValueError:
        return
    assert found.unit in CANONICAL.values()


@given(
    st.floats(min_value=0.001, max_value=1e6),
    st.sampled_from(sorted(name for name in UNITS if name.isalpha())),
)
def test_a_number_keeps_its_size_through_any_unit(value: float, name: str) -> None:
    unit = UNITS[name]
    found = parse_quantity(f"{value:.6f} {name}")

    assert found.value == pytest.approx(unit.to_canonical(value), rel=1e-3, abs=1e-15)


def test_a_number_has_commas_between_thousands_only() -> None:
    assert parse_number("1,234,567.5") == 1234567.5
    for wrong in ("1,23", "12,34,567", "1.2.3", "", ".", "+"):
        with pytest.raises(ValueError, match="is not a number"):
            parse_number(wrong)


def test_common_units_are_read_without_the_library() -> None:
    code = (
        "import sys; from assistant.units.parse import parse_quantity as p;"
        "[p(t) for t in ('8 s', '3 min', '15 kohm', '230 V AC', '25 C', '77 F')];"
        "sys.exit('pint' in sys.modules)"
    )

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
