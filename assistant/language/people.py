"""Who is asking, and the mode the unit is in."""

from __future__ import annotations

import re

from assistant.facts import ModeFact, RoleFact
from assistant.language.claims import Claim, negated, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.record import Mode, Role

_CUSTOMER = (
    r"(?:home ?owner|owner|guest|tenant|customer|renter|occupant|resident|end user|"
    r"user|cabin owner|house ?keeper|house ?keeping|receptionist|front desk|cleaner|"
    r"home owner|landlord|landlady|occupier|neighbou?r|visitor)"
)
_MAINTENANCE = (
    r"(?:maintenance|maintenance (?:guy|man|person|crew|tech|technician|lead|staff|"
    r"team)|handyman|janitor|caretaker|facilities|facility (?:guy|manager)|"
    r"groundskeeper|building engineer|site engineer|property manager|super|"
    r"superintendent|maintenance crew|grounds ?keeper|odd job man)"
)
_TECH = (
    r"(?:technician|service (?:technician|engineer|guy|man)|mechanic|hvac (?:guy|"
    r"technician|mechanic)|ac (?:guy|technician)|installer|engineer|electrician|"
    r"apprentice|fitter|refrigeration (?:technician|engineer|guy|mechanic)|contractor|"
    r"service|field technician)"
)
_LICENCE = (
    r"(?:licensed|certified|licenced|carded|qualified|epa|epa (?:608|certified|card|"
    r"licensed|universal)|608|universal|f ?-?gas|f ?-?gas (?:certified|card|ticket|"
    r"licensed|qualified)|refrigerant (?:licen[cs]e|card|ticket|certified|licensed|"
    r"handling)|ref card|type 2|type ii)"
)
_ALONE = r"(?:technician|service (?:technician|engineer)|hvac technician)"
_WHO = (
    r"(?:i am|am|we are|this is|i work as|it is|as|i am just|just|me|speaking is|here "
    r"is)"
)
_A = (
    r"(?: (?:the|a|an|just|only|with|your|our|from|in|on|one of the|resort|site|head|"
    r"lead|local|hotel|lodge|building|fully|also|new|junior|senior))*"
)
_LICENSED = rx(
    rf"{_WHO}{_A} {_LICENCE}(?: (?:{_TECH}|and|card|holder|ticket|certified))*"
    rf"|(?:i |we )?(?:have|hold|got|carry|have got)(?: my| the| an?)* {_LICENCE}(?: "
    r"(?:608|card|ticket|licen[cs]e|cert|certificate|certification|universal))*"
    rf"|{_LICENCE} {_TECH}(?: here)?"
)
_UNLICENSED = rx(
    r"(?:not|no|without|do not have|have no|have not got)(?: an?| my| the| any| got)* "
    rf"{_LICENCE}(?: (?:card|ticket|licen[cs]e|cert|certificate|certified|technician))*"
    r"|(?:no|without a|do not have a|not got a) (?:card|licen[cs]e|ticket|cert)"
)
_ROLES: tuple[tuple[re.Pattern[str], Role], ...] = (
    (
        rx(
            rf"{_WHO}{_A} {_MAINTENANCE}|^{_MAINTENANCE} here"
            r"|(?:work|working) (?:in|for|with) (?:the )?maintenance"
        ),
        "maintenance",
    ),
    (rx(rf"{_WHO}{_A} {_CUSTOMER}|^{_CUSTOMER} here"), "customer"),
    (
        rx(
            rf"{_WHO}{_A} {_TECH}(?! (?:said|says|told|came))"
            rf"|^(?:service )?{_TECH} (?:here|on site)"
            # Alone between two breaks: "VET-O50, technician. Amber blinks".
            rf"|(?:^|(?<=, )){_ALONE}(?= ,|$| \.)"
        ),
        "technician",
    ),
)
_SAYS = rx(
    rf"(?:{_CUSTOMER}|{_TECH}|{_MAINTENANCE}) (?:says|said|told|claims|reckons|was)"
)
BARE_ROLES: tuple[tuple[re.Pattern[str], Role], ...] = (
    (rx(_LICENCE), "licensed technician"),
    (rx(_MAINTENANCE), "maintenance"),
    (rx(_CUSTOMER), "customer"),
    (rx(_TECH), "technician"),
)
"""Role words that suffice when the role was asked for."""

_IN = (
    r"(?:(?:running|run|runs|is|it is|set|set to|in|on|only|while|during|put it|it was|"
    r"switched to|happens|unit is|we are|thermostat is|stat is|set it) )+(?:in "
    r"|on |to |for )?(?:the )?"
)
_MODES: tuple[tuple[re.Pattern[str], Mode], ...] = (
    (rx(rf"{_IN}(?:cool|cooling|ac mode|dry)(?: mode)?(?! (?:fine|ok|good|well|off|"
        r"down|call|coil))|(?:cool|cooling) (?:mode|season)"), "cool"),
    (rx(rf"{_IN}(?:heat|heating|heat pump)(?: mode)?(?! (?:sink|pump is|fine|ok|"
        r"exchanger))|(?:heat|heating) (?:mode|season)"), "heat"),
    (rx(rf"{_IN}(?:defrost)(?: mode| cycle)?|(?:mid|during) defrost"), "defrost"),
    (rx(rf"{_IN}test (?:mode|run)|test (?:mode|run)|in test"), "test"),
    (rx(r"(?:thermostat|remote|system|mode|controller) (?:is |set |switched |turned |"
        r"to )+off"),
     "off"),
)  # fmt: skip
BARE_MODES: tuple[tuple[re.Pattern[str], Mode], ...] = (
    (rx(r"cool|cooling|ac|a / c|air con"), "cool"),
    (rx(r"heat|heating"), "heat"),
    (rx(r"defrost|defrosting"), "defrost"),
    (rx(r"test|test run"), "test"),
    (rx(r"off"), "off"),
)
"""Mode words that suffice when the mode was asked for."""
_BOTH = rx(r"cool(?:ing)? (?:and|or) heat(?:ing)?|heat(?:ing)? (?:and|or) cool(?:ing)?")


def people(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim the role that the person gives for themselves.

    "Not licensed" alone raises nobody to technician: it tells no role.
    """
    lacking = _UNLICENSED.search(view.folded)
    if lacking:
        base = _base_role(view)
        return [Claim(*lacking.span(), RoleFact(role=base))] if base else []
    licensed = _LICENSED.search(view.folded)
    if licensed and not negated(view, licensed.start()):
        return [Claim(*licensed.span(), RoleFact(role="licensed technician"))]
    for pattern, role in _ROLES:
        for match in pattern.finditer(view.folded):
            others = _SAYS.search(view.folded, match.start())
            if (
                not others
                and not negated(view, match.start())
                and "not" not in match[0].split()
            ):
                return [Claim(*match.span(), RoleFact(role=role))]
    return []


def _base_role(view: Tokens) -> Role | None:
    for pattern, role in _ROLES:
        if pattern.search(view.folded):
            return role
    return None


def modes(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim the mode, when one and only one is told."""
    if _BOTH.search(view.folded):
        return []
    found = []
    for pattern, mode in _MODES:
        for match in pattern.finditer(view.folded):
            if not negated(view, match.start()) and "not" not in match[0].split():
                found.append(Claim(*match.span(), ModeFact(mode=mode), shares=True))
                break
    return found if len(found) == 1 else []
