"""Model numbers as makers write lists, ranges and blanks of them: pure."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.rules.patterns import pattern_mistake

WIDEST = 60
"""A run of more numbers than this is no run of sizes."""

_NAME = (
    r"(?:[A-Z]{1,6}\d{0,3}[A-Z]{0,4}|\d{1,2}[A-Z]{2,5}\d)(?:[-–][A-Z0-9]{1,8}){0,3}[A-Z0-9]*"
    r"(?:[-–]?\([A-Z0-9]{1,4}(?:[,/][A-Z0-9]{1,4})*\)|x{1,4}|\*+|#+|□+|\?+)?"
    r"[A-Z0-9]{0,6}\*?"
)
_ITEM = re.compile(
    rf"(?P<name>{_NAME})(?:\s*(?:series)\b)?"
    rf"(?P<more>(?:\s?/\s?-?[A-Z0-9*]{{1,10}}(?:[-–][A-Z0-9]+)*)*)"
    r"(?P<range>\s+\d{2,3}(?:\s*(?:-|–|to|\.\.\.?)\s*\d{2,3})?(?![\w.])"
    r"|\s*(?:to|\.\.\.?|…)\s*(?P<end>[A-Z]{1,6}[-–]?[A-Z]{0,3}\d{1,4}[A-Z]{0,3}))?"
)
_ENDS = re.compile(r"$|[\s,;.)&+|:\]]")
_SIZE = re.compile(r"\d+")
_FILLER = re.compile(
    r"^(?:[\s,;&+|•·()\[\]:/\-–]|and\b|or\b|with\b|series\b|units?\b|models?\b"
    r"|outdoor\b|indoor\b|the\b|all\b|types?\b|no\.|nos?\.?|numbers?\b|to\b|sizes?\b)+",
    re.IGNORECASE,
)
_TRADE = re.compile(
    r"^(?:R-?\d{2,4}[A-Z]?|CN\d+|TP\d+|LD\d+|DC|AC|PCB|IEC|EN|ISO|IP\d\d|[EPUFHLC]\d{1,2}"
    r"|A2L|UL\d*|CE)$"
)
"""Refrigerants, plugs, lamps, codes and standards, which are no models."""


def models_in(text: str, *, whole: bool = False) -> tuple[str, ...]:
    """Return the model patterns that a list of models spells.

    Parameters
    ----------
    text : str
        One line, cell or phrase.
    whole : bool
        The text must begin with a model; reading ends at the first word that is
        neither a model nor a word between models.

    Examples
    --------
    >>> models_in("VEH-O26/35/50, VEW-12xx")
    ('VEH-O26', 'VEH-O35', 'VEH-O50', 'VEW-12??')
    >>> models_in("VET-O/VEB-O 42-44")
    ('VET-O(42,43,44)', 'VEB-O(42,43,44)')
    >>> models_in("KX-24 to KX-36")[0][:12]
    'KX-(24,25,26'
    """
    found: list[str] = []
    at = 0
    while at < len(text):
        filler = _FILLER.match(text[at:])
        at += filler.end() if filler else 0
        item = _ITEM.match(text, at)
        if item is None or not item["name"]:
            if whole:
                break
            following = re.compile(r"\S+\s*").match(text, at)
            at = following.end() if following else len(text)
            continue
        # A name that is not read to its end would be another model's.
        models = _spelled(item) if _ENDS.match(text, item.end()) else []
        if not models and whole:
            break
        found += models
        at = item.end()
    return tuple(dict.fromkeys(found))


def _spelled(item: re.Match[str]) -> list[str]:
    names = _alike_endings(list(_names(item["name"], item["more"] or "")))
    if item["end"]:
        names = [_run(names[-1], item["end"])]
    elif item["range"]:
        sizes = _sizes(item["range"])
        if sizes and not any(_SIZE.search(_tail(name)) for name in names):
            names = [f"{name}{sizes}" for name in names]
    wild = [_wild(name) for name in names]
    return [name for name in wild if _is_model(name)]


def _names(first: str, more: str) -> Iterator[str]:
    """Complete what follows a slash with what stands before it."""
    before = first
    yield first
    for part in (each.strip() for each in more.split("/") if each.strip()):
        before = _completed(before, part)
        yield before


def _alike_endings(names: list[str]) -> list[str]:
    """Give every name the ending that only the last one has: "L25/35R"."""
    ending = re.search(r"(?<=\d)[A-Z]+$", names[-1])
    if ending and all(name[-1].isdigit() for name in names[:-1]):
        return [*(name + ending[0] for name in names[:-1]), names[-1]]
    return names


def _completed(before: str, part: str) -> str:
    """Return `part` with the beginning of `before` where it only gives an ending."""
    if part.startswith("-"):
        return before.rsplit("-", 1)[0] + part
    if part[0].isdigit():
        sizes = list(_SIZE.finditer(before))
        if not sizes:
            return before + part
        head = before[: sizes[-1].start()]
        tail = before[sizes[-1].end() :] if part.isdigit() else ""
        return head + part + tail
    if "-" not in part and "-" in before:
        return before.rsplit("-", 1)[0] + "-" + part
    return part


def _tail(name: str) -> str:
    return re.split(r"[-–]", name)[-1]


def _sizes(text: str) -> str:
    """Return sizes as an alternative: "42-44" as "(42,43,44)"."""
    numbers = [int(each) for each in _SIZE.findall(text)]
    if len(numbers) == 1:
        return str(numbers[0])
    first, last = numbers[0], numbers[-1]
    if not first < last <= first + WIDEST:
        return ""
    return "(" + ",".join(map(str, range(first, last + 1))) + ")"


def _run(first: str, last: str) -> str:
    """Return the models from one to another that differ in one number."""
    one, other = list(_SIZE.finditer(first)), list(_SIZE.finditer(last))
    if not one or not other:
        return first
    head, tail = first[: one[-1].start()], first[one[-1].end() :]
    if last[: other[-1].start()] != head or last[other[-1].end() :] != tail:
        return first
    sizes = _sizes(f"{one[-1][0]}-{other[-1][0]}")
    return f"{head}{sizes}{tail}" if sizes else first


def _wild(name: str) -> str:
    """Return a name with our own sign for each character it leaves open."""
    blank = re.sub("[x□]", "?", name.replace("–", "-"))
    return blank.replace("/", ",")


def _is_model(name: str) -> bool:
    """Whether a name is one of a model: letters, and digits or blanks for them."""
    letters = sum(map(str.isalpha, name))
    open_or_sized = re.search(r"[\d*?#]", name) is not None
    return (
        letters > 0
        and open_or_sized
        and len(name.strip("*?#")) > 2  # noqa: PLR2004 - E4 is a code
        and not _TRADE.match(name)
        and pattern_mistake(name) is None
    )
