"""Vellamere manuals, fourth part: sensors and checks."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table
from kb_samples.making.curves import Sensor, bus_volts
from kb_samples.making.vellamere_figures import Family


def checks(family: Family) -> tuple[Page, ...]:
    """Return the pages from the sensors to the last check."""
    return (
        _sensors(family),
        _supply(family),
        _sensor_and_line(family),
        _motors(family),
        _valve(family),
    )


def _limits(sensor: Sensor, limits: tuple[str, str]) -> tuple[str, ...]:
    return (sensor.label, sensor.role, f"±{sensor.tolerance} %", *limits)


def _sensors(family: Family) -> Page:
    air, coil, hot = family.sensors
    pairs = tuple(
        (a[0], a[1], c[1]) for a, c in zip(air.rows(), coil.rows(), strict=True)
    )
    return Page(
        "14",
        (
            Heading("8 Sensors"),
            table(
                "Table 8-1 Tolerance and limits of detection",
                ("Sensor", "Place", "Tolerance", "Open", "Short"),
                (
                    _limits(air, family.open_short),
                    _limits(coil, family.open_short),
                    _limits(hot, family.hot_open_short),
                ),
                (0.8, 2, 1, 1.6, 1.5),
            ),
            table(
                "Table 8-2 Resistance of TH1 and TH2",
                ("°C", "TH1 kohm", "TH2 kohm"),
                pairs,
                (1, 1.4, 1.4),
            ),
            table(
                "Table 8-3 Resistance of the discharge sensor TH3",
                ("°C", "TH3 kohm"),
                hot.rows(),
                (1, 1.4),
            ),
            Para(
                "Measure with the plug pulled and compare at the temperature of the "
                "sensor itself. A cold discharge sensor of more than 500 kohm is sound."
            ),
        ),
        "8 Sensors",
    )


def _supply(family: Family) -> Page:
    volts = (198, 207, 220, 230, 240, 253)
    return Page(
        "15",
        (
            Heading("9 Checks of supply and board"),
            Caution(
                "WARNING",
                "Checks 9.1 and 9.2 are made with the supply on and the cover open, by "
                "persons trained for live measurement. Every other check of this "
                "manual is made after the safe isolation of page ii.",
            ),
            Heading("9.1 Supply and sag at start", 2),
            Items(
                (
                    "Measure between L and N at the terminal strip, compressor off: "
                    "207 to 253 V AC.",
                    "Keep the meter connected and let the compressor start.",
                    f"The reading may fall by no more than {family.sag} V and must "
                    f"stay above {family.sag_floor} V.",
                    "Yes: go to 9.2. No: tighten the terminals and look for a thin or "
                    "long feed; then the supplier of the power.",
                ),
                numbered=True,
            ),
            Heading("9.2 DC bus", 2),
            Para(
                "Compressor off, measure between TP1 and TP2. The bus stands at 1.41 "
                "times the supply that is measured at the same moment, within 4 %."
            ),
            table(
                "Table 9-1 Supply and bus in standby",
                ("Supply V AC", "Bus V DC"),
                tuple((str(v), bus_volts(v)) for v in volts),
                (1, 1),
            ),
            Para(
                f"Running above 40 revolutions per second the bus is held at "
                f"{family.pfc}. Limits of the board: {family.bus_low} V and "
                f"{family.bus_high} V."
            ),
            Items(
                (
                    "Supply right and bus near zero: fuse F1, then reactor L1 (10.5).",
                    "Supply right and bus low: outdoor main board.",
                    "Bus right in standby and low when running: reactor, then board.",
                )
            ),
            Heading("9.3 Outdoor main board", 2),
            Para(
                "The board is suspected only when supply, bus, sensors, motors and "
                "plugs are proved. Compare the number on the label with the parts list "
                "and move the plug-in of the old board to the new one."
            ),
        ),
        "9 Supply and board",
    )


def _sensor_and_line(family: Family) -> Page:
    low, high = family.open_short[1], family.open_short[0]
    return Page(
        "16",
        (
            Heading("10 Checks of parts"),
            Heading("10.1 Sensors", 2),
            Items(
                (
                    "Isolate as on page ii.",
                    "Is the plug CN11 or CN12 seated and free of green deposit? No: "
                    "clean and seat it, then start again.",
                    "Pull the plug and measure the sensor. "
                    f"TH1 and TH2 are open {high} and short {low}.",
                    "Hold a thermometer at the sensor for 5 minutes and compare with "
                    "table 8-2 or 8-3. Within the tolerance?",
                    "No: replace the sensor. Yes: warm it by hand; the value must fall "
                    "smoothly.",
                    "Smooth and within tolerance: outdoor main board.",
                ),
                numbered=True,
            ),
            Heading("10.2 Signal line to the indoor unit", 2),
            Para(
                "Live check. Set the meter to DC volts and measure between terminals 2 "
                "(zero) and 3 with the unit called for. A sound line is never at rest: "
                f"the reading swings {family.swing} at least once a second."
            ),
            table(
                "Table 10-1 Signal line between terminals 2 and 3",
                ("Reading", "Means", "Next"),
                (
                    (f"swings {family.swing}", "both ends speak", "wait two minutes"),
                    (
                        f"constant, {family.stuck}",
                        "indoor unit silent",
                        "indoor supply",
                    ),
                    ("constant, 0 to 3 V DC", "outdoor end silent", "open wire 3"),
                    ("swings, then stops", "joint or water", "inspect the cable"),
                ),
                (1.9, 1.5, 1.4),
            ),
            Items(
                (
                    "Indoor silent: is there 230 V between 1 and 2 at the indoor unit? "
                    "No: cable. Yes: indoor board.",
                    "Outdoor silent: take wire 3 off at the outdoor terminal, supply "
                    "off for this step. Voltage back? Yes: cable or indoor board. No: "
                    "outdoor main board.",
                    "Wires 2 and 3 exchanged give the same display as a dead line.",
                )
            ),
        ),
        "10 Parts",
    )


def _motors(family: Family) -> Page:
    return Page(
        "17",
        (
            Heading("10.3 Outdoor fan motor", 2),
            Items(
                (
                    "Isolate. Does the fan turn freely by hand? No: remove what blocks "
                    "it, or replace the motor.",
                    "Plug CN20 fitted, supply on, measure from pin 2 (black).",
                    "Pin 1 (red): the bus voltage of table 9-1. No: board.",
                    f"Pin 3 (white): {family.logic}. No: pull the plug after isolation "
                    "and measure the empty pin; right now? Motor. Still wrong? Board.",
                    f"Pin 4 (yellow): {family.command}. No command: board.",
                    "Pin 5 (blue) with the command present and the guard in place: the "
                    "reading swings between 0 V and the logic supply. No swing: motor.",
                ),
                numbered=True,
            ),
            Heading("10.4 Compressor", 2),
            Para(
                "Isolate, take the leads U, V, W off and let the compressor cool below "
                "40 °C. Use a meter that resolves 0.01 ohm."
            ),
            table(
                "Table 10-2 Compressor",
                ("Measured", "Right"),
                (
                    ("U-V, V-W, W-U at 20 °C", f"{family.winding} each"),
                    ("Largest less smallest", f"{family.winding_spread} or less"),
                    ("Winding to ground, 500 V", f"{family.insulation} or more"),
                    ("Copper, per 10 K warmer", "about 4 % more"),
                ),
                (1.8, 1.6),
            ),
            Para(
                "Low to ground with a cold compressor: preheat for 4 hours with the "
                "leads fitted, then measure again; refrigerant in the oil lowers the "
                "value. Unequal windings: replace the compressor. Equal windings and "
                "no start: exchange of two leads, pressures, then power module."
            ),
            Caution(
                "DANGER",
                "A compressor with a winding to ground can throw its terminals out. "
                "Keep the terminal cover fitted whenever the supply is on.",
            ),
        ),
        "10 Parts",
    )


def _valve(family: Family) -> Page:
    return Page(
        "18",
        (
            Heading("10.5 Reactor", 2),
            Para(
                f"Isolate and pull L1A and L1B. Between the leads: {family.reactor}. "
                "To the frame: open. A reactor that hums but measures right is sound."
            ),
            Heading("10.6 Expansion valve", 2),
            Items(
                (
                    "Supply on: the valve ticks for about 5 seconds as it is driven to "
                    "its stop. No ticking: go on.",
                    "Isolate, pull CN18, measure from the red wire to each of the "
                    f"other four: {family.valve}, at 20 °C.",
                    "One value open: replace the coil. All right: put the service "
                    "magnet on the body; no movement: valve.",
                ),
                numbered=True,
            ),
            Heading("10.7 High discharge temperature", 2),
            Items(
                (
                    "Check TH3 first, by 10.1. Off its curve: replace the sensor.",
                    "Check the valve coil by 10.6.",
                    "Look for oil at the joints and for frost on the valve body.",
                    "Only then, by a licensed person: recover and weigh the charge "
                    "against table 1-1. One pressure alone does not tell the charge.",
                ),
                numbered=True,
            ),
            Heading("10.8 High pressure switch", 2),
            Para(
                "Isolate, pull CN13 and measure the switch at rest: closed. Closed "
                "again and the display returns: clean the coil, check the fan by 10.3, "
                "then the pressures by a licensed person."
            ),
            Heading("10.9 Four-way valve, if fitted", 2),
            Para(
                "Isolate, pull CN15 and measure the coil: 1.4 to 1.8 kohm. Open: coil. "
                "Right and no click when called: board. Click and no change: valve."
            ),
            Heading("10.10 Power module", 2),
            Para(
                "Isolate, pull U, V and W. Diode range, red lead on TP2 (minus), black "
                "lead on U, V and W in turn: 0.30 to 0.60 V, the three alike within "
                "0.04 V. Red lead on U, V, W and black on TP1 (plus): the same. One "
                "value near zero or open: outdoor main board."
            ),
            Heading("10.11 Heat sink", 2),
            Para(
                "Isolate and take the partition plate off. Blow the fins free from the "
                "inside. A module that was loosened needs new paste, thin and without "
                "gaps. Then check the speed of the fan by 10.3."
            ),
        ),
        "10 Parts",
    )
