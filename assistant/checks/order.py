"""The safe order of work: what the engine adds whenever hands go inside.

Nothing here says that a part may be touched. Stored charge is measured, never
judged from time or from a lamp that has gone dark.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from assistant.checks.cautions import (
    ARC,
    BOARD_CHARGE,
    CIRCUIT,
    FAN,
    FLAMMABLE,
    LEAK,
    LIVE,
    LOCK,
    NITROGEN,
    PRECEDENCE,
    PRESSURE,
    PROVE,
    START,
    TERMINALS,
    Caution,
)
from assistant.checks.comparing import STORED_CHARGE_LIMIT
from assistant.checks.kinds import Needs
from assistant.errors import InputError

Power = Literal["as found", "isolated, charge unknown", "measured dead", "live"]
"""State of the power while a step is done; a caution is shown once for each."""


@dataclass(frozen=True, slots=True)
class SafeStep:
    """One step of the safe order of work.

    Attributes
    ----------
    id : str
        Stable name; the step ``work`` stands for the check's own steps.
    text : str
        What to do.
    power : str
        State of the power while it is done.
    cautions : tuple of Caution
        Shown before the step, once per power state.
    """

    id: str
    text: str
    power: Power
    cautions: tuple[Caution, ...] = ()


def discharge_limit(stated: float | None) -> float:
    """Return the voltage at or below which a bank counts as discharged.

    Parameters
    ----------
    stated : float or None
        The document's own limit, [V].

    Returns
    -------
    float
        The lower of the document's limit and 50 V, [V].

    Examples
    --------
    >>> discharge_limit(None), discharge_limit(25.0), discharge_limit(60.0)
    (50.0, 25.0, 50.0)
    """
    if stated is None:
        return STORED_CHARGE_LIMIT
    if stated < 0:
        raise InputError(
            f"a discharge limit of {stated:g} V is below zero",
            "give the document's limit in volts, such as 50 V",
        )
    return min(stated, STORED_CHARGE_LIMIT)


_ISOLATE = SafeStep(
    "isolate",
    "Switch off and isolate every supply: outdoor unit, indoor unit when it is fed "
    "separately, auxiliary heat, control circuit.",
    "as found",
    (PRECEDENCE, LOCK, START),
)
_LOCK = SafeStep(
    "lock",
    "Lock and tag every isolator; keep the key with you.",
    "isolated, charge unknown",
    (LOCK,),
)
_SOURCE_BEFORE = SafeStep(
    "prove-before",
    "Prove the meter on a known source.",
    "isolated, charge unknown",
    (PROVE,),
)
_SOURCE_AFTER = SafeStep(
    "prove-after",
    "Prove the meter on the known source again; if it fails, start again.",
    "isolated, charge unknown",
    (PROVE,),
)
_FAN = SafeStep(
    "fan-plug",
    "Unplug the outdoor fan only now that the bus is measured dead, with the blades "
    "at rest.",
    "measured dead",
    (FAN,),
)
_WORK = "Do the check as written; measure again if you leave the unit or it was windy."
_COVERS = SafeStep(
    "covers",
    "Plug everything back, refit covers and panels, take tools out, stand clear.",
    "measured dead",
    (START,),
)
_RESTORE = SafeStep(
    "restore",
    "Remove your own lock and tag, restore every supply, warn everyone near: it may "
    "start by itself after a delay.",
    "live",
    (START,),
)


def safe_order(needs: Needs, stated_limit: float | None = None) -> tuple[SafeStep, ...]:
    """Return the order of work around a check of a given invasiveness.

    Parameters
    ----------
    needs : str
        ``look``, ``power_off``, ``live``, ``gauges``, ``opens_circuit`` or ``swap``.
    stated_limit : float, optional
        The document's discharge limit, [V]; the lower of it and 50 V is used.

    Returns
    -------
    tuple of SafeStep
        In the order they are done; empty for a look, where no hand goes inside.

    Examples
    --------
    >>> [step.id for step in safe_order("power_off")][:4]
    ['isolate', 'lock', 'prove-before', 'measure']
    >>> safe_order("look")
    ()
    """
    limit = discharge_limit(stated_limit)
    if needs == "look":
        return ()
    if needs == "live":
        return _live(limit)
    if needs == "gauges":
        return _GAUGES
    middle = _work(needs)
    return (*_dead(limit), *middle, _COVERS, _RESTORE)


def _measure(name: str, limit: float, again: str = "") -> SafeStep:
    return SafeStep(
        name,
        f"Measure AC between all supply terminals and to earth, then DC at every "
        f"marked capacitor bank{again}: go on only at or below {limit:g} V at each. "
        "Above that, wait and measure again; never judge by time or by a dark lamp, "
        "and never short a bank.",
        "isolated, charge unknown",
        (BOARD_CHARGE,),
    )


def _dead(limit: float) -> tuple[SafeStep, ...]:
    return (
        _ISOLATE,
        _LOCK,
        _SOURCE_BEFORE,
        _measure("measure", limit),
        _SOURCE_AFTER,
        _FAN,
        _measure("measure-again", limit, " again"),
    )


def _work(needs: Needs) -> tuple[SafeStep, ...]:
    if needs == "opens_circuit":
        return _CIRCUIT
    if needs == "swap":
        return (
            SafeStep(
                "work",
                "Note switch settings and photograph the wiring, then change the part; "
                "set the new one for exactly this unit.",
                "measured dead",
            ),
        )
    return (SafeStep("work", _WORK, "measured dead"),)


_CIRCUIT = (
    SafeStep(
        "recover",
        "Ventilate, keep flames and sparks away, and recover the charge with a machine "
        "and cylinder rated for this refrigerant; a licensed technician only.",
        "measured dead",
        (CIRCUIT, PRESSURE, FLAMMABLE, LEAK),
    ),
    SafeStep("work", "Open the circuit and do the work as written.", "measured dead"),
    SafeStep(
        "tightness",
        "Purge and test for tightness with dry nitrogen through a regulator, never "
        "above the plate's pressure; evacuate, hold, and charge by weight.",
        "measured dead",
        (NITROGEN, TERMINALS),
    ),
)

_GAUGES = (
    SafeStep(
        "clear",
        "Stand clear of fan and belt lines; covers stay on. The unit may start by "
        "itself.",
        "live",
        (PRECEDENCE, START, FAN, TERMINALS),
    ),
    SafeStep(
        "refrigerant",
        "Read the refrigerant and the pressures on the plate; fit hoses and gauges "
        "rated for both. Wear goggles and gloves; ventilate; no flame near.",
        "live",
        (PRESSURE, FLAMMABLE, LEAK, CIRCUIT),
    ),
    SafeStep("work", "Do the check as written.", "live"),
    SafeStep(
        "caps",
        "Take the hoses off with the least loss, refit caps, check for leaks.",
        "live",
        (CIRCUIT,),
    ),
)


def _live(limit: float) -> tuple[SafeStep, ...]:
    """Return the order of a live reading: dead to connect, live only to read."""
    return (
        *_dead(limit)[:5],
        SafeStep(
            "connect",
            "Connect insulated clips at the marked points; route the leads out so that "
            "no hand is inside later.",
            "measured dead",
            (ARC, FAN),
        ),
        SafeStep(
            "energise",
            "Clear tools, stand clear, restore the supply; it may start by itself.",
            "live",
            (LIVE, START, ARC),
        ),
        SafeStep(
            "work",
            "Read as written, without touching leads, board or frame.",
            "live",
            (LIVE,),
        ),
        SafeStep(
            "isolate-again",
            "Isolate every supply and lock it again.",
            "live",
            (LOCK,),
        ),
        _measure("measure-again", limit, " again"),
        SafeStep(
            "prove-at-end",
            "Prove the meter on the known source, then take the leads off.",
            "isolated, charge unknown",
            (PROVE,),
        ),
        _COVERS,
        _RESTORE,
    )
