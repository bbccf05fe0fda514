"""Plate items: models, serial, voltage class, phase, refrigerant, board mark."""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.facts import ContextFact, UnitFact
from assistant.language.claims import Claim, apart, rx
from assistant.language.equipment import equipment
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.rules.applicability import Plate
from assistant.rules.serials import MONTHS, SHORT_YEAR, WEEKS

_COLOUR = r"(?P<colour>red|green|amber|yellow|orange|blue|white|black|grey|pink|purple)"
_CHIP = r"(?:chip|micro|microprocessor|processor|cpu|ic|board|eprom|main chip|big chip)"
_STICKER = r"(?:label|sticker|dot|tag|mark|paint dot|sticky)"
_MARK = rx(
    rf"{_STICKER} on (?:the |that |its |it is )?{_CHIP} is (?:a )?{_COLOUR}"
    rf"|(?:an? |the )?{_COLOUR} {_STICKER} on (?:the |that )?{_CHIP}"
    rf"|{_COLOUR} (?:sticker|label|dot)(?! on (?:the )?(?:wire|pipe|plug|unit))"
    rf"|{_CHIP} (?:label|sticker|mark) is {_COLOUR}"
    rf"|{_CHIP} (?:has|with|got) (?:an? |the )?{_COLOUR} {_STICKER}".replace(
        "?P<colour>", ""
    )
)
_COLOURS = rx(_COLOUR)
_NO_PLATE = rx(
    r"(?:plates?|nameplates?|name plate|data plate|data tag|rating plate|model sticker|"
    r"tag) (?:is |has |was |are |got )*(?:gone|missing|faded|unreadable|painted over|"
    r"worn|worn off|rusted|rusted off|rubbed off|illegible|not there|not readable|"
    r"scratched off|bleached|blank)"
    r"|(?:no|can not (?:read|see|find|make out) the|can not get to the) (?:plate|"
    r"nameplate|name plate|data plate|rating plate|model number|model)"
)
_ONE_CLASS = r"(?:100|110|115|120|200|208|220|230|240|277|380|400|415|460|480|575)"
_VOLTS = rf"(?P<volts>(?:{_ONE_CLASS} / )?{_ONE_CLASS})"
_CLASS = rx(
    rf"{_VOLTS}(?: v)?(?: ac)? (?:one|unit|model|version|class|job|machine|system|"
    r"outdoor)"
    rf"|(?:it is|this is|runs on) (?:a |the )?{_VOLTS.replace('volts', 'told')}(?: v| "
    r"v ac)(?! (?:at|across|on|between|under)(?!\S))"
    r"|(?:rated|rated for|rated at|(?:name)?plate says)(?: it is)? "
    rf"{_VOLTS.replace('volts', 'rated')}(?: v| v ac)?(?! (?:amp|a|hz|psi|kpa)(?!\S))"
)
_PHASE = rx(r"(?P<n>single|1|three|3)[ -]phase")
_REFRIGERANT = rx(
    r"r ?-?(?P<r>22|32|290|134a|407c|410a|454b|454c|448a|449a|513a|600a|404a|744)"
    r"|(?P<bare>410a|454b|407c|134a)|r (?P<spaced>32|22|290)"
)
_SERIAL = rx(
    r"(?:serial|s / n|sn|ser|date code)(?: (?:number|no|num|is|starts|starting|begins|"
    r"with|of|it|says|reads|:|\.|,))* (?P<serial>(?:(?!(?:on|in|at|to|we|i)(?!\S))"
    r"[a-z]{1,3} (?=[0-9]{4}))?[a-z0-9-]*[0-9][a-z0-9-]*(?: - [0-9]+)*)"
)
_MONTHS = (
    *("jan", "feb", "mar", "apr", "may", "jun"),
    *("jul", "aug", "sep", "oct", "nov", "dec"),
)
_BUILT = rx(
    r"(?:built|made|manufactured|build date|date code|from)(?: in| is| on)?(?: the)? "
    r"week (?P<week>[0-9]{1,2})(?: of| in| ,| /)? (?P<year>(?:20)?[0-9]{2})"
    r"|(?:built|made|manufactured|build date|date of manufacture)(?: in| is| on| :)* "
    rf"(?:(?P<month>{'|'.join(_MONTHS)})[a-z]* (?:of )?(?P<year2>20[0-9]{{2}})"
    r"|(?P<number>[0-9]{1,2}) / (?P<year3>20[0-9]{2})|(?P<year4>20[0-9]{2}))"
)
_CHARGE = rx(
    r"(?:charge|charged with|factory charge) (?:is |of )?(?P<kg>[0-9.]+) (?:kg|kilos?)"
)
_STARTS = rx(
    r"(?:(?P<box>outdoor|outside|condenser|indoor|inside|head|air handler|model|unit|"
    r"it)(?: unit| one| model)? (?:number )?)?(?:starts|starting|begins|beginning) "
    r"with (?:an? )?(?P<start>[a-z0-9-]{2,})"
)
_NAMED = rx(
    r"(?:model|model number|model no|unit is|unit is a|unit is an|it is a|it is an|"
    r"this is a|this is an|working on a|working on an|got a|got an|have a|have an|"
    r"plate says|nameplate says|mod)(?: is| number| no| says| an?| ,)* "
    r"(?P<model>[a-z0-9]*-?[a-z0-9-]*)"
)
_UNSURE = rx(
    r"i think|i guess|maybe|probably|might be|looks like|not sure|pretty sure|or so"
)
_OUT = rx(r"outdoor|outside|condenser|out back|compressor unit")
_IN = rx(
    r"indoor|inside|head|air handler|cassette|attic|wall (?:unit|thing)|evaporator"
)
_SHORTEST = 4
_JOINED = 3
"""Words that a model may have been torn into."""
_TORN = re.compile(r"[a-z]{0,2}[0-9]+[a-z]{0,2}|[a-z]{1,2}")
"""A later part of a torn model."""
_NOT_A_MODEL = re.compile(r"[0-9.:]+|[a-z]+|[a-z][0-9]{1,2}|[0-9]+(?:k|v|f|c|a|w|hz)")


def plate(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim plate items; a code or a part number is no model."""
    claims = [
        *equipment(view, vocabulary),
        *_marks(view),
        *_models(view, vocabulary),
        *_serials(view),
        *_electrics(view),
        *_simple(view),
    ]
    return apart(claims)


def _unit(span: tuple[int, int], plate_items: Plate, *, sure: bool = True) -> Claim:
    return Claim(*span, UnitFact(plate=plate_items, sure=sure))


def _is_model(word: str) -> bool:
    mixed = any(c.isdigit() for c in word) and any(c.isalpha() for c in word)
    return len(word) >= _SHORTEST and mixed and not _NOT_A_MODEL.fullmatch(word)


def _marks(view: Tokens) -> list[Claim]:
    found = []
    for match in _MARK.finditer(view.folded):
        colour = _COLOURS.search(match[0])
        if colour:
            dot = " dot" if "dot" in match[0].split() else ""
            mark = Plate(board_mark=colour[0] + dot)
            found.append(_unit(match.span(), mark))
    return found


def _simple(view: Tokens) -> list[Claim]:
    found = []
    for match in _NO_PLATE.finditer(view.folded):
        fact = ContextFact(name="plate readable", value=False)
        found.append(Claim(*match.span(), fact))
    for match in _REFRIGERANT.finditer(view.folded):
        number = match["r"] or match["bare"] or match["spaced"]
        found.append(_unit(match.span(), Plate(refrigerant=f"R-{number.upper()}")))
    for match in _CHARGE.finditer(view.folded):
        found.append(_unit(match.span(), Plate(charge=f"{match['kg']} kg")))
    return found


def _electrics(view: Tokens) -> list[Claim]:
    found = []
    for match in _CLASS.finditer(view.folded):
        volts = (match["volts"] or match["told"] or match["rated"]).replace(" ", "")
        found.append(_unit(match.span(), Plate(voltage=f"{volts} V")))
    for match in _PHASE.finditer(view.folded):
        phase = "1" if match["n"] in {"single", "1"} else "3"
        found.append(_unit(match.span(), Plate(phase=phase)))
    return found


def _serials(view: Tokens) -> list[Claim]:
    found = []
    for match in _SERIAL.finditer(view.folded):
        if len(match["serial"]) >= _SHORTEST:
            found.append(
                _unit(
                    match.span(), Plate(serial=match["serial"].replace(" ", "").upper())
                )
            )
    for match in _BUILT.finditer(view.folded):
        built = _built(match)
        if built is not None:
            found.append(_unit(match.span(), Plate(built=built)))
    return found


def _built(match: re.Match[str]) -> str | None:
    """Return a build date as `Plate.built` writes it; None where there is none so."""
    year = match["year"] or match["year2"] or match["year3"] or match["year4"]
    year = year if len(year) > SHORT_YEAR else f"20{year}"
    if match["week"]:
        week = int(match["week"])
        return f"{year}-W{week:02d}" if 1 <= week <= WEEKS else None
    month = int(match["number"] or 0)
    if match["month"]:
        month = _MONTHS.index(match["month"]) + 1
    if match["year4"]:
        return year
    return f"{year}-{month:02d}" if 1 <= month <= MONTHS else None


def _models(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    found = _known_models(view, vocabulary)
    for match in _STARTS.finditer(view.folded):
        start = match["start"].upper()
        if any(c.isdigit() for c in start) or _begins(start, vocabulary):
            item = {_slot(view, match.start(), match["box"] or ""): f"{start}*"}
            found.append(_unit(match.span(), Plate(**item), sure=False))
    for match in _NAMED.finditer(view.folded):
        word = match["model"]
        if _is_model(word):
            slot = _slot(view, match.start(), "")
            sure = not _unsure(view, match.start())
            span = match.span("model")
            found.append(_unit(span, Plate(**{slot: word.upper()}), sure=sure))
    return apart(found)


def _begins(start: str, vocabulary: Vocabulary) -> bool:
    """Tell whether a model of the packs begins so: "starts with VE"."""
    return any(plain(m).startswith(plain(start)) for m in vocabulary.models)


def _known_models(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim words that a model pattern allows, or one letter away from a name."""
    patterns = [_compiled(model) for model in vocabulary.models]
    names = [
        plain(model) for model in vocabulary.models if not set(model) & set("*#?(")
    ]
    found: list[Claim] = []
    words = list(re.finditer(r"[a-z0-9][a-z0-9.-]*", view.folded))
    for at in range(len(words) if vocabulary.models else 0):
        for count in range(1, min(_JOINED, len(words) - at) + 1):
            start, end = words[at].start(), words[at + count - 1].end()
            if count > 1 and not _TORN.fullmatch(words[at + count - 1][0]):
                break
            model = _model(view.folded[start:end], patterns, names)
            if model:
                sure = model[1] and not _unsure(view, start)
                slot = _slot(view, start, "")
                found.append(_unit((start, end), Plate(**{slot: model[0]}), sure=sure))
                break
    return apart(found)


def _model(
    text: str, patterns: list[re.Pattern[str]], names: list[str]
) -> tuple[str, bool] | None:
    word = plain(text)
    if len(word) < _SHORTEST or not any(c.isdigit() for c in word) or "," in text:
        return None
    if not any(c.isalpha() for c in word):
        return None
    if any(pattern.fullmatch(word) for pattern in patterns):
        return (text if " " not in text else word).upper(), True
    near = sorted(
        {name for name in names if len(word) > _SHORTEST and _one_off(word, name)}
    )
    return (near[0], False) if len(near) == 1 and " " not in text else None


def plain(model: str) -> str:
    """Return a model name in capitals without spaces and hyphens."""
    return re.sub(r"[\s\-.]", "", model).upper()


@lru_cache(maxsize=256)
def _compiled(pattern: str) -> re.Pattern[str]:
    """Compile a pack's pattern: ``*`` any run, ``#`` digit, ``?`` one, ``A(B,C)``."""
    signs = {"*": "[A-Z0-9]*", "#": "[0-9]", "?": "[A-Z0-9]"}
    signs |= {"(": "(?:", ")": ")", ",": "|"}
    spelled = re.sub(r"[\s\-.]", "", pattern).upper()
    try:
        return re.compile("".join(signs.get(c) or re.escape(c) for c in spelled))
    except re.error:
        return re.compile(re.escape(spelled))


def _one_off(word: str, name: str) -> bool:
    """Tell whether one letter was changed, added, dropped, or two exchanged."""
    if word == name or abs(len(word) - len(name)) > 1:
        return False
    head = 0
    while head < min(len(word), len(name)) and word[head] == name[head]:
        head += 1
    a, b = word[head:], name[head:]
    return (
        a[1:] == b[1:]
        or a[1:] == b
        or a == b[1:]
        or (a[2:] == b[2:] and a[:2] == b[1::-1])
    )


def _slot(view: Tokens, at: int, box: str) -> str:
    """Return which model was named; a bare model counts as the outdoor one."""
    if box and (_IN.fullmatch(box) or _OUT.fullmatch(box)):
        return "indoor_model" if _IN.fullmatch(box) else "outdoor_model"
    start, end = view.sentence(at)
    before = view.folded[start:at]
    nearest = {
        "outdoor_model": max((m.end() for m in _OUT.finditer(before)), default=-1),
        "indoor_model": max((m.end() for m in _IN.finditer(before)), default=-1),
    }
    if max(nearest.values()) < 0:
        after = view.folded[at:end]
        return (
            "indoor_model"
            if _IN.search(after) and not _OUT.search(after)
            else "outdoor_model"
        )
    return max(nearest, key=lambda slot: nearest[slot])


def _unsure(view: Tokens, at: int) -> bool:
    start, end = view.sentence(at)
    return bool(_UNSURE.search(view.folded, start, end))
