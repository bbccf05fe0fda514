"""What is told of stops beside their number: in a row, in one call, in how long."""

from __future__ import annotations

import re
from typing import Any

from assistant.language.claims import either, rx
from assistant.language.durations import SECONDS, UP_TO_A_DAY, lasting, seconds
from assistant.language.good_runs import ran_before
from assistant.language.how_often import often
from assistant.language.lexicon.numbers import ORDINALS
from assistant.language.tokens import Tokens, fold
from assistant.language.vocabulary import Vocabulary

FAILED_START = "failed start"
_IN_A_ROW = rx(
    r"in a row|back to back|straight(?! (?:through|after|away))|one after (?:the "
    r"other|another)|over and over(?: again)?|consecutive(?:ly)?|(?:each|every)(?: "
    r"single)? (?:time|start)|without a (?:good|full|single) (?:run|cycle)(?: in "
    r"between| between)?"
)
_ONE_CALL = rx(
    r"(?:in|on|during|within|inside|for) (?:the )?(?:one|1|same|a single|single|this|"
    r"that|each) (?:and the same |same )?(?:call|cycle|demand|heat call|cool call|"
    r"heating call|cooling call|call for (?:heat|heating|cool|cooling))"
    r"|all (?:in|on|during) (?:one|the same|a single|this) (?:call|demand|cycle)"
)
_STRETCH = rx(
    r"(?:in|within|inside|over|during) (?:the |under |less than |about )*(?:last |past "
    rf")?(?:{lasting()}|(?P<one>{UP_TO_A_DAY}))|(?:this|last|past) (?P<this>hour)"
)
_FAILED = rx(
    rf"(?:failed|fails|failing|refused|refuses) (?:to )?start(?:ing)? (?:again "
    rf")?(?:about "
    rf"|now |already )*{often('n')}"
    rf"|{often('k')} (?:failed|unsuccessful|bad) (?:starts?|start attempts?|"
    r"restarts?)"
    rf"|(?:tried|tries|trying|attempted|attempts) (?:to (?:re)?start|starting|a start) "
    rf"(?:about )?{often('j')}"
    rf"|{often('q')} (?:tries|attempts|goes) (?:to start|at starting)"
    rf"|(?:start|starting|restart)s? (?:has |have )*failed (?:about "
    rf")?{often('r')}"
    rf"|(?P<nth>{either(ORDINALS)}) (?:failed start|start that failed)"
    r"|(?P<single>(?:the |this |last )*(?:start failed|failed start))"
)


def failed_starts(view: Tokens) -> tuple[int, int, str] | None:
    """Find starts that failed: where it is told, and its number as a word."""
    match = _FAILED.search(view.folded)
    if match is None:
        return None
    words = ("n", "k", "j", "q", "r")
    number = next((match[word] for word in words if match[word]), None)
    if match["nth"]:
        number = str(ORDINALS[match["nth"]])
    return match.start(), match.end(), number or "1"


def device(view: Tokens, vocabulary: Vocabulary) -> tuple[str, str] | None:
    """Return a device that a pack counts alone, and the stop it counts for."""
    for name, event in vocabulary.devices:
        if rx(re.escape(fold(name))).search(view.folded):
            return name, event
    return None


def stop_details(view: Tokens) -> dict[str, Any]:
    """Return what a text tells of its stops, as fields of the fact."""
    found: dict[str, Any] = {}
    if _IN_A_ROW.search(view.folded):
        found["in_a_row"] = True
    if _ONE_CALL.search(view.folded):
        found["one_call"] = True
    stretch = _stretch(view)
    if stretch is not None:
        found["within_s"] = stretch
    ran = ran_before(view)
    if ran is not None:
        found["ran_s"] = ran
    return found


def _stretch(view: Tokens) -> float | None:
    match = _STRETCH.search(view.folded)
    if match is None:
        return None
    one = match["one"] or match["this"]
    return SECONDS[one] if one else seconds(match)[1]
