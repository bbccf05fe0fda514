"""Words for lamps: colours, boxes by their place, states, rates, pauses."""

from __future__ import annotations

COLOURS = (
    "red",
    "green",
    "amber",
    "yellow",
    "orange",
    "blue",
    "white",
    "pink",
    "purple",
)
ALIKE = (frozenset({"amber", "orange", "yellow"}), frozenset({"pink", "purple", "red"}))
"""Colours that people take for each other; each is kept as it was said."""

STICKER = r"(?:label|sticker|dot|tag|mark|paint dot|sticky)"
"""A mark on a chip or board, whose colour is no lamp's."""
OUTDOOR = (
    r"(?:outdoor|outside|out door|condenser|condensing unit|out back|roof unit|rooftop|"
    r"ground unit|compressor unit|big unit|unit outside|odu)"
)
INDOOR = (
    r"(?:indoor|inside|in door|attic|head|air handler|wall (?:thing|unit|one|mount|"
    r"box)|cassette|evaporator|ceiling (?:unit|one|cassette)|fan coil|furnace|idu|"
    r"closet unit|unit inside|mini split head|basement)"
)
REMOTE = r"(?:remote(?: controller)?|handset|clicker|wall controller|wired controller)"
THERMOSTAT = r"(?:thermostat)"

FLASH = r"(?:flash|flashes|flashing|flashed|beeps?|beeping|beeped|blips?|pips?|chirps?)"
STEADY = (
    r"(?:steady(?: on)?(?! [0-9.]+ (?:v|k|amp)(?!\S))(?! ~)|"
    r"(?<!frozen )(?<!froze )(?<!iced )(?<!ice )solid(?: on)?|"
    r"on (?:steady|solid|all the time|constant(?:ly)?|"
    r"continuous(?:ly)?)|(?:staying|stays|stay|stuck|just|always|constantly|full|"
    r"remains|lit and staying) (?:on|lit)(?! and off)|lit up|"
    r"(?<!when one is )(?<!when one )(?<!when ones )lit|constant(?:ly)? on|"
    r"glowing|constantly lit|not (?:flashing|changing) just (?:on|lit)|burning steady|"
    r"permanently on)"
)
_AFTER_LAMP = (
    "(?:"
    + "|".join(
        f"(?<={word} )"
        for word in (
            "is",
            "are",
            "was",
            "stays",
            "both",
            "all",
            "just",
            "now",
            "one",
            "ones",
            "~",
            "light",
            "lights",
            "led",
            "others",
            "other",
            "2",
            "3",
            "timer",
            "run",
            "standby",
            *COLOURS,
        )
    )
    + ")"
)
DARK = (
    rf"(?:{_AFTER_LAMP}(?:out|off)|dead|dark|unlit|not lit|not on|not lighting(?: "
    r"up)?|does not (?:light|come on|light up)|black|not lit up|went out|gone out|"
    r"blank|not coming on|extinguished)"
)
SLOW = r"(?:slow|slowly|slower|lazy|lazily)"
FAST = r"(?:fast|faster|quick|quickly|rapid|rapidly|like crazy|crazy fast)"

PAUSE = (
    r"(?:pause|pauses|paused|pausing|rest|rests|resting|gap|stops?|waits?|break|"
    r"breather|dark|goes dark|nothing|off for a|stays off|breaks?|dead time|blank)"
)
NO_PAUSE = (
    r"(?:(?:does not|do not|never|no|without(?: a)?|will not|did not|not) (?:ever |"
    r"even |really |any |a |seem to )*(?:pause|pauses|pausing|paused|stop|stops|"
    r"stopping|rest|rests|gap|gaps|break|breaks)|non ?stop|continuous(?:ly)?|"
    r"constantly (?=flash)|keeps (?:on )?(?=flash)|keeps going|evenly|even flash(?:es|"
    r"ing)?|on and on|all the time (?=flash)|flashing (?:away|all the time|constantly|"
    r"evenly))"
)

LABEL_WORDS = (
    r"(?:run|timer|operation|power|status|test|fault|alarm|standby|stand by|service|"
    r"filter|defrost|economy|error|check|diagnostic|heartbeat|comm|comms)"
)
STORED = (
    r"(?:history|stored|memory|in the log|saved|past codes?|previous codes?|logged)"
)
