"""Mistakes in `waits.yaml` and `stops.yaml`: times, limits and resets."""

from __future__ import annotations

from tests.pack_folders import GOOD
from tests.seeded.form import Seeded

RESETS = (
    "  resets:\n"
    + (GOOD["stops.yaml"].partition("  resets:\n")[2].partition("  source")[0])
)
TIMES: dict[str, Seeded] = {
    "a duration without a unit": (
        "waits.yaml",
        "minimum: 3 min",
        'minimum: "3"',
        'minimum: "3"',
        "`minimum`: '3' has no unit",
    ),
    "a duration in base sixty": (
        "waits.yaml",
        "minimum: 3 min",
        "minimum: 3:00",
        "minimum: 3:00",
        'quote it: "3:00"',
    ),
    "a duration that is a resistance": (
        "waits.yaml",
        "minimum: 3 min",
        "minimum: 3 kohm",
        "minimum: 3 kohm",
        "`minimum`: expected a time, got '3 kohm'",
    ),
    "a minimum longer than the give-up": (
        "waits.yaml",
        "give_up: 10 min",
        "give_up: 1 min",
        "give_up: 1 min",
        "`give_up` 1 min is shorter than `minimum` 3 min",
    ),
    "an unknown trigger": (
        "waits.yaml",
        "trigger: power_on",
        "trigger: poweron",
        "trigger: poweron",
        "`trigger` is `poweron`; did you mean `power_on`?",
    ),
    "a start-up order after a part that is not there": (
        "waits.yaml",
        "after: compressor",
        "after: compresor",
        "after: compresor",
        "did you mean `compressor`?",
    ),
    "an id used in another file": (
        "waits.yaml",
        "- id: order",
        "- id: grid-1",
        "- id: grid-1",
        "id `grid-1` is used already, in signals.yaml line 35",
    ),
    "a lamp that is shown meanwhile and is not there": (
        "waits.yaml",
        "lamp_during: green-on",
        "lamp_during: green-one",
        "lamp_during: green-one",
        "did you mean `green-on`?",
    ),
    "a lockout without a way out": (
        "stops.yaml",
        RESETS,
        "",
        "- id: high-pressure",
        "`high-pressure`: a lockout names its reset or its release",
    ),
    "tabs for indentation": (
        "waits.yaml",
        "  name: restart delay",
        "\tname: restart delay",
        "\tname: restart delay",
        "indent with spaces, not tabs",
    ),
    "a limit of no stops": (
        "stops.yaml",
        "limit: 3",
        "limit: 0",
        "limit: 0",
        "`limit` is `0`; expected at least 1",
    ),
    "a negative wait": (
        "waits.yaml",
        "minimum: 3 min",
        "minimum: -3 min",
        "minimum: -3 min",
        "`minimum` -3 min is below zero",
    ),
}
