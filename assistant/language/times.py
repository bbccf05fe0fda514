"""Times in a text: "about 20 min ago", "at ten past", "yesterday"; ranges in UTC."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import partial

from assistant.language.claims import rx
from assistant.language.durations import SECONDS, lasting, seconds
from assistant.language.lexicon.words import words
from assistant.language.tokens import Tokens
from assistant.timing.moment import Moment

JUST = timedelta(minutes=2)
"""How long ago "just now" may be."""
LONGEST = timedelta(days=3650)
_HALF_DAY, _DAY_HOURS, _HOUR_MINUTES = 12, 24, 60
_LASTING = lasting(units="|".join(SECONDS))
_AGO = rx(
    rf"(?:it (?:is|has) )?(?:been )?{_LASTING} (?:ago|back|since|earlier|now since)"
)
_STATES = words(
    "off stopped running down on dark out defrosting isolated defrost quiet dead back"
)
_SINCE = "|".join(
    [f"(?<=been {word} )(?:for )?" for word in (*_STATES, "in defrost")]
    + [f"(?<={lead} {word} )for " for lead in ("is", "now") for word in _STATES]
)
_FOR = rx(
    rf"(?:{_SINCE})(?:now )?(?:the last )?{_LASTING}(?! (?:ago|then|and (?:then |"
    r"back )|before|back))"
)
"""How long something has been so: "been off 5 min", "is stopped for an hour"."""
_PAST = rx(
    r"(?:at |since |around |about )?(?P<n>[0-9]{1,2}|quarter|half)(?: (?:or|to|-) "
    r"(?P<m>[0-9]{1,2}|quarter|half))?(?: min)? (?P<side>past|after|till)(?: "
    r"(?P<hour>[0-9]{1,2})(?! (?:min|sec|hour|v|k)))?(?: (?P<half>am|pm))?"
)
_QUARTER_TO = rx(
    r"(?:at |since )?(?P<n>[0-9]{1,2}|quarter) to (?P<hour>[0-9]{1,2})(?: (?P<half>am|"
    r"pm))?"
)
_CLOCK = rx(
    r"(?:at |since |around |about )?(?P<hour>[0-9]{1,2}):(?P<min>[0-5][0-9])(?: "
    r"(?P<half>am|pm))?(?: (?P<m>or [0-9]{1,2}:[0-5][0-9]))?"
)
_AFTER_EVENT = (
    "(?:"
    + "|".join(
        f"(?<={word} )"
        for word in words("out off it up back on down stopped quit started reset")
    )
    + ")"
)
_OCLOCK = rx(
    r"(?:at |since |around |about )?(?P<hour>[0-9]{1,2}) (?:(?P<half>am|pm)|oclock|o "
    r"clock)"
    rf"|{_AFTER_EVENT}(?:at|since|around) (?P<bare>[0-9]{{1,2}})(?= and|$| ,(?! [0-9])|"
    r" \.| then)"
)
_JUST = rx(
    r"just now|(?:just )?a (?:moment|sec) ago|right now|just a min ago|(?:only "
    r")?just(?= (?:now )?(?:reset|cycled|killed|flipped|turned|powered|pressed|hit|"
    r"pushed|cut|swapped|replaced|stopped|started|tripped|kicked|lost|came|got)\b)"
)
_DAYS: tuple[tuple[re.Pattern[str], int, float, float], ...] = (
    (rx(r"yesterday morning"), -1, 5, 12),
    (rx(r"yesterday (?:afternoon|arvo)"), -1, 12, 18),
    (rx(r"yesterday (?:evening|night)|last night"), -1, 18, 30),
    (rx(r"day before yesterday"), -2, 0, 24),
    (rx(r"yesterday"), -1, 0, 24),
    (rx(r"this morning"), 0, 4, 12),
    (rx(r"this afternoon"), 0, 12, 18),
    (rx(r"(?:earlier )?today"), 0, 0, 24),
    (rx(r"last week"), -13, 0, 24 * 13),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class TimeSpan:
    """A time told in `start` to `end` of the folded text."""

    start: int
    end: int
    moment: Moment


@dataclass(frozen=True, slots=True)
class Clock:
    """The instant a text was written and the writer's offset from UTC."""

    now: datetime
    offset: timedelta

    @property
    def local(self) -> datetime:
        """Return the writer's wall clock, carried as if it were UTC."""
        return self.now + self.offset

    def moment(self, earliest: datetime, latest: datetime) -> Moment | None:
        """Return local times as a past range in UTC; None when all of it is ahead."""
        first, last = earliest - self.offset, latest - self.offset
        if first > self.now:
            return None
        return Moment(earliest=first, latest=max(first, min(last, self.now)))


def find_times(view: Tokens, clock: Clock) -> list[TimeSpan]:
    """Return the times of a text, none overlapping, in text order."""
    spans = [
        TimeSpan(*match.span(), moment)
        for pattern, read in _READERS
        for match in pattern.finditer(view.folded)
        if (moment := read(match, clock))
    ]
    kept: list[TimeSpan] = []
    for span in spans:
        if all(span.end <= other.start or other.end <= span.start for other in kept):
            kept.append(span)
    return sorted(kept, key=lambda span: span.start)


def _ago(match: re.Match[str], clock: Clock) -> Moment | None:
    short, long = seconds(match)
    if long > LONGEST.total_seconds():
        return None
    back, ahead = timedelta(seconds=long), timedelta(seconds=short)
    if match["unit"] == "day":
        days = [round(length / SECONDS["day"]) for length in (long, long - short)]
        return _day(clock, -days[0], 0, _DAY_HOURS * (1 + days[1]))
    return Moment(earliest=clock.now - back, latest=clock.now - ahead)


def _minutes(text: str) -> int:
    return {"quarter": 15, "half": 30}.get(text) or int(text)


def _past(match: re.Match[str], clock: Clock) -> Moment | None:
    if match["side"] == "till":
        return _before(match, clock)
    first = _minutes(match["n"])
    last = _minutes(match["m"]) if match["m"] else first
    return _from_hour(match, clock, *sorted((first, last)))


def _before(match: re.Match[str], clock: Clock) -> Moment | None:
    early = -_minutes(match["n"])
    return _from_hour(match, clock, early, early) if match["hour"] else None


def _from_hour(
    match: re.Match[str], clock: Clock, first: int, last: int
) -> Moment | None:
    if max(abs(first), abs(last)) >= _HOUR_MINUTES:
        return None
    hour = int(match["hour"]) if match["hour"] else None
    begin = _latest(clock, hour, match["half"], first)
    if begin is None:
        return None
    return clock.moment(begin, begin + timedelta(minutes=last - first))


def _latest(
    clock: Clock, hour: int | None, half: str | None, minute: int
) -> datetime | None:
    """Return the last local time, not ahead of now, that the clock words allow."""
    midnight = clock.local.replace(hour=0, minute=0, second=0, microsecond=0)
    hours = _hours(hour, half)
    times = [
        midnight + timedelta(days=day, hours=h, minutes=minute)
        for day in (-1, 0)
        for h in hours
    ]
    past = [time for time in times if time <= clock.local]
    return max(past, default=None)


def _hours(hour: int | None, half: str | None) -> list[int]:
    if hour is None:
        return list(range(24))
    if hour > _DAY_HOURS:
        return []
    if half:
        return [hour % _HALF_DAY + (_HALF_DAY if half == "pm" else 0)]
    if hour > _HALF_DAY:
        return [hour % _DAY_HOURS]
    return [hour % _HALF_DAY, hour % _HALF_DAY + _HALF_DAY]


def _clock(match: re.Match[str], clock: Clock) -> Moment | None:
    found = _latest(clock, int(match["hour"]), match["half"], int(match["min"]))
    if found is None:
        return None
    last = found
    if match["m"]:
        hour, minute = match["m"].removeprefix("or ").split(":")
        other = _latest(clock, int(hour), match["half"], int(minute))
        last = max(found, other or found)
        found = min(found, other or found)
    return clock.moment(found, last)


def _oclock(match: re.Match[str], clock: Clock) -> Moment | None:
    found = _latest(clock, int(match["hour"] or match["bare"]), match["half"], 0)
    return clock.moment(found, found) if found else None


def _just(_match: re.Match[str], clock: Clock) -> Moment | None:
    return Moment(earliest=clock.now - JUST, latest=clock.now)


def _stretch(
    day: int, first: float, last: float, _match: re.Match[str], clock: Clock
) -> Moment | None:
    return _day(clock, day, first, last)


def _day(clock: Clock, day: int, first: float, last: float) -> Moment | None:
    midnight = clock.local.replace(hour=0, minute=0, second=0, microsecond=0)
    begin = midnight + timedelta(days=day, hours=first)
    return clock.moment(begin, midnight + timedelta(days=day, hours=last))


_READERS: tuple[
    tuple[re.Pattern[str], Callable[[re.Match[str], Clock], Moment | None]], ...
] = (
    (_AGO, _ago),
    (_FOR, _ago),
    (_CLOCK, _clock),
    (_QUARTER_TO, _before),
    (_PAST, _past),
    (_OCLOCK, _oclock),
    (_JUST, _just),
    *(
        (pattern, partial(_stretch, day, first, last))
        for pattern, day, first, last in _DAYS
    ),
)


_ANSWER = rx(rf"{_LASTING}|(?:at |around )?(?P<hour>[0-9]{{1,2}})")


def answered_time(view: Tokens, clock: Clock) -> TimeSpan | None:
    """Read a time from an answer to "when?", where "10 min" and "at 9" suffice."""
    for span in find_times(view, clock):
        return span
    match = _ANSWER.search(view.folded)
    if match is None:
        return None
    moment: Moment | None = None
    if match["unit"]:
        moment = _ago(match, clock)
    else:
        at = _latest(clock, int(match["hour"]), None, 0)
        moment = clock.moment(at, at) if at else None
    return TimeSpan(match.start(), match.end(), moment) if moment else None
