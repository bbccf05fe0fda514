"""Which lamp: its colour, label, board and box, as told around its state."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from assistant.language.claims import either, rx
from assistant.language.lexicon.lamps import (
    ALIKE,
    COLOURS,
    INDOOR,
    LABEL_WORDS,
    OUTDOOR,
    REMOTE,
    STICKER,
    THERMOSTAT,
)
from assistant.language.lexicon.words import words
from assistant.language.tokens import Tokens, fold
from assistant.language.vocabulary import Vocabulary
from assistant.record import Box
from assistant.signals.observation import Several

Kind = Literal["colour", "label", "board", "box"]
_NOT_A_PLACE = (
    r"(?! (?:coil|sensor|air|temperature|fan|motor|ambient|pipe|line|breaker))"
)
BOXES: tuple[tuple[re.Pattern[str], Box], ...] = (
    (rx(rf"{OUTDOOR}(?: (?:unit|one|board|box))?{_NOT_A_PLACE}"), "outdoor"),
    (rx(rf"{INDOOR}(?: (?:unit|one|board|box))?{_NOT_A_PLACE}(?! pressure)"), "indoor"),
    (rx(REMOTE), "remote"),
    (rx(THERMOSTAT), "thermostat"),
)
_COLOUR = rx(rf"(?P<colour>{either(COLOURS)})s?(?! (?:wires?|leads?|plug|{STICKER}))")
_LABEL = rx(
    r"(?P<print>(?:ld|led|d|hl|lp|pl|dl|dsp)-?[0-9]{1,2}|h[0-9]{1,2}p)"
    r"|(?:on )(?:the )?light (?P<on>[0-9]{1,2})"
    r"|(?P<place>top|bottom|left|right|middle|upper|lower)(?: hand)? (?:light|one|"
    r"lights)(?! of)"
    r"|light (?P<number>[0-9]{1,2})(?= (?:is|on|off|steady|solid|flashing|lit|flashes "
    r"[0-9]))"
    rf"|(?P<word>{LABEL_WORDS}) (?:light|one|lights|indicator)"
    r"|(?P<bare>run|timer|standby|operation)(?= (?:is |was )?(?:on|off|steady|solid|"
    r"flash|flashes|flashing|lit|dead|dark)(?!\S))"
)
_BOARD = rx(
    r"(?P<board>outdoor main|main|fan|inverter|power|display|control|driver|drive|"
    r"communication|comm|interface|filter|outdoor|indoor|outside|inside) board"
)
_NOT_A_LABEL = (
    r"(?! (?:times|red|green|amber|sec|shorts?|longs?|quick|flash(?:es)?(?! [0-9]))"
    r"(?!\S))"
)
"""What makes "light 2" a count and no label."""
_LONE = (
    r"(?:light|terminal|on|light labelled) {0}(?! (?:[a-z]+ )?light)|{0}(?= (?:is|"
    r"flashes|flashing|flickers|flickering|does|goes|stays|lit|dark|off|steady)(?!\S))"
)
"""Where a single letter is a lamp and no word of the sentence."""
_SEVERAL = re.compile(
    r"(?<!\S)(?:both|all|the 2|(?P<other>others?)|the rest)"
    r"(?P<what>(?: (?:of|the|them|these|those|on|[2-9]|lights?|ones?|~+))*)"
    r"(?: (?:is|are|was|were|just|stays?|keeps?|now|still|again|goes|go|going|they))* $"
)
"""Words for more lamps than one, and for the one left, right before what they do."""
_PRINTED = re.compile(r"([A-Za-z]+)([0-9]{1,2})")
_PLACES = frozenset(
    f"{place} one" for place in words("top bottom left right middle upper lower")
)
_PLAIN_BOARDS = frozenset({"outdoor", "indoor", "outside", "inside"})


@dataclass(frozen=True, slots=True)
class Emitter:
    """One thing told about a lamp, with its place in the folded text."""

    start: int
    end: int
    kind: Kind
    values: tuple[str, ...]


def colours_like(colour: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the colours a person may mean: theirs, or those alike that the packs have.

    Examples
    --------
    >>> colours_like("orange", Vocabulary(colours=("amber", "green")))
    ('amber',)
    >>> colours_like("orange", Vocabulary())
    ('orange',)
    """
    if not vocabulary.colours or colour in vocabulary.colours:
        return (colour,)
    for group in ALIKE:
        held = tuple(sorted(group & set(vocabulary.colours)))
        if colour in group and held:
            return held
    return (colour,)


@lru_cache(maxsize=64)
def _own(vocabulary: Vocabulary) -> tuple[tuple[re.Pattern[str], Kind, str], ...]:
    """Return patterns for the labels and boards that the packs name."""
    rows: list[tuple[re.Pattern[str], Kind, str]] = []
    for label in sorted(vocabulary.labels, key=lambda text: (-len(text), text)):
        spelled = re.escape(fold(label))
        torn = re.sub(r"^(led|ld|d)([0-9]+)$", r"(?:\1|light) ?\2", fold(label))
        if len(torn) == 1:
            torn = _LONE.format(torn)
        guard = "" if torn in (fold(label), _LONE.format(fold(label))) else _NOT_A_LABEL
        rows.append(
            (rx(spelled if torn == fold(label) else torn + guard), "label", label)
        )
    for board in sorted(vocabulary.boards, key=lambda text: (-len(text), text)):
        if fold(board):
            rows.append((rx(rf"{re.escape(fold(board))}(?: board)?"), "board", board))
    return tuple(rows)


def emitters(folded: str, vocabulary: Vocabulary) -> list[Emitter]:
    """Return everything told about which lamp, in order of place."""
    found = [
        Emitter(*match.span(), kind, (value,))
        for pattern, kind, value in _own(vocabulary)
        for match in pattern.finditer(folded)
    ]
    found += [
        Emitter(*match.span(), "label", (_label(match),))
        for match in _LABEL.finditer(folded)
        if _free(found, match, "label")
    ]
    found += [
        Emitter(*match.span(), "colour", colours_like(match["colour"], vocabulary))
        for match in _COLOUR.finditer(folded)
    ]
    found += [
        Emitter(*match.span(), "board", boards)
        for match in _BOARD.finditer(folded)
        if (boards := _boards(match["board"], vocabulary))
        and _free(found, match, "board")
    ]
    found += [
        Emitter(*match.span(), "box", (box,))
        for pattern, box in BOXES
        for match in pattern.finditer(folded)
    ]
    return sorted(_told_apart(found), key=lambda one: (one.start, one.kind))


def several_told(
    view: Tokens, start: int, end: int, around: Sequence[Emitter]
) -> dict[str, Several]:
    """Return whether "both lamps", "all", "the other one" stand right before `end`.

    A lamp named by its label is only itself.
    """
    near = [e for e in around if start <= e.start and e.end <= end]
    if any(e.kind == "label" for e in near):
        return {}
    plain = view.without([(e.start, e.end) for e in near])
    match = _SEVERAL.search(plain.folded[start:end])
    if match is None:
        return {}
    one = match["other"] and not re.search(r"[2-9]|s$", match["what"].strip())
    return {"lamps": "other" if one else "every"}


def _told_apart(found: list[Emitter]) -> list[Emitter]:
    """Drop a place ("the top one") as a label where it tells no lamps apart."""
    places = [e for e in found if e.kind == "label" and e.values[0] in _PLACES]
    return found if len(places) > 1 else [e for e in found if e not in places]


def _free(found: list[Emitter], match: re.Match[str], kind: Kind) -> bool:
    return all(
        other.kind != kind or match.end() <= other.start or other.end <= match.start()
        for other in found
    )


def _label(match: re.Match[str]) -> str:
    if match["print"]:
        return match["print"].replace("-", "").upper()
    if match["number"] or match["on"]:
        return f"LED{match['number'] or match['on']}"
    if match["place"]:
        return f"{match['place']} one"
    return (match["word"] or match["bare"]).replace("stand by", "standby")


def _boards(said: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the packs' boards whose name holds the word said; else the word."""
    if said in _PLAIN_BOARDS:
        return ()
    held = tuple(sorted(b for b in vocabulary.boards if said in fold(b).split()))
    return held or ((said,) if not vocabulary.boards else ())


def run_of(first: str, last: str) -> list[str]:
    """Return the labels between two printed ones: D1 and D4 leave D2 and D3.

    Examples
    --------
    >>> run_of("D1", "D4"), run_of("D1", "H4")
    (['D2', 'D3'], [])
    """
    one, other = _PRINTED.fullmatch(first), _PRINTED.fullmatch(last)
    if one is None or other is None or one[1] != other[1]:
        return []
    return [f"{one[1]}{n}" for n in range(int(one[2]) + 1, int(other[2]))]
