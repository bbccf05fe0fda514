"""Wording of resets: how, what they erase, and whether one that was done took."""

from __future__ import annotations

from assistant.timing.stop_kinds import Reset
from assistant.timing.stop_values import Taking, Why
from assistant.units.show import format_quantity

EVIDENCE_FIRST = (
    "Before any reset: look at the lamps now, write down what each one does and the "
    "time, and film them for 20 s."
)
RESET_FOR_TECHNICIAN = (
    "It is locked out. Leave it as it is: a reset erases what the technician needs, "
    "and the cause is found first."
)
NAMES = {
    "power": "power",
    "button": "button",
    "remote": "remote",
    "history": "history",
    "thermostat": "call at the thermostat",
    "test_pins": "test pins",
    "device": "reset by hand at the device",
}
CLEARS = {
    "lamp": " It clears the lamp, not the lockout.",
    "lockout": " It clears the lockout; the lamp is cleared apart.",
    "both": "",
}


def reset_step(reset: Reset, *, of: str = "", step: int = 0) -> str:
    """Word one reset, with its off-time and what it erases.

    Parameters
    ----------
    reset : Reset
        As written.
    of : str
        The level it ends, where there are several.
    step : int
        Its place, where one comes after another; 0 where any one will do.
    """
    named = NAMES[reset.name] + (f", {of}" if of else "")
    first = f"Step {step}. " if step else ""
    text = f"{first}Reset ({named}), once the cause is found: {reset.how}."
    if reset.scope:
        text += f" {reset.scope[0].upper()}{reset.scope[1:]}."
    if reset.together and "together" not in (reset.scope or ""):
        text += " All supplies off at the same time: one by one does not reset."
    band = off_band(reset)
    if band:
        text += f" Off {band}."
    text += f"{CLEARS[reset.clears]} It erases: {reset.evidence_lost}."
    return f"{text} Off that long is not discharged." if band else text


def off_band(reset: Reset) -> str:
    """Say how long the power stays off, and from when that counts."""
    band = [
        f"{word} {format_quantity(q)}"
        for word, q in (
            ("at least", reset.off_at_least),
            ("not longer than", reset.off_at_most),
        )
        if q is not None
    ]
    if not band:
        return ""
    since = "the lamp going dark" if reset.counted_from == "lamp_dark" else "power off"
    return f"{', '.join(band)}, counted from {since}"


def reset_taken(taking: Taking) -> str:
    """Say whether a reset that was done took, and by which rule."""
    if taking.took == "yes" and taking.reset is not None:
        return f"By the rule that reset took. It erased: {taking.reset.evidence_lost}."
    reason = _reason(taking)
    if taking.took == "no":
        return f"That did not reset it: {reason}."
    return f"Cannot tell whether that reset took: {reason}."


REASONS: dict[Why, str] = {
    "took": "",
    "one_left_on": (
        "one supply stayed on, and it takes all of them off at the same time"
    ),
    "one_by_one": "the supplies were off one after the other, not at the same time",
    "too_short": "it was not off long enough; it takes {band}",
    "too_long": "it was off too long; it takes {band}",
    "not_cleared": "it was told not to have cleared",
    "lamp_only": "it clears the lamp, not the lockout",
    "other_reset": "it takes the one by {name}",
    "order": "another reset comes before it, and was not told",
    "which_unknown": "say which reset it was; it takes the one by {name}",
    "supplies_unknown": "it takes all supplies off at the same time",
    "off_unknown": "it takes {band}",
}
"""Why a reset took or not, in words."""


def _reason(taking: Taking) -> str:
    reset = taking.reset
    if reset is None:
        return "no reset is written for it"
    return REASONS[taking.why].format(band=off_band(reset), name=NAMES[reset.name])


WHICH = "Which reset was it: power off and on, a button, the remote, or the thermostat?"
SUPPLIES = (
    "Were all supplies (outdoor, indoor, control) off at the same time for that reset?"
)
HOW_LONG = {
    "power_off": "How long was the power off for that reset?",
    "lamp_dark": (
        "How long was it off for that reset, counted from when the lamp went dark?"
    ),
}
