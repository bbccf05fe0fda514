"""Which judge, which unit and which conditions belong to each kind of the bench."""

from __future__ import annotations

from typing import assert_never

from assistant.checks.judge_lines import judge_fan_pins, judge_line
from assistant.checks.judge_ohms import (
    judge_capacitor,
    judge_coil,
    judge_insulation,
    judge_switch,
)
from assistant.checks.judge_phases import judge_diodes, judge_unbalance, judge_winding
from assistant.checks.kinds import (
    BenchCheck,
    BenchSet,
    CapacitorCheck,
    CoilCheck,
    DiodesCheck,
    FanPinsCheck,
    InsulationCheck,
    LineCheck,
    Meter,
    SwitchCheck,
    UnbalanceCheck,
    WindingCheck,
)
from assistant.checks.reading import (
    AT_COIL,
    BUS_DEAD,
    DIGITAL,
    DISCHARGED,
    HEADER,
    LEADS_OFF,
    MAINS,
    MODULE_OFF,
    NO_VACUUM,
    POWER_OFF,
    RUNNING,
    ReadingFor,
)
from assistant.checks.verdict import Verdict

_NEEDS: dict[str, tuple[str, ...]] = {
    "winding": (POWER_OFF, MODULE_OFF),
    "insulation": (POWER_OFF, MODULE_OFF, NO_VACUUM),
    "fan_pins": (MAINS, HEADER),
    "line": (MAINS,),
    "capacitor": (POWER_OFF, DISCHARGED, LEADS_OFF),
    "coil": (POWER_OFF, LEADS_OFF),
    "switch": (POWER_OFF, LEADS_OFF),
    "module_diodes": (POWER_OFF, BUS_DEAD, MODULE_OFF, DIGITAL),
}
"""Kind to what must be known and true before a reading of it counts."""
_UNITS = {
    "winding": "ohm",
    "insulation": "ohm",
    "fan_pins": "V",
    "line": "V",
    "capacitor": "F",
    "coil": "ohm",
    "switch": "ohm",
    "module_diodes": "V",
}


def bench_requirements(check: BenchCheck) -> tuple[str, ...]:
    """Return what a check's kind needs, and the state that it names."""
    if isinstance(check, UnbalanceCheck):
        return (MAINS,) if check.of == "voltage" else (RUNNING,)
    needs = _NEEDS[check.kind]
    if isinstance(check, CoilCheck) and check.at is not None:
        return (*needs, AT_COIL)
    if isinstance(check, SwitchCheck):
        return (*needs, check.while_state)
    return needs


def bench_unit(check: BenchCheck) -> str:
    """Return the canonical unit that a check's reading has."""
    if isinstance(check, UnbalanceCheck):
        return "V" if check.of == "voltage" else "A"
    return _UNITS[check.kind]


def judge_bench(check: BenchCheck, reading: ReadingFor, meter: Meter | None) -> Verdict:
    """Return the verdict of a kind of the bench; what it needs is known to hold."""
    if isinstance(check, BenchSet):
        return _several(check, reading, meter)
    match check:
        case InsulationCheck():
            return judge_insulation(check, reading, meter)
        case CapacitorCheck():
            return judge_capacitor(check, reading, meter)
        case CoilCheck():
            return judge_coil(check, reading, meter)
        case SwitchCheck():
            return judge_switch(check, reading)
        case _:
            assert_never(check)


def _several(check: BenchSet, reading: ReadingFor, meter: Meter | None) -> Verdict:
    match check:
        case UnbalanceCheck():
            return judge_unbalance(check, reading, meter)
        case WindingCheck():
            return judge_winding(check, reading, meter)
        case DiodesCheck():
            return judge_diodes(check, reading, meter)
        case FanPinsCheck():
            return judge_fan_pins(check, reading, meter)
        case LineCheck():
            return judge_line(check, reading, meter)
        case _:
            assert_never(check)
