"""The stop list and the refusals: data, in force with or without a library.

Each entry says what to do now and whom to call. The bases are published rules named
beside each; everything here defers to the maker, local codes and licensed practice.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from assistant.rules.kinds import Hazard


@dataclass(frozen=True, slots=True)
class StopEntry:
    """One danger: what it is, what to do now, whom to call, and the basis."""

    danger: str
    do_now: tuple[str, ...]
    call: str
    basis: str
    afterwards: str
    """What stays true in later turns of the job."""


STOP_LIST: Mapping[Hazard, StopEntry] = MappingProxyType(
    {
        "burning": StopEntry(
            "Smoke, or a smell of burning.",
            (
                "Cut the supply at the isolator or breaker if you can reach it safely.",
                "Leave the cover on and keep people away.",
                "If there is smoke or flame: get everyone out.",
            ),
            "The fire service if there is smoke or flame; then a licensed technician.",
            "29 CFR 1910.333(a)(1): live parts are de-energised before work",
            "Burning was reported: do not restore power before the cause is found.",
        ),
        "breaker_again": StopEntry(
            "The breaker trips again after it was put back.",
            (
                "Leave it off. Do not put it back another time.",
                "Lock it off and tag it.",
            ),
            "A licensed electrician or technician: the circuit is tested dead first.",
            "29 CFR 1910.334(b)(2): a tripped circuit stays off until found safe",
            "The breaker tripped again: the circuit stays off until it is tested dead.",
        ),
        "gas": StopEntry(
            "Gas or carbon monoxide.",
            (
                "Get everyone out into fresh air now.",
                "No switches, no flames, no phone inside the building.",
            ),
            "The emergency number and the gas supplier, from outside.",
            "common practice, no source",
            "Gas or carbon monoxide was reported: nobody goes back in before the "
            "emergency service says so.",
        ),
        "leak_alarm": StopEntry(
            "A refrigerant leak alarm in a closed room.",
            (
                "Leave the room and open it to outside air.",
                "No flames, no sparks, no smoking; do not silence the alarm.",
                "Leave the fan of the unit running if it started by itself.",
            ),
            "A technician licensed for flammable refrigerants. "
            "The alarm is a leak until it is proved otherwise.",
            "IEC 60335-2-40: leak detection of mildly flammable refrigerants",
            "A leak alarm was reported: it is a leak until proved otherwise.",
        ),
        "unwell": StopEntry(
            "Somebody is unwell or hurt.",
            (
                "Get them into fresh air, away from the unit.",
                "If it was a shock: cut the supply first; do not touch them before.",
            ),
            "The emergency number, now.",
            "common practice, no source",
            "Somebody was unwell: they come first.",
        ),
        "water_on_electrics": StopEntry(
            "Water near live electrics.",
            (
                "Do not touch the unit or stand in the water.",
                "Cut the supply at the board, not at the unit.",
            ),
            "A licensed electrician or technician.",
            "29 CFR 1910.333(a)(1): live parts are de-energised before work",
            "Water reached the electrics: dry and tested before power is restored.",
        ),
        "compressor_to_ground": StopEntry(
            "The compressor reads to ground.",
            (
                "Keep the supply off, locked and tagged.",
                "Stay clear of the compressor terminals: they can vent oil and gas.",
            ),
            "A technician licensed for refrigerants and electrics.",
            "makers' manuals: terminals can vent, cover stays on",
            "The compressor reads to ground: no power to it.",
        ),
        "storm_or_alone": StopEntry(
            "A storm, or alone on a roof.",
            (
                "Come down and leave the work.",
                "Nothing on a roof is opened in a storm, and nothing live alone.",
            ),
            "Your office: go back with a second person, in safe weather.",
            "common practice, no source",
            "Work on a roof waits for safe weather and a second person.",
        ),
    }
)


@dataclass(frozen=True, slots=True)
class Refusal:
    """One act that is refused: why, and the safe way instead."""

    why: str
    instead: str
    basis: str


REFUSALS: Mapping[str, Refusal] = MappingProxyType(
    {
        "bypass_protection": Refusal(
            "No: that switch or sensor is what keeps the pressure, the heat or the "
            "current within what the unit can bear.",
            "With power off and locked, measure across it: say what it reads, and at "
            "what pressure or temperature. An open one is doing its work or is proved "
            "faulty that way, and is then replaced like for like.",
            "maker's protection devices; 29 CFR 1910.333(a)(1)",
        ),
        "bypass_leak_sensor": Refusal(
            "No: a leak sensor is never bridged, covered or unplugged to get running. "
            "A leak alarm is a leak until it is proved otherwise.",
            "Air the room, keep flames and switches away, and have a technician "
            "licensed for flammable refrigerants test for the leak.",
            "IEC 60335-2-40: leak detection of mildly flammable refrigerants",
        ),
        "short_capacitor": Refusal(
            "No: shorting a charged capacitor with a tool throws metal and burns, and "
            "damages the board.",
            "Isolate every supply, lock and tag, prove the meter on a known source, "
            "measure every marked bank, and let it fall through the maker's own bleed "
            "or a rated discharge resistor; measure again.",
            "29 CFR 1910.147(d)(5): stored energy; the maker's discharge procedure",
        ),
        "live_work": Refusal(
            "No: work on live parts is not done where it can be done dead.",
            "Isolate every supply, lock and tag, prove dead. Only a measurement that "
            "cannot be made dead is made live, by a technician with the gear for it.",
            "29 CFR 1910.333(a)(1)",
        ),
        "over_pressure": Refusal(
            "No: never above the pressure on the nameplate, and never with oxygen or "
            "shop air.",
            "Dry nitrogen through a regulator with a relief, in the maker's steps, up "
            "to the maker's test pressure.",
            "the maker's nameplate and pressure test procedure",
        ),
    }
)

REFUSED = (
    "No step is given for this. The maker's instructions, local codes and licensed "
    "practice decide."
)
NEVER_SAID = (
    "safe to touch",
    "low on refrigerant",
    "covered by warranty",
    "one more reset",
    "bigger breaker",
)
"""Wording that no reply may hold."""
TEACHES_DANGER = (
    "jumper",
    "bypass",
    "bridge the",
    "short the terminals",
    "defeat",
)
"""Words of a passage that is shown only with a caution, never as a step."""
