"""The refrigerants with a saturation table, and how people write them."""

from __future__ import annotations

import re

from assistant.checks.saturation_table import BUBBLE
from assistant.errors import InputError

REFRIGERANTS = tuple(sorted(BUBBLE))
"""The names that are known, as they are shown."""


def refrigerant_named(text: str) -> str:
    """Return a refrigerant as it is shown: ``r410a`` is ``R-410A``.

    Raises
    ------
    InputError
        When no table is committed for it.
    """
    spelled = re.sub(r"[\s-]", "", text).upper().removeprefix("R")
    for name in REFRIGERANTS:
        if name.removeprefix("R-").upper() == spelled:
            return name
    raise InputError(
        f"no saturation table is kept for {text!r}",
        f"there are tables for {', '.join(REFRIGERANTS)}",
    )
