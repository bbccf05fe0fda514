"""Cautions of the safe order of work, each with its published basis.

The wording is the project's own; the basis names where the duty or the hazard is
published. A caution without one says that it is common practice.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.checks.law import PRACTICE


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution and the published basis it stands on."""

    text: str
    basis: str


PRECEDENCE = Caution(
    "The maker's instructions, local codes and licensed practice come before these "
    "steps.",
    PRACTICE,
)
LOCK = Caution(
    "Isolate, lock and tag, release stored energy, and verify before work; keep "
    "verifying where energy can build up again.",
    "29 CFR 1910.147(d)(1) to (d)(6); electrical exposure: 29 CFR 1910.333",
)
LIVE = Caution(
    "Work live only where the reading cannot be had dead, by a qualified person with "
    "protective equipment.",
    "29 CFR 1910.333(a)(1); NFPA 70E 110 and 130",
)
PROVE = Caution(
    "A dead meter reads zero everywhere: prove it on a known source before and after.",
    "NFPA 70E: the tester is proved on a known source before and after",
)
BOARD_CHARGE = Caution(
    "Capacitors hold a dangerous charge with the power off. Off long enough to reset "
    "is not discharged: the charge is measured at every marked bank.",
    "29 CFR 1910.333(a)(1) (50 V); IEC 60204-1, 6.2.4 (residual voltage)",
)
FAN = Caution(
    "Wind turns the outdoor fan into a generator that charges the bus again; blades "
    "cut.",
    "makers' service manuals on wind-driven fans and bus charge",
)
START = Caution(
    "The unit may start by itself when supply returns or a wait ends.",
    PRACTICE,
)
ARC = Caution(
    "Use leads, clips and a meter rated for the voltage and category of the supply.",
    PRACTICE,
)
TERMINALS = Caution(
    "Compressor terminals can blow out hot oil and gas: cover on, stand aside.",
    "makers' service manuals on compressor terminal covers",
)
PRESSURE = Caution(
    "Refrigerant is under pressure; liquid freezes skin and eyes.",
    PRACTICE,
)
FLAMMABLE = Caution(
    "Read the class on the plate. A2L is mildly flammable and A3 is flammable; their "
    "rules differ. Detector on, no flame, rated tools, air moving.",
    "ASHRAE 34 safety classes; ASHRAE 15 and 15.2; IEC 60335-2-40",
)
LEAK = Caution(
    "A leak alarm is a leak until proved otherwise: ventilate and leave first.",
    PRACTICE,
)
CIRCUIT = Caution(
    "Refrigerant is never vented; certified persons recover it and evacuate to the "
    "level set before opening.",
    "Clean Air Act section 608; 40 CFR Part 82, Subpart F",
)
NITROGEN = Caution(
    "Test pressure with dry nitrogen and a regulator only; oxygen or air explodes with "
    "oil.",
    "makers' installation manuals on leak tests",
)
