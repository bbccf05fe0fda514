"""Short answers about a lamp: its phase, rate, digits, sound, level, settings."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assistant.facts import LampFact
from assistant.language.asked import Asked
from assistant.language.asks import acts_of
from assistant.language.choices import chosen
from assistant.language.claims import NUMBER, Claim, rx
from assistant.language.codes import codes
from assistant.language.rhythms import rhythm_modifiers
from assistant.signals.observation import Observation

TEN_S = 10.0
"""Blinks are asked for over so many seconds."""
_NUMBER = rx(r"(?P<n>[0-9]{1,3})(?: (?:or|to|-) (?P<m>[0-9]{1,3}))?")
_SECONDS = rx(rf"(?P<s>{NUMBER})(?: (?:or|to|-|and) (?P<t>{NUMBER}))?(?: sec)?")
_SOUND = rx(r"(?:sound|beeps?|beeping|buzzer|heard|hear|audible|noise|chirps?)")
_SEEN = rx(r"(?:light|flash|flashes|flashing|lamp|led|seen|see|lit|visible)")
_SUB = rx(r"(?P<sub>[0-9]{1,3})")
_NO_SUB = rx(r"(?:no|none|nope|nothing|only|just)(?: [a-z]+){0,4}")
_FIRST = rx(r"(?:no|nope|nah|not|first|never|untouched|did not)(?: [a-z]+){0,4}")
_DETAIL = rx(r"(?:yes|yep|yeah|yup|detail|pressed|after|second|did)(?: [a-z]+){0,4}")
_OLD = rx(
    r"(?:history|stored|memory|old|past|from (?:the )?(?:history|memory|log)|earlier)"
)
_NOW = rx(r"(?:now|current|live|present|shown now|showing|right now|active|not stored)")
_ONE_CODE = rx(
    r"(?:it is |it |that is |that |the |its |code |display |screen |one |still |"
    r"always |well |all )*(?:no|nope|nah|never|none|same|stays?|only|just|does not|"
    r"nothing else)(?: [a-z]+){0,5}"
)
_DARK = rx(r"(?:dark|off|out|fully|completely|yes|yep|yeah)(?: [a-z]+){0,4}")
_DIM = rx(r"(?:dim|dims|only|never|no|nope|not|bright|fades?)(?: [a-z]+){0,4}")


def _fact(asked: Asked, span: tuple[int, int] | None, **slots: Any) -> Claim:  # noqa: ANN401 - the slots of an Observation, each of its own type
    fact = LampFact(observation=Observation(**slots))
    return Claim(*(span or (0, len(asked.view.folded))), fact)


def phase(asked: Asked) -> Claim | None:
    """Read "together" or "taking turns"."""
    told = rhythm_modifiers(asked.view.folded).get("phase")
    told = told or _turned(asked) or chosen(asked.view, asked.pending.options)
    if told not in ("together", "alternating"):
        return None
    return _fact(asked, None, state="blink", phase=told)


def _turned(asked: Asked) -> str | None:
    same = rx(r"(?:same|yes)(?: [a-z]+)*").match(asked.view.folded)
    turns = rx(r"(?:turns|different|opposite|one then .*)").search(asked.view.folded)
    if turns:
        return "alternating"
    return "together" if same else None


def digit(asked: Asked) -> Claim | None:
    """Read how many of the quick, or of the long, flashes there are."""
    match = _NUMBER.search(asked.view.folded)
    if match is None or not 0 <= int(match["n"]) < 100:  # noqa: PLR2004 - two digits
        return None
    told = tuple(sorted({int(n) for n in match.groups() if n is not None}))
    slot = "long_count" if asked.pending.about[0] == "long" else "count"
    return _fact(asked, match.span(), state="short_long", **{slot: told})


def rate(asked: Asked) -> Claim | None:
    """Read blinks counted over ten seconds; a word alone tells the word."""
    match = _NUMBER.search(asked.view.folded)
    if match is None:
        word = chosen(asked.view, ("slow", "fast"))
        return _fact(asked, None, state="blink", rate=word) if word else None
    low = int(match["n"]) - 1
    high = int(match["m"] or match["n"]) + 1
    hertz = (max(0, low) / TEN_S, high / TEN_S)
    return _fact(asked, match.span(), state="blink", rate_hz=hertz)


def window(asked: Asked) -> Claim | None:
    """Read the seconds from one flash, or group, to the next."""
    match = _SECONDS.search(asked.view.folded)
    if match is None or float(match["s"]) <= 0:
        return None
    last = float(match["t"]) if match["t"] else None
    slots: dict[str, Any] = {"window_s": float(match["s"])}
    if last is not None and last > slots["window_s"]:
        slots["window_to_s"] = last
    return _fact(asked, match.span(), state="blink", **slots)


def emitter(asked: Asked) -> Claim | None:
    """Read whether it is a light or a sound."""
    sound, seen = _SOUND.search(asked.view.folded), _SEEN.search(asked.view.folded)
    if bool(sound) == bool(seen):
        return None
    told = "buzzer" if sound else "lamp"
    return _fact(asked, None, state="blink", emitter=told)


def sub(asked: Asked) -> Claim | None:
    """Read the second code."""
    match = _SUB.search(asked.view.folded)
    if match is None or _NO_SUB.match(asked.view.folded):
        return None
    return _fact(asked, match.span(), state="display", sub=match["sub"])


def level(asked: Asked) -> Claim | None:
    """Read whether a button was pressed before."""
    folded = asked.view.folded
    told = rhythm_modifiers(folded).get("display_level")
    if told is None and _FIRST.match(folded):
        told = "first"
    if told is None and _DETAIL.match(folded):
        told = "detail"
    return _fact(asked, None, state="blink", display_level=told) if told else None


def stored(asked: Asked) -> Claim | None:
    """Read whether a code was shown now or read from the history."""
    old, now = _OLD.search(asked.view.folded), _NOW.search(asked.view.folded)
    if bool(old) == bool(now):
        return None
    return _fact(asked, None, state="display", stored=bool(old))


def precondition(asked: Asked) -> Claim | None:
    """Read a yes or no about a switch or mode that a row needs."""
    acts = acts_of(asked.view, asked.vocabulary)
    if not {"yes", "no"} & acts.keys():
        return None
    slot = "conditions" if "yes" in acts else "not_conditions"
    return _fact(asked, None, state="blink", **{slot: (asked.subject,)})


def dims(asked: Asked) -> Claim | None:
    """Read whether a lamp goes dark or only dim; asked where rows differ by that."""
    if set(asked.pending.options) != {"blink", "heartbeat"}:
        return None
    dim, dark = _DIM.match(asked.view.folded), _DARK.match(asked.view.folded)
    if dim or dark:
        return _fact(asked, None, state="heartbeat" if dim else "blink", pause="none")
    return None


def codes_in_turn(asked: Asked) -> list[Claim]:
    """Read every code of one round of a display, or that there is no other one."""
    found = [
        _fact(
            asked,
            (code.start, code.end),
            state="display",
            code=code.code,
            sub=code.sub,
            shown_in_turn=True,
        )
        for code in codes(asked.view, asked.vocabulary.codes, asked=True)
        if not code.absent
    ]
    if found or not _ONE_CODE.match(asked.view.folded.strip()):
        return found
    return [_fact(asked, None, state="display", shown_in_turn=False)]


LAMP_READERS: dict[str, Callable[[Asked], Claim | None]] = {
    "phase": phase,
    "short": digit,
    "long": digit,
    "rate": rate,
    "window": window,
    "emitter": emitter,
    "sub": sub,
    "display_level": level,
    "stored": stored,
    "precondition": precondition,
}
