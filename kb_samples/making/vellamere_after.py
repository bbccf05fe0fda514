"""Vellamere manuals, last part: complaints without a code, change of the board."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table
from kb_samples.making.vellamere_figures import Family


def after(family: Family) -> tuple[Page, ...]:
    """Return the pages on complaints without a code and on a change of the board."""
    return _complaints(family), _board(family)


def _complaints(family: Family) -> Page:
    return Page(
        "19",
        (
            Heading("11 Complaints without a code"),
            Para(
                "About half of the calls come without any flashes. Make sure first "
                "that no wait of section 3 is running and that the lamps were watched "
                "for two minutes."
            ),
            Heading("11.1 Runs but does not cool", 2),
            Items(
                (
                    "Mode, set temperature, fan step, doors and sun: ask and look.",
                    "Filter and indoor coil clean? Outdoor coil free of fluff?",
                    "Air in and out of the indoor unit after 15 minutes: 8 to 13 K "
                    "apart in a dry room, less in a damp one.",
                    "Compressor slow all the time: speed held by a limit of section 4, "
                    "or TH1 read wrongly. Check TH1 and TH2 by 10.1.",
                    "Frost on the thin pipe only: expansion valve by 10.6, then the "
                    "circuit by a licensed person.",
                ),
                numbered=True,
            ),
            Heading("11.2 Breaker trips", 2),
            Items(
                (
                    "Leave it off. Every further try can make the damage worse.",
                    "Trips at once, unit off: cable, terminals, wet junction box.",
                    "Trips with the supply on, before any start: rectifier on the "
                    "outdoor main board, varistor after a lightning stroke.",
                    "Trips as the compressor starts: winding to ground by 10.4.",
                    "Trips after hours: loose screw that heats the breaker, wrong "
                    "characteristic, other loads on the same circuit.",
                ),
                numbered=True,
            ),
            Heading("11.3 Starts and stops all the time", 2),
            Para(
                "Write down three pairs of clock times. A rhythm of "
                f"{family.off_time_min} minutes off is the minimum off time after a "
                "stop; look for the stop, not for the wait. Runs of some minutes and "
                "no flashes: room too small, or cold air blown at the room sensor."
            ),
            Heading("11.4 Water, noise, smell", 2),
            Para(
                "Water from the indoor unit: drain hose without fall, or an iced coil "
                "that thaws. A tick after switching on is the expansion valve. A "
                "burning smell: switch off at the isolator, leave it off and look for "
                "scorched terminals before anything else."
            ),
        ),
        "11 Complaints",
    )


def _board(family: Family) -> Page:
    return Page(
        "20",
        (
            Heading("12 Change of the outdoor main board"),
            Caution(
                "DANGER",
                f"Isolate and measure as on page ii: less than {family.bleed_volts} V "
                f"DC between {family.points}. Repeat after plug CN20 is out.",
            ),
            Items(
                (
                    "Photograph all plugs and the label of the board.",
                    "Pull the plugs at their housings, the leads U, V, W at their "
                    "tabs.",
                    "Loosen the four screws of the power module, lift the board.",
                    "Clean the heat sink and put on fresh paste.",
                    "Move the plug-in with the model data from the old board to the "
                    "new one, notch upwards.",
                    "Fit the board, tighten the module crosswise to 1.5 Nm.",
                    "Put the plugs back by the photograph; U red, V white, W black.",
                    "Fit the covers, switch on and read LD2: steady for "
                    f"{family.start_delay_s} seconds, then dark.",
                ),
                numbered=True,
            ),
            table(
                "Table 12-1 After the change",
                ("Seen", "Means", "Do"),
                (
                    ("13 flashes", "plug-in missing or upside down", "fit plug-in"),
                    ("same flashes as before", "the board was not it", "section 7"),
                    ("fan stands still", "CN20 not latched", "isolate, latch"),
                    (
                        "compressor hums, no start",
                        "two leads exchanged",
                        "isolate, U V W",
                    ),
                ),
                (1.5, 1.8, 1.1),
            ),
            Heading("12.1 After the work", 2),
            Items(
                (
                    "Fit all covers and guides before the supply is switched on.",
                    "Stand clear: the unit may start by itself.",
                    "Watch one full cycle with a stopwatch.",
                    "Note the lamp, the readings and the parts in the unit's card, "
                    "also the parts that proved to be sound.",
                )
            ),
            Para(
                "Send the old board back with the readings. A board without readings "
                "is taken back unchecked."
            ),
        ),
        "12 Board",
    )
