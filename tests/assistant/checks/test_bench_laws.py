"""Properties of the bench's laws: inverse pairs, order, units, ranges."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.checks.capacitance import running_capacitance
from assistant.checks.grid import from_grid
from assistant.checks.insulation import insulation_at_forty
from assistant.checks.law import OutOfRangeError
from assistant.checks.line_behaviour import behaviour
from assistant.checks.nitrogen import nitrogen_pressure
from assistant.checks.registry import run_named
from assistant.checks.stored_charge import discharge_time, stored_energy, voltage_left
from assistant.checks.switching import switch_expected
from assistant.checks.unbalance import phase_lost, unbalance
from assistant.checks.vacuum import decay
from assistant.checks.weigh_in import total_disagrees
from assistant.checks.windings import (
    resistance_at,
    single_phase,
    temperature_by_resistance,
)
from assistant.checks.wire_drop import voltage_drop
from assistant.checks.wiring_pairs import (
    WiringFault,
    doubtful_conductors,
    wiring_faults,
)

kelvin = st.floats(253.0, 393.0)
ohms = st.floats(0.01, 1e3)
volts = st.floats(60.0, 800.0)
positive = st.floats(0.1, 1e3)


@given(ohms, kelvin, kelvin)
def test_a_winding_brought_there_and_back_is_itself(
    resistance: float, first: float, second: float
) -> None:
    there = resistance_at(resistance, first, second)

    assert resistance_at(there, second, first) == pytest.approx(resistance)
    assert temperature_by_resistance(resistance, first, there) == pytest.approx(second)


@given(ohms, kelvin, kelvin)
def test_a_warmer_winding_reads_higher(
    resistance: float, first: float, second: float
) -> None:
    there = resistance_at(resistance, first, second)

    assert (there >= resistance) == (second >= first) or math.isclose(first, second)


@given(st.floats(1e-6, 1e-2), st.floats(1e3, 1e6), volts, st.floats(0.01, 0.99))
def test_a_bank_is_at_the_voltage_when_its_time_is_over(
    farads: float, bleed: float, start: float, share: float
) -> None:
    time = discharge_time(farads, bleed, start, start * share)

    if time <= 1e6:
        left = voltage_left(farads, bleed, start, time)
        assert left == pytest.approx(start * share)


@given(st.floats(1e-6, 1e-2), volts)
def test_energy_grows_with_the_square_of_the_voltage(
    farads: float, voltage: float
) -> None:
    assert stored_energy(farads, voltage) == pytest.approx(
        4 * stored_energy(farads, voltage / 2)
    )


@given(positive, positive, positive, st.floats(0.01, 100.0))
def test_unbalance_knows_no_unit_and_no_order(
    a: float, b: float, c: float, factor: float
) -> None:
    share = unbalance(a, b, c)

    assert 0 <= share <= 2
    assert unbalance(c * factor, a * factor, b * factor) == pytest.approx(
        share, abs=1e-9
    )


@given(positive)
def test_equal_phases_are_balanced_and_none_is_lost(value: float) -> None:
    assert unbalance(value, value, value) == pytest.approx(0.0, abs=1e-12)
    assert not phase_lost(value, value, value)
    assert phase_lost(value, value, 0.0)


@given(st.floats(1e3, 1e10), kelvin.filter(lambda t: 264 <= t <= 348))
def test_ten_kelvin_halve_the_insulation(resistance: float, kelvins: float) -> None:
    here = insulation_at_forty(resistance, kelvins)

    assert insulation_at_forty(resistance, kelvins + 10) == pytest.approx(2 * here)


@given(st.floats(0.1, 50.0), volts, st.sampled_from([50.0, 60.0]))
def test_a_capacitor_carries_the_current_it_was_worked_out_from(
    amps: float, voltage: float, hertz: float
) -> None:
    farads = running_capacitance(amps, voltage, hertz)

    assert 2 * math.pi * hertz * farads * voltage == pytest.approx(amps)


@given(st.floats(1e5, 5e6), st.floats(250.0, 320.0), st.floats(250.0, 320.0))
def test_nitrogen_warmed_and_cooled_again_is_where_it_was(
    pressure: float, first: float, second: float
) -> None:
    there = nitrogen_pressure(pressure, first, second)

    assert nitrogen_pressure(there, second, first) == pytest.approx(pressure, rel=1e-9)
    assert (there > pressure) == (second > first) or math.isclose(there, pressure)


@given(st.floats(0.1, 100.0), st.floats(1.0, 200.0), st.floats(1e-6, 1e-4))
def test_twice_the_wire_loses_half_the_volts(
    amps: float, length: float, area: float
) -> None:
    drop = voltage_drop(amps, length, area, 1)

    assert voltage_drop(amps, length, 2 * area, 1) == pytest.approx(drop / 2)
    assert voltage_drop(amps, length, area, 3) < drop


@given(st.floats(300.0, 310.0), st.floats(290.0, 300.0))
def test_a_grid_gives_nothing_beyond_its_cells(row: float, column: float) -> None:
    cells = ((1.0, 2.0), (3.0, 4.0))

    found = from_grid((300.0, 310.0), (290.0, 300.0), cells, row, column)

    assert 1.0 <= found <= 4.0


def test_a_grid_gives_its_own_cells_and_refuses_blanks_and_edges() -> None:
    rows, columns = (300.0, 305.0, 310.0), (290.0, 300.0)
    cells = ((1.0, 2.0), (3.0, 4.0), (None, 6.0))

    for i, row in enumerate(rows):
        for j, column in enumerate(columns):
            if cells[i][j] is not None:
                assert from_grid(rows, columns, cells, row, column) == cells[i][j]
    with pytest.raises(OutOfRangeError, match="blank"):
        from_grid(rows, columns, cells, 307.0, 295.0)
    for row, column in ((299.0, 295.0), (311.0, 295.0), (305.0, 301.0)):
        with pytest.raises(OutOfRangeError, match="outside"):
            from_grid(rows, columns, cells, row, column)
    for wrong in (((1.0,), (2.0,), (3.0,)), ((1.0, 2.0),)):
        with pytest.raises(OutOfRangeError, match="one cell"):
            from_grid(rows, columns, wrong, 305.0, 295.0)


@given(st.lists(st.floats(-300, 300), min_size=3, max_size=8))
def test_a_lines_behaviour_does_not_depend_on_the_order(values: list[float]) -> None:
    assert behaviour(*values) == behaviour(*reversed(values))


@given(st.floats(0.0, 5e6), st.floats(0.0, 2e5))
def test_a_switch_is_never_expected_open_and_closed(
    pressure: float, spread: float
) -> None:
    high = switch_expected(pressure, 4.1e6, 3.2e6, spread)
    low = switch_expected(pressure, 0.1e6, 0.3e6, spread)

    assert high == "either" or (high == "open") == (pressure >= 4.1e6)
    assert low == "either" or (low == "open") == (pressure <= 0.1e6)


def test_a_switch_with_one_pressure_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="two pressures"):
        switch_expected(1e6, 2e6, 2e6)


@pytest.mark.parametrize(
    ("points", "moved"),
    [
        (((0, 40), (300, 40), (600, 39)), "steady"),
        (((0, 40), (300, 90), (600, 140)), "rising"),
        (((0, 40), (300, 90), (600, 100)), "flattening"),
        (((0, 40), (300, 35), (600, 60)), "rising"),
    ],
)
def test_a_vacuum_is_steady_flattening_or_rising(
    points: tuple[tuple[float, float], ...], moved: str
) -> None:
    assert decay(points) == moved


def test_a_vacuum_needs_three_times_and_no_two_at_once() -> None:
    with pytest.raises(OutOfRangeError, match="2 readings"):
        decay(((0, 40), (300, 50)))
    with pytest.raises(OutOfRangeError, match="one time"):
        decay(((0, 40), (0, 50), (300, 50)))


@given(st.lists(st.integers(0, 400), min_size=1, max_size=9))
def test_a_table_agrees_with_the_sum_of_its_own_hundredths(counts: list[int]) -> None:
    parts = tuple(count / 100 for count in counts)

    assert total_disagrees(parts, sum(counts) / 100, 0.01) is None
    assert total_disagrees(parts, sum(counts) / 100 + 1.0, 0.01) == pytest.approx(-1.0)


@given(ohms, ohms)
def test_the_sum_of_two_windings_is_the_third(run: float, start: float) -> None:
    assert single_phase(start, run, run + start) == "sum holds"
    assert single_phase(start, run, 2 * (run + start) + 1) == "sum does not hold"


def test_wires_swapped_open_and_shorted_are_told_apart() -> None:
    table = {"1": "1", "2": "2", "3": "3", "4": "4"}

    found = {"1": ("2",), "2": ("1",), "3": (), "4": ("4", "S")}

    assert wiring_faults(table, found) == (
        WiringFault("swapped", ("1", "2")),
        WiringFault("open", ("3",)),
        WiringFault("shorted", ("4", "4", "S")),
    )
    assert wiring_faults(table, {key: (key,) for key in table}) == ()
    with pytest.raises(OutOfRangeError, match="4 was not rung out"):
        wiring_faults(table, {"1": ("1",), "2": ("2",), "3": ("3",)})


@given(st.permutations(["1", "2", "3", "4", "5"]))
def test_a_cable_is_right_only_as_the_table_has_it(ends: list[str]) -> None:
    names = ["1", "2", "3", "4", "5"]

    faults = wiring_faults(
        dict(zip(names, names, strict=True)),
        {name: (end,) for name, end in zip(names, ends, strict=True)},
    )

    assert (faults == ()) == (ends == names)


def test_a_spliced_conductor_stands_out_of_its_siblings() -> None:
    assert doubtful_conductors({"1": 0.4, "2": 0.5, "3": 0.4, "S": 6.0}) == ("S",)
    assert doubtful_conductors({"1": 2.0, "2": 2.1, "3": 2.2}) == ()


TWO_UNITS = [
    ("voltage-unbalance", {"volts": "462; 463; 455 V"},
     {"volts": "462000 mV; 463000 mV; 455000 mV"}),
    ("nitrogen-test", {"start": "3.8 MPa", "t_start": "27 C", "t_end": "20 C"},
     {"start": "3800 kPa", "t_start": "80.6 F", "t_end": "68 F"}),
    ("capacitor", {"amps": "4.2 A", "volts": "370 V", "frequency": "60 Hz"},
     {"amps": "4200 mA", "volts": "0.37 kV", "frequency": "0.06 kHz"}),
    ("bus-discharge", {"capacitance": "680 uF", "bleed": "47 kohm", "start": "325 V"},
     {"capacitance": "680000 nF", "bleed": "47000 ohm", "start": "0.325 kV"}),
    ("weigh-in", {"plate": "1.25 kg", "adjustment": "54 g"},
     {"plate": "1250 g", "adjustment": "0.054 kg"}),
    ("copper-temperature",
     {"resistance": "0.65 ohm", "temperature": "20 C", "wanted": "25 C"},
     {"resistance": "650 milliohm", "temperature": "68 F", "wanted": "77 F"}),
    ("voltage-drop", {"current": "20 A", "length": "100 ft", "area": "10380 cmil"},
     {"current": "20000 mA", "length": "30.48 m", "area": "10.38 kcmil"}),
]  # fmt: skip


@pytest.mark.parametrize(("name", "one", "other"), TWO_UNITS)
def test_the_unit_that_a_value_is_written_in_changes_nothing(
    name: str, one: dict[str, str], other: dict[str, str]
) -> None:
    first, second = run_named(name, one), run_named(name, other)

    assert first.value == pytest.approx(second.value, rel=1e-9)
    assert first.unit == second.unit


OUTSIDE = [
    ("bus-discharge", {"capacitance": "2 farad", "bleed": "1 kohm", "start": "300 V"}),
    ("bus-discharge", {"capacitance": "1 uF", "bleed": "1 kohm", "start": "30 V"}),
    ("stored-energy", {"capacitance": "1 uF", "voltage": "2 kV"}),
    ("nitrogen-test", {"start": "9 MPa", "t_start": "20 C", "t_end": "20 C"}),
    ("nitrogen-test", {"start": "3 MPa", "t_start": "20 C", "t_end": "200 C"}),
    ("capacitor", {"amps": "1 A", "volts": "370 V", "frequency": "400 Hz"}),
    ("voltage-unbalance", {"volts": "230; 231 V"}),
    ("voltage-unbalance", {"volts": "0; 0; 0 V"}),
    ("fan-speed", {"frequency": "80 Hz", "pulses": "0"}),
    ("insulation-40", {"reading": "1 Mohm", "temperature": "150 C", "motor": "open"}),
    ("weigh-in", {"plate": "1 kg", "adjustment": "-2 kg"}),
    ("communication-line", {"readings": "1 V; 2 V"}),
]


@pytest.mark.parametrize(("name", "given_"), OUTSIDE)
def test_nothing_is_worked_out_beyond_what_a_law_is_stated_for(
    name: str, given_: dict[str, str]
) -> None:
    with pytest.raises(OutOfRangeError):
        run_named(name, given_)
