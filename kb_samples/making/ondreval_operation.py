"""Ondreval Pochard guide, second part: starting, waits, counters, reset, history."""

from __future__ import annotations

from kb_samples.making.blocks import Caution, Heading, Items, Page, Para, table

START = Page(
    "3",
    (
        Heading("C  Start and stop"),
        Heading("C.1 After the supply comes on", 2),
        Para(
            "Nothing moves for 40 seconds, at most 60 seconds. D5 grows bright and dim "
            "from the first second; if it does not, look for the supply."
        ),
        Heading("C.2 Which part moves first", 2),
        Para("After installation and after every power-up the order is:"),
        Items(
            (
                "Expansion valve travels to its stop and opens: 30 seconds.",
                "Outdoor fan, at once when the valve has opened.",
                "Compressor, 10 seconds after the outdoor fan.",
                "Indoor fan: in cooling with the compressor, in heating when RT2 has "
                "reached 36 °C.",
            ),
            numbered=True,
        ),
        Para(
            "The fan leads and the compressor follows. A fan that runs alone for ten "
            "seconds is no fault."
        ),
        Heading("C.3 Rest between two runs", 2),
        Para(
            "After every stop the compressor rests for at least 150 seconds. After a "
            "stop by a protection it rests longer, and longer each time it happens in "
            "the same call: 3 minutes, then 6 minutes, then 12 minutes."
        ),
        Heading("C.4 Shortest run", 2),
        Para(
            "A compressor that has started runs for at least 5 minutes, unless a "
            "protection stops it or the unit is switched off. When a call for heat "
            "ends the indoor fan runs on for 60 seconds."
        ),
        Heading("C.5 Cold compressor", 2),
        Para(
            "Below 2 °C outdoors and after 4 hours without supply the crankcase is "
            "warmed first: D1 FL for up to 45 minutes. Do not cut the supply to "
            "shorten it; the time begins again."
        ),
        Heading("C.6 Compressor too hot", 2),
        Para(
            "After a stop by discharge temperature it starts again only when RT5 is "
            "below 75 °C and 20 minutes have passed, both. Winding readings count only "
            "after 30 minutes of rest."
        ),
        Heading("C.7 Weak supply", 2),
        Para(
            "Below 182 V for one second the unit goes to standby. It goes on when the "
            "supply has been between 207 V and 253 V for 2 minutes. If that does not "
            "happen within 15 minutes, J14 is latched."
        ),
    ),
    "C Start and stop",
)

WAITS = Page(
    "4",
    (
        Heading("D  Waits and defrost"),
        table(
            "D.1 Waits",
            ("What happened", "Wait", "D1", "D5"),
            (
                ("supply came on", "40 to 60 s", "FL", "bright and dim"),
                ("compressor stopped", "at least 150 s", "FL", "bright and dim"),
                ("first protection stop", "3 min", "FL", "bright and dim"),
                ("second in the same call", "6 min", "FL", "bright and dim"),
                ("third in the same call", "12 min", "FL", "bright and dim"),
                ("reset", "2 to 4 min", "FL", "bright and dim"),
                ("second reset in an hour", "30 min", "FL", "bright and dim"),
                ("crankcase being warmed", "up to 45 min", "FL", "bright and dim"),
            ),
            (2.2, 1.4, 0.6, 1.4),
        ),
        Para(
            "D1 alone does not tell which wait it is. Ask when the supply came on, "
            "when the compressor stopped, and what was done since."
        ),
        Heading("D.2 Defrost begins", 2),
        Items(
            (
                "after 40 minutes of heating in all since the last one, and",
                "with RT4 below -4 °C for 2 minutes.",
            )
        ),
        Heading("D.3 During defrost", 2),
        Para(
            "D8 and D9 on the valve board flash by turns, slowly. Both fans stand "
            "still, the compressor runs, steam may rise. This is no fault and is "
            "counted nowhere. It ends when RT4 reaches 10 °C, at the latest after 8 "
            "minutes; dripping takes 50 seconds more. Heating switched off with ice on "
            "the coil: it is melted first, 6 minutes at most."
        ),
        Heading("D.4 When a code becomes visible", 2),
        Para(
            "Codes that begin with J1 are on DS1 at once. Codes that begin with A "
            "become visible only when the compressor has been stopped for 3 minutes; "
            "a restart in between cancels this. A quiet DS1 just after a stop "
            "therefore says nothing."
        ),
        Heading("D.5 The wait cut short", 2),
        Para(
            "Button SW1 on the control board, held for 3 seconds, ends the rest of 150 "
            "seconds once. While this run lasts the board does not look at RT5 and not "
            "at the pulses of the fan; use it for nothing but a look at rotation."
        ),
        Caution(
            "NOTE",
            "All waits are counted by the control board. Taking the supply away does "
            "not shorten them; it adds the first line of table D.1.",
        ),
    ),
    "D Waits",
)

COUNTERS = Page(
    "5",
    (
        Heading("E  Stop counters and lockout"),
        Para(
            "The control board counts the stops of each protection apart. A stop that "
            "is exactly as old as the window no longer counts."
        ),
        table(
            "E.1 Limits",
            ("Protection", "Code", "Limit", "Locks out after"),
            (
                ("High pressure switch PS1", "J11", "4.15 MPa", "4 stops in 60 min"),
                ("Overcurrent", "J13", "19 A", "3 stops in 20 min"),
                ("DC bus", "J14", "230 / 410 V", "5 stops in 90 min"),
                ("Heat sink", "J16", "92 °C", "2 stops in 5 h, see E.3"),
            ),
            (1.9, 0.7, 1.1, 1.9),
        ),
        table(
            "E.2 Counted in another way",
            ("What", "Code", "Locks out after", "Count goes to zero"),
            (
                ("Discharge hot", "J12", "3 in one call", "end of the call"),
                ("Failed starts", "J15", "8 in a row", "10 min of running"),
                ("Outdoor fan", "J17", "4 restarts, each 20 s", "reset only"),
                ("Overcurrent at start", "J13", "2 in a row within 2 s", "later stop"),
                ("Inverter messages", "J32", "5 in a row", "30 min of running"),
                ("Filter board hot", "-", "2 in 3 h, for 90 min", "by itself"),
                ("Four-way valve", "J18", "the first one", "reset only"),
                ("Icing guard", "-", "never, noted from 3 in 24 h", "by itself"),
            ),
            (1.5, 0.5, 2, 1.4),
        ),
        Heading("E.3 Heat sink, two levels", 2),
        Para(
            "Two heat sink stops in 5 hours give a soft lockout: the unit comes back "
            "by itself after 60 minutes. Three soft lockouts in 12 hours give a hard "
            "one that only a reset ends."
        ),
        Heading("E.4 Water in the drain pan", 2),
        Para(
            "The float switch stops the unit. The first time it comes back by itself 3 "
            "hours later; with 2 stops within 24 hours it stays off."
        ),
        Heading("E.5 What lockout looks like", 2),
        Para(
            "D1, D2, D3 and D4 are all ON. DS1 keeps the code. The unit answers the "
            "remote with one beep and does nothing."
        ),
        Caution(
            "CAUTION",
            "Stops that are left before the lockout are no free trials. Each one "
            "strains the compressor.",
        ),
        Para(
            "A circuit breaker that drops is not a stop in the sense of this section "
            "and is not counted by any board."
        ),
    ),
    "E Stop counters",
)

RESET = Page(
    "6",
    (
        Heading("F  Reset and stored faults"),
        Heading("F.1 Before a reset", 2),
        Items(
            (
                "Film D1 to D9 and DS1 for 20 seconds.",
                "Read the stored faults after F.3 and write them down with the time.",
                "Find the cause. A reset without it costs the evidence.",
            )
        ),
        Heading("F.2 Reset", 2),
        Items(
            (
                "Open the isolators of all units, so that they are off together.",
                "Look at D5. When it has gone dark, leave everything off for at least "
                "90 seconds and at most 5 minutes.",
                "Close the indoor isolator first, then the outdoor one.",
                "Wait 2 to 4 minutes before anything is judged.",
            ),
            numbered=True,
        ),
        Para(
            "Under 90 seconds the counters survive. Over 5 minutes the stored faults "
            "are lost as well. A second reset within one hour is followed by a wait of "
            "30 minutes."
        ),
        Heading("F.3 Stored faults", 2),
        Items(
            (
                "Unit at rest. Hold SW2 for 5 seconds until D1 to D4 flash together.",
                "Let go. Each short press of SW2 brings one stored code to DS1, the "
                "newest first, six at most. A bar on the left digit means stored.",
                "Leave with SW3. Without a press DS1 goes back after 60 seconds.",
            ),
            numbered=True,
        ),
        Para(
            "A stored code is history. It may be years old and long since mended; what "
            "is wrong now is shown without the bar."
        ),
        table(
            "F.4 What wipes what",
            ("Act", "Code shown", "Counters", "Stored faults"),
            (
                ("OFF at the remote", "stays", "stay", "stay"),
                ("90 s to 5 min without supply", "gone", "gone", "stay"),
                ("more than 5 min without supply", "gone", "gone", "gone"),
                ("SW2 and SW3 held for 8 s", "stays", "stay", "gone"),
                ("200 h without a fault", "-", "-", "gone"),
            ),
            (2.2, 1, 0.9, 1.1),
        ),
        Caution(
            "DANGER",
            "Ninety seconds are enough for a reset and far too short for work inside. "
            "Page ii applies.",
        ),
    ),
    "F Reset",
)
