"""A train that was read, as an observation: what is not sure stays open. Pure."""

from __future__ import annotations

from assistant.signals.observation import Observation
from assistant.signals.taps import likely
from assistant.signals.train_reader import TrainReading


def observed(reading: TrainReading, whose: Observation | None = None) -> Observation:
    """Return what a reading says of a lamp.

    Parameters
    ----------
    reading : TrainReading
    whose : Observation, optional
        Whose box, board, label, colour and emitter it takes.

    Examples
    --------
    >>> from assistant.signals.train_reader import read_train
    >>> found = observed(read_train([[0, 0.5, 3, 3.5, 6, 6.5]]))
    >>> found.state, found.count, found.pause, found.counted
    ('count', (2,), 'seen', (2, 2, 2))
    """
    told = _pattern(reading)
    if whose is not None:
        for slot in ("box", "board", "label", "colour", "emitter"):
            told[slot] = getattr(whose, slot)
    return Observation.model_validate(told)


def _pattern(reading: TrainReading) -> dict[str, object]:
    if reading.digits is not None:
        return {
            "state": "short_long",
            "count": likely(reading.digits.short),
            "long_count": likely(reading.digits.long),
            "first": reading.digits.first,
        }
    if reading.form == "even":
        return {"state": "blink", "pause": "none", "rate_hz": reading.rate_hz}
    counts = likely(reading.counts)
    if not counts:
        return {"state": "blink"}
    return {
        "state": "count",
        "count": counts,
        "counted": tuple(count for count in reading.groups if count in counts),
        "pause": "seen" if reading.pause_s is not None else None,
        "window_s": reading.period_s,
    }
