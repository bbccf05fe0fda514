"""Ondreval Pochard guide, fourth part: the service display, limp-home, causes."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table

DISPLAY = Page(
    "11",
    (
        Heading("K  Service display DS1"),
        Para(
            "DS1 has three digits. With several faults it shows each code for 2 "
            "seconds, one after the other, then begins again: write down all of them. "
            "With one fault the code stands still. A bar on the left means stored, see "
            "F.3."
        ),
        table(
            "K.1 Codes",
            ("Code", "Meaning", "Unit"),
            (
                ("A1", "air sensor RT3 open or short", "runs on, table L.1"),
                ("A2", "outdoor coil sensor RT4 open or short", "runs on, table L.1"),
                ("A3", "discharge sensor RT5 open or short", "stops"),
                ("A4", "room sensor RT1 open or short", "runs on, table L.1"),
                ("A5", "indoor coil sensor RT2 open or short", "stops"),
                ("J11", "high pressure switch PS1 open", "stops, counted"),
                ("J12", "discharge temperature above 108 °C", "stops, counted"),
                ("J13", "overcurrent of the inverter, above 19 A", "stops, counted"),
                ("J14", "DC bus out of its band, or supply not back", "stops, counted"),
                ("J15", "compressor does not start", "stops, counted"),
                ("J16", "heat sink above 92 °C", "stops, counted"),
                ("J17", "outdoor fan gives no pulses", "stops, counted"),
                ("J18", "four-way valve not shifted", "stops, latched"),
                ("J31", "no messages from the indoor unit", "stops"),
                ("J32", "no messages from the inverter board", "stops"),
            ),
            (0.6, 3, 1.5),
        ),
        Heading("K.2 Second figure", 2),
        Para(
            "With J14 a second figure follows for one second. It tells the kind; it is "
            "not a code of its own."
        ),
        table(
            "K.3 J14",
            ("Code", "Then", "Meaning"),
            (
                ("J14", "01", "bus below 230 V while running"),
                ("J14", "02", "bus above 410 V"),
                ("J14", "03", "supply not back within 15 minutes"),
            ),
            (0.6, 0.6, 3),
        ),
        Para(
            "J11, J12 and J13 have the same first step: air over the outdoor coil and "
            "the outdoor fan, section M. They are three different faults all the same."
        ),
    ),
    "K Service display",
)

SETTINGS = Page(
    "12",
    (
        Heading("K.4 DS1 with switch SW4", 2),
        Para(
            "SW4 at CODE is the normal place. In the two others DS1 shows no codes. "
            "Look at SW4 before anything on DS1 is read, and put it back to CODE."
        ),
        table(
            "K.5 SW4 at STATUS: each digit by itself",
            ("Digit", "Shows", "Meaning"),
            (
                ("left", "blank", "no sensor is replaced by a substitute"),
                ("left", "2", "RT4 failed and is worked around"),
                ("left", "3", "RT3 failed and is worked around"),
                ("middle", "blank", "no limit is active"),
                ("middle", "1", "speed held by the current"),
                ("middle", "2", "speed held by the discharge temperature"),
                ("right", "0", "at rest"),
                ("right", "1", "cooling"),
                ("right", "2", "heating"),
            ),
            (0.8, 0.7, 3),
        ),
        Para("An empty digit is a value, too. Report the three digits from the left."),
        Heading("K.6 SW4 at VALUE: discharge temperature", 2),
        Para(
            "DS1 shows RT5 in °C from -30 to 130. From 100 upwards the hundred is left "
            "out and a point is set before it: 0.7 is 107 °C. Two bars mean that RT5 "
            "is not connected. These figures are no codes."
        ),
        Heading("L  Running on a substitute"),
        Para(
            "Some faults do not stop the unit at once. It runs on with a value of its "
            "own for a number of days, shows the code all the time, and then stops. "
            "That it runs does not mean that nothing is wrong."
        ),
        table(
            "L.1 Days on a substitute",
            ("Code", "Substitute", "Days", "Then"),
            (
                ("A1", "fixed outdoor air of 10 °C", "14", "stops"),
                ("A2", "defrost by the clock, every 50 min", "7", "stops"),
                ("A4", "sensor of the wired remote", "30", "stops"),
            ),
            (0.6, 2.6, 0.7, 0.8),
        ),
        Para(
            "The days are counted from the first showing of the code. A reset does not "
            "begin them anew."
        ),
        Caution(
            "NOTE",
            "With A2 in frost the coil can ice up between two defrosts. Mend it in "
            "days, not weeks.",
        ),
    ),
    "K L Display",
)

CAUSES = Page(
    "13",
    (
        Heading("M  Likely causes"),
        Para("The first one is found most often. Check in this order."),
        table(
            "M.1 From the code to the cause",
            ("Code", "Causes in order", "Check"),
            (
                ("A1", "plug N1; sensor RT3; control board", "N"),
                ("A2", "plug N1; sensor RT4; control board", "N"),
                ("A3", "plug N2; sensor RT5; control board", "N"),
                ("A4", "indoor sensor plug; sensor RT1; indoor board", "N"),
                ("A5", "indoor sensor plug; sensor RT2; indoor board", "N"),
                ("J11", "coil dirty; fan slow; plug N3; too much charge", "O.3"),
                ("J12", "charge short; expansion valve; RT5 off its table", "P.2"),
                ("J13", "supply sags; coil dirty; winding; power module", "O.1"),
                ("J14", "supply out of band; loose terminal; reactor", "O.1"),
                ("J15", "leads U V W; compressor seized; power module", "P.1"),
                ("J16", "fins blocked; fan slow; heat paste", "M.3"),
                ("J17", "fan blocked; plug N7; fan motor; inverter board", "O.3"),
                ("J18", "plug N5; four-way coil; four-way valve stuck", "P.3"),
                ("J31", "joint in the cable; indoor supply; indoor board", "O.4"),
                ("J32", "cable N6; fuse F2; inverter board", "O.2"),
            ),
            (0.6, 3.6, 0.6),
        ),
        table(
            "M.2 From other lamps to the cause",
            ("Shown", "Causes in order"),
            (
                ("OPERATION 2 3", "indoor fan plug; indoor fan motor"),
                ("OPERATION 3 1", "drain blocked; float switch"),
                ("OPERATION 3 2", "filter dirty; charge short"),
                ("Remote, 3 beeps", "remote not matched"),
                ("Remote, 5 beeps", "plug of the remote; remote"),
                ("Filter board, D14 FK", "supply out of band; loose terminal"),
                ("Filter board, D15 FK", "noise filter board"),
                ("Heater box 12", "filter dirty; thermal cut-out"),
                ("Heater box 21", "indoor fan plug; indoor fan motor"),
            ),
            (1.2, 3),
        ),
        Heading("M.3 Looks that need no tool", 2),
        Items(
            (
                "Outdoor coil: fluff, leaves, a cover, another unit blowing at it?",
                "Outdoor fan: does it turn at full speed once the compressor runs?",
                "Fins of the heat sink behind the grille: free or closed?",
                "Drain pan: water, or dry? Float lifts and drops by itself?",
                "Indoor filter: clean, and the flap open?",
                "Indoor unit: does it answer the remote with a beep?",
                "Did a boat lift, a pump or a sauna start when it stopped?",
                "Remote and unit matched with each other after a change?",
            )
        ),
        Heading("M.4 No code at all", 2),
        Para(
            "Noise: a rattle at one speed is a pipe against the cabinet, a grinding "
            "fan has a worn bearing. Grunting for some seconds after defrost is oil "
            "coming back. Water from the front: drain hose or filter."
        ),
    ),
    "M Causes",
)
