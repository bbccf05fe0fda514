"""Serial numbers, build dates and firmware versions compared with stated runs.

A serial that does not fit the stated format decides nothing: it leaves the unit
possible and never excludes it.
"""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date, timedelta
from functools import lru_cache
from math import inf

from assistant.record import SerialRange, VersionRange
from assistant.rules.ranges import Ends, Key, Verdict, within

CENTURY = 70
"""Two-digit years from here on are of the last century."""
SHORT_YEAR = 2
WEEKS, MONTHS = 53, 12
NUMBER = "NUMBER"
_DROPPED = re.compile(r"[\s\-\u2010-\u2015\u2212_./]+")
_DIGITS = frozenset("YWM")
_TURNS = ("WW", "MM", "L")
_BUILT = re.compile(r"(\d{4})(?:-(?:W(\d{2})|(\d{2})))?")
_VERSION = re.compile(
    r"(?:(?:firmware|software|version|ver|rev|v)\.?\s*)*(\d+(?:\.\d+)*)([a-z]?)",
    re.IGNORECASE,
)


def compare_serial(stated: SerialRange, read: str) -> Verdict:
    """Compare a serial number with a run in the stated format.

    Examples
    --------
    >>> run = SerialRange(format="NUMBER", prefix="QX", before="QX0012000")
    >>> compare_serial(run, "QX0011999"), compare_serial(run, "QX0012000")
    ('confirmed', 'excluded')
    >>> compare_serial(run, "QZ0011999"), compare_serial(run, "unreadable")
    ('possible', 'possible')
    """
    given = serial_key(stated, read)
    if given is None or not _as_long(stated, read):
        return "possible"
    return within(given, given, serial_ends(stated))


def serial_ends(stated: SerialRange) -> Ends[Key]:
    """Return where a run of serials begins and ends; an unreadable end is open."""

    def end(text: str | None) -> Key | None:
        return None if text is None else serial_key(stated, text)

    return Ends(end(stated.first), end(stated.last), end(stated.before))


def serial_key(stated: SerialRange, serial: str) -> Key | None:
    """Return the place of a serial in the order of its format, or None: no fit.

    Two-digit years from 70 on are of the last century.

    Examples
    --------
    >>> serial_key(SerialRange(), "A2314-00871")
    (2023, 14)
    >>> serial_key(SerialRange(format="YYL", letters="ABCDEFGHJKLM"), "23J0042")
    (2023, 9)
    >>> serial_key(SerialRange(format="NUMBER", prefix="QX"), "QX 0012345")
    (12345,)
    """
    if not serial_form_known(stated.format):
        return None
    folded = _DROPPED.sub("", serial).upper()
    found = _form(stated.format.upper(), stated.prefix).match(folded)
    if found is None:
        return None
    if stated.format.upper() == NUMBER:
        return (int(found["number"]),)
    return _date_of(stated, found)


def _date_of(stated: SerialRange, found: re.Match[str]) -> Key | None:
    parts = dict.fromkeys("YWML", "")
    for letter, sign in zip(stated.format.upper(), found["date"], strict=True):
        parts[letter] = parts.get(letter, "") + sign
    year = _full_year(parts["Y"])
    if parts["L"]:
        turn = stated.letters.find(parts["L"]) + 1
        return (year, turn) if turn else None
    turn = int(parts["W"] or parts["M"])
    return (year, turn) if 1 <= turn <= (WEEKS if parts["W"] else MONTHS) else None


def _full_year(digits: str) -> int:
    year = int(digits)
    if len(digits) != SHORT_YEAR:
        return year
    return year + (1900 if year >= CENTURY else 2000)


@lru_cache(maxsize=256)
def _form(form: str, prefix: str | None) -> re.Pattern[str]:
    """Return what a folded serial looks like in a format."""
    before = "" if prefix is None else re.escape(_DROPPED.sub("", prefix).upper())
    if form == NUMBER:
        return re.compile(rf"{before}(?P<number>\d{{1,15}})$")
    signs = {"X": "[A-Z0-9]", "L": "[A-Z]"}
    if prefix is None and form[0] in _DIGITS:
        before = "[A-Z]*"
    body = "".join(signs.get(letter, r"\d") for letter in form)
    return re.compile(f"{before}(?P<date>{body})")


def serial_form_known(form: str) -> bool:
    """Return whether a serial format can be read.

    Examples
    --------
    >>> serial_form_known("XYYWW"), serial_form_known("YYL"), serial_form_known("YYDD")
    (True, True, False)
    """
    letters = form.upper()
    if letters == NUMBER:
        return True
    turns = [turn for turn in _TURNS if turn in letters]
    if len(turns) != 1 or set(letters) - set("YWMLX"):
        return False
    rest = letters.replace(turns[0], "", 1).replace("X", "")
    return rest in ("YY", "YYYY") and rest in letters


def _as_long(stated: SerialRange, read: str) -> bool:
    """Return whether a plain number has the digits that the stated ends have.

    Where an end is written with leading zeros every serial has as many digits: one
    with fewer was read in part.
    """
    if stated.format.upper() != NUMBER:
        return True
    ends = [end for end in (stated.first, stated.last, stated.before) if end]
    bare = [_digits_of(stated, end) for end in ends]
    padded = [len(end) for end in bare if end.startswith("0")]
    own = _digits_of(stated, read)
    if padded:
        return len(own) in padded
    return not own.startswith("0")


def _digits_of(stated: SerialRange, serial: str) -> str:
    folded = _DROPPED.sub("", serial).upper()
    found = _form(NUMBER, stated.prefix).match(folded)
    return found["number"] if found else ""


def compare_built(stated: SerialRange, built: str) -> Verdict:
    """Compare a build date, ``2023``, ``2023-W14`` or ``2023-04``, with a run of dates.

    A month where the run counts weeks is every week of it, and the other way round. A
    week or a month that no year has decides nothing.

    Examples
    --------
    >>> run = SerialRange(format="WWYY", first="1423")
    >>> compare_built(run, "2023-W13"), compare_built(run, "2023")
    ('excluded', 'possible')
    """
    found = _BUILT.fullmatch(built.strip())
    form = stated.format.upper()
    if found is None or form == NUMBER or not serial_form_known(form):
        return "possible"
    try:
        first, last = _days(int(found[1]), found[2], found[3])
    except (ValueError, OverflowError):
        return "possible"
    low, high = _turn(first, form), _turn(last, form)
    return within(low, high, serial_ends(stated))


def _days(year: int, week: str | None, month: str | None) -> tuple[date, date]:
    """Return the first and the last day of a week, a month or a year.

    Raises
    ------
    ValueError, OverflowError
        When there is no such week, month or year.
    """
    if week:
        monday = date.fromisocalendar(year, int(week), 1)
        return monday, monday + timedelta(days=6)
    if month:
        number = int(month)
        return date(year, number, 1), date(year, number, monthrange(year, number)[1])
    return date(year, 1, 1), date(year, 12, 31)


def _turn(day: date, form: str) -> Key:
    """Return year and week, or year and month, of a day."""
    if "W" in form:
        week = day.isocalendar()
        return (week.year, week.week)
    return (day.year, day.month)


def compare_version(stated: VersionRange, read: str) -> Verdict:
    """Compare a firmware version with a run of versions.

    A version told with fewer parts than the run has may be any that begins so.

    Examples
    --------
    >>> run = VersionRange(first="2.1", before="3.0")
    >>> compare_version(run, "v2.10"), compare_version(run, "3.0")
    ('confirmed', 'excluded')
    >>> compare_version(run, "2"), compare_version(run, "unknown")
    ('possible', 'possible')
    """
    given, ends = version_key(read), version_ends(stated)
    if given is None:
        return "possible"
    keys = [key for key in (ends.first, ends.last, ends.before) if key is not None]
    longest = max((len(key) for key in keys), default=0)
    low, high = _padded(given, longest, 0), _padded(given, longest, inf)
    return within(low, high, ends)


def _padded(key: Key, length: int, filler: float) -> Key:
    return key + (filler,) * (length - len(key))


def version_ends(stated: VersionRange) -> Ends[Key]:
    """Return where a run of versions begins and ends."""

    def end(text: str | None) -> Key | None:
        return None if text is None else version_key(text)

    return Ends(end(stated.first), end(stated.last), end(stated.before))


def version_key(text: str) -> Key | None:
    """Return the parts of a version, or None where it is none.

    Examples
    --------
    >>> version_key("Ver. 2.10"), version_key("1.4b"), version_key("blue")
    ((2, 10), (1, 4, 2), None)
    """
    found = _VERSION.fullmatch(text.strip())
    if found is None:
        return None
    parts = tuple(int(part) for part in found[1].split("."))
    letter = found[2].casefold()
    return (*parts, ord(letter) - ord("a") + 1) if letter else parts
