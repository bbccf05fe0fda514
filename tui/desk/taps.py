"""Taps in words, as a strip, and as a fact. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

from assistant.signals.taps import TapCount, TapResult, likely

if TYPE_CHECKING:
    from datetime import datetime

    from assistant.facts import LampFact
    from assistant.signals.observation import Observation

WINDOWS = (5.0, 8.0, 10.0, 15.0, 20.0, 30.0)
"""Windows that can be chosen, seconds."""
SURE, FAIR = 0.75, 0.5
Way = Literal["groups", "window"]


def strip(times: Sequence[float], width: int, seconds_a_cell: float = 0.25) -> str:
    """Return taps on a line of time, the latest at the right end.

    Examples
    --------
    >>> strip((0.0, 0.5, 1.0, 3.0), 20)
    '|.|.|.......|'
    """
    if not times:
        return ""
    cells = [int((at - times[0]) / seconds_a_cell + 0.5) for at in times]
    shown = ["."] * (cells[-1] + 1)
    for cell in cells:
        shown[cell] = "|" if shown[cell] == "." else "#"
    return "".join(shown)[-max(1, width) :]


def way_lines(result: TapResult, way: Way) -> list[str]:
    """Return what the taps say, read by groups or by windows."""
    if way == "window":
        head = f"Counted over {result.window_s:g} s each"
        given = ", ".join(map(str, result.windows)) or "no whole window yet"
        return [f"{head}: {given}", *_counts(result.by_window)]
    given = ", ".join(map(str, result.groups)) or "-"
    return [f"Groups: {given}", _pause_words(result), *_counts(result.by_groups)]


def _pause_words(result: TapResult) -> str:
    if result.pause == "seen" and result.pause_s is not None:
        return f"Pause seen, about {result.pause_s:.1f} s"
    if result.pause == "none":
        return "No pause: it flashes evenly, so there is nothing to count"
    return "No pause yet: go on through the next group"


def _counts(counts: Sequence[TapCount]) -> list[str]:
    told = likely(counts)
    best = counts[0] if counts else None
    if best is None:
        return []
    sure = "sure" if best.confidence >= SURE else "not sure"
    sure = "likely" if FAIR <= best.confidence < SURE else sure
    others = [str(count) for count in told if count != best.count]
    beside = f"; perhaps {' or '.join(others)}: watch one more round" if others else ""
    return [f"= {best.count} ({sure}){beside}"]


def usable(result: TapResult, way: Way) -> bool:
    """Say whether there is something to enter."""
    if way == "window":
        return bool(result.by_window)
    return bool(result.by_groups) or result.pause == "none"


def tap_words(result: TapResult, way: Way, light: str) -> str:
    """Return the taps as a person would say them."""
    whose = f"{light}: " if light else ""
    if way == "window":
        counts = " or ".join(map(str, likely(result.by_window)))
        return f"{whose}tapped {counts} in {result.window_s:g} s"
    if result.pause == "none":
        return f"{whose}tapped, flashes evenly without a pause"
    counts = " or ".join(map(str, likely(result.by_groups)))
    pause = f", pause {result.pause_s:.1f} s" if result.pause_s is not None else ""
    return f"{whose}tapped {counts}{pause}, groups {result.groups}"


def lamp_fact(
    result: TapResult, way: Way, light: Observation | None, words: str, at: datetime
) -> LampFact:
    """Return what was tapped as a fact.

    Parameters
    ----------
    result : TapResult
    way : str
        Which reading of the taps is meant.
    light : Observation or None
        Whose box, board, label and colour it takes; None where none was told.
    words : str
        The same in words.
    at : datetime
        When it was seen.
    """
    from assistant.facts import LampFact
    from assistant.signals.observation import Observation
    from assistant.timing.moment import Moment

    seen: dict[str, object] = {}
    if light is not None:
        for slot in ("box", "board", "label", "colour"):
            seen[slot] = getattr(light, slot)
    if way == "window":
        counts = likely(result.by_window)
        seen |= {"state": "count", "count": counts, "window_s": result.window_s}
        seen["groups_watched"] = result.windows.count(result.by_window[0].count)
    elif result.pause == "none":
        seen |= {"state": "blink", "pause": "none"}
    else:
        seen |= {"state": "count", "count": likely(result.by_groups)}
        seen |= {"pause": result.pause, "window_s": result.period_s}
        seen["groups_watched"] = result.groups.count(result.by_groups[0].count)
    return LampFact(
        observation=Observation.model_validate(seen),
        origin="tap counter",
        at=Moment(earliest=at, latest=at),
        words=words,
    )
