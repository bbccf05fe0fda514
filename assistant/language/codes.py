"""Display codes: "P nine", "E oh", "H11"; and "no code anywhere"."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass, replace

from assistant.language.claims import NOT, negated, rx
from assistant.language.lexicon.words import words
from assistant.language.tokens import Tokens

_LETTERS = r"(?:[a-z]|[a-z]{2})"
_SAYS = (
    r"(?:codes?|errors?|faults?|alarm|display|displays|displaying|displayed|screen|"
    r"shows?|showing|showed|says?|saying|reads|reading|flips between|flipping between|"
    r"throwing|throws|threw|throwin|flashes|flashing|gives?|giving|gives me|got|get|"
    r"getting|have|has|had|with|alternates|alternating|alternates between|switches "
    r"between|between|then|and|or|is|an?|see|seeing|was|it is|on|the|not|no|another|"
    r"now|also|went to|came up with|comes up)"
)
_BARE = re.compile(r"[acefhjlnpu][0-9]{1,3}")
"""Letter and digits that are read as a code without "code" or "shows" nearby."""
_TERMINALS = frozenset(
    words("w1 w2 y1 y2 l1 l2 l3 t1 t2 t3 t4 s1 s2 s3 k1 k2 k3 u1 v1 c1 c2")
)
_CODE = rx(
    rf"(?P<lead>{_SAYS} )?(?:(?P<tight>[a-z]{{1,2}}-?[0-9]{{1,3}}[a-z]?|[0-9][a-z])"
    rf"|(?P<letter>{_LETTERS}) (?P<digits>[0-9]{{1,2}}|oh|o)(?! (?:flash|flashes|times|"
    r"min|sec|v|k|ohm|amp|red|reds|green|greens|hour|kohm|megohm|f|c|psi))"
    r"|(?P<eo>[cefhlp]oh?(?<!ho)))(?P<more> something| and something| someth?in| point "
    r"something)?"
)
_SHOWS = r"(?:shows|showing|showed|says|display|code|screen|reads) "
_ON_SCREEN = re.compile(
    r" (?:came up|comes up|on (?:the |my |its )?(?:screen|display|remote|thermostat|"
    r"head|handset|controller)|flashing|again|error|fault|showing)(?!\S)"
)
_PAIR = rx(
    r"(?P<pair>[a-z]{2})"
    r"(?= on (?:the )?(?:screen|display|remote|handset|controller)(?!\S))"
)
_NUMBERED = rx(
    r"(?:code|codes|error|error code|fault code|fault|alarm|trouble code)(?: number| "
    r"no| is| of| says| shows|:)* (?P<n>[0-9]{1,3})(?! (?:flash|flashes|times|long|"
    r"short|red|green|min|sec|v|k|ohm|hour|lights))"
)
_NONE = rx(
    r"(?:no|not any|without|zero|never any|not a|not showing a|not showing any|did not "
    r"see a|do not see a|do not see any|not giving (?:me )?a|not throwing a|does not "
    r"show a|does not (?:have|give|throw|show) (?:a|any)|not getting (?:a|any)) "
    r"(?:[a-z]+ ){0,2}?(?:error codes?|fault codes?|codes?|errors?|faults? (?:shown|"
    r"showing|on the display)|error)(?: (?:anywhere|at all|on (?:the )?[a-z]+(?: "
    r"[a-z]+)?|showing|shown|yet|now|either|flashing|up))*|nothing (?:on|showing on) "
    r"(?:the )?(?:display|screen|remote)|display (?:is |shows )?(?:blank|empty|nothing)"
)
_SUB = re.compile(
    r"(?: ,| and| with| then| the| a| has| plus)* (?:sub(?: ?code)?|second (?:number|"
    r"code|one)|small|little|detail code)(?: is| a| of| number| small| code)* "
    r"(?P<sub>[0-9]{1,2})(?!\S)"
    r"|(?: ,| and| with| then)* (?P<zero>0[0-9])(?!\S)"
)
_TURN = rx(
    r"(?:flips?|flipping|switch(?:es|ing)?|alternat(?:es?|ing)|cycl(?:es?|ing)|"
    r"chang(?:es?|ing)|goes|going) (?:back and forth )?(?:between|through|from)|in "
    r"turn|and (?:a)?round again|taking turns|one after the other"
)
_SEVERAL = 2
_BLANKS = frozenset({"blank", "dash", "nothing", "empty"})
_PLAIN = rx(
    r"(?:display|screen|readout|digits?|it) (?:shows?|reads?|says?|showing|is "
    r"showing)(?: the)? (?P<signs>(?:[0-9a-z]|blank|dash|empty) (?:(?:[0-9a-z]|blank|"
    r"dash|empty) )*(?:blank|dash|empty)(?: (?:[0-9a-z]|blank|dash))*)"
)
_VALUE = rx(
    r"(?:display|screen|readout) (?:shows?|reads?|says?|showing|is showing) "
    r"(?P<value>-?[0-9]{1,3}(?:\.[0-9]{1,2})?)(?= ?(?:$|\.|,|and|with|now))"
)
_LETTER_WORDS = frozenset(
    words(
        "a i u is it at on to of or no in an as do be by me my we us so up ok oh if go "
        "he hi"
    )
)


@dataclass(frozen=True, slots=True)
class Code:
    """A code told in a span; None is one told in part or not there at all."""

    start: int
    end: int
    code: str | None
    absent: bool = False
    starts: str | None = None
    """The part of it that was told."""
    sub: str | None = None
    """A second code told beside it."""
    in_turn: bool = False
    """Whether it is one of several that are shown in turn."""


def normal(code: str) -> str:
    """Return a code in capitals without spaces and hyphens; "E oh" is EO."""
    return re.sub(r"[\s-]", "", code).upper().replace("OH", "O")


def like(code: str) -> str:
    """Return one form for codes that a seven-segment display shows alike."""
    return code.translate(str.maketrans("OQDISBZ", "0001582"))


def codes(
    view: Tokens, spelled: Collection[str] = (), *, asked: bool = False
) -> list[Code]:
    """Return the codes told, one for each that a display could tell apart.

    Parameters
    ----------
    spelled : collection of str
        Codes of the packs in force: one of letters only (`Sb`) is a code where it is
        spelled as they do, or stands behind a word such as "shows".
    asked : bool
        Codes were asked for: what could be a terminal as well is one.
    """
    found = [
        Code(*match.span(), None, absent=True) for match in _NONE.finditer(view.folded)
    ]
    found += _spelled(view, spelled)
    rest = view.without([(code.start, code.end) for code in found])
    for match in _NUMBERED.finditer(rest.folded):
        if not negated(rest, match.start("n")):
            found.append(Code(*match.span(), match["n"]))
    for match in _PAIR.finditer(rest.folded):
        if match["pair"] not in _LETTER_WORDS:
            found.append(Code(*match.span(), normal(match["pair"])))
    rest = view.without([(code.start, code.end) for code in found])
    named = asked
    for match in _CODE.finditer(rest.folded):
        code = _one(rest, match, named=named)
        if code:
            named = True
            found.append(code)
    ordered = sorted(found, key=lambda code: code.start)
    return _in_turn(view, _distinct(_with_subs(view, ordered)))


def _with_subs(view: Tokens, found: list[Code]) -> list[Code]:
    """Put the second code that is told right behind a code to it."""
    kept: list[Code] = []
    for code in found:
        if kept and code.start < kept[-1].end:
            continue
        match = _SUB.match(view.folded, code.end) if code.code else None
        second = (match["sub"] or match["zero"]) if match else None
        end = match.end() if match else code.end
        kept.append(replace(code, end=end, sub=second))
    return kept


def _in_turn(view: Tokens, found: list[Code]) -> list[Code]:
    """Mark codes that the display shows one after the other."""
    shown = [code for code in found if code.code is not None]
    if len(shown) < _SEVERAL or not _TURN.search(view.folded):
        return found
    return [replace(code, in_turn=code.code is not None) for code in found]


def shown_plainly(view: Tokens) -> list[tuple[int, int, str]]:
    """Return what a display shows that is no code in letters: "4 blank 1", "0.7"."""
    found = []
    for match in _PLAIN.finditer(view.folded):
        signs = match["signs"].split()
        text = "".join("_" if sign in _BLANKS else sign for sign in signs)
        found.append((match.start("signs"), match.end("signs"), text.upper()))
    for match in _VALUE.finditer(view.folded):
        found.append((*match.span("value"), match["value"]))
    return found


def _spelled(view: Tokens, known: Collection[str]) -> list[Code]:
    """Return the codes of letters only that are written as the packs write them."""
    found: list[Code] = []
    for code in sorted(set(known)):
        if not code.isalpha():
            continue
        exact = re.search(rf"(?<![^\W_]){re.escape(code)}(?![^\W_])", view.source)
        lead = "" if exact and not code.islower() else _SHOWS
        word = rx(rf"{lead}(?P<code>{re.escape(code.casefold())})(?= |$)")
        found += [Code(*m.span("code"), code) for m in word.finditer(view.folded)]
    return found


def _one(view: Tokens, match: re.Match[str], *, named: bool) -> Code | None:
    lead = (match["lead"] or "").strip()
    strong = bool(lead) and lead not in {"and", "or", "is", "a", "an", "the", "then",
        "on",
                                         "with", "have", "has", "had", "got", "not",
                                             "no"}  # fmt: skip
    start = match.start() + (len(match["lead"]) if match["lead"] else 0)
    if match["tight"]:
        spelled = match["tight"]
        wanted = bool(_BARE.fullmatch(spelled)) or strong or named
        shown = _ON_SCREEN.match(view.folded, match.end("tight"))
        wanted = wanted or bool(shown)
        if spelled in _TERMINALS and not (strong or named or shown):
            return None
    else:
        spelled = match["letter"] + match["digits"] if match["letter"] else match["eo"]
        known = (
            spelled[0] in "acefhjlnpu" and (match["letter"] or "") not in _LETTER_WORDS
        )
        alone = match["letter"] and lead in {"", "or", "and", "an", "a"}
        wanted = known and (strong or named or bool(alone))
    if not wanted or not _is_there(view, start, lead):
        return None
    if match["more"]:
        return Code(start, match.end(), None, starts=normal(spelled))
    return Code(start, match.end(), normal(spelled))


def _is_there(view: Tokens, start: int, lead: str) -> bool:
    if lead in {"not", "no"}:
        return False
    before = view.folded[:start].split()[-1:]
    return not (before and re.fullmatch(NOT, before[0]))


def _distinct(found: list[Code]) -> list[Code]:
    """Drop a code that the display shows like an earlier one: "E zero or E oh"."""
    kept: list[Code] = []
    for code in found:
        alike = [
            at
            for at, other in enumerate(kept)
            if code.code and other.code and like(other.code) == like(code.code)
        ]
        if alike:
            first = kept[alike[0]]
            kept[alike[0]] = Code(first.start, code.end, like(first.code or ""))
        else:
            kept.append(code)
    return kept
