"""Taps in words, as a strip, and as a fact. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.signals.flashes import Flash
from assistant.signals.quick_long import QuickLong
from assistant.signals.taps import TapCount, likely
from assistant.signals.train_reader import SURE, TrainReading, read_train
from assistant.signals.windows import in_windows, windows_watched

if TYPE_CHECKING:
    from datetime import datetime

    from assistant.facts import LampFact
    from assistant.signals.observation import Observation

WINDOWS = (5.0, 8.0, 10.0, 15.0, 20.0, 30.0)
"""Windows that can be chosen, seconds."""
FAIR = 0.5
"""Share from which a count is called likely."""


@dataclass(frozen=True, slots=True)
class Tapped:
    """Rounds of taps, read as a train, or over a window where one was chosen.

    Attributes
    ----------
    taps : int
        How many there were.
    train : TrainReading
        By groups and pauses, or quick and long flashes.
    window_s : float or None
        The window counted over [s]; None where groups are meant.
    in_window : tuple of TapCount
        Counts in one window, the best first.
    windows : int
        How many were watched one after another.
    """

    taps: int
    train: TrainReading
    window_s: float | None = None
    in_window: tuple[TapCount, ...] = ()
    windows: int = 0

    @property
    def usable(self) -> bool:
        """Whether there is something to enter."""
        if self.window_s is not None:
            return bool(self.in_window)
        train = self.train
        return bool(train.counts or train.digits) or train.form == "even"


def read_rounds(
    rounds: Sequence[Sequence[Flash]], window_s: float | None = None
) -> Tapped:
    """Read rounds of taps, by groups or over a window [s].

    Raises
    ------
    ValueError
        A time that is not finite or goes back; a window that is not above zero.
    """
    taps, train = sum(map(len, rounds)), read_train(rounds)
    if window_s is None:
        return Tapped(taps, train)
    times = [[flash.at for flash in flashes] for flashes in rounds]
    counts = in_windows(times, window_s)
    return Tapped(taps, train, window_s, counts, windows_watched(times, window_s))


def strip(flashes: Sequence[Flash], width: int, seconds_a_cell: float = 0.25) -> str:
    """Return taps on a line of time, the latest at the right end.

    Examples
    --------
    >>> strip([Flash(0.0), Flash(0.5), Flash(1.0), Flash(3.0, long=True)], 20)
    '|.|.|.......='
    """
    if not flashes:
        return ""
    cells = [int((one.at - flashes[0].at) / seconds_a_cell + 0.5) for one in flashes]
    shown = ["."] * (cells[-1] + 1)
    for cell, flash in zip(cells, flashes, strict=True):
        mark = "=" if flash.long else "|"
        shown[cell] = mark if shown[cell] == "." else "#"
    return "".join(shown)[-max(1, width) :]


def result_lines(tapped: Tapped) -> list[str]:
    """Return what the taps say, read by groups or by windows."""
    if tapped.window_s is not None:
        best = tapped.in_window[:1]
        given = f"{tapped.windows} watched" if best else "no whole window yet"
        sure = bool(best) and best[0].confidence >= SURE
        lines = [f"Counted over {tapped.window_s:g} s: {given}"]
        lines += _count_lines(tapped.in_window, sure=sure)
    else:
        lines = _train_lines(tapped.train)
    if tapped.train.doubled:
        lines.append(f"Not counted, too soon after another: {tapped.train.doubled}")
    return lines


def _train_lines(train: TrainReading) -> list[str]:
    if train.form == "even":
        return [_even_words(train)]
    sure = not train.another_round
    if train.digits is not None:
        lines = _digit_lines(train.digits, sure=sure)
    else:
        given = ", ".join(map(str, train.groups)) or "-"
        lines = [f"Groups: {given}", *_count_lines(train.counts, sure=sure)]
        if train.pause_s is not None:
            lines.insert(1, f"Pause seen, about {train.pause_s:.1f} s")
    return lines if sure else [*lines, f"Go on: {train.another_round}"]


def _even_words(train: TrainReading) -> str:
    low, high = train.rate_hz or (0.0, 0.0)
    return (
        "No pause: it flashes evenly, so there is nothing to count; "
        f"about {(low + high) / 2:.1f} in a second"
    )


def _digit_lines(digits: QuickLong, *, sure: bool) -> list[str]:
    lines = []
    for name, counts in (("Quick", digits.short), ("Long", digits.long)):
        lines += [f"{name} flashes", *_count_lines(counts, sure=sure)]
    return lines


def _count_lines(counts: Sequence[TapCount], *, sure: bool) -> list[str]:
    if not counts:
        return []
    best = counts[0]
    unsure = "likely" if best.confidence >= FAIR else "not sure"
    others = [str(count) for count in likely(counts) if count != best.count]
    beside = f"; perhaps {' or '.join(others)}" if others else ""
    return [f"= {best.count} ({'sure' if sure else unsure}){beside}"]


def tap_words(tapped: Tapped, light: str) -> str:
    """Return the taps as a person would say them."""
    whose = f"{light}: " if light else ""
    return f"{whose}tapped{_pattern_words(tapped)}"


def _pattern_words(tapped: Tapped) -> str:
    train = tapped.train
    if tapped.window_s is not None:
        return f" {_either(tapped.in_window)} in {tapped.window_s:g} s"
    if train.form == "even":
        return ", flashes evenly without a pause"
    if train.digits is not None:
        short, long = _either(train.digits.short), _either(train.digits.long)
        return f" {short} quick and {long} long"
    pause = f", pause {train.pause_s:.1f} s" if train.pause_s is not None else ""
    groups = ", ".join(map(str, train.groups))
    return f" {_either(train.counts)}{pause}" + (f", groups {groups}" if groups else "")


def _either(counts: Sequence[TapCount]) -> str:
    return " or ".join(map(str, likely(counts)))


def lamp_fact(
    tapped: Tapped, light: Observation | None, words: str, at: datetime
) -> LampFact:
    """Return what was tapped as a fact.

    Parameters
    ----------
    tapped : Tapped
    light : Observation or None
        Whose box, board, label and colour it takes; None where none was told.
    words : str
        The same in words.
    at : datetime
        When it was seen.
    """
    from assistant.facts import LampFact
    from assistant.signals.seen_train import observed, observed_in_windows
    from assistant.timing.moment import Moment

    if tapped.window_s is None:
        seen = observed(tapped.train, light)
    else:
        seen = observed_in_windows(
            tapped.in_window, tapped.window_s, tapped.windows, light
        )
    return LampFact(
        observation=seen,
        origin="tap counter",
        at=Moment(earliest=at, latest=at),
        words=words,
    )
