"""Ondreval Pochard guide, third part: lamps of the boards and of the indoor unit."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table

GRID = Page(
    "7",
    (
        Heading("G  Lamps D1 to D4"),
        Para(
            "Four red lamps in a row on the control board, D1 at the side of the "
            "handle. Read all four. FL is once per second; whether lamps flash at the "
            "same moment has no meaning on this board."
        ),
        table(
            "G.1 Control board",
            ("D1", "D2", "D3", "D4", "State", "Fault"),
            (
                ("OFF", "OFF", "OFF", "OFF", "no supply or board dead", "yes"),
                ("ON", "OFF", "OFF", "OFF", "standing by, no call", "no"),
                ("FL", "OFF", "OFF", "OFF", "wait is running, table D.1", "no"),
                ("ON", "ON", "OFF", "OFF", "running, cooling", "no"),
                ("ON", "FL", "OFF", "OFF", "running, heating", "no"),
                ("ON", "ON", "FL", "OFF", "speed held by a limit", "no"),
                ("OFF", "FL", "OFF", "ON", "coil sensor RT4", "yes"),
                ("OFF", "FL", "ON", "OFF", "discharge sensor RT5", "yes"),
                ("OFF", "FL", "FL", "OFF", "air sensor RT3", "yes"),
                ("FL", "FL", "OFF", "ON", "high pressure switch PS1", "yes"),
                ("FL", "OFF", "FL", "ON", "discharge temperature", "yes"),
                ("OFF", "ON", "FL", "ON", "stop by the inverter board", "yes"),
                ("OFF", "OFF", "FL", "FL", "no messages from indoors", "yes"),
                ("OFF", "OFF", "ON", "FL", "no messages, inverter board", "yes"),
                ("FL", "ON", "ON", "ON", "outdoor fan", "yes"),
                ("ON", "ON", "ON", "ON", "lockout", "yes"),
                ("FL", "FL", "FL", "FL", "stored faults being read", "no"),
            ),
            (0.5, 0.5, 0.5, 0.5, 2.6, 0.6),
        ),
        Items(
            (
                "One lamp cannot be seen? Do not guess: three lamps fit several lines.",
                "With a stop by the inverter board go to section I and read D6 and D7.",
                "A pattern that is not in G.1 has been misread. Film it.",
            )
        ),
        Caution(
            "NOTE",
            "The row reads from the handle. With the unit mounted the other way round "
            "D4 is on the left.",
        ),
    ),
    "G Lamps D1 to D4",
)

OPERATION = Page(
    "8",
    (
        Heading("H  OPERATION lamp of the indoor unit"),
        Para(
            "In a fault the white OPERATION lamp gives two figures: first short "
            "flashes of 0.3 s for the tens, 1 s dark, then long flashes of 1.2 s for "
            "the units. After 4 s dark it begins again. Two short and three long make "
            "23, not five."
        ),
        table(
            "H.1 Short and long flashes",
            ("Short", "Long", "Meaning", "DS1", "Unit"),
            (
                ("1", "1", "room sensor RT1", "A4", "runs on"),
                ("1", "2", "indoor coil sensor RT2", "A5", "stops"),
                ("2", "1", "no messages from outdoors", "J31", "stops"),
                ("2", "3", "indoor fan gives no pulses", "-", "stops"),
                ("3", "1", "float switch of the drain pan", "-", "stops"),
                ("3", "2", "indoor coil about to ice over", "-", "stops"),
                ("4", "1", "stop by the outdoor unit", "see DS1", "stops"),
            ),
            (0.6, 0.6, 2.4, 0.9, 0.9),
        ),
        Heading("H.2 What the lamp shows otherwise", 2),
        Items(
            (
                "OPERATION lit: on, whether the compressor runs or not.",
                "OPERATION blinking evenly, half a second each way: blowing out moist "
                "air after cooling, up to 12 minutes. No fault.",
                "OPERATION dark: off, or no supply.",
            )
        ),
        Heading("H.3 Address lamps of the indoor board", 2),
        Para(
            "Behind the panel three red lamps D20, D21 and D22 stand for 4, 2 and 1. "
            "With J31 on DS1 they show, added up, the number of the room that does not "
            "answer."
        ),
        table(
            "H.4 Address lamps",
            ("D20 (4)", "D21 (2)", "D22 (1)", "Room that does not answer"),
            (
                ("OFF", "OFF", "ON", "room 1"),
                ("OFF", "ON", "OFF", "room 2"),
                ("OFF", "ON", "ON", "room 3"),
                ("ON", "OFF", "OFF", "room 4"),
            ),
            (0.8, 0.8, 0.8, 2),
        ),
        Heading("H.5 Beeps of the wired remote ODR-3", 2),
        table(
            "",
            ("Beeps", "Every", "Meaning"),
            (
                ("1", "key press", "key taken, no fault"),
                ("3", "10 s", "remote and unit do not know each other"),
                ("5", "10 s", "no messages on the two wires of the remote"),
            ),
            (0.7, 0.9, 3),
        ),
    ),
    "H OPERATION lamp",
)

INVERTER = Page(
    "9",
    (
        Heading("I  Inverter board"),
        Para(
            "D6 red chooses the table, D7 green gives the number: so many flashes of "
            "0.4 s, then 3 s dark. Without the state of D6 the number of D7 has three "
            "meanings."
        ),
        table(
            "I.1 D6 OFF: sensors and messages",
            ("D6", "D7", "Meaning", "Causes, the likely one first"),
            (
                ("OFF", "1", "heat sink sensor open", "inverter board"),
                ("OFF", "2", "current reading not zero", "inverter board"),
                ("OFF", "3", "no messages, control board", "cable N6, control board"),
                ("OFF", "4", "setting data not valid", "plug-in, inverter board"),
            ),
            (0.6, 0.6, 2.2, 2.4),
        ),
        table(
            "I.2 D6 ON: protection, stops are counted",
            ("D6", "D7", "Meaning", "Causes, the likely one first"),
            (
                ("ON", "1", "overcurrent at the start", "winding, power module"),
                ("ON", "2", "overcurrent at speed", "supply sags, coil dirty"),
                ("ON", "3", "heat sink above 92 °C", "fins blocked, fan slow"),
                ("ON", "4", "bus below 230 V", "supply, reactor"),
                ("ON", "5", "bus above 410 V", "supply, inverter board"),
            ),
            (0.6, 0.6, 2.2, 2.4),
        ),
        table(
            "I.3 D6 FL: motors",
            ("D6", "D7", "Meaning", "Causes, the likely one first"),
            (
                ("FL", "1", "compressor does not start", "leads, compressor"),
                ("FL", "2", "a phase is missing", "leads, power module"),
                ("FL", "3", "outdoor fan, no pulses", "fan blocked, plug N7, motor"),
            ),
            (0.6, 0.6, 2.2, 2.4),
        ),
        Items(
            (
                "D6 OFF and D7 ON: the inverter board is in order.",
                "D6 OFF and D7 OFF: no supply at the inverter board; fuse F2, 25 A.",
                "D16 beside them follows the speed and is not part of the tables.",
            )
        ),
        Caution(
            "CAUTION",
            "Overcurrent at the start is not tried a second time before winding and "
            "leads have been measured after P.1.",
        ),
    ),
    "I Inverter board",
)

VALVES = Page(
    "10",
    (
        Heading("J  Valve board and noise filter board"),
        Heading("J.1 D8 green and D9 red on the valve board", 2),
        Para(
            "Here it matters whether the two flash at the same moment or by turns. "
            "Slow is one flash in two seconds, fast is three to five in one second."
        ),
        table(
            "J.2 Valve board",
            ("D8 and D9", "Rate", "Meaning", "Fault"),
            (
                ("together", "slow", "valve travels to its start place", "no"),
                ("by turns", "slow", "defrost or oil return", "no"),
                ("by turns", "fast", "coil of the expansion valve open", "yes"),
                ("together", "fast", "no current in the four-way coil", "yes"),
            ),
            (1, 0.7, 2.8, 0.6),
        ),
        Heading("J.3 D14 red and D15 green on the noise filter board", 2),
        Para(
            "One lamp flickers, the other counts. Which one flickers tells the group. "
            "A press on TS1 changes to the detail display, where the same look means "
            "something else; a second press goes back."
        ),
        table(
            "J.4 First display",
            ("D14", "D15", "Meaning"),
            (
                ("FK", "1", "supply too low"),
                ("FK", "2", "supply too high"),
                ("1", "FK", "noise filter board too hot"),
                ("2", "FK", "charging relay does not close"),
            ),
            (0.7, 0.7, 3),
        ),
        table(
            "J.5 Detail display, after TS1 was pressed once",
            ("D14", "D15", "Meaning"),
            (
                ("FK", "1", "supply dips when the compressor starts"),
                ("FK", "2", "supply high for more than one minute"),
                ("1", "FK", "fan of the filter board stands still"),
                ("2", "FK", "relay closes too late"),
            ),
            (0.7, 0.7, 3),
        ),
        Heading("J.6 Heater box OEH-2", 2),
        Para(
            "D12 red counts the tens, D13 green the units, one after the other. For "
            "faults of the outdoor unit 30 is added: 44 is 14 of the outdoor unit. The "
            "thermal cut-out closes by itself about 20 minutes after it has opened."
        ),
        table(
            "J.7 Heater box",
            ("D12", "D13", "Number", "Meaning"),
            (
                ("1", "2", "12", "thermal cut-out of the heater open"),
                ("2", "1", "21", "indoor fan not proved, heater held off"),
                ("4", "4", "44", "heater held off, outdoor air above 18 °C"),
            ),
            (0.6, 0.6, 0.8, 3.2),
        ),
    ),
    "J Valve board",
)
