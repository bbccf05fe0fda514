"""What a look or a feel showed: "fan spins free by hand", "filter's filthy"."""

from __future__ import annotations

import re

from assistant.facts import LookFact
from assistant.language.choices import pick
from assistant.language.claims import Claim, either, negated, rx
from assistant.language.tokens import Tokens, fold
from assistant.language.vocabulary import Vocabulary

_OK = (
    r"(?:good|ok|okay|fine|checks out|tests good|tests ok|checks ok|checks good|in "
    r"range|passed)"
)
_BAD = (
    r"(?:bad|shot|toast|burnt|burned|fried|cooked|dead|out of range|no good|failed|"
    r"cracked|broken)"
)
_PART = (
    r"(?:sensor|sensors|discharge sensor|coil sensor|room sensor|outdoor sensor|board|"
    r"fan motor|motor|compressor|capacitor|wiring|wires|connector|connectors|contactor|"
    r"fuse|reactor|transformer|valve|voltage|supply|plug|plugs|terminals?|fan|drain|"
    r"power|charge|airflow|module|relay|breaker)"
)
_IS = (
    r"(?: (?:is|are|looks|look|seems|all|both|is all|tests|was|feels|feel|just|a bit|"
    r"pretty))*"
)
_TABLE: tuple[tuple[str, str, str], ...] = (
    (r"(?:outdoor |indoor |condenser )?(?:fan|blade|wheel|blower|prop)(?: motor| "
     r"blade)?(?: (?:does|turns|is))* (?:spins?|turns?|moves?|rotates?|free|spinning|"
     r"spin)(?: (?:free|freely|fine|ok|easy|easily|by hand|smooth|smoothly|loose|free "
     r"by hand|no problem))+",
     "fan", "spins free"),
    (r"(?:outdoor |indoor |condenser )?(?:fan|blade|wheel|blower|prop)(?: motor| "
     r"blade)?(?: is| are| feels| seems)* (?:stuck|seized|jammed|stiff|tight|binding|"
     r"rough|hard to turn|blocked|not (?:spin|turn|free)(?:ning|ing)?|locked(?: up)?|"
     r"rubbing|catching)|(?:fan|blade|blower) (?:will|does|can) not (?:spin|turn|"
     r"move)(?: by hand| freely| free| at all)+",
     "fan", "stuck"),
    (rf"(?:air )?(?:filter|filters)(?: screen)?{_IS} (?:dirty|filthy|clogged|blocked|"
     r"plugged|matted|full of (?:dust|dirt|hair)|choked|black|"
     r"caked)", "filter", "dirty"),
    (rf"(?:air )?(?:filter|filters){_IS} (?:clean|new|clear|fine|ok|good)", "filter",
        "clean"),
    (rf"(?:outdoor |indoor |condenser |evaporator )?coils?{_IS} (?:dirty|filthy|"
     r"clogged|blocked|plugged|matted|full of|packed|choked|covered in (?:leaves|dirt|"
     r"fluff|cottonwood))",
     "coil", "dirty"),
    (rf"(?:outdoor |indoor |condenser |evaporator )?coils?{_IS} (?:clean|clear)",
        "coil", "clean"),
    (rf"{_PART}{_IS} (?:loose|came off|corroded|green with corrosion|rusty|wet|chewed|"
     r"pulled out|hanging off|backed out|half out)", "", "loose or damaged"),
    (rf"{_PART}{_IS} {_OK}", "", "good"),
    (rf"{_PART}{_IS} {_BAD}", "", "bad"),
    (r"(?:unplugged|disconnected) (?:the )?(?P<part>compressor|fan motor|fan|motor|"
     r"board)(?: plug| leads)?(?: and| ,| but)* (?:it )?(?:still (?:faults|does it|"
     r"same|trips|flashes|there|codes?)|same (?:thing|code|fault)|no change|no "
     r"different)", "+unplugged",
     "still faults"),
    (r"(?:unplugged|disconnected) (?:the )?(?P<part>compressor|fan motor|fan|motor|"
     r"board)(?: plug| leads)?(?: and| ,| but)* (?:it |the |code |fault )*(?:clears|"
     r"cleared|went away|goes away|stopped|gone)", "+unplugged", "fault gone"),
    (r"(?P<part>capacitors?|caps?) (?:is |are |looks? )?(?:bulging|bulged|leaking|"
     r"swollen|domed|puffed)", "+look", "bulging"),
    (r"no (?:burn|scorch) (?:marks?|spots?)|nothing (?:looks )?(?:burnt|burned)",
        "board",
     "no burn marks"),
)  # fmt: skip
_LOOKS = tuple((rx(pattern), check, answer) for pattern, check, answer in _TABLE)
_WHICH = rx(_PART)
_IF = rx(
    r"if|whether|should|is the|are the|how do i (?:know|tell)|make sure|until|does|or"
)


def looks(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim what was seen of parts, under the name of the check where a pack has it."""
    found = _by_options(view, vocabulary)
    for pattern, check, answer in _LOOKS:
        for match in pattern.finditer(view.folded):
            start, _ = view.clause(match.start())
            asked = _IF.search(view.folded, start, match.start())
            taken = any(match.start() < c.end and c.start < match.end() for c in found)
            if asked or taken or negated(view, match.start()):
                continue
            name = _name(match[0], match.groupdict().get("part"), check)
            fact = LookFact(check=_own(name, match[0], vocabulary), answer=answer)
            found.append(Claim(*match.span(), fact))
    return found


def _name(text: str, part: str | None, check: str) -> str:
    if check.startswith("+"):
        return f"{part} {check[1:]}"
    part_named = _WHICH.search(text)
    return check or (part_named[0] if part_named else text.split(maxsplit=1)[0])


def _own(name: str, text: str, vocabulary: Vocabulary) -> str:
    """Return the global id of a check whose own words stand in the text."""
    for gid, says in vocabulary.checks:
        if _says(says).search(text):
            return gid
    return name


def _says(says: tuple[str, ...]) -> re.Pattern[str]:
    words = [fold(word) for word in says if fold(word)]
    return rx(either(words) if words else r"(?!)")


def _by_options(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim the packs' own answers where a check is named in the same clause.

    Packs that name a check alike each get the answer: which of them counts is not
    for the parser to say.
    """
    says = dict(vocabulary.checks)
    found: list[Claim] = []
    for gid, options in vocabulary.options:
        for match in _says(says.get(gid, ())).finditer(view.folded):
            start, end = view.clause(match.start())
            asked = _IF.search(view.folded, start, match.start())
            answer = None if asked else pick(view.folded[match.end() : end], options)
            if answer:
                fact = LookFact(check=gid, answer=answer)
                found.append(Claim(match.start(), end, fact))
    return found
