"""Skarnvik Lomvi handbook, third part: sensors, checks and the leak sensor."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table
from kb_samples.making.curves import Sensor, bus_volts

TEMPS = (-20, -15, -10, -5, 0, 5, 10, 15, 20, 25, 30, 40, 50)
HOT = (10, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120)

ROOM = Sensor("TR TP", "Room and pipe, indoor", 12.0, 25, 3640, 3, TEMPS)
COIL = Sensor("TC TA", "Coil and air, outdoor", 10.0, 25, 3820, 3, TEMPS)
DISCHARGE = Sensor("TD", "Discharge", 44.0, 80, 3980, 5, HOT)

SENSORS = Page(
    "15",
    (
        Heading("11  Sensors"),
        Para(
            "TR and TP in the indoor unit are alike, TC and TA in the outdoor unit are "
            "alike, TD is a type of its own. Tolerance: TR, TP, TC, TA ±3 %, TD ±5 %. "
            "Counted as open above 350 kΩ (TD 1500 kΩ after 5 minutes of running), as "
            "short below 0.7 kΩ."
        ),
        table(
            "11.1 Resistance in kΩ",
            ("°C", "TR TP", "TC TA"),
            tuple(
                (r[0], r[1], c[1])
                for r, c in zip(ROOM.rows(), COIL.rows(), strict=True)
            ),
            (1, 1.2, 1.2),
            ruled=False,
        ),
        table(
            "11.2 Resistance of TD in kΩ",
            ("°C", "TD"),
            DISCHARGE.rows(),
            (1, 2.4),
            ruled=False,
        ),
        Items(
            (
                "Isolate, pull the plug, measure the sensor and not the board.",
                "Read the temperature beside the sensor after 5 minutes.",
                "Compare. Between two lines take the value between.",
                "Outside the tolerance: sensor. Inside: plug, then board.",
            ),
            numbered=True,
        ),
    ),
    "11 Sensors",
)

SUPPLY = Page(
    "16",
    (
        Heading("12  Supply, bus and fan"),
        Heading("12.1 Supply", 2),
        Para(
            "Live, by a technician. L to N at rest: 198 to 264 V AC. During the start "
            "of the compressor the voltage may sink by 20 V at most and never under "
            "190 V. More sag: screws, cable, feed. Measure at the terminals, not at "
            "the board in the house."
        ),
        Heading("12.2 DC bus", 2),
        Para(
            "DC+ to DC- of the drive board, compressor off: the supply times 1.41, "
            "within 5 %. With the power factor stage working (H2 flashing, above 35 "
            "revolutions per second): 340 to 370 V DC."
        ),
        table(
            "Table 12-1 Bus at rest",
            ("Supply V AC", "Bus V DC"),
            tuple((str(v), bus_volts(v)) for v in (198, 210, 220, 230, 240, 250, 264)),
            (1, 1),
        ),
        Items(
            (
                "No bus, supply right: fuse FU3, then the charging resistor.",
                "Bus right at rest, under 300 V when running: reactor after 13.4.",
                "Bus above 400 V: drive board.",
            )
        ),
        Heading("12.3 Outdoor fan and fan board", 2),
        Items(
            (
                "Isolate. Fan free by hand? Ice, leaves, a bent guard?",
                "H4 lit: the fan board has tripped. Switch off, leave the supply off "
                "for 40 seconds after H4 has gone dark, switch on.",
                "Live at X7 from wire 3 black: wire 1 red 290 to 380 V DC, wire 4 "
                "white 14.0 to 16.0 V DC. Not right: pull X7 after isolation, measure "
                "the empty plug. Right now: motor. Still wrong: fan board.",
                "Wire 5 yellow: 0.8 to 5.0 V DC when called. Nothing: fan board.",
                "Wire 6 blue swings between 0 and 15 V while turning. No: motor.",
            ),
            numbered=True,
        ),
        Caution(
            "CAUTION",
            "X7 is never pulled or fitted with a charged fan board. Wait for both "
            "banks.",
        ),
    ),
    "12 Supply",
)

COMPRESSOR = Page(
    "17",
    (
        Heading("13  Compressor, valves and reactor"),
        Heading("13.1 Windings", 2),
        Para(
            "Isolate, pull U, V, W. Between two each: SKO-L25R and SKO-L35R 1.15 Ω, "
            "SKO-L50R 0.78 Ω at 20 °C; the three alike within 0.08 Ω. Against earth "
            "with 500 V: 1 MΩ or more. A cold compressor after a long stop may read "
            "less; preheat for 6 hours and repeat before it is condemned."
        ),
        table(
            "Table 13-1 Windings",
            ("Unit", "U-V V-W W-U", "Spread", "To earth"),
            (
                ("SKO-L25R", "1.15 Ω", "0.08 Ω", "1 MΩ or more"),
                ("SKO-L35R", "1.15 Ω", "0.08 Ω", "1 MΩ or more"),
                ("SKO-L50R", "0.78 Ω", "0.08 Ω", "1 MΩ or more"),
            ),
            (1.2, 1.3, 1, 1.3),
        ),
        Heading("13.2 Expansion valve", 2),
        Para(
            "Five wires, grey is common. Grey to each other wire: 46 Ω, ±4 Ω, at 20 "
            "°C. Coil right and no ticking after supply on: main board. Ticking and no "
            "change at the pipe: valve body."
        ),
        Heading("13.3 Four-way valve", 2),
        Items(
            (
                "Heating called and compressor running: 230 V AC at X5? No: main "
                "board.",
                "Isolate, pull X5: coil 1.3 to 1.7 kΩ. Open: coil.",
                "Voltage and coil right, pipes stay alike: valve stuck. Tap the body "
                "with a screwdriver handle once while it is called; licensed person "
                "for the change.",
            ),
            numbered=True,
        ),
        Heading("13.4 Reactor", 2),
        Para("Isolate, pull both leads: 0.2 to 0.5 Ω, to the frame open."),
        Heading("13.5 High pressure switch", 2),
        Para(
            "Opens at 4.20 MPa, closes at 3.10 MPa. At rest closed. It is never "
            "adjusted and never bridged, not even for a trial."
        ),
        Heading("13.6 Order of suspicion", 2),
        Para(
            "Plug before sensor, sensor before motor, motor before board. A new board "
            "that shows the same code was not the fault."
        ),
    ),
    "13 Compressor",
)

LEAK = Page(
    "18",
    (
        Heading("14  Refrigerant leak sensor"),
        Para(
            "The indoor units have a sensor for R-32 below the coil. At 20 % of the "
            "lower flammability limit it gives alarm: L3 on the display, a buzzer, the "
            "compressor stops, the shut-off valves close where fitted, and the indoor "
            "fan runs at full speed. The fan goes on for at least 10 minutes and until "
            "the sensor has found no gas for 5 minutes."
        ),
        Caution(
            "DANGER",
            "L3 is a leak until the opposite is proved. Let nobody stay in the room, "
            "open windows and doors, switch nothing on or off in the room, no flame. "
            "The supply of the indoor unit stays on so that its fan can dilute the "
            "gas.",
        ),
        Heading("14.1 What to do with L3", 2),
        Items(
            (
                "Get everybody out and air the room.",
                "Licensed person with a detector for A2L: search the joints, the coil "
                "and the pipe in the wall.",
                "Recover, mend, test for tightness with nitrogen, evacuate, weigh in "
                "the charge of the nameplate.",
                "Replace the leak sensor if it was in gas for more than 60 minutes.",
                "Reset after 6.1. L3 cannot be taken back from the remote.",
            ),
            numbered=True,
        ),
        Heading("14.2 False alarms", 2),
        Para(
            "Hair spray, solvents, cleaning spirit and the gas of a refrigerator can "
            "set the sensor off. This may be written down only after the detector has "
            "found nothing at any joint and the pressure test has held."
        ),
        Heading("14.3 L4: sensor failed or worn out", 2),
        Para(
            "The sensor is good for 10 years. L4 comes when it gives no answer for 60 "
            "seconds or when the time is over. The unit does not run with L4. The "
            "sensor is replaced; it is never bridged, unplugged or simulated."
        ),
        table(
            "14.4 Leak sensor",
            ("Item", "Value"),
            (
                ("Alarm", "20 % of the lower flammability limit"),
                ("Warm-up after supply on", "30 s"),
                ("Fan after the alarm, at least", "10 min"),
                ("Life", "10 years"),
            ),
            (1.5, 2),
        ),
    ),
    "14 Leak sensor",
)
