"""Ondreval Pochard guide, last part: sensors and checks with their bands."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table
from kb_samples.making.curves import Sensor, bus_volts, three_figures

TEMPS = (-20, -15, -10, -5, 0, 5, 10, 15, 20, 25, 30, 35, 40, 50)
HOT = (0, 10, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110)
PULL_UP, LOGIC = 20.0, 5.0
"""Resistor above the sensor, kohm, and supply of the input, volts."""

AIR = Sensor("RT1 RT2 RT3 RT4", "Room, coils, outdoor air", 20.0, 25, 3950, 3, TEMPS)
HOT_GAS = Sensor("RT5", "Discharge", 30.0, 80, 4010, 5, HOT)


def volts_at_pin(kohm: float) -> str:
    """Return the volts that a sensor leaves at its input, two decimals."""
    return f"{LOGIC * kohm / (kohm + PULL_UP):.2f}"


def _with_volts(sensor: Sensor) -> tuple[tuple[str, str, str], ...]:
    return tuple(
        (str(t), three_figures(r), volts_at_pin(r))
        for t, r in ((t, sensor.resistance(t)) for t in sensor.temps)
    )


SENSORS = Page(
    "14",
    (
        Heading("N  Sensors"),
        Para(
            "RT1 to RT4 are alike, RT5 is of another kind. Tolerance: RT1, RT2, RT3, "
            "RT4 ±3 %, RT5 ±5 %. Taken as open above 600 kΩ, as short below 0.5 kΩ; "
            "RT5 as open only after 8 minutes of running."
        ),
        table(
            "N.1 RT1, RT2, RT3, RT4",
            ("°C", "kΩ", "V at the pin"),
            _with_volts(AIR),
            (1, 1.2, 1.2),
        ),
        table(
            "N.2 RT5",
            ("°C", "kΩ"),
            HOT_GAS.rows(),
            (1, 2.4),
        ),
        Para(
            "V at the pin: sensor plugged in, board live, 20 kΩ from 5 V to the pin, "
            "sensor from the pin to zero. Unplugged, and after a night without a run, "
            "RT3 and RT4 lie within 2 K of each other."
        ),
        Items(
            (
                "Isolate, pull the plug, measure at the sensor side of the plug.",
                "Thermometer beside the sensor, five minutes, then compare.",
                "Off the table: sensor. On the table: plug first, board last.",
            ),
            numbered=True,
        ),
    ),
    "N Sensors",
)

ELECTRICAL = Page(
    "15",
    (
        Heading("O  Electrical checks"),
        Heading("O.1 Supply, live", 2),
        Para(
            "L to N at the terminals of the unit, at rest: 207 to 253 V AC. When the "
            "compressor starts it may fall by 15 V, not below 195 V. More: terminals, "
            "cable, feeder."
        ),
        Heading("O.2 Bus, live", 2),
        Para(
            "C+ to C- with the compressor at rest: 1.41 times the supply, ±4 %. Zero "
            "with a good supply: fuse F2, charging relay. Right at rest and under 290 "
            "V at speed: reactor."
        ),
        table(
            "O.2 Bus at rest",
            ("Supply V AC", "Bus V DC"),
            tuple((str(v), bus_volts(v)) for v in (207, 215, 230, 245, 253)),
            (1, 1),
        ),
        Heading("O.3 Outdoor fan", 2),
        Items(
            (
                "Isolate, both banks under 25 V. Turn the fan by hand: free, no "
                "grinding?",
                "Live at N7 against pin 3 after table B.3. Logic supply first: 14.5 to "
                "16.0 V DC on pin 4.",
                "No logic supply: isolate, pull N7, live again at the empty plug. "
                "There now: motor. Not there: inverter board.",
                "Command there and no pulses on pin 6: motor.",
            ),
            numbered=True,
        ),
        Heading("O.4 Line to the room, live", 2),
        Para(
            "Terminals 1 and 2, DC range. Sound: jumps between 0 and 24 V. Stands at "
            "20 to 24 V: the indoor unit is silent. Stands at 0 to 2 V: cable short or "
            "control board; isolate, take off wire 2, try again."
        ),
        table(
            "O.5 Terminals of the outdoor unit",
            ("Mark", "Use", "Sound value"),
            (
                ("L N", "supply", "207 to 253 V AC"),
                ("1 2", "line to the room", "jumps, 0 to 24 V DC"),
                ("PE", "earth", "-"),
            ),
            (0.6, 1.8, 1.8),
        ),
        Heading("O.6 Wired remote, live", 2),
        Para(
            "Two wires at the ODR-3: 10.5 to 13.5 V DC. None: plug at the indoor "
            "board. Right and five beeps: remote."
        ),
        Caution(
            "CAUTION",
            "Live checks are for trained technicians. N7 is pulled and put back only "
            "with both banks under 25 V.",
        ),
    ),
    "O Electrical",
)

CIRCUIT = Page(
    "16",
    (
        Heading("P  Compressor and valves"),
        Heading("P.1 Windings", 2),
        Para(
            "Isolate, both banks under 25 V, take off U, V and W. Compressor cool. "
            "Between two each, the three alike within 4 %. Each to earth with 500 V: 2 "
            "MΩ or more."
        ),
        table(
            "P.1 Windings at 20 °C",
            ("Unit", "U-V, V-W, W-U", "To earth"),
            (
                ("ODO-28P", "1.32 to 1.48 Ω", "2 MΩ or more"),
                ("ODO-42P", "1.05 to 1.19 Ω", "2 MΩ or more"),
                ("ODO-56P", "0.70 to 0.82 Ω", "2 MΩ or more"),
            ),
            (1, 1.6, 1.6),
        ),
        Heading("P.2 Expansion valve", 2),
        Para(
            "Isolate, pull N4. Six wires, two commons: red for black and yellow, brown "
            "for blue and orange. Common to each of its two: 41 to 51 Ω. Coil sound "
            "and nothing ticks after power-up: valve board. It ticks and the pipe "
            "stays as it is: valve body."
        ),
        Heading("P.3 Four-way valve", 2),
        Items(
            (
                "Isolate, pull N5: coil 1.2 to 1.6 kΩ. Open: coil.",
                "Live, heating called: 207 to 253 V AC at N5. None: valve board.",
                "Both right and the pipes do not change over: valve stuck.",
            ),
            numbered=True,
        ),
        Heading("P.4 Reactor and power module", 2),
        Para(
            "Isolate, both banks under 25 V. Reactor 0.1 to 0.4 Ω. Power module, diode "
            "range, red lead on C-, black on U, V and W in turn: 0.40 to 0.70 V, the "
            "three alike within 0.04 V. With an old needle meter the leads change "
            "places."
        ),
        Heading("P.5 High pressure switch PS1", 2),
        Para(
            "Isolate, pull N3: closed at rest, under 1 Ω. It opens at 4.15 MPa and "
            "closes at 3.20 MPa."
        ),
        Heading("P.6 Charge", 2),
        Para(
            "By a licensed person: search for the leak, mend it, hold 4.0 MPa of dry "
            "nitrogen for an hour, evacuate, weigh in the figure of the plate."
        ),
        Caution(
            "NOTE",
            "Plug, sensor, motor, board: in this order. The board comes last, and only "
            "with every reading written down.",
        ),
    ),
    "P Compressor",
)
