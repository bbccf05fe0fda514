"""What is in the unit and on its board: settings, options, part numbers, versions."""

from __future__ import annotations

import re

from assistant.facts import UnitFact
from assistant.language.claims import Claim, apart, either, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.rules.applicability import Plate
from assistant.rules.fittings import settings_together

_SWITCH = (
    r"(?:dip ?switch|dip|sw|switch|jumper|jp|rotary switch|rotary)(?: (?:no|number))? ?"
    r"-?(?:[a-z]?[0-9]+(?: ?- ?[0-9]+)?)?"
)
_SETTING = rx(
    rf"(?P<switch>{_SWITCH})(?: (?:is|was|set|switched|turned|now|stands|at|to|"
    r"position|:|=))* (?P<state>on|off|open|closed|cut|[0-9]+)"
)
_CHANGED = re.compile(r"(?:changed|moved|flipped|switched|toggled|set|cut)[a-z ]* ?$")
_FIRMWARE = rx(
    r"(?:firmware|software|fw|program|programme|rom)(?: (?:version|ver|rev|revision|"
    r"is|of|number|:|no|v))* (?P<version>v?[0-9]+(?: ?\. ?[0-9]+)*[a-z]?)"
    r"(?! (?:v|volts?|amps?|a|ohms?|k)(?!\S))"
)
_BOARD_PN = rx(
    r"(?:(?:the )?(?:board|pcb|main board|control board)(?: part)?(?: number| no|"
    r" p / n| pn)|(?:part number|p / n) on (?:the |its )?(?:board|pcb))"
    r"(?: (?:is|says|reads|:|\.|,))* (?P<pn>[a-z0-9-]*[0-9][a-z0-9-]*"
    r"(?: \. [0-9]+)*)"
)
_PRINT = rx(
    r"(?:print|marking|mark|label|sticker|text|writing) on (?:the |that )?(?:chip|"
    r"micro|microprocessor|processor|cpu|ic|eprom|board) (?:says|reads|is)(?: just)? "
    r"(?P<a>[a-z0-9-]*[0-9][a-z0-9-]*)"
    r"|(?:chip|micro|microprocessor|processor|cpu|eprom) (?:is )?(?:marked|printed|"
    r"labelled|labeled) (?P<b>[a-z0-9-]*[0-9][a-z0-9-]*)"
)
_TON_BTU = 12.0
"""Thousand Btu/h in a ton of refrigeration (NIST SP 811, appendix B.8; from memory)."""
_CAPACITY = rx(
    r"(?P<k>[0-9]{1,2}) ?k btu(?: / h|h)?|(?P<btu>[0-9]{4,5}) btu(?: / h|h)?"
    r"|(?P<ton>[0-9](?: ?\. ?[0-9])?) tons?(?: (?:unit|system|one|job|heat pump|"
    r"outdoor|condenser|ac|split))"
    r"|(?:the|a) (?P<size>[0-9]{2}) (?:size|class)"
)
_MARKET = rx(
    r"(?:(?:an?|the|is|its) )*(?P<market>north american|european|australian|asian|"
    r"japanese|american|canadian|british|export|domestic|us|eu|uk) (?:market|model|"
    r"version|spec|market model|market version)"
)
_OPTIONS = (
    "drain pump",
    "condensate pump",
    "wind baffle",
    "wind guard",
    "low ambient kit",
    "base pan heater",
    "drain pan heater",
    "crankcase heater",
    "wifi module",
    "fresh air kit",
    "auxiliary heater",
    "surge protector",
    "soft start",
    "hard start kit",
    "leak sensor",
    "humidity sensor",
    "branch box",
)
"""Options that makers' tables make conditions of; packs add their own names."""
_KIT = r"(?: kit| option| module)?"
_QUESTION = re.compile(r"(?:^|[,.;] )(?:is|does|do|has|have|was|should|can|could) ")


def equipment(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim settings, options, board numbers, versions, size, market and series."""
    return apart(
        [
            *_settings(view),
            *_boards(view),
            *_sizes(view),
            *_options(view, vocabulary),
            *_names(view, vocabulary),
        ]
    )


def _unit(match: re.Match[str], told: Plate) -> Claim:
    return Claim(*match.span(), UnitFact(plate=told))


def _settings(view: Tokens) -> list[Claim]:
    """Claim how a switch stands; one that was changed is claimed as a change."""
    found = []
    for match in _SETTING.finditer(view.folded):
        start, _ = view.clause(match.start())
        settings = settings_together(None, match[0])
        if settings and not _CHANGED.search(view.folded[start : match.start()]):
            found.append(_unit(match, Plate(switch_settings=settings)))
    return found


def _boards(view: Tokens) -> list[Claim]:
    found = []
    for match in _FIRMWARE.finditer(view.folded):
        version = match["version"].replace(" ", "").removeprefix("v")
        found.append(_unit(match, Plate(firmware=version)))
    for match in _BOARD_PN.finditer(view.folded):
        number = match["pn"].replace(" ", "").upper()
        found.append(_unit(match, Plate(board_pn=number)))
    for match in _PRINT.finditer(view.folded):
        found.append(_unit(match, Plate(board_mark=match["a"] or match["b"])))
    return found


def _sizes(view: Tokens) -> list[Claim]:
    found = []
    for match in _CAPACITY.finditer(view.folded):
        if match["btu"]:
            size = float(match["btu"]) / 1000
        elif match["ton"]:
            size = float(match["ton"].replace(" ", "")) * _TON_BTU
        else:
            size = float(match["k"] or match["size"])
        found.append(_unit(match, Plate(capacity_class=f"{size:g}")))
    for match in _MARKET.finditer(view.folded):
        found.append(_unit(match, Plate(market=match["market"])))
    return found


def _options(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim options told to be there or not; a question tells nothing."""
    part = either({*_OPTIONS, *(name.casefold() for name in vocabulary.fittings)})
    there = rx(
        r"(?:has|have|got|with|there is|comes with|fitted with)(?: got)? (?:an? |the |"
        rf"its |that )*(?P<a>{part}){_KIT}"
        rf"|(?P<b>{part}){_KIT} (?:is |was )*(?:fitted|installed|there|on it)"
    )
    missing = rx(
        r"(?:no|without|does not have|do not have|has not got|has no|got no|"
        rf"not fitted with)(?: an?| any| the)? (?P<a>{part}){_KIT}"
        rf"|(?P<b>{part}){_KIT} (?:is |was )not (?:fitted|installed|there)"
    )
    found = []
    for pattern, slot in ((missing, "not_fitted"), (there, "fitted")):
        for match in pattern.finditer(view.folded):
            if not _asks(view, match.start()):
                told = Plate(**{slot: match["a"] or match["b"]})
                found.append(_unit(match, told))
    return found


def _asks(view: Tokens, at: int) -> bool:
    start, end = view.sentence(at)
    return view.folded[at:end].rstrip().endswith("?") or bool(
        _QUESTION.search(view.folded[start:at])
    )


def _names(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim a series or a family that a pack names."""
    found = []
    for slot, names in (("series", vocabulary.series), ("family", vocabulary.families)):
        if names:
            known = either({name.casefold() for name in names})
            for match in rx(rf"(?P<name>{known})(?: series| family)?").finditer(
                view.folded
            ):
                found.append(_unit(match, Plate(**{slot: match["name"]})))
    return found
