"""How far one row agrees with what was seen: slot by slot, unknown kept open."""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.record import Box
from assistant.signals.kinds import Lamp
from assistant.signals.observation import Observation

SLOTS = (
    "state",
    "emitter",
    "count",
    "short",
    "long",
    "order",
    "code",
    "sub",
    "glyph",
    "pause",
    "window",
    "rate",
    "phase",
    "display_level",
    "colour",
    "box",
    "board",
    "label",
    "mode",
    "unit_state",
    "precondition",
    "stored",
)
"""The order in which slots are told."""

NEAR_COUNT = 0.25
"""Weight of a row one flash off: a slip of counting, rarer than none."""
NEAR_GLYPH = 0.25
"""Weight of a code that only looks the same, beside the one that is the same."""
NEAR_COLOUR = 0.5
"""Weight of a lamp whose colour is easily called by another name."""
TOOK_BLINK = 0.3
"""Weight of an even blink where a number of flashes was reported."""

_NEAR_COLOURS = (frozenset({"amber", "orange", "yellow"}),)
_BOX_WORDS: dict[str, Box] = {
    "indoor": "indoor",
    "inside": "indoor",
    "outdoor": "outdoor",
    "outside": "outdoor",
    "condenser": "outdoor",
    "remote": "remote",
    "thermostat": "thermostat",
    "stat": "thermostat",
}
_BOARD_FILLER = {"board", "pcb", "unit", "box", "the", "control", "controller"}
_LABEL_FILLER = {"lamp", "light", "led", "indicator", "the"}


@dataclass(frozen=True, slots=True)
class Fit:
    """A row that what was seen allows: slots agreed, slots left open."""

    matched: frozenset[str] = frozenset()
    assumed: frozenset[str] = frozenset()
    weight: float = 1.0
    explained: frozenset[int] = frozenset()
    """Which of several observations the row accounts for."""
    near: frozenset[str] = frozenset()
    """Slots that agree only nearly: kept beside an exact row or not at all."""

    def and_also(self, other: Fit) -> Fit:
        """Return both together."""
        return Fit(
            self.matched | other.matched,
            self.assumed | other.assumed,
            self.weight * other.weight,
            self.explained | other.explained,
            self.near | other.near,
        )


def matched(*slots: str) -> Fit:
    """Return a fit in which `slots` agree."""
    return Fit(matched=frozenset(slots))


def assumed(*slots: str) -> Fit:
    """Return a fit in which `slots` are left open."""
    return Fit(assumed=frozenset(slots))


def fit_lamp(seen: Observation, lamp: Lamp) -> Fit | None:
    """Compare whose lamp it is; None where box, board, label or colour disagree."""
    total = Fit()
    for part in (_box(seen, lamp), _board(seen, lamp), _label(seen, lamp)):
        if part is None:
            return None
        total = total.and_also(part)
    colour = _colour(seen, lamp)
    return None if colour is None else total.and_also(colour)


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"[a-z0-9]+", text.casefold()))


def boxes_in(board: str | None) -> frozenset[Box]:
    """Return the boxes that a board's name speaks of.

    Examples
    --------
    >>> boxes_in("outdoor main")
    frozenset({'outdoor'})
    """
    words = _words(board or "")
    return frozenset(_BOX_WORDS[word] for word in words if word in _BOX_WORDS)


def _box(seen: Observation, lamp: Lamp) -> Fit | None:
    stated = frozenset({lamp.box}) if lamp.box else boxes_in(lamp.board)
    told = frozenset(seen.box) or frozenset(
        box for board in seen.board for box in boxes_in(board)
    )
    if not stated:
        return Fit()
    if not told:
        return assumed("box") if lamp.box else Fit()
    return matched("box") if stated & told else None


def _board(seen: Observation, lamp: Lamp) -> Fit | None:
    if lamp.board is None:
        return Fit()
    stated = board_words(lamp.board)
    told = [words for board in seen.board if (words := board_words(board))]
    if not stated:
        return Fit() if seen.box or seen.board else assumed("board")
    if not told:
        return assumed("board")
    if any(words >= stated for words in told):
        return matched("board")
    return assumed("board") if any(words < stated for words in told) else None


def board_words(board: str) -> frozenset[str]:
    """Return the words that tell a board from the others of its box."""
    return _words(board) - _BOARD_FILLER - _BOX_WORDS.keys()


_PLACE = re.compile(r"from the (?:left|right|top|bottom)|^(?:top|bottom|left|right) ")
"""A lamp named by where it sits, "2 from the left": no printed label to compare."""


def _label(seen: Observation, lamp: Lamp) -> Fit | None:
    names = [name for name in (lamp.label, lamp.role) if name is not None]
    if not names:
        return Fit()
    printed = [label for label in seen.label if not _PLACE.search(label.casefold())]
    if not printed:
        return assumed("label")
    return (
        matched("label")
        if any(same_label(name, one) for name in names for one in printed)
        else None
    )


def same_label(one: str, other: str) -> bool:
    """Return whether two names are of one printed label.

    Examples
    --------
    >>> same_label("LD2", "ld-2"), same_label("run", "RUN lamp"), same_label("1", "2")
    (True, True, False)
    """
    return bool(label_forms(one) & label_forms(other))


def label_forms(label: str) -> set[str]:
    """Return the ways in which a printed label may be written, folded."""
    words = re.findall(r"[a-z0-9]+", label.casefold())
    kept = [word for word in words if word not in _LABEL_FILLER]
    return {"".join(words), "".join(kept)} - {""}


def _colour(seen: Observation, lamp: Lamp) -> Fit | None:
    if lamp.colour is None:
        return Fit()
    if not seen.colour:
        return assumed("colour")
    stated = lamp.colour.strip().casefold()
    told = {colour.strip().casefold() for colour in seen.colour}
    if stated in told:
        return matched("colour")
    if any(colours_near(stated, one) for one in told):
        return Fit(
            assumed=frozenset({"colour"}),
            weight=NEAR_COLOUR,
            near=frozenset({"colour"}),
        )
    return None


def colours_near(one: str, other: str) -> bool:
    """Return whether two colours are the same, or easily called by one name.

    Examples
    --------
    >>> colours_near("amber", "orange"), colours_near("amber", "green")
    (True, False)
    """
    return one == other or any(
        one in family and other in family for family in _NEAR_COLOURS
    )
