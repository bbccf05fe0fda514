"""Skarnvik Lomvi handbook, second part: starting, heating, protection, reset."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table

STARTING = Page(
    "3",
    (
        Heading("3  Starting, stopping, waiting"),
        Heading("3.1 First start", 2),
        Para(
            "When the supply comes on, 15 to 20 seconds pass before anything moves. "
            "The boards test themselves, the bus is charged over a resistor, and the "
            "expansion valve runs to its stop with a ticking noise. H2 is lit and H3 "
            "flashes. The first start after 12 hours or more without supply may be "
            "preceded by 30 minutes of preheating when the outdoor air is below 0 °C."
        ),
        Heading("3.2 Order of starting", 2),
        Items(
            (
                "Four-way valve to its place (heating: energised).",
                "Expansion valve opens to the starting position, 25 seconds.",
                "Compressor at 20 revolutions per second.",
                "Outdoor fan, 12 seconds after the compressor.",
                "Indoor fan: cooling at once, heating when the pipe is at 34 °C.",
            ),
            numbered=True,
        ),
        Para(
            "A fan that stands still for some seconds while the compressor already "
            "hums is therefore right. Do not push it with a stick."
        ),
        Heading("3.3 Restart delay", 2),
        Para(
            "Between a stop and the next start lie at least 3 minutes. The delay also "
            "runs when the call ends and comes back, when the mode is changed and when "
            "the breaker was off for a moment only. H2 is lit and H3 flashes."
        ),
        Heading("3.4 Shortest run", 2),
        Para(
            "Once started the compressor runs for at least 4 minutes, even if the "
            "room is warm enough, unless the unit is switched off or protected."
        ),
        Heading("3.5 When a code appears", 2),
        Para(
            "Codes from sensors appear after 20 seconds. E4 appears when no message "
            "has come for 90 seconds. P6 appears only after the third failed start in "
            "a row, the two before are silent. A unit that is watched for half a "
            "minute shows nothing; this is not yet a sign of health."
        ),
        Caution(
            "NOTE",
            "While the restart delay runs the unit answers the remote with a beep but "
            "does not start. Pressing again does not help and does no harm.",
        ),
    ),
    "3 Starting",
)

STANDBY = Page(
    "4",
    (
        Heading("3.6 Standby until the supply returns"),
        Para(
            "If the supply sinks below 176 V for 2 seconds, the compressor is stopped "
            "before the drive can trip. H2 and H3 are both lit, the display shows Sb. "
            "This is a wait, no fault. When the supply has stayed between 196 V and "
            "264 V for 3 minutes, the unit goes back to work by itself."
        ),
        Para(
            "If the supply has not returned after 20 minutes, P2 is shown and the stop "
            "is counted. In places with a weak line, for instance at the end of a pier "
            "or behind a long cable, Sb appears whenever a second large motor starts."
        ),
        Heading("3.7 Power failure", 2),
        Para(
            "After a failure the unit remembers mode, temperature and fan step and "
            "comes back as it was: 15 to 20 seconds for the boards, then the restart "
            "delay of 3 minutes. A dip shorter than 40 milliseconds goes unnoticed."
        ),
        table(
            "3.8 Waits at a glance",
            ("After", "Wait", "H2", "H3", "Display"),
            (
                ("supply on", "15 to 20 s", "lit", "flashing", "normal"),
                ("stop or mode change", "3 min", "lit", "flashing", "normal"),
                ("supply back in band", "3 min", "lit", "lit", "Sb"),
                ("first reset", "3 to 5 min", "lit", "flashing", "normal"),
                ("second reset in 30 min", "20 min", "lit", "flashing", "normal"),
                ("end of defrost", "60 s", "flashing", "flashing", "dF"),
                ("12 h without supply, frost", "30 min", "lit", "flashing", "PH"),
            ),
            (1.9, 1, 0.8, 0.8, 0.8),
        ),
        Caution(
            "NOTE",
            "All times run in the outdoor unit. They cannot be shortened from the "
            "remote, and taking the supply away starts them again.",
        ),
    ),
    "3 Starting",
)

HEATING = Page(
    "5",
    (
        Heading("4  Heating and defrost"),
        Para(
            "In heating the outdoor coil is colder than the air and gathers frost. The "
            "unit melts it by turning the circuit round for a few minutes. Steam, "
            "water under the unit, a hiss from the four-way valve and a still indoor "
            "fan are part of this and no reason for a visit."
        ),
        Heading("4.1 When defrost begins", 2),
        Items(
            (
                "The compressor has run in heating for at least 35 minutes since the "
                "last defrost, and",
                "the coil sensor TC has been below -3 °C for 3 minutes, and",
                "the coil is at least 8 K colder than the outdoor air.",
            )
        ),
        Para(
            "All three must be true. Below -15 °C outdoors the unit defrosts by time "
            "alone, every 90 minutes of running."
        ),
        Heading("4.2 What is seen during defrost", 2),
        Para(
            "H2 and H3 flash together, at the same moment, and the display shows dF. "
            "The outdoor fan and the indoor fan stand still, the compressor runs. This "
            "pattern is not a fault and is not counted. H1 stays dark."
        ),
        Heading("4.3 When defrost ends", 2),
        Items(
            (
                "TC has reached 12 °C, or",
                "10 minutes have passed, whichever comes first.",
            )
        ),
        Para(
            "A defrost that ends by time three times in a row leaves ice behind. Look "
            "at the sensor TC, at the charge and at the drain of the base plate; do "
            "not chop the ice."
        ),
        table(
            "4.4 Figures of defrost",
            ("Item", "Value"),
            (
                ("Least heating time before", "35 min"),
                ("Coil sensor at the beginning", "below -3 °C"),
                ("Coil sensor at the end", "12 °C"),
                ("Longest time", "10 min"),
                ("Least time between two defrosts", "40 min"),
            ),
            (2, 1.2),
        ),
    ),
    "4 Heating",
)

AFTER_DEFROST = Page(
    "6",
    (
        Heading("4.5 After defrost"),
        table(
            "",
            ("Step", "Time", "What happens"),
            (
                ("1", "0 s", "compressor stops, coil drips off"),
                ("2", "40 s", "four-way valve shifts back, a loud hiss"),
                ("3", "60 s", "compressor starts at low speed"),
                ("4", "65 s", "outdoor fan starts, a puff of steam"),
                ("5", "pipe 34 °C", "indoor fan starts on its lowest step"),
                ("6", "4 min", "indoor fan starts even if the pipe is colder"),
            ),
            (0.6, 1, 3),
        ),
        Heading("4.6 Cold air in heating", 2),
        Para(
            "The indoor fan is held back until the pipe is warm. If cool air is felt "
            "all the same, measure the indoor pipe sensor (section 11) and read the "
            "room temperature at the return air, not at the door."
        ),
        Heading("4.7 No heat at all", 2),
        Items(
            (
                "Is the mode HEAT and the set temperature above the room? The "
                "symbol of the sun must be lit.",
                "Do H2 and H3 flash together? Defrost: wait 10 minutes, then 4 more.",
                "Is H2 lit and H3 flashing? Restart delay: wait until it is over.",
                "Compressor runs, pipe stays cold, coil outdoors gets warm: the "
                "four-way valve has not shifted (C5). Go to 13.3.",
                "Compressor runs, pipe lukewarm, coil evenly white: defrost sensor TC "
                "or charge. Check TC first.",
            ),
            numbered=True,
        ),
        Heading("4.8 Stop of heating in warm weather", 2),
        Para(
            "Above 24 °C outdoors heating is blocked. The display shows the set "
            "temperature and nothing runs. No code is stored."
        ),
        Heading("4.9 Off during defrost", 2),
        Para(
            "If the unit is switched off in the middle of a defrost, it finishes the "
            "defrost first, then goes off. Let it; a coil full of wet ice freezes to a "
            "block."
        ),
    ),
    "4 Heating",
)

PROTECTION = Page(
    "7",
    (
        Heading("5  Protection and lockout"),
        Para(
            "After a stop the unit waits the restart delay and tries again. Every "
            "function has its own counter. When it is full, the unit is locked out: H2 "
            "dark, H3 lit, code on the display without a dot. It then needs a reset "
            "after section 6, once the cause has been found."
        ),
        table(
            "5.1 Stops and lockout",
            ("Function", "Code", "Limit", "Lockout after"),
            (
                ("High pressure", "H6", "4.20 MPa", "6 stops in 60 min"),
                ("Overcurrent", "P4", "24 A", "4 stops in 30 min"),
                ("Discharge temperature", "F3", "112 °C", "5 stops in 120 min"),
                ("Power module temperature", "P8", "95 °C", "4 stops in 60 min"),
                ("DC bus low", "P2", "245 V", "3 stops in 60 min"),
                ("Failed starts", "P6", "no rotation in 5 s", "9 in a row"),
                ("Outdoor fan", "P9", "no pulses in 8 s", "4 in a row"),
            ),
            (1.8, 0.6, 1.4, 1.5),
        ),
        Para(
            "A window slides: the unit looks back from the newest stop by the minutes "
            "given. Failed starts and fan failures are counted in a row; 15 minutes of "
            "undisturbed running set both counters to zero."
        ),
        Heading("5.2 Slowing down instead of stopping", 2),
        Para(
            "Before a stop the drive slows the compressor. It does so above 21 A, "
            "above 102 °C at the discharge sensor and above 56 °C at the coil in "
            "cooling. The user notices that the room cools slowly on the hottest days; "
            "no lamp shows it."
        ),
        Heading("5.3 Lost line to the room", 2),
        Para(
            "E4 is not counted. The unit goes on by itself as soon as messages arrive "
            "for 10 seconds."
        ),
        Caution(
            "WARNING",
            "The tries that are left before lockout are no test. Each one strains the "
            "compressor. Never bridge the switch HP, never raise a fuse, and never "
            "take the leak sensor out of the chain.",
        ),
    ),
    "5 Protection",
)

RESET = Page(
    "8",
    (
        Heading("6  Reset and stored faults"),
        Heading("6.1 Reset", 2),
        Items(
            (
                "Write down code, lamps H1 to H4 and the time; film them for 20 "
                "seconds.",
                "Switch off the outdoor supply and the indoor supply, so that both are "
                "off together. One after the other does not reset.",
                "Leave both off for at least 2 minutes and at most 10 minutes.",
                "Switch both on within one minute of each other.",
                "Wait 3 to 5 minutes for the start. Do not judge before.",
            ),
            numbered=True,
        ),
        Para(
            "Less than 2 minutes: the drive board keeps its counters and the lockout "
            "remains. More than 10 minutes: the list of stored faults is cleared and "
            "the cold start with preheating may follow."
        ),
        Heading("6.2 Second reset", 2),
        Para(
            "A second reset within 30 minutes is answered with a wait of 20 minutes. "
            "Before a third one call the person who is responsible for the plant; the "
            "cause has not been found."
        ),
        Heading("6.3 Stored faults", 2),
        Para(
            "The indoor unit keeps the last six codes. Hold MODE and TIMER on the "
            "remote together for 5 seconds. A stored code is shown with a dot after "
            "it, for instance P6. with its number in the list. The dot means: this has "
            "been, it need not be so now. Leave with OFF or by waiting for 30 seconds."
        ),
        table(
            "6.4 What erases what",
            ("Act", "Shown code", "Counters", "Stored faults"),
            (
                ("OFF at the remote", "stays", "stay", "stay"),
                ("One supply off and on", "stays", "stay", "stay"),
                ("Both off, 2 to 10 min", "erased", "erased", "stay"),
                ("Both off, over 10 min", "erased", "erased", "erased"),
                ("Hold MODE and FAN 10 s in the list", "stays", "stay", "erased"),
            ),
            (2.2, 1, 1, 1.1),
        ),
        Caution(
            "NOTE",
            "Off long enough for a reset is not discharged. For work inside the safety "
            "page counts.",
        ),
    ),
    "6 Reset",
)
