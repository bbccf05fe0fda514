"""Skarnvik Lomvi handbook, first part: cover, safety, data, boards."""

from __future__ import annotations

from kb_samples.making.blocks import (
    Caution,
    Contents,
    Cover,
    Heading,
    Items,
    Page,
    Para,
    table,
)

OUTDOOR = ("SKO-L25R", "SKO-L35R", "SKO-L50R")

INDOOR = ("SKI-L25", "SKI-L35", "SKI-L50")

COVER = Page(
    "",
    (
        Cover(
            "SKARNVIK",
            "Handbook for Service",
            "Lomvi heat pumps, air to air, split type",
            (
                "Outdoor units: SKO-L25R, SKO-L35R, SKO-L50R",
                "Indoor units: SKI-L25, SKI-L35, SKI-L50",
                "Wired remote: SKF-2 (option)",
            ),
            (
                "Document SH-220, issue 4, 2022-10-03",
                "Replaces issue 3 of 2021-02-18",
                "Single phase 230 V, 50 Hz. Refrigerant R-32.",
                "Only for technicians. Keep it with the installation.",
            ),
        ),
    ),
)

SAFETY = Page(
    "ii",
    (
        Heading("Working safely"),
        Para(
            "Electrical work and work on the refrigerant circuit may be done only by "
            "persons who hold the licence that the country asks for. Where local rules "
            "ask for more than this handbook, they count."
        ),
        Caution(
            "DANGER: stored charge",
            "After all supplies are off, wait at least 15 minutes. Then measure DC "
            "between points DC+ and DC- of the drive board, and FC+ and FC- of the "
            "fan board. Both must be below 30 V before anything is touched. If a bank "
            "does not fall, keep away and use the discharge resistor of the tool set; "
            "never short a capacitor with a tool.",
        ),
        Caution(
            "DANGER: the fan as a generator",
            "Wind keeps the outdoor fan turning and its motor charges the fan board "
            "again. Pull plug X7 when FC+ and FC- are below 30 V, and measure once "
            "more.",
        ),
        Caution(
            "WARNING: mildly flammable refrigerant",
            "R-32 belongs to class A2L. No flame, no grinder, no switch that sparks "
            "near an open circuit. Use recovery units, leak detectors and fans that "
            "are approved for A2L. A leak alarm is a leak until the opposite is "
            "proved.",
        ),
        Heading("Before you open the unit", 2),
        Items(
            (
                "Look at lamps and display first and film them for 20 seconds.",
                "Switch off the outdoor supply, the indoor supply and, where fitted, "
                "the drain heater. All three can keep parts live.",
                "Lock each switch, hang a tag on it and keep the key with you.",
                "Prove the meter on a live source, prove the terminals dead, prove the "
                "meter again.",
                "Wait 15 minutes, measure both banks, pull X7, measure again.",
            ),
            numbered=True,
        ),
        Para(
            "The unit may start without warning when a wait is over. Fit the covers "
            "and step back before the supply is switched on."
        ),
    ),
    "Working safely",
)

CONTENTS = Page(
    "iii",
    (
        Heading("Contents"),
        Contents(
            (
                ("Working safely", "ii"),
                ("1  Data", "1"),
                ("2  Boards, lamps and terminals", "2"),
                ("3  Starting, stopping, waiting", "3"),
                ("4  Heating and defrost", "5"),
                ("5  Protection and lockout", "7"),
                ("6  Reset and stored faults", "8"),
                ("7  Lamp H1: groups of flashes", "9"),
                ("8  Lamps H2 and H3 of the drive board", "10"),
                ("9  Display codes", "11"),
                ("10  Finding the fault", "13"),
                ("11  Sensors", "15"),
                ("12  Supply, bus and fan", "16"),
                ("13  Compressor, valves and reactor", "17"),
                ("14  Refrigerant leak sensor", "18"),
                ("15  Complaints without a code", "19"),
            )
        ),
        Heading("Words used", 2),
        Para(
            "Lit: the lamp shines without interruption. Flashing: it goes on and off. "
            "Pause: the dark time after a group. Call: the room asks for heat or cold. "
            "Stop: the compressor was switched off by a protection function. Lockout: "
            "the unit no longer tries by itself."
        ),
    ),
    "Contents",
)

DATA = Page(
    "1",
    (
        Heading("1  Data"),
        table(
            "1.1 Main data",
            ("Outdoor unit", *OUTDOOR),
            (
                ("Indoor unit", *INDOOR),
                ("Supply at rest", "198-264 V", "198-264 V", "198-264 V"),
                ("Highest current", "9.0 A", "11.0 A", "15.5 A"),
                ("Recommended fuse", "13 A", "16 A", "20 A"),
                ("Charge R-32", "0.85 kg", "1.05 kg", "1.45 kg"),
                ("Pipe without addition", "8 m", "8 m", "10 m"),
                ("Addition per metre", "16 g", "16 g", "22 g"),
                ("Cooling, outdoor air", "-5 to 46 °C", "-5 to 46 °C", "-5 to 46 °C"),
                (
                    "Heating, outdoor air",
                    "-22 to 24 °C",
                    "-22 to 24 °C",
                    "-22 to 24 °C",
                ),
                ("Sound, cooling", "46 dB", "48 dB", "51 dB"),
                ("Mass", "31 kg", "34 kg", "43 kg"),
            ),
            (1.7, 1.2, 1.2, 1.2),
            ruled=False,
        ),
        Heading("1.2 Air and pipe temperatures when all is well", 2),
        Para(
            "Measured after 20 minutes at a fixed speed (remote: hold TEST until t1 "
            "appears). The figures are for guidance and no limits; filters clean, "
            "doors closed."
        ),
        table(
            "",
            ("Mode", "Outdoor air", "Room air", "Air out less air in"),
            (
                ("Cooling", "35 °C", "27 °C", "9 to 13 K"),
                ("Cooling", "25 °C", "24 °C", "8 to 12 K"),
                ("Heating", "7 °C", "20 °C", "14 to 20 K"),
                ("Heating", "-7 °C", "20 °C", "10 to 15 K"),
            ),
            (1, 1.2, 1, 1.6),
        ),
        Para(
            "With another charge than that on the nameplate none of these figures "
            "holds. The charge is put right by weighing only, after recovery."
        ),
        Para(
            "The nameplate of the outdoor unit is on the left side below the handle. "
            "The serial number begins with two digits for the year and two for the "
            "week."
        ),
    ),
    "1 Data",
)

BOARDS = Page(
    "2",
    (
        Heading("2  Boards, lamps and terminals"),
        Para(
            "The outdoor unit has three boards. The main board looks after sensors, "
            "valves and the line to the room; the drive board feeds the compressor; "
            "the fan board feeds the outdoor fan."
        ),
        table(
            "2.1 Lamps",
            ("Board", "Lamp", "Colour", "Shows"),
            (
                ("Main board MB", "H1", "red", "groups of flashes, section 7"),
                ("Drive board DB", "H2", "green", "state, section 8"),
                ("Drive board DB", "H3", "red", "state, section 8"),
                ("Fan board FB", "H4", "red", "lit: fan board tripped"),
            ),
            (1.3, 0.6, 0.7, 2.2),
        ),
        table(
            "2.2 Terminals of the outdoor unit",
            ("Mark", "Use", "Between", "Sound value"),
            (
                ("L N", "supply of the outdoor unit", "L and N", "198-264 V AC"),
                ("S1", "zero of the line to the room", "-", "-"),
                ("S2", "line to the room", "S1 and S2", "swings 0 to 18 V DC"),
                ("PE", "earth", "-", "-"),
            ),
            (0.6, 1.9, 0.9, 1.5),
        ),
        Para(
            "The indoor unit has its own supply from the room circuit. S1 and S2 carry "
            "low voltage only; a mains wire on S2 destroys both boards at once."
        ),
        table(
            "2.3 Plugs of the main board and the fan board",
            ("Plug", "Part", "Remark"),
            (
                ("X1", "coil sensor TC and air sensor TA", "four pins"),
                ("X2", "discharge sensor TD", "two pins, red sleeve"),
                ("X3", "high pressure switch HP", "closed at rest"),
                ("X4", "expansion valve", "five wires"),
                ("X5", "four-way valve", "230 V when heating"),
                ("X6", "cable to the drive board", "ten pins, latch"),
                ("X7", "outdoor fan motor, on the fan board", "five wires"),
            ),
            (0.6, 2.3, 1.5),
        ),
        Para(
            "Wires of X7: 1 red, motor supply; 3 black, zero; 4 white, logic supply; 5 "
            "yellow, command; 6 blue, pulses. Position 2 is empty on purpose."
        ),
    ),
    "2 Boards",
)
