"""Ondreval Pochard guide, first part: cover, safety, contents, data, boards, plugs."""

from __future__ import annotations

from kb_samples.making.blocks import (
    Caution,
    Contents,
    Cover,
    Heading,
    Page,
    Para,
    table,
)

OUTDOOR = ("ODO-28P", "ODO-42P", "ODO-56P")
INDOOR = ("ODW-28P", "ODW-42P", "ODW-56P")

COVER = Page(
    "",
    (
        Cover(
            "ONDREVAL",
            "Service Guide",
            "Pochard split heat pumps, inverter driven",
            (
                "Outdoor: ODO-28P, ODO-42P, ODO-56P",
                "Indoor: ODW-28P, ODW-42P, ODW-56P",
                "Options: wired remote ODR-3, heater box OEH-2",
            ),
            (
                "OSG-310 Revision B, 2024-04-18",
                "Takes the place of Revision A, 2023-06-05.",
                "230 V single phase, 50 Hz. Refrigerant R-32, class A2L.",
                "For trained service staff only.",
            ),
        ),
    ),
)

SAFETY = Page(
    "ii",
    (
        Heading("Read this before the cover comes off"),
        Caution(
            "DANGER: charge that stays",
            "With every supply off, allow 10 minutes and then use the meter: C+ to C- "
            "on the inverter board and K+ to K- on the noise filter board, DC range, "
            "each under 25 V before a hand goes in. A bank that stays up is left alone "
            "and drained with the tool ODT-7 only. A dark lamp proves nothing.",
        ),
        Caution(
            "DANGER: two supplies, three with the heater box",
            "The outdoor unit, the indoor unit and the heater box OEH-2 are fed apart. "
            "Open all isolators, put a lock and a tag on each, and try the meter on a "
            "known live point before and after the test for dead.",
        ),
        Caution(
            "DANGER: a turning fan feeds the inverter board",
            "In wind the fan motor works as a generator. Once both banks are under 25 "
            "V pull plug N7, then measure both banks a second time.",
        ),
        Caution(
            "WARNING: A2L refrigerant",
            "R-32 burns when enough of it meets a flame or spark. Air the place, keep "
            "ignition away, use tools marked for A2L. Opening the circuit is for "
            "holders of a refrigerant licence.",
        ),
        Caution(
            "WARNING: it starts alone",
            "A wait that ends, a retry or a timer sets the fans going without notice. "
            "Covers back on and hands clear before any isolator is closed.",
        ),
        Caution(
            "WARNING: protections stay in place",
            "No switch, sensor or fuse named here is ever linked out, not even for a "
            "trial run. A stop is a message; find what caused it.",
        ),
        Caution(
            "CAUTION: burns and edges",
            "The discharge pipe reaches 110 °C. Coil fins cut. Wear gloves and let the "
            "pipe cool.",
        ),
        Para(
            "Where the law of the country or the rules of the site are stricter than "
            "this guide, they apply."
        ),
    ),
    "Safety",
)

CONTENTS = Page(
    "iii",
    (
        Heading("What is where"),
        Contents(
            (
                ("Read this before the cover comes off", "ii"),
                ("A  Data, supply, refrigerant", "1"),
                ("B  Boards, lamps, plugs", "2"),
                ("C  Start and stop", "3"),
                ("D  Waits and defrost", "4"),
                ("E  Stop counters and lockout", "5"),
                ("F  Reset and stored faults", "6"),
                ("G  Lamps D1 to D4", "7"),
                ("H  OPERATION lamp of the indoor unit", "8"),
                ("I  Inverter board", "9"),
                ("J  Valve board and noise filter board", "10"),
                ("K  Service display DS1", "11"),
                ("L  Running on a substitute", "12"),
                ("M  Likely causes", "13"),
                ("N  Sensors", "14"),
                ("O  Electrical checks", "15"),
                ("P  Compressor and valves", "16"),
            )
        ),
        Heading("Signs in the lamp tables", 2),
        Para(
            "ON: shines all the time. OFF: dark. FL: goes on and off about once per "
            "second. A number: so many flashes, then dark. FK: flickers, too quick to "
            "count. n x means the group is repeated until the cause has gone."
        ),
    ),
    "Contents",
)

DATA = Page(
    "1",
    (
        Heading("A  Data, supply, refrigerant"),
        table(
            "A.1 Outdoor units",
            ("", *OUTDOOR),
            (
                ("Indoor unit", *INDOOR),
                ("Supply at rest", "207-253 V", "207-253 V", "207-253 V"),
                ("Largest current", "8.5 A", "12.0 A", "16.0 A"),
                ("Circuit breaker", "10 A", "16 A", "20 A"),
                ("Charge R-32", "0.78 kg", "1.10 kg", "1.52 kg"),
                ("Pipe run charged for", "7.5 m", "7.5 m", "10 m"),
                ("Each further metre", "14 g", "18 g", "20 g"),
                ("Longest pipe run", "20 m", "25 m", "30 m"),
                ("Weight", "29 kg", "33 kg", "44 kg"),
            ),
            (1.5, 1.1, 1.1, 1.1),
        ),
        table(
            "A.2 Limits of use",
            ("Mode", "Outdoor air", "Room air"),
            (
                ("Cooling", "-10 to 46 °C", "17 to 32 °C"),
                ("Heating", "-20 to 24 °C", "10 to 28 °C"),
            ),
            (1, 1.4, 1.4),
        ),
        Para(
            "Outside these limits the unit may run, may stop, and shows nothing that "
            "can be relied on. No check in this guide holds there."
        ),
        Heading("A.3 Plate and serial number", 2),
        Para(
            "The plate is behind the service cover on the right. The serial number "
            "opens with four figures, year and month of make. The letter P in the "
            "model stands for Pochard; models with S belong to guide OSG-325."
        ),
        Heading("A.4 Charge", 2),
        Para(
            "R-32 is put in by weight, after recovery and evacuation to 250 Pa or "
            "less. Pressures are no measure of the charge of this unit: the expansion "
            "valve hides a lack for a long time."
        ),
        Caution(
            "NOTE",
            "The breaker size is the largest one allowed. If it trips there is a "
            "reason.",
        ),
    ),
    "A Data",
)

BOARDS = Page(
    "2",
    (
        Heading("B  Boards, lamps, plugs"),
        table(
            "B.1 Lamps and displays",
            ("Board", "Mark", "Colour", "Read it in"),
            (
                ("control board", "D1 to D4", "red", "section G"),
                ("control board", "D5", "green", "table B.2"),
                ("control board", "DS1", "3 digits", "section K"),
                ("inverter board", "D6", "red", "section I"),
                ("inverter board", "D7", "green", "section I"),
                ("inverter board", "D16", "red", "table B.2"),
                ("valve board", "D8, D9", "green, red", "section J"),
                ("noise filter board", "D14, D15", "red, green", "section J"),
                ("indoor panel", "OPERATION", "white", "section H"),
                ("indoor panel", "TIMER, FILTER", "green, red", "table B.2"),
            ),
            (1.5, 1.2, 1.1, 1.1),
        ),
        table(
            "B.2 Lamps that tell a state",
            ("Lamp", "Looks like", "Tells", "Fault"),
            (
                ("D5", "bright and dim, never dark", "program runs", "no"),
                ("D5", "ON, no change", "program stopped", "yes"),
                ("D16", "blinks, quicker with speed", "compressor speed", "no"),
                ("TIMER", "slow, 1 in 2 s", "clock lost after power cut", "no"),
                ("TIMER", "fast, 4 per s", "emergency run", "no"),
                ("FILTER", "one flash every 5 s", "filter time over", "no"),
            ),
            (0.8, 2.2, 2.1, 0.6),
        ),
        Para(
            "D16 must not be counted. At low speed it looks like single flashes, at "
            "high speed it looks lit."
        ),
        table(
            "B.3 Plug N7, outdoor fan motor (inverter board)",
            ("Pin", "Wire", "Signal", "Against pin 3"),
            (
                ("1", "red", "motor supply", "280 to 360 V DC"),
                ("3", "black", "zero", "-"),
                ("4", "white", "logic supply", "14.5 to 16.0 V DC"),
                ("5", "yellow", "command, when called", "1.5 to 6.0 V DC"),
                ("6", "blue", "pulses, when turning", "changes, 0 to 15 V"),
            ),
            (0.5, 0.8, 1.8, 1.6),
        ),
        table(
            "B.4 Other plugs",
            ("Plug", "Board", "Part"),
            (
                ("N1", "control", "sensors RT3 and RT4"),
                ("N2", "control", "discharge sensor RT5"),
                ("N3", "control", "high pressure switch PS1"),
                ("N4", "valve", "expansion valve, six wires"),
                ("N5", "valve", "coil of the four-way valve"),
                ("N6", "control to inverter", "message cable, eight wires"),
            ),
            (0.6, 1.6, 2.4),
        ),
    ),
    "B Boards",
)
