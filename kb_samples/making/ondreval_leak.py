"""Ondreval Smew guide: the leak sensor, its shutdown, its purge and its own faults."""

from __future__ import annotations

from kb_samples.making.blocks import (
    Caution,
    Cover,
    Heading,
    Items,
    Page,
    Para,
    table,
)

INDOOR = ("ODW-25S", "ODW-35S")
OUTDOOR = ("ODO-25S", "ODO-35S")

COVER = Page(
    "",
    (
        Cover(
            "ONDREVAL",
            "Service Guide: leak sensor",
            "Smew wall units, R-32, with shutdown and purge",
            ("Indoor: ODW-25S, ODW-35S", "Outdoor: ODO-25S, ODO-35S"),
            (
                "OSG-325 Revision A, 2024-09-09",
                "Covers the leak sensor only. For everything else see the plate.",
                "Refrigerant R-32, class A2L. 0.68 kg (25S), 0.84 kg (35S).",
                "Work on sensor and circuit: licensed persons.",
            ),
        ),
    ),
)

SAFETY = Page(
    "ii",
    (
        Heading("First of all"),
        Caution(
            "DANGER: the alarm",
            "J20 or a flashing LEAK lamp is a leak until a licensed person has proved "
            "that it is none. Everybody leaves the room. Open doors and windows on the "
            "way out. No flame, no switch, no plug, no telephone in the room.",
        ),
        Caution(
            "DANGER: leave the supply on",
            "The indoor fan dilutes the gas. Whoever cuts the supply of the indoor "
            "unit during the purge stops the fan. The supply is cut only when SENSE "
            "says clear, or by the fire service.",
        ),
        Caution(
            "DANGER: stored charge outdoors",
            "All isolators open, 10 minutes, then C+ to C- of the outdoor unit under "
            "25 V by the meter before a cover comes off.",
        ),
        Caution(
            "WARNING: the sensor stays in use",
            "The sensor is never taken out of use, simulated, covered or exchanged for "
            "a resistor. A unit without a working sensor does not run.",
        ),
        Caution(
            "WARNING: no search with a flame or with the nose",
            "R-32 has hardly any smell. Search with a detector marked for A2L that was "
            "tested on the same day.",
        ),
        Heading("Who does what", 2),
        table(
            "",
            ("Person", "May"),
            (
                ("guest, owner", "leave, open windows, call"),
                ("site staff", "the same, read lamps from the door"),
                ("technician", "sensor plug and wiring, power off"),
                ("licensed technician", "detector, circuit, charge, sensor"),
            ),
            (1.4, 2.6),
        ),
    ),
    "Safety",
)

SENSOR = Page(
    "1",
    (
        Heading("1  What the sensor does"),
        Para(
            "The sensor sits under the coil of the indoor unit, where R-32 would sink "
            "to. It measures all the time, in every mode and when the unit is switched "
            "off at the remote."
        ),
        table(
            "1.1 Figures of the sensor",
            ("Item", "Figure"),
            (
                ("Alarm", "15 % of the lower flammability limit"),
                ("Clear", "under 5 % for 5 minutes without a break"),
                ("Warm-up after supply on", "90 s, no cooling, no heating"),
                ("No answer is shown after", "3 minutes"),
                ("Life", "12 years from the date on the sensor"),
                ("Warning before the end of life", "90 days"),
            ),
            (1.6, 2.4),
        ),
        Heading("1.2 What happens at an alarm", 2),
        Items(
            (
                "Compressor off at once, shut-off valve SV1 closes.",
                "Indoor fan to full speed, flap open: the purge. It lasts at least 15 "
                "minutes and goes on until the sensor has read clear for 5 minutes.",
                "Buzzer two beeps every 5 seconds, LEAK flashing, J20 on the display.",
                "When the sensor reads clear LEAK stops flashing and stays lit, and "
                "J21 takes the place of J20.",
                "When the purge is over J22 is shown. The unit stays shut down.",
            ),
            numbered=True,
        ),
        Heading("1.3 What does not end it", 2),
        Para(
            "The remote, the timer and a short dip of the supply do not end the "
            "shutdown. It is kept in memory through a power failure of any length as "
            "long as the sensor has not read clear."
        ),
        Para(
            "An alarm is counted by nothing and has no number of trials: the first one "
            "shuts down."
        ),
    ),
    "1 Sensor",
)

LAMPS = Page(
    "2",
    (
        Heading("2  Lamps LEAK and SENSE, codes"),
        Para(
            "LEAK is red, SENSE is green, both below the flap. FL is once per second. "
            "Where both flash it matters whether by turns or together."
        ),
        table(
            "2.1 Lamps",
            ("LEAK", "SENSE", "State", "Fault"),
            (
                ("OFF", "OFF", "no supply at the indoor unit", "yes"),
                ("OFF", "ON", "sensor watches, all well", "no"),
                ("OFF", "FL", "sensor warms up, 90 s", "no"),
                ("FL", "ON", "LEAK ALARM, gas at the sensor", "yes"),
                ("ON", "FL", "purge, sensor reads clear", "yes"),
                ("ON", "ON", "shut down, purge over", "yes"),
                ("FL", "OFF", "sensor gives no answer", "yes"),
                ("ON", "OFF", "life of the sensor is over", "yes"),
            ),
            (0.7, 0.7, 2.8, 0.7),
        ),
        table(
            "2.2 Both flashing",
            ("LEAK and SENSE", "State", "Fault"),
            (
                ("by turns", "sensor ends its life within 90 days", "yes"),
                ("together", "test of lamps and fan after installation", "no"),
            ),
            (1.3, 2.8, 0.7),
        ),
        table(
            "2.3 Codes on the display",
            ("Code", "Meaning", "Unit"),
            (
                ("J20", "leak alarm, gas at the sensor", "shut down, purge"),
                ("J21", "purge goes on, sensor reads clear", "shut down"),
                ("J22", "shut down after an alarm, purge over", "latched"),
                ("J25", "leak sensor gives no answer", "does not run"),
                ("J26", "life of the leak sensor is over", "does not run"),
                ("J27", "leak sensor ends its life soon", "runs, 90 days"),
                ("J28", "leak sensor reads below its range", "does not run"),
            ),
            (0.7, 3, 1.4),
        ),
        Caution(
            "NOTE",
            "J25, J26, J27 and J28 are faults of the sensor and no alarm. J20 is an "
            "alarm and never a fault of the sensor, until that is proved.",
        ),
    ),
    "2 Lamps and codes",
)

AFTER = Page(
    "3",
    (
        Heading("3  After an alarm"),
        Heading("3.1 Order of work", 2),
        Items(
            (
                "Nobody goes in while LEAK flashes. Wait outside for J21.",
                "With J21 or J22, licensed person, detector in hand: the two flares "
                "behind the unit, the coil, the pipe in the wall, the outdoor valves.",
                "Leak found: recover, mend, hold 4.0 MPa of dry nitrogen for one hour, "
                "evacuate, weigh in the charge of the plate.",
                "Nothing found: the pressure test decides, not the detector alone.",
                "Change the sensor if it was in gas for more than 30 minutes.",
                "Reset after 3.2, watch lamps and detector for 20 minutes.",
            ),
            numbered=True,
        ),
        Heading("3.2 Reset of the shutdown", 2),
        Para(
            "The shutdown is latched. It is ended only when the sensor reads clear and "
            "the supplies of both units have then been off together for at least 60 "
            "seconds. Off before the sensor reads clear: J20 comes back. After the "
            "reset the sensor warms up for 90 seconds."
        ),
        table(
            "3.3 What ends what",
            ("Act", "J20", "J21 J22", "J25 J28"),
            (
                ("OFF at the remote", "stays", "stays", "stays"),
                ("supplies off, sensor not clear", "comes back", "-", "-"),
                ("both off 60 s, sensor clear", "-", "gone", "gone if mended"),
                ("one supply off", "stays", "stays", "stays"),
            ),
            (2, 1, 0.8, 1.3),
        ),
        Heading("3.4 Written down as a false alarm", 2),
        Para(
            "Hair spray, spirit, fresh paint and the gas of a lighter can raise the "
            "reading. A false alarm may be written down only after the detector has "
            "found nothing at any joint and the pressure test has held for one hour, "
            "with name and date."
        ),
        Caution(
            "NOTE",
            "The reset wipes the time of the alarm. Note it first, with the lamps, the "
            "code and who was in the room.",
        ),
    ),
    "3 After an alarm",
)

FAULTS = Page(
    "4",
    (
        Heading("4  Faults of the sensor"),
        Heading("4.1 J25 and LEAK FL with SENSE OFF: no answer", 2),
        Para(
            "Likely causes in order: plug S7; sensor; indoor board. A flashing LEAK "
            "lamp counts as an alarm until J25 has been read on the display."
        ),
        Items(
            (
                "Isolate both units. Is plug S7 fully home, its wires sound?",
                "Live: pin 1 to pin 2 of S7, 4.75 to 5.25 V DC. None: indoor board.",
                "Supply right: pin 3 to pin 2 in clean air, 0.45 to 0.65 V DC. Less or "
                "nothing: sensor.",
            ),
            numbered=True,
        ),
        Heading("4.2 J28: reads below its range", 2),
        Para("Likely causes in order: plug S7 wet; sensor. Dry the plug first."),
        Heading("4.3 J27 and J26: end of life", 2),
        Para(
            "J27 comes 90 days before the end, the unit runs on. At the end J26 is "
            "shown and the unit does not run. The date is on the sensor. A new sensor "
            "is entered by holding SW9 for 5 seconds; the days begin anew with a new "
            "sensor only."
        ),
        table(
            "4.4 Plug S7 of the leak sensor",
            ("Pin", "Wire", "Signal", "Against pin 2"),
            (
                ("1", "red", "supply", "4.75 to 5.25 V DC"),
                ("2", "black", "zero", "-"),
                ("3", "white", "reading", "0.45 to 0.65 V DC, clean air"),
                ("4", "blue", "test line", "not measured"),
            ),
            (0.5, 0.8, 1.1, 2.2),
        ),
        Heading("4.5 Three stops by the sensor itself", 2),
        Para(
            "If J25 comes 3 times in 24 hours the unit stays off until both supplies "
            "have been off together for at least 60 seconds. A stop exactly 24 hours "
            "old still counts."
        ),
        Heading("4.6 Both lamps dark", 2),
        Para(
            "No supply: breaker of the room, then the fuse 3.15 A of the indoor "
            "board. What blew the fuse is found before a new one goes in."
        ),
        Caution(
            "CAUTION",
            "A sensor that fell, got wet or was painted is replaced, whatever it "
            "reads.",
        ),
    ),
    "4 Faults of the sensor",
)

FITTING = Page(
    "5",
    (
        Heading("5  Fitting, test, record"),
        Heading("5.1 Where a unit with this charge may hang", 2),
        table(
            "",
            ("Unit", "Charge", "Smallest room"),
            (
                ("ODW-25S", "0.68 kg", "8 m²"),
                ("ODW-35S", "0.84 kg", "11 m²"),
            ),
            (1, 1, 1.4),
        ),
        Para(
            "Underside 1.8 m above the floor or higher. Local rules may ask for a "
            "larger room; they come first."
        ),
        Heading("5.2 Test after installation", 2),
        Items(
            (
                "Hold SW8 for 3 seconds: both lamps flash together, the fan goes to "
                "full speed, SV1 clicks, two beeps. It ends after 60 seconds.",
                "The test does not put gas on the sensor. Test gas is for the works.",
                "Write date, sensor number and signature in the record.",
            ),
            numbered=True,
        ),
        Heading("5.3 Every year", 2),
        Items(
            (
                "Brush the inlet of the sensor, never blow into it.",
                "Read the date on the sensor.",
                "Repeat 5.2.",
            )
        ),
        table(
            "5.4 Record to be kept beside the unit",
            ("Column", "What goes in"),
            (
                ("Date and time", "of alarm, purge over, reset"),
                ("Lamps and code", "as seen from the door"),
                ("Found", "joint, coil, none, with the detector's number"),
                ("Pressure test", "start, end, pressure, temperature"),
                ("Name", "of the licensed person"),
            ),
            (1.2, 3),
        ),
    ),
    "5 Fitting",
)

PAGES = (COVER, SAFETY, SENSOR, LAMPS, AFTER, FAULTS, FITTING)
