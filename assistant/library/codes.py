"""Display codes, part numbers and flash counts, found in text. Pure.

A code is stored in one normal form: upper case, no punctuation, no spaces. So
``P6``, ``P-6`` and ``P 6`` are one code, and ``E4`` never equals ``E40``. A
count of flashes is stored beside them as ``#6``.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from assistant.library.keyword import fold
from assistant.library.synonyms import COUNT_WORDS, STOPWORDS

SHORTEST, LONGEST = 2, 24
"""Letters and digits of a code."""
COUNT_DIGITS = 2
REACH = 3
"""Words from a number to the flash word it counts."""

_TOKEN = re.compile(r"[^\W_]+(?:[-./][^\W_]+)*")
_SPACED = re.compile(r"(?<![\w.-])([A-Z]{1,2}) (\d{1,3})(?![\w.,%°]|\s?[-/°Ω])")
_LOOSE = re.compile(r"(?<![\w.-])([b-hj-z]) ?(\d{1,2})(?![\w.,%°])")
_LETTERS = re.compile(r"^\s*([A-Za-z]{2})(?:\s*\||\s{2,}\S)", re.MULTILINE)
_NUMBERED = re.compile(
    r"\b(?:code|codes|error|fault|alarm)\s+(?:no\.?\s*|number\s*)?(\d{1,4})\b(?!\.\d)"
)
_QUANTITY = re.compile(
    r"\d+(?:V|VAC|VDC|A|MA|W|KW|HZ|KHZ|S|SEC|MS|MIN|H|HR|K|KOHM|OHM|MOHM|Ω|KΩ|MΩ|C|F|"
    r"PSI|PSIG|KPA|MPA|BAR|MM|CM|M|IN|FT|LB|LBS|KG|G|OZ|BTU|BTUH|UF|µF|ΜF|MFD|X|PH|"
    r"ST|ND|RD|TH|WAY|AWG|RPM|DB|T|YR|D|LED|BIT|PIN|WIRE|POINT|DIGIT|SEGMENT)"
)
_ASIDE = (
    "red green amber blue white long short quick slow fast lamp of the a time in on "
    "slowly quickly"
)
_BETWEEN = frozenset(_ASIDE.split())
_ROW = re.compile(r"[\s\u2022*-]{0,3}(\d{1,2})(?:\s*[|:;,\u2013-]|\s+([^\W\d_]*)|$)")
_UNITS = (
    "second minute hour voltage amp kohm ohm mohm celsius hz kg gram metre mpa time of "
    "and or to in per"
)
_NO_COUNT = frozenset(_UNITS.split())
"""Folded words that make a number opening a line no count."""
_TABLE_TITLE = re.compile(r"\s*(?:table|chart|figure|contents)\b", re.IGNORECASE)

MOST_FLASHES = 40
_COLOUR = "amber|red|green"
_NO_UNIT = (
    "(?! (?:time|voltage|kohm|ohm|mohm|second|minute|hour|hz|celsius|amp|metre|"
    "fahrenheit|psi|bar|mpa|kpa|gram|percent|mm|year|day))"
)
_MEANT = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b(\d{{1,2}}) (?:{_COLOUR})s?\b",
        rf"\b(?:{_COLOUR}|blue|lamp) (?:do |does |goes |go |did |going |doing )?"
        rf"(\d{{1,2}})\b{_NO_UNIT}",
        r"\b(\d{1,2}) (?:and )?then (?:a |it )?(?:gap|delay|rests?|dark|stop)\b",
        r"\b(\d{1,2}) of (?:em|them)\b",
        rf"\bcounted (\d{{1,2}})\b{_NO_UNIT}",
        rf"\b(?:does|doing|goes) (?:the )?(\d{{1,2}})\b{_NO_UNIT}",
    )
)
"""Ways to give a count without a flash word, in folded text."""


def normal(code: str) -> str:
    """Return a code's one stored form.

    Examples
    --------
    >>> normal("p-6"), normal("R 410a")
    ('P6', 'R410A')
    """
    plain = unicodedata.normalize("NFKC", code).upper()
    return "".join(letter for letter in plain if letter.isalnum())


def codes_in(text: str) -> tuple[str, ...]:
    """Return the display codes and part numbers of a text, sorted.

    A code holds a letter and a digit. A joined token also gives its parts that
    are codes themselves (``A1/A3``). A quantity such as ``12V`` is no code. A
    bare number counts only where the text calls it a code.

    Examples
    --------
    >>> codes_in("P-6 or P 6, not E40; 240VAC, fault code 54, A1/A3")
    ('54', 'A1', 'A1A3', 'A3', 'E40', 'P6')
    """
    plain = unicodedata.normalize("NFKC", text)
    found = {code for token in _TOKEN.findall(plain) for code in _token_codes(token)}
    found |= {a + b for a, b in _SPACED.findall(plain) if a not in {"A", "I"}}
    found |= set(_NUMBERED.findall(plain.casefold()))
    return tuple(sorted(found))


def loose_codes_in(text: str) -> tuple[str, ...]:
    """Return what might be a code in a typed question ("p 6", "e zero", "sb").

    These count only when the library holds them: nothing was missed if not.

    Examples
    --------
    >>> loose_codes_in("what is p 6 and e zero, or Sb")
    ('E0', 'P6', 'SB')
    """
    words = fold(text)
    pairs = {normal(a + b) for a, b in _LOOSE.findall(words)}
    letters = {
        normal(word)
        for word in words.split()
        if len(word) == SHORTEST and word.isalpha() and word not in STOPWORDS
    }
    return tuple(sorted(pairs | letters))


def letter_codes_in(text: str) -> tuple[str, ...]:
    r"""Return the codes of two letters that open a row of a table, sorted.

    Examples
    --------
    >>> letter_codes_in("dF  Defrost\nSb | Standby\nIs it on?")
    ('DF', 'SB')
    """
    plain = unicodedata.normalize("NFKC", text)
    return tuple(sorted({normal(code) for code in _LETTERS.findall(plain)}))


def counts_in(text: str, lead: str = "") -> tuple[str, ...]:
    """Return the counts of flashes a text names, as ``#n``, sorted.

    A number beside a flash word counts. Where the table's first line (`lead`, or
    the text's own first line) speaks of flashes, so does a number that opens a
    line under such a heading.

    Examples
    --------
    >>> counts_in("blinks amber six times")
    ('#6',)
    >>> counts_in("11 | fan motor", lead="Flashes | Meaning")
    ('#11',)
    """
    beside = {f"#{int(number)}" for number in _beside(fold(text).split())}
    return tuple(sorted({*beside, *row_counts(text, lead)} - {"#0"}))


def row_counts(text: str, lead: str = "") -> tuple[str, ...]:
    r"""Return the counts that open a line of a table of flashes, as ``#n``, sorted.

    Examples
    --------
    >>> row_counts("Flashes | Meaning\n3 | coil\n4 | sensor")
    ('#3', '#4')
    """
    found: set[str] = set()
    counting = False
    for line in (lead, *unicodedata.normalize("NFKC", text).splitlines()):
        row = _ROW.match(line)
        if counting and row and not _NO_COUNT & set(fold(row.group(2) or "").split()):
            found.add(f"#{int(row.group(1))}")
        elif row is None and COUNT_WORDS & set(fold(line).split()):
            counting = True
        elif _TABLE_TITLE.match(line):
            counting = False
    return tuple(sorted(found - {"#0"}))


def asked_counts(text: str) -> tuple[str, ...]:
    """Return the counts of flashes that a question means without saying "flash".

    Examples
    --------
    >>> asked_counts("a dozen reds"), asked_counts("does fourteen, then a gap")
    (('#12',), ('#14',))
    >>> asked_counts("3 minutes after 240 volts")
    ()
    """
    words = fold(text.replace("a dozen", "twelve"))
    found = {int(number) for pattern in _MEANT for number in pattern.findall(words)}
    return tuple(sorted(f"#{number}" for number in found if 0 < number <= MOST_FLASHES))


def _token_codes(token: str) -> Iterator[str]:
    for part in {token, *re.split(r"[-./]", token)}:
        code = normal(part)
        if _is_code(code):
            yield code


def _is_code(code: str) -> bool:
    return (
        SHORTEST <= len(code) <= LONGEST
        and any(letter.isdigit() for letter in code)
        and any(letter.isalpha() for letter in code)
        and not _QUANTITY.fullmatch(code)
    )


def _beside(words: list[str]) -> Iterator[str]:
    """Yield numbers up to two colour or pace words away from a flash word."""
    for at, word in enumerate(words):
        if not (word.isdecimal() and len(word) <= COUNT_DIGITS):
            continue
        for step in (1, -1):
            if _reaches(words, at, step):
                yield word
                break


def _reaches(words: list[str], at: int, step: int) -> bool:
    for distance in range(1, REACH + 1):
        other = at + step * distance
        if not 0 <= other < len(words):
            return False
        if words[other] in COUNT_WORDS:
            return True
        if words[other] not in _BETWEEN:
            return False
    return False
