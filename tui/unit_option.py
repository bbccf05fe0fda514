"""`--unit MODEL[,key=value…]`: what is read from the nameplates, in one word. Pure."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING

from assistant.errors import UsageError

if TYPE_CHECKING:
    from assistant.rules.applicability import Plate

ROLES = ("customer", "maintenance", "technician", "licensed technician")
"""As `assistant.record.Role`, which `--help` has no time to import."""
KEYS = {
    "outdoor": "outdoor_model",
    "indoor": "indoor_model",
    "serial": "serial",
    "voltage": "voltage",
    "phase": "phase",
    "refrigerant": "refrigerant",
    "charge": "charge",
    "board": "board_mark",
    "switches": "switch_settings",
    "capacity": "capacity_class",
    "kind": "unit_role",
    "market": "market",
    "board-number": "board_pn",
    "firmware": "firmware",
    "built": "built",
    "series": "series",
    "family": "family",
    "fitted": "fitted",
    "without": "not_fitted",
}
"""Words of the option and the plate items they set."""
HELP = (
    "the outdoor model and more of the nameplates: MODEL[,key=value...]; keys: "
    + ", ".join(KEYS)
)


def parse_unit(text: str) -> Plate:
    """Return what `text` says of the unit.

    Examples
    --------
    >>> plate = parse_unit("KX-24,indoor=KW-9,board=orange")
    >>> plate.outdoor_model, plate.indoor_model, plate.board_mark
    ('KX-24', 'KW-9', 'orange')

    Raises
    ------
    UsageError
        An unknown or repeated key, or a value left out.
    """
    from assistant.rules.applicability import Plate

    told: dict[str, str] = {}
    for place, part in enumerate(text.split(",")):
        key, sign, value = (each.strip() for each in part.partition("="))
        if not sign and place == 0:
            key, value = "outdoor", key
        field = _field(key, text)
        if not value:
            raise UsageError(f"--unit {text!r}: {key} has no value", f"write {key}=...")
        if field in told:
            raise UsageError(f"--unit {text!r}: {key} is given twice")
        told[field] = value
    return Plate(**told)


def _field(key: str, text: str) -> str:
    if key in KEYS:
        return KEYS[key]
    if key in KEYS.values():
        return key
    near = difflib.get_close_matches(key, KEYS, n=1)
    meant = f"did you mean {near[0]}? " if near else ""
    raise UsageError(
        f"--unit {text!r}: {key!r} is not a nameplate item",
        f"{meant}known: {', '.join(KEYS)}",
    )
