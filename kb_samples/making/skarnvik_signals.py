"""Skarnvik Lomvi handbook, second part: lamps, codes and finding the fault."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Columns, Heading, Items, Page, Para, table

GROUPS = Page(
    "9",
    (
        Heading("7  Lamp H1: groups of flashes"),
        Para(
            "H1 on the main board MB flashes in groups. One flash is 0.4 s lit and 0.4 "
            "s dark. After the group comes a pause of 3 s, then the group begins "
            "again. Count from pause to pause, twice. Without a pause there is no "
            "number."
        ),
        table(
            "7.1 Number of flashes of H1 between two pauses",
            ("Number", "Meaning", "Code", "Goes on"),
            (
                ("1", "Coil sensor TC open or short", "F1", "by itself"),
                ("2", "Discharge sensor TD open or short", "F2", "by itself"),
                ("3", "Outdoor air sensor TA open or short", "F4", "runs on"),
                ("4", "High pressure switch HP open", "H6", "by itself"),
                ("5", "Overcurrent of the drive", "P4", "by itself"),
                ("6", "Compressor does not start", "P6", "by itself"),
                ("7", "Outdoor fan or fan board", "P9", "after reset"),
                ("8", "DC bus low", "P2", "by itself"),
                ("9", "No messages from the drive board", "H11", "by itself"),
                ("10", "Discharge temperature too high", "F3", "by itself"),
                ("11", "Power module too hot", "P8", "by itself"),
                ("12", "Four-way valve not shifted", "C5", "after reset"),
                ("13", "No messages from the indoor unit", "E4", "by itself"),
            ),
            (0.8, 2.6, 0.7, 1.1),
        ),
        Items(
            (
                "H1 dark and H2 flashing slowly: the unit runs, no fault.",
                "H1 lit without a break: main board without program; main board.",
                "H1, H2 and H3 dark: no supply. Fuse, isolator, feed.",
                "H1 blinking evenly, 1 s lit and 1 s dark, no pause: test mode t1.",
            )
        ),
        Para(
            "Two faults at once: H1 shows them in turn, the smaller number first, with "
            "a long pause of 6 s between the two groups. Note both."
        ),
    ),
    "7 Lamp H1",
)

GRID = Page(
    "10",
    (
        Heading("8  Lamps H2 and H3 of the drive board"),
        Para(
            "Read both lamps at the same moment. Flashing means once per second here; "
            "the number of flashes has no meaning on the drive board."
        ),
        table(
            "8.1 State of the drive board",
            ("H2 green", "H3 red", "State", "Fault"),
            (
                ("off", "off", "no supply at the drive board", "look at supply"),
                ("lit", "off", "ready, no call", "no"),
                ("flashing", "off", "compressor running", "no"),
                ("lit", "flashing", "restart delay or first start", "no"),
                ("flashing", "flashing", "defrost, both together", "no"),
                ("lit", "lit", "standby, supply low", "no"),
                ("off", "lit", "lockout", "yes"),
                ("off", "flashing", "power module fault", "yes"),
                ("flashing", "lit", "fan board tripped, H4 lit", "yes"),
            ),
            (0.9, 0.9, 2.2, 1.1),
        ),
        Para(
            "H2 and H3 flashing in turn, one lit while the other is dark, is not "
            "defrost: the cable X6 passes on half of its messages. Seat X6 and look "
            "for a bent pin."
        ),
        Heading("8.2 If only one lamp can be seen", 2),
        Para(
            "The cover of the drive board hides H3 on SKO-L50R. Do not decide from "
            "H2 alone: lit can mean ready, delay or standby. Use a mirror or ask for "
            "the display code."
        ),
        Heading("8.3 Power module fault", 2),
        Items(
            (
                "Isolate and measure both banks as on page ii.",
                "Pull the leads U, V, W off the drive board.",
                "Diode test from DC- to U, V and W, red lead on DC-: 0.35 to 0.65 V, "
                "the three alike within 0.05 V.",
                "The same from U, V and W to DC+, red lead on the phase: 0.35 to 0.65 "
                "V.",
                "One value near zero or open: drive board. All alike: go to 13.1.",
            ),
            numbered=True,
        ),
        Caution(
            "CAUTION",
            "Heat paste must be renewed when a drive board is changed: thin, even, to "
            "the edges of the module.",
        ),
    ),
    "8 Drive board",
)

CODE_HEAD = ("Code", "Meaning", "H1", "Kind")
CODE_WIDTHS = (0.7, 3.1, 0.6, 1.2)

CODES = Page(
    "11",
    (
        Heading("9  Display codes"),
        Para(
            "Codes appear on the indoor unit and on the wired remote SKF-2. The "
            "letters on the display are drawn with seven bars: the letter b looks like "
            "6 and the letter S like 5. Read the code twice. A dot behind the code "
            "means stored, see 6.3."
        ),
        table(
            "9.1 Codes of the indoor unit and the remote",
            CODE_HEAD,
            (
                ("E1", "Room sensor of the indoor unit open or short", "-", "runs on"),
                ("E2", "Pipe sensor of the indoor unit open or short", "-", "stop"),
                ("E4", "No messages between indoor and outdoor unit", "13", "stop"),
                ("E7", "Indoor fan motor gives no pulses", "-", "stop"),
                ("E8", "Float switch of the drain pan open", "-", "stop"),
                ("E40", "Wired remote gets no messages from indoor unit", "-", "stop"),
                ("L3", "Refrigerant leak sensor: gas found", "-", "leak, page 18"),
                ("L4", "Refrigerant leak sensor failed or worn out", "-", "stop"),
            ),
            CODE_WIDTHS,
        ),
        Para(
            "E4 and E40 are two different codes. E4 is about the line between the room "
            "and the outdoor unit, E40 about the two thin wires behind the remote."
        ),
        Heading("9.2 Letters that are not faults", 2),
        table(
            "",
            ("Shown", "Meaning", "Page"),
            (
                ("dF", "Defrost, or water running off after it", "5"),
                ("Sb", "Standby, the supply is too low", "4"),
                ("PH", "Preheating of the compressor", "3"),
                ("t1", "Test at fixed speed, ends after 30 minutes", "1"),
                ("CL", "Filter time is over, clean the filter", "-"),
                ("Lc", "Keys locked by the owner of the building", "-"),
            ),
            (0.8, 3, 0.7),
        ),
        Para("The codes of the outdoor unit follow on the next page."),
    ),
    "9 Codes",
)

CODES_MORE = Page(
    "12",
    (
        table(
            "9.1 Codes of the outdoor unit (continued)",
            CODE_HEAD,
            (
                ("F1", "Coil sensor TC open or short", "1", "stop"),
                ("F2", "Discharge sensor TD open or short", "2", "stop"),
                ("F3", "Discharge temperature above 112 °C", "10", "counted"),
                ("F4", "Outdoor air sensor TA open or short", "3", "runs on"),
                ("H6", "High pressure switch HP open", "4", "counted"),
                ("H11", "No messages between main and drive board", "9", "stop"),
                ("P2", "DC bus below 245 V or supply not back", "8", "counted"),
                ("P4", "Overcurrent of the drive, above 24 A", "5", "counted"),
                ("P6", "Compressor does not start", "6", "counted"),
                ("P8", "Power module above 95 °C", "11", "counted"),
                ("P9", "Outdoor fan motor or fan board", "7", "counted"),
                ("C5", "Four-way valve not shifted", "12", "after reset"),
            ),
            CODE_WIDTHS,
        ),
        Para(
            "Kind: counted codes lead to lockout after table 5.1. A code with stop "
            "only goes away when its cause goes away. Runs on: the unit works with a "
            "substitute value, F4 with 7 °C and E1 with the sensor of the remote, for "
            "as long as it takes until somebody comes."
        ),
        Heading("9.3 Codes at lamp and display", 2),
        Para(
            "Where lamp H1 and the display do not agree, believe the lamp: the display "
            "is refreshed only while the line to the room works. With E4 on the "
            "display go out and read H1; behind a lost line there may be another fault."
        ),
        Heading("9.4 What to tell the support desk", 2),
        Items(
            (
                "Models and serial numbers of both units.",
                "Code with or without dot, number of H1, state of H2, H3 and H4.",
                "What ran when it stopped, indoor and outdoor temperature, mode.",
                "When the supply was last switched off, and for how long.",
            )
        ),
        Caution(
            "NOTE",
            "A code that is not in 9.1 or 9.2 does not exist on this unit. Read again; "
            "a 6 may be a b.",
        ),
    ),
    "9 Codes",
)

FINDING = Page(
    "13",
    (
        Heading("10  Finding the fault"),
        Heading("10.1 E4 and H1 13: no messages from the indoor unit", 2),
        Para("Likely causes in this order: joint in the cable, indoor supply, boards."),
        Items(
            (
                "Has the indoor unit supply? Does it beep at the remote? No: breaker "
                "and fuse of the room.",
                "Live, by a technician: measure S1 to S2 at the outdoor unit. Swings "
                "between 0 and 18 V DC: the line is sound, wait 2 minutes.",
                "Constant 15 to 18 V DC: the indoor unit does not answer. Measure at "
                "the indoor terminals. Same? Indoor board. Nothing there? Cable.",
                "Constant 0 to 1 V DC: isolate, take S2 off outdoors, supply on. 15 V "
                "or more now? Cable short or indoor board. Still 0? Main board MB.",
                "S1 and S2 exchanged: the value is negative. Put it right.",
            ),
            numbered=True,
        ),
        Heading("10.2 E40: wired remote", 2),
        Items(
            (
                "Measure the two wires at the remote: 11 to 13 V DC.",
                "No voltage: plug of the remote on the indoor board.",
                "Voltage right: remote SKF-2. No polarity to observe.",
            ),
            numbered=True,
        ),
        Heading("10.3 H11 and H1 9: main board and drive board", 2),
        Para("Likely causes: cable X6, fuse of the drive board, drive board."),
        Items(
            (
                "Are H2 and H3 dark while H1 flashes? No supply at the drive board: "
                "fuse FU3, 15 A.",
                "Isolate. Is X6 latched on both boards, no pin bent?",
                "All right: drive board DB. Comes back with it: main board MB.",
            ),
            numbered=True,
        ),
        Heading("10.4 P2 and H1 8: DC bus low", 2),
        Para(
            "Likely causes: supply, terminal screws, reactor, drive board. See 12.1 "
            "and 12.2."
        ),
        Heading("10.5 P9 and H1 7: outdoor fan or fan board", 2),
        Para(
            "Likely causes: blocked fan, fan board tripped, motor, fan board. See 12.3."
        ),
    ),
    "10 Finding the fault",
)

FINDING_MORE = Page(
    "14",
    (
        Heading("10.6 P4 and H1 5: overcurrent", 2),
        Para("Likely causes: sagging supply, high pressure, winding, drive board."),
        Items(
            (
                "Supply and sag after 12.1. Not right: put it right first.",
                "Stops at high speed only: coil clean? Air free? Fan after 12.3.",
                "Stops within a second: isolate, winding after 13.1. Not alike or to "
                "earth: compressor. Alike: drive board after 8.3.",
            ),
            numbered=True,
        ),
        Heading("10.7 P6 and H1 6: compressor does not start", 2),
        Para("Likely causes: pressures not equal, leads, compressor, drive board."),
        Items(
            (
                "Was it tried less than 3 minutes after a stop? Wait and try again.",
                "Isolate: leads U red, V white, W blue on their places and tight?",
                "Winding after 13.1. Alike and no earth: drive board after 8.3.",
                "Drive board right: compressor seized; licensed person.",
            ),
            numbered=True,
        ),
        Heading("10.8 F3 and H1 10: discharge temperature", 2),
        Para("Likely causes: short of charge, expansion valve, sensor TD."),
        Items(
            (
                "Sensor TD after 11.1. Off the table: sensor.",
                "Expansion valve after 13.2. No ticking: coil or board.",
                "Leak search, then weigh the charge; licensed person.",
            ),
            numbered=True,
        ),
        Heading("10.9 H6 and H1 4: high pressure", 2),
        Para("Likely causes: dirty coil, fan, closed valve after work, overcharge."),
        Items(
            (
                "Cooling: outdoor coil and fan. Heating: indoor filter and fan.",
                "Service valves fully open? After a first start look here first.",
                "Plug X3 and switch HP: closed at rest, else replace.",
                "Pressure by gauges: licensed person only, against the plate.",
            ),
            numbered=True,
        ),
        Heading("10.10 P8 and H1 11: power module too hot", 2),
        Para("Likely causes: heat sink dirty, fan slow, screws of the module loose."),
        Heading("10.11 E8: float switch", 2),
        Para(
            "Water stands in the drain pan. Free the drain, lift the float by hand, "
            "see that the code goes. A switch that stays open in a dry pan is replaced."
        ),
    ),
    "10 Finding the fault",
)

NO_CODE = Page(
    "19",
    (
        Heading("15  Complaints without a code"),
        Columns(
            (
                Heading("15.1 Does not cool enough", 2),
                Items(
                    (
                        "Filter and both coils clean?",
                        "Set lower than the room, fan not on the lowest step?",
                        "Doors and curtains closed? Sun on the sensor?",
                        "Outdoor air short-circuiting between units?",
                        "Speed held by 5.2 on a hot day?",
                        "Air out less air in below 1.2: sensor checks, then charge.",
                    ),
                    numbered=True,
                ),
                Heading("15.2 Breaker goes off", 2),
                Para(
                    "Do not switch on again and again. Once off by the breaker, "
                    "isolate and measure earth faults: compressor (13.1), drain "
                    "heater, reactor, cable. An earth leakage breaker of 30 mA that "
                    "goes at the start only: ask an electrician whether its type suits "
                    "an inverter."
                ),
                Heading("15.3 Stops and starts", 2),
                Para(
                    "Short runs of 4 to 6 minutes with no code: unit too large for the "
                    "room, sensor in the cold air stream, or Sb in the night. Note the "
                    "clock times of three stops."
                ),
            ),
            (
                Heading("15.4 Water indoors", 2),
                Items(
                    (
                        "Drain hose with a fall and no loop?",
                        "Unit level?",
                        "Coil iced over? See 15.5.",
                        "Wall sleeve closed against moist air?",
                    ),
                    numbered=True,
                ),
                Heading("15.5 Ice on the indoor coil", 2),
                Para(
                    "Cooling with too little air or too little charge. Switch to fan "
                    "only for one hour, clean the filter, look at the fan wheel. Ice "
                    "on the first rows only: charge or expansion valve."
                ),
                Heading("15.6 Noise", 2),
                Para(
                    "Ticking after supply on: expansion valve, right. Hiss in "
                    "heating: four-way valve, right. Rattle at one speed: pipe "
                    "touches the cabinet. Grinding: fan bearing."
                ),
                Heading("15.7 No reaction", 2),
                Para(
                    "Display dark: fuse of the room, then the fuse 3.15 A on the "
                    "indoor board. Display on, beep, no start: a wait of section 3."
                ),
            ),
        ),
        Para(
            "Short of charge is the last thought in 15.1 and 15.5 and is never "
            "concluded from one pressure."
        ),
    ),
    "15 Complaints",
)
