"""Parts fitted and settings changed."""

from __future__ import annotations

import re

from assistant.facts import PartFact, SettingFact
from assistant.language.claims import Claim, apart, either, negated, rx
from assistant.language.lexicon.words import words
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_DONE = (
    r"(?:swapped|replaced|changed|fitted|installed|put in|put on|put|stuck in|threw in|"
    r"swapped out|changed out|replaced it with|got)"
)
PARTS = (
    *words(
        "board compressor blower motor capacitor contactor sensor thermostat fuse "
        "reactor transformer eev txv transducer relay breaker disconnect filter pump "
        "remote connector harness module ipm fan coil valve whip wire wiring cable"
    ),
    *(
        f"{kind} board"
        for kind in words("main control outdoor indoor fan inverter power display")
    ),
    *(f"{kind} motor" for kind in words("fan blower")),
    *(f"{kind} fan motor" for kind in words("outdoor indoor")),
    *(f"{kind} capacitor" for kind in words("run start")),
    *(f"{kind} sensor" for kind in words("coil room discharge outdoor suction pipe")),
    *(
        f"{kind} switch"
        for kind in ("pressure", "high pressure", "low pressure", "float")
    ),
    *(f"{kind} valve" for kind in words("reversing expansion")),
    *("drain pump", "power module"),
)
_PART = either(PARTS)
_FITTED = rx(
    rf"(?P<verb>{_DONE}) (?:out |in )?(?:the |a |an |its |it is |that |another |my "
    rf")*(?P<new>new |replacement |brand new |used )?(?P<part>{_PART})(?: out)?(?! "
    r"(?:battery|batteries|screen|settings?|plug|wires))"
    rf"|(?P<new2>new|brand new|replacement) (?P<part2>{_PART}) (?:is |was |went |just |"
    r"been |put )*(?:in|on|fitted|installed|yesterday|today|last week|already)"
    rf"|(?P<part3>{_PART}) (?:has been |was |is |got |has already been |just got "
    r")(?:swapped|replaced|changed|new)(?: out)?"
)
_NEEDS_NEW = frozenset({"put in", "put on", "put", "got", "stuck in", "threw in"})
_ASKED = re.compile(
    r"(?<!\S)(?:should|can|could|do|need|want|going|before|if|when|will|would|have to|"
    r"got to)(?!\S)"
)
_SWITCH = (
    r"(?:dip ?switch(?:es)?|dip|sw ?-?[0-9]+(?: ?- ?[0-9]+)?|switch [0-9]+|jumper|"
    r"setting|settings|rotary|address|parameter|mode switch|switch settings|set ?point)"
)
_SET = rx(
    r"(?:changed|moved|flipped|set|switched|toggled|turned|adjusted|altered|cut) "
    rf"(?:the |a |its |it is |some |one of the |that )*(?P<what>{_SWITCH}(?: "
    r"[a-z0-9-]+){0,2})"
    rf"|(?P<what2>{_SWITCH}) (?:was |is |has been |been |were )+(?:changed|moved|wrong|"
    r"flipped)"
)


def parts(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each part that was fitted and each setting that was changed."""
    found: list[Claim] = []
    for match in _SET.finditer(view.folded):
        if _is_done(view, match):
            what = (match["what"] or match["what2"]).strip()
            found.append(Claim(*match.span(), SettingFact(setting=what)))
    for match in _FITTED.finditer(view.folded):
        part = match["part"] or match["part2"] or match["part3"]
        bare = match["verb"] in _NEEDS_NEW and not match["new"]
        if not bare and _is_done(view, match):
            found.append(Claim(*match.span(), PartFact(part=part)))
    return apart(found)


def _is_done(view: Tokens, match: re.Match[str]) -> bool:
    start, _ = view.clause(match.start())
    asked = _ASKED.search(view.folded[start : match.start()])
    return not (asked or negated(view, match.start()))
