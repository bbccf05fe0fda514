"""Switch settings and fitted parts, as told and as a pack states them."""

from __future__ import annotations

import re

from assistant.rules.ranges import Verdict

_KINDS = {
    "switch": "sw",
    "sw": "sw",
    "dip switch": "dip",
    "dipswitch": "dip",
    "dip": "dip",
    "jumper": "jp",
    "jp": "jp",
    "j": "jp",
    "rotary": "rotary",
    "rotary switch": "rotary",
}
_STATES = ("on", "off", "open", "closed", "cut", "in", "out")
_KIND = "|".join(sorted(map(re.escape, _KINDS), key=len, reverse=True))
SETTING = re.compile(
    rf"(?<![a-z0-9])(?P<kind>{_KIND})\s*[-#]?\s*(?:no\.?\s*|number\s*)?"
    r"(?P<number>\d+(?:\s*[-.]\s*\d+)?)?\s*"
    r"(?:(?:is|was|set|switched|turned|flipped|moved|now|stands?|at|to|=|:|position)"
    r"\s*)*"
    rf"(?P<state>{'|'.join(_STATES)}|\d+)(?![a-z0-9])",
    re.IGNORECASE,
)
_NOT = frozenset({"the", "a", "an", "kit", "with", "is", "its", "fitted", "optional"})


def settings_in(text: str) -> dict[str, str]:
    """Return how switches and jumpers stand, by their folded names.

    Examples
    --------
    >>> settings_in("SW3-2 on, jumper 5 is cut; DIP 4: off")
    {'sw3-2': 'on', 'jp5': 'cut', 'dip4': 'off'}
    """
    found = {}
    for match in SETTING.finditer(text):
        kind = _KINDS[" ".join(match["kind"].casefold().split())]
        number = re.sub(r"\s+", "", match["number"] or "").replace(".", "-")
        if number or kind == "rotary":
            found[f"{kind}{number}"] = match["state"].casefold()
    return found


def compare_settings(stated: tuple[str, ...], read: str | None) -> Verdict:
    """Compare settings stated with all that were told.

    Examples
    --------
    >>> compare_settings(("SW3-2 on",), "SW3-2 off, SW1 on")
    'excluded'
    >>> compare_settings(("SW3-2 on", "SW1 on"), "SW3-2 on")
    'possible'
    """
    told = settings_in(read or "")
    verdicts: set[Verdict] = set()
    for one in stated:
        for name, state in settings_in(one).items() or [(one, "")]:
            held = told.get(name)
            verdicts.add(
                "possible"
                if held is None
                else "confirmed"
                if held == state
                else "excluded"
            )
    return _worst(verdicts)


def compare_fitted(
    stated: tuple[str, ...], there: str | None, missing: str | None
) -> Verdict:
    """Compare parts stated with those told to be in the unit and those told not to be.

    Examples
    --------
    >>> compare_fitted(("drain pump",), "drain pump kit, wind guard", None)
    'confirmed'
    >>> compare_fitted(("drain pump",), None, "drain pump")
    'excluded'
    """
    verdicts: set[Verdict] = set()
    for part in stated:
        if _among(part, there):
            verdicts.add("confirmed")
        else:
            verdicts.add("excluded" if _among(part, missing) else "possible")
    return _worst(verdicts)


def _worst(verdicts: set[Verdict]) -> Verdict:
    order: tuple[Verdict, ...] = ("excluded", "possible", "confirmed")
    return next((one for one in order if one in verdicts), "possible")


def _among(part: str, told: str | None) -> bool:
    wanted = _words(part)
    held = [_words(one) for one in listed(told)]
    return bool(wanted) and any(wanted <= one or one <= wanted for one in held if one)


def _words(text: str) -> frozenset[str]:
    return frozenset(re.findall(r"[a-z0-9]+", text.casefold())) - _NOT


def listed(told: str | None) -> tuple[str, ...]:
    """Return the entries of a list written with commas."""
    return tuple(one.strip() for one in (told or "").split(",") if one.strip())


def together(before: str | None, more: str | None) -> str | None:
    """Return two lists as one, without repeats."""
    entries = dict.fromkeys((*listed(before), *listed(more)))
    return ", ".join(entries) or None


def settings_together(before: str | None, more: str | None) -> str | None:
    """Return settings told before with those told now; the later word counts.

    Examples
    --------
    >>> settings_together("SW1 on, SW3-2 on", "sw3-2 is off")
    'SW1 on, SW3-2 off'
    """
    held = settings_in(before or "")
    held |= settings_in(more or "")
    return ", ".join(f"{name.upper()} {state}" for name, state in held.items()) or None


def without(told: str | None, parts: str | None) -> str | None:
    """Return a list without the parts named."""
    kept = [one for one in listed(told) if not _among(one, parts)]
    return ", ".join(kept) or None
