"""Wording of protection stops and resets, with their times of day."""

from __future__ import annotations

from assistant.dialogue.wait_replies import clock
from assistant.timing.kinds import Reset
from assistant.timing.values import StopCount
from assistant.units.show import format_quantity


def counted(count: StopCount, offset: int) -> str:
    """Say what a protection-stop counter shows."""
    stop = count.row.stop
    seen = str(count.low) if count.low == count.high else f"{count.low} to {count.high}"
    window = format_quantity(stop.window)
    head = f"{stop.name}: {seen} of {count.limit} stops within {window}"
    match count.state:
        case "locked":
            return f"{head}: by the rule it is locked out."
        case "unknown":
            return f"{head}: cannot tell whether it is locked out; say the times."
        case "open":
            text = f"{head}: not locked; {count.left} more would lock it."
            if count.oldest_leaves is not None:
                text += f" The oldest leaves at {clock(count.oldest_leaves, offset)}."
            return f"{text} Find the cause; do not use the rest as tests."


def lockout_conflict(meaning: str) -> str:
    """Say that the count and the lamp disagree."""
    return (
        "Conflict: the stops told would lock it out, but the lamp says "
        f"{meaning}. Go by the lamp, and check the times."
    )


def reset_step(reset: Reset) -> str:
    """Word one reset, with its off-time and what it erases."""
    text = f"Reset ({reset.name}), once the cause is found: {reset.how}."
    if reset.scope:
        text += f" {reset.scope[0].upper()}{reset.scope[1:]}."
    band = [
        f"{word} {format_quantity(q)}"
        for word, q in (
            ("at least", reset.off_at_least),
            ("not longer than", reset.off_at_most),
        )
        if q is not None
    ]
    if band:
        since = (
            "the lamp going dark" if reset.counted_from == "lamp_dark" else "power off"
        )
        text += f" Off {', '.join(band)}, counted from {since}."
    return f"{text} It erases: {reset.evidence_lost}. Off that long is not discharged."


RESET_FOR_TECHNICIAN = (
    "It is locked out. Leave it as it is: a reset erases what the technician needs, "
    "and the cause is found first."
)
