"""Vellamere manuals, third part: lamps, how faults are detected, causes."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table
from kb_samples.making.vellamere_figures import Family
from kb_samples.making.vellamere_lamps import Lamp

SPLIT = 8

LAMP_HEAD = ("Flashes", "Meaning", "What the unit does", "Recovery")

LAMP_WIDTHS = (0.75, 2.6, 1.5, 1.7)

READING = (
    Para(
        "The table is read from left to right. The column on the right tells what ends "
        "the display and how long the compressor then stays off at least:"
    ),
    Items(
        (
            "by itself: the unit tries again without anybody's help, after the "
            "minutes that are given;",
            "below n °C: it tries again when the temperature has fallen below this "
            "value and the minutes are over;",
            "reset only: the unit stays off until it is reset by section 5;",
            "first valid message: it goes on as soon as both units speak again;",
            "supply in band: see section 3.7.",
        )
    ),
    Para(
        "A stop is counted for the lockout of table 4-1 when its function is named "
        "there. Sensor faults and a lost signal line are never counted."
    ),
)


def signals(family: Family) -> tuple[Page, ...]:
    """Return the pages from the lamp display to the causes."""
    cut = SPLIT
    return (
        _lamps(family),
        _lamp_table(family, "8", family.lamps[:cut], ""),
        _lamp_table(family, "9", family.lamps[cut:], " (continued)"),
        _details("10", family.lamps[:cut], ""),
        _details("11", family.lamps[cut:], " (continued)"),
        _causes("12", family.lamps[:7]),
        _causes("13", family.lamps[7:]),
    )


def _lamps(family: Family) -> Page:
    window, repeat = family.window_s, family.repeat_s
    return Page(
        "7",
        (
            Heading("6 Lamp display of the outdoor main board"),
            Para(
                "Remove the service cover on the right; the lamps LD1 (green) and LD2 "
                "(amber) can be seen without removing the board cover."
            ),
            table(
                "Table 6-1 States of the lamps",
                ("LD1 green", "LD2 amber", "State", "Fault"),
                (
                    ("off", "off", "No supply at the board", "look at supply"),
                    ("lit", "off", "Running or ready, no fault", "no"),
                    ("lit", "steady", "Start delay, off time or standby", "no"),
                    ("lit", "even blink 2 s / 2 s", "Preheating", "no"),
                    ("even blink", "steady", "Lockout after protection stops", "yes"),
                    ("lit", "n flashes", "Fault, see table 6-2", "yes"),
                ),
                (1, 1.7, 2.3, 1.1),
            ),
            Heading("Counting the flashes", 2),
            Para(
                f"Count the flashes of LD2 in {window} seconds. Each flash is 0.25 s "
                "lit and 0.25 s dark; after the last one the lamp stays dark until the "
                f"next group. The group of flashes is repeated every {window} seconds."
            ),
            Items(
                (
                    "Wait for a dark pause and start the watch with the first flash.",
                    f"Count for {window} seconds, and count a second group.",
                    "If the two counts differ, film the lamp and count again from the "
                    "film.",
                    "A lamp that blinks without any dark pause is not a count: see "
                    "table 6-1.",
                ),
                numbered=True,
            ),
            table(
                "Chart 6-1 Timing of LD2",
                ("Item", "Value"),
                (
                    ("Flash lit", "0.25 s"),
                    ("Flash dark", "0.25 s"),
                    ("Repeat time of the group", f"{repeat} s"),
                    ("Largest count in use", f"{family.lamps[-1].count} flashes"),
                ),
                (2, 1.2),
            ),
            Para(
                "The run lamp of the indoor unit and LD2 do not flash in step. Only "
                "LD2 is counted."
            ),
        ),
        "6 Lamp display",
    )


def _lamp_table(family: Family, label: str, lamps: tuple[Lamp, ...], more: str) -> Page:
    rows = tuple(
        (str(lamp.count), lamp.meaning, lamp.action, lamp.recovery) for lamp in lamps
    )
    title = f"Table 6-2 Flashes of LD2 in {family.window_s} seconds{more}"
    head: tuple[Para | Items, ...] = ()
    tail: tuple[Para | Caution | Items, ...]
    if more:
        tail = (
            Para(
                "Counts that are not in this table are not used. A count that seems to "
                "lie outside was counted wrongly or belongs to another series."
            ),
            Caution(
                "NOTE",
                "Boards are also supplied as spare parts with a label of another "
                "colour. Look for a bulletin for the colour of the label before you "
                "rely on this table.",
            ),
            Para(
                "A fault that recovers by itself leaves no trace at LD2. Ask what was "
                "seen before the visit, and write down the outdoor temperature and the "
                "mode at that time."
            ),
        )
    else:
        head = READING
        tail = (Para("The table is continued on the next page."),)
    return Page(
        label,
        (
            Heading(f"6.2 Lamp table{more}", 2),
            *head,
            table(title, LAMP_HEAD, rows, LAMP_WIDTHS),
            *tail,
        ),
        "6 Lamp display",
    )


def _flashes(count: int) -> str:
    return "1 flash" if count == 1 else f"{count} flashes"


def _details(label: str, lamps: tuple[Lamp, ...], more: str) -> Page:
    blocks = [
        block
        for lamp in lamps
        for block in (
            Heading(f"{_flashes(lamp.count)}: {lamp.meaning}", 2),
            Para(lamp.detail),
        )
    ]
    title = Heading(f"6.3 How each fault is detected{more}", 2)
    return Page(label, (title, *blocks), "6 Lamp display")


def _causes(label: str, lamps: tuple[Lamp, ...]) -> Page:
    first = label == "12"
    intro = (
        Heading("7 Causes and remedies"),
        Para(
            "The causes stand in the order in which they are found in practice. Prove "
            "each one by the check before the part is changed; a board is changed last "
            "and never because of a number of flashes alone."
        ),
    )
    blocks = intro if first else ()
    more = "" if first else " (continued)"
    rows = tuple(
        (str(lamp.count), str(rank), cause, f"page {check}")
        for lamp in lamps
        for rank, (cause, check) in enumerate(lamp.causes, 1)
    )
    return Page(
        label,
        (
            *blocks,
            table(
                f"Table 7-1 Likely causes{more}",
                ("Flashes", "Order", "Cause", "Check"),
                rows,
                (0.8, 0.7, 3.4, 0.9),
            ),
            Para(
                "Remedy: seat the plug, repair the lead, clean, or replace the part "
                "that the check has proved. Start again and watch one full cycle."
            ),
        ),
        "7 Causes",
    )
