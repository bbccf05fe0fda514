"""Judges a reading told for a pack's check: pure, and honest when it cannot.

No verdict is given while something that must hold is false or not known. What is
still to be told stands in the verdict's `missing`, in the words of `requirements`.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import shown, unmet_reason
from assistant.checks.judge_band import judge_band, judge_band_open
from assistant.checks.judge_bench import bench_requirements, bench_unit, judge_bench
from assistant.checks.judge_charge import charge_requirements, judge_charge
from assistant.checks.judge_sensors import judge_divider, judge_two
from assistant.checks.judge_split import judge_split
from assistant.checks.judge_thermistor import judge_thermistor
from assistant.checks.judge_voltage import judge_bus, judge_supply
from assistant.checks.kinds import (
    BandCheck,
    BenchCheck,
    BusCheck,
    ChargeCheck,
    Check,
    DividerCheck,
    LineCheck,
    LookCheck,
    Meter,
    Sensor,
    SplitCheck,
    SupplyCheck,
    ThermistorCheck,
    TwoSensorsCheck,
)
from assistant.checks.reading import (
    AIRFLOW,
    AT_SENSOR,
    BOARD_ON,
    FULL_SPEED,
    ONE_TEMPERATURE,
    POWER_OFF,
    THE_READING,
    Context,
    ReadingFor,
    holds,
)
from assistant.checks.verdict import Verdict
from assistant.units.quantity import CANONICAL

__all__ = ["Context", "ReadingFor", "judge", "requirements"]

_DIMENSION = {unit: dimension for dimension, unit in CANONICAL.items()}


def requirements(check: Check) -> tuple[str, ...]:
    """Return all that must be known and true before a reading of `check` counts.

    The check's own `requires`, what its kind needs, the mode it names (as ``mode
    heat``) and the state a band holds in, each once and in that order.
    """
    named = list(check.requires)
    if check.kind != "look" and _unit(check) == "ohm":
        named.append(POWER_OFF)
    named.extend(_of_kind(check))
    if check.mode is not None:
        named.append(f"mode {check.mode}")
    if isinstance(check, BandCheck) and check.while_state is not None:
        named.append(check.while_state)
    return tuple(dict.fromkeys(named))


def _of_kind(check: Check) -> tuple[str, ...]:
    match check:
        case ThermistorCheck():
            return (AT_SENSOR,)
        case DividerCheck():
            return (AT_SENSOR, BOARD_ON)
        case TwoSensorsCheck():
            return (ONE_TEMPERATURE,)
        case ChargeCheck():
            return charge_requirements(check)
        case SplitCheck():
            return (FULL_SPEED, AIRFLOW)
        case _:
            return bench_requirements(check) if isinstance(check, BenchCheck) else ()


def judge(
    check: Check,
    reading: ReadingFor,
    sensor: Sensor | None,
    context: Context,
    meter: Meter | None,
    *,
    second: Sensor | None = None,
) -> Verdict:
    """Return the verdict of a reading told for a check.

    Parameters
    ----------
    check : Check
        Of a pack; a look is answered by its options and gets no verdict here.
    reading : ReadingFor
        The reading with its temperature, supply and power state.
    sensor : Sensor or None
        The one that a thermistor check names.
    context : mapping
        Each of `requirements` to true, false, or None when it is not known.
    meter : Meter or None
        1 % + 3 digits are assumed when not told, and the reason says so.
    second : Sensor or None
        The other one of a check of two sensors.

    Returns
    -------
    Verdict
        In the unit of the check (ohm for a sensor, V for a voltage).
    """
    if isinstance(check, ChargeCheck | SplitCheck):
        return _with_figure(check, reading, context, meter)
    if isinstance(check, TwoSensorsCheck) and None in (sensor, second):
        return _none(check, "one of the two sensors is not in force for this unit")
    refused = (
        _wrong_kind(check, reading, sensor)
        or _taken_live(check, reading, context)
        or _unmet(check, reading, context)
    )
    if refused is not None:
        return _with_value(refused, reading)
    try:
        if isinstance(check, TwoSensorsCheck) and sensor and second:
            return judge_two(check, (sensor, second), reading, meter)
        return _judged(check, reading, sensor, context, meter)
    except ValueError as error:
        return _with_value(_none(check, str(error)), reading)


def _with_figure(
    check: ChargeCheck | SplitCheck,
    reading: ReadingFor,
    context: Context,
    meter: Meter | None,
) -> Verdict:
    """Return a figure that is worth having where no verdict is allowed."""
    state = {name: holds(name, reading, context) for name in requirements(check)}
    unmet = {name: told for name, told in state.items() if told is not True}
    try:
        if isinstance(check, ChargeCheck):
            return judge_charge(check, reading, unmet, meter)
        return judge_split(check, reading, unmet, meter)
    except ValueError as error:
        return _none(check, str(error))


def _judged(
    check: Check,
    reading: ReadingFor,
    sensor: Sensor | None,
    context: Context,
    meter: Meter | None,
) -> Verdict:
    if isinstance(check, ThermistorCheck | DividerCheck) and sensor is not None:
        return _by_sensor(check, sensor, reading, meter)
    if isinstance(check, BandCheck) and reading.open_line:
        return judge_band_open(check)
    untold = reading.value is None and not reading.set_of and not reading.open_line
    if isinstance(check, BenchCheck) and not untold:
        return judge_bench(check, reading, meter)
    if reading.value is None:
        return _none(check, "no reading is told", THE_READING)
    value = reading.value.value
    if isinstance(check, SupplyCheck):
        return judge_supply(check, value, reading, context, meter)
    if isinstance(check, BusCheck):
        return judge_bus(check, value, reading, context, meter)
    if isinstance(check, BandCheck):
        return judge_band(check, value, meter)
    return _none(check, "this check is answered by looking, not by a reading")


def _by_sensor(
    check: ThermistorCheck | DividerCheck,
    sensor: Sensor,
    reading: ReadingFor,
    meter: Meter | None,
) -> Verdict:
    if isinstance(check, ThermistorCheck):
        return judge_thermistor(check.id, sensor, reading, meter)
    return judge_divider(check, sensor, reading, meter)


def _wrong_kind(
    check: Check, reading: ReadingFor, sensor: Sensor | None
) -> Verdict | None:
    """Refuse what cannot be a reading of this check, whatever else is known."""
    if isinstance(check, LookCheck):
        return _none(check, "this check is answered by looking, not by a reading")
    if isinstance(check, ThermistorCheck | DividerCheck) and sensor is None:
        return _none(
            check, f"the sensor {check.sensor!r} is not in force for this unit"
        )
    unit, value = _unit(check), reading.value
    if not unit:
        return _none(check, "the document states no limit for this check")
    if value is None or reading.open_line:
        return None
    if value.unit != unit:
        told = value.text or shown(value.value, value.unit)
        reason = f"{told!r} is not a {_DIMENSION[unit]}, which this check reads"
        return _none(check, reason, THE_READING)
    signed = isinstance(check, LineCheck)
    if value.value < 0 and unit in {"ohm", "V", "A", "F"} and not signed:
        reason = f"{shown(value.value, unit)} is negative: the leads are swapped, or "
        reason += "something else fed the meter" if unit == "ohm" else "it was AC"
        return _none(check, reason, THE_READING)
    return None


def _taken_live(check: Check, reading: ReadingFor, context: Context) -> Verdict | None:
    if check.kind == "look" or _unit(check) != "ohm":
        return None
    if holds(POWER_OFF, reading, context) is False:
        return _none(check, "a resistance taken live is not accepted", POWER_OFF)
    return None


def _unmet(check: Check, reading: ReadingFor, context: Context) -> Verdict | None:
    state = {name: holds(name, reading, context) for name in requirements(check)}
    missing = tuple(name for name, told in state.items() if told is not True)
    if not missing:
        return None
    false = [name for name in missing if state[name] is False]
    unknown = [name for name in missing if state[name] is None]
    return _none(check, unmet_reason(false, unknown), *missing)


def _unit(check: Check) -> str:
    """Return the unit a check reads; none for a look or a band without limits."""
    if isinstance(check, ThermistorCheck | TwoSensorsCheck):
        return "ohm"
    if isinstance(check, SupplyCheck | BusCheck | DividerCheck):
        return "V"
    if isinstance(check, ChargeCheck | SplitCheck):
        return "dK"
    if isinstance(check, BandCheck):
        limit = check.low or check.high
        return "" if limit is None else limit.unit
    return bench_unit(check) if isinstance(check, BenchCheck) else ""


def _none(check: Check, reason: str, *missing: str) -> Verdict:
    return Verdict(
        check=check.id,
        result="no_verdict",
        reason=reason,
        unit=_unit(check),
        missing=missing,
    )


def _with_value(verdict: Verdict, reading: ReadingFor) -> Verdict:
    """Return a refusal that still quotes what was read."""
    value = reading.value
    if value is None or reading.open_line or value.unit != verdict.unit:
        return verdict
    return replace(verdict, value=value.value)
