"""Vellamere manuals, second part: operation, protection, reset."""

from __future__ import annotations

from kb_samples.making.blocks import Block, Caution, Heading, Items, Page, Para, table
from kb_samples.making.vellamere_figures import Family


def operation(family: Family) -> tuple[Page, ...]:
    """Return the pages from starting to the reset."""
    return (_start(family), _waits(family), _protection(family), _reset(family))


def _start(family: Family) -> Page:
    delay, off = family.start_delay_s, family.off_time_min
    return Page(
        "3",
        (
            Heading("3 How the unit operates"),
            Heading("3.1 First start after the supply is switched on", 2),
            Para(
                f"After the supply is switched on nothing turns for {delay} seconds. "
                "The board charges the bus, drives the expansion valve to its stop and "
                "listens for the indoor unit. LD1 is lit and LD2 is steady during this "
                "time. This is a deliberate wait and no fault."
            ),
            Heading("3.2 Order of starting", 2),
            Para(family.order),
            Para(
                "During the first 60 seconds the compressor keeps to 25 revolutions "
                "per second, whatever the remote asks for."
            ),
            Heading("3.3 Minimum off time", 2),
            Para(
                f"After every stop the compressor stays off for at least {off} minutes "
                "so that the pressures can equalise. It makes no difference whether "
                "the room sensor, the remote or a protection function stopped it. LD2 "
                "is steady while the time runs. Changing the set temperature does not "
                "shorten it."
            ),
            Heading("3.4 Preheating", 2),
            Para(
                "Below 5 °C outdoors the windings of the stopped compressor are warmed "
                "with a small current. LD2 then blinks slowly and evenly, 2 seconds "
                "lit and 2 seconds dark, without a longer pause. This is normal. Do "
                "not count it as a number of flashes."
            ),
            Heading("3.5 When a fault is shown", 2),
            Para(
                "The number of flashes appears 15 seconds after the compressor has "
                "stopped. A sensor must be out of range for 10 seconds before it "
                "counts. No flashes yet does not mean that there is no fault: leave "
                "the supply on and watch for at least two minutes."
            ),
            Heading("3.6 Several faults", 2),
            Para(
                "If several faults are present, only the lowest number is shown. The "
                "next one appears when the first is cleared."
            ),
        ),
        "3 Operation",
    )


def _waits(family: Family) -> Page:
    low, back, high = family.standby_below, family.back_from, family.back_to
    hold, give_up = family.back_hold_s, family.give_up_min
    return Page(
        "4",
        (
            Heading("3.7 Standby until the supply is back"),
            Para(
                f"When the supply falls below {low} V AC for one second the unit stops "
                "and waits in standby with LD1 lit and LD2 steady. It starts again by "
                f"itself once the supply has been between {back} V and {high} V for "
                f"{hold} seconds without a break, and after the minimum off time."
            ),
            Para(
                f"If the supply does not come back into this band within {give_up} "
                "minutes, LD2 shows 7 flashes and the stop is counted. A generator "
                "that swings about the lower limit keeps the unit in standby; measure "
                "at the terminals before any board is suspected."
            ),
            Heading("3.8 After a power failure", 2),
            Para(
                "Mode and set temperature are kept. When the power returns the unit "
                f"starts by itself after {family.start_delay_s} seconds, if the last "
                "stop is long enough ago; otherwise the rest of the minimum off time "
                "is waited for as well. Several short failures one after the other, as "
                "in a thunderstorm, begin the wait again each time."
            ),
            Heading("3.9 Waits at a glance", 2),
            table(
                "Table 3-1 Waits",
                ("What starts it", "Least", "Lamp LD2", "Ends with"),
                (
                    (
                        "Supply switched on",
                        f"{family.start_delay_s} s",
                        "steady",
                        "compressor or fan start",
                    ),
                    (
                        "Any stop of the compressor",
                        f"{family.off_time_min} min",
                        "steady",
                        "call for cooling",
                    ),
                    (
                        "Supply back in its band",
                        f"{hold} s",
                        "steady",
                        "minimum off time",
                    ),
                    (
                        "First reset",
                        f"{family.reset_wait_min} min",
                        "steady",
                        "start",
                    ),
                    (
                        f"Second reset within {family.second_window_min} min",
                        f"{family.second_wait_min} min",
                        "steady",
                        "start",
                    ),
                    (
                        "Fault stop, restart tried",
                        "see 5",
                        "n flashes",
                        "see table 6-2",
                    ),
                ),
                (2.4, 0.9, 1, 1.8),
                ruled=False,
            ),
            Caution(
                "NOTE",
                "A unit that is judged before the wait is over is judged wrongly. Note "
                "the time of the stop or of the reset by the clock.",
            ),
        ),
        "3 Operation",
    )


def _protection(family: Family) -> Page:
    rows = tuple(
        (stop.name, stop.limit, f"{stop.count} {stop.counted}") for stop in family.stops
    )
    first = family.stops[0]
    start = family.stops[-1]
    return Page(
        "5",
        (
            Heading("4 Protection functions and lockout"),
            Para(
                "A protection stop ends by itself: after the minimum off time the unit "
                "tries again. Each stop is counted for its own cause. When the number "
                "of table 4-1 is reached the unit is locked out and stays off until it "
                "is reset. In lockout LD1 blinks evenly and LD2 is steady."
            ),
            table(
                "Table 4-1 Protection stops and lockout",
                ("Function", "Limit", "Locked out after"),
                rows,
                (2, 1.5, 1.7),
            ),
            Para(
                "The minutes are a sliding window that ends with the newest stop: a "
                f"stop older than {first.counted.removeprefix('in ')} no longer counts "
                f"for the {first.name[0].lower()}{first.name[1:]}. A stop exactly at "
                "the edge still counts."
            ),
            Para(
                f"Failed starts are counted in a row. The unit gives up after "
                f"{start.count} of them; one run of 10 minutes sets the count to zero."
            ),
            Heading("Limits without a stop", 2),
            Items(
                (
                    "Above 105 °C at the discharge sensor the speed is lowered step by "
                    "step. This is no fault and is not counted.",
                    "Above 54 °C at the outdoor coil sensor the speed is held.",
                    "Frost guard: below 2 °C at the indoor coil for 5 minutes the "
                    "compressor pauses until the coil is at 10 °C.",
                )
            ),
            Caution(
                "WARNING",
                "Find the cause of a protection stop. Do not use the stops that are "
                "left as tests, do not bridge the high pressure switch, and do not "
                "fit a larger breaker.",
            ),
        ),
        "4 Protection",
    )


def _reset(family: Family) -> Page:
    blocks: tuple[Block, ...] = (
        Heading("5 Reset"),
        Para(
            "Read and film the lamps for 20 seconds before the reset; the reset erases "
            f"{family.erases}."
        ),
        Heading("5.1 Steps", 2),
        Items(
            (
                "Note what LD1 and LD2 do, the time, and what was running.",
                "Stop the unit with the remote control.",
                f"Switch off the supply. {family.supplies}",
                f"Leave it off for at least {family.reset_off}, counted from the "
                "moment at which LD1 goes dark.",
                "Switch on again and start a stopwatch.",
                f"Wait {family.reset_wait_min} minutes. The compressor may start later "
                "than in an ordinary start; LD2 stays steady until then.",
            ),
            numbered=True,
        ),
        Heading("5.2 Second reset", 2),
        Para(
            f"If a second reset follows within {family.second_window_min} minutes of "
            f"the first, the unit waits {family.second_wait_min} minutes before it "
            "starts. The wait protects the compressor and cannot be shortened; another "
            "reset begins it anew."
        ),
        Heading("5.3 What the reset does not do", 2),
        Items(
            (
                "It does not discharge the capacitors. Off long enough for a reset is "
                "not safe for work inside: see the safety page.",
                "It does not remove the cause. The same number of flashes soon after "
                "a reset points to a fault that is still present.",
                "Switching off at the remote control alone resets nothing.",
            )
        ),
        table(
            "Table 5-1 Reset by kind of display",
            ("Display", "Reset by"),
            (
                ("Fault with recovery by itself", "no reset needed"),
                ("Fault after reset only", f"supply off for {family.reset_off}"),
                ("Lockout, LD1 blinks evenly", f"supply off for {family.reset_off}"),
            ),
            (1.6, 1.6),
        ),
    )
    return Page("6", blocks, "5 Reset")
