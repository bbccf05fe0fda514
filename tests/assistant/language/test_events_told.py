"""Resets, power, starts, stops, parts and their times; written by hand.

It is 14:17 UTC on a Monday in these tables: 9:40 is 277 minutes ago.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime

import pytest

from assistant.language.understand import understand

Tell = Callable[..., tuple[list[str], list[str]]]

RESETS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("i reset it ten minutes ago", ("reset @10 min ago",)),
    ("reset it at 9:40", ("reset @277 min ago",)),
    ("pressed the reset button about 20 min ago", ("reset button @16..24 min ago",)),
    ("cycled the breaker at quarter past two", ("reset power @2 min ago",)),
    ("cycled the power twice", ("reset power", "reset power")),
    ("reset it twice, last time 5 min ago", ("reset", "reset @5 min ago")),
    ("I reset it at 9:40 and again at 10:05",
     ("reset @277 min ago", "reset @252 min ago")),
    ("turned it off and back on", ("reset power",)),
    ("flipped the breaker off and on", ("reset power",)),
    ("killed the power for 5 min then back on", ("reset power off_s=300.0/300.0",)),
    ("reset it from the remote half an hour ago", ("reset remote @30 min ago",)),
    ("customer reset it before i got here", ("reset",)),
    ("cleared the codes yesterday", ("reset history @857..2297 min ago",)),
    ("held the button for 5 seconds", ("reset button",)),
    ("second reset at 10:05", ("reset @252 min ago",)),
    ("just reset it", ("reset @0..2 min ago",)),
    ("just now i pulled the disconnect and put it back",
     ("reset power @0..2 min ago",)),
    ("reset was an hour ago", ("reset @60 min ago",)),
    ("amber 4, reset it 10 min ago and its back",
     ("lamp count count=4 colour=amber", "reset @10 min ago")),
    ("killed both breakers together for about 4 min",
     ("reset power off_s=192.0/288.0 supplies=together",)),
    ("killed the outdoor for 5 minutes but left the indoor on",
     ("reset power off_s=300.0/300.0 supplies=one_left_on",)),
    ("turned off the outdoor breaker, then later the indoor one",
     ("reset power supplies=one_by_one",)),
    ("pressed the reset button but it didnt clear",
     ("reset button cleared=False", "context locked out True")),
    ("cycled the thermostat, 10 seconds off",
     ("reset thermostat off_s=10.0/10.0",)),
    ("killed the power for an hour 20 minutes",
     ("reset power off_s=4800.0/4800.0",)),
    ("it was off for two minutes", ("reset_detail off_s=120.0/120.0",)),
    ("the indoor supply stayed on", ("reset_detail supplies=one_left_on",)),
    ("both supplies were off at the same time",
     ("reset_detail supplies=together",)),
    ("reset it 4 times", ("reset",) * 4),
    ("pressed the reset button five times", ("reset button",) * 5),
    ("reset it, then the compressor started and the light flashed 3 times",
     ("reset", "happening compressor_started", "lamp count count=3")),
    ("how do i reset it", ()),
    ("should i reset it now", ()),
    ("can i reset the breaker", ()),
    ("what does a reset erase", ()),
    ("i havent reset it yet", ()),
    ("didnt touch the reset", ()),
)  # fmt: skip
HAPPENINGS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("power came back 20 min ago", ("happening power_restored @20 min ago",)),
    ("we had a power outage an hour ago",
     ("happening power_lost @60 min ago", "happening power_restored @60 min ago")),
    ("power went out at 3 and came back at 4:30",
     ("happening power_lost @677 min ago", "happening power_restored @587 min ago")),
    ("storm knocked out power 2 hours ago", ("happening power_lost @120 min ago",)),
    ("it came off the generator around 1pm",
     ("happening power_restored @77 min ago",)),
    ("first start after install", ("happening first_start",)),
    ("unit was just installed", ("happening first_start",)),
    ("turned on the power 30 seconds ago", ("happening power_on @0.5 min ago",)),
    ("powered it up just now", ("happening power_on @0..2 min ago",)),
    ("turned the breaker back on 3 minutes ago", ("happening power_on @3 min ago",)),
    ("the compressor stopped about ten minutes ago",
     ("happening compressor_stopped @8..12 min ago",)),
    ("comp shut off 2 or 3 min ago",
     ("happening compressor_stopped @2..3 min ago",)),
    ("compressor kicked off at 2 pm", ("happening compressor_stopped @17 min ago",)),
    ("it just stopped", ("happening compressor_stopped @0..2 min ago",)),
    ("stopped at quarter or twenty past",
     ("happening compressor_stopped @0..2 min ago",)),
    ("stopped a couple of minutes ago",
     ("happening compressor_stopped @2..3 min ago",)),
    ("it quit at five to two", ("happening compressor_stopped @22 min ago",)),
    ("compressor started 5 min ago", ("happening compressor_started @5 min ago",)),
    ("outdoor unit started up", ("happening compressor_started",)),
    ("went into defrost 3 minutes ago", ("happening defrost_started @3 min ago",)),
    ("its in defrost", ("mode defrost",)),
    ("lamp on the fan board went dark 15 seconds ago",
     ("happening lamp_dark @0.25 min ago",)),
    ("when will it start", ()),
    ("the compressor never started", ("context compressor running False",)),
)  # fmt: skip
WAITS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("pulled the disconnect 5 min ago and left it off",
     ("happening power_off @5 min ago",)),
    ("cut the power and its still off", ("happening power_off",)),
    ("the breaker has been off for 20 minutes",
     ("happening power_off @20 min ago", "context power off True")),
    ("compressor has been off about 10 min",
     ("happening compressor_stopped @8..12 min ago",
      "context compressor running False")),
    ("compressor has been running for half an hour",
     ("happening compressor_started @30 min ago", "context compressor running True")),
    ("been in defrost 4 min",
     ("happening defrost_started @4 min ago", "mode defrost")),
    ("it came out of defrost 2 min ago", ("happening defrost_ended @2 min ago",)),
    ("defrost finished at quarter past two", ("happening defrost_ended @2 min ago",)),
    ("the internal overload opened ten minutes ago",
     ("protection_stop overload 1 @10 min ago",)),
    ("compressor went out on its thermal overload an hour ago",
     ("happening overload_opened @60 min ago",)),
    ("voltage came back 3 min ago", ("happening value_back @3 min ago",)),
    ("the reversing valve shifted 30 seconds ago",
     ("happening valve_shifted @0.5 min ago",)),
    ("started a test run 5 minutes ago",
     ("happening test_started @5 min ago", "mode test")),
    ("pulled up the fault history a minute ago",
     ("happening history_shown @1 min ago",)),
    ("thermostat got satisfied 6 min ago", ("happening call_ended @6 min ago",)),
    ("turned it off at the remote 2 min ago", ("happening call_ended @2 min ago",)),
    ("its on its second try", ("attempt 2",)),
    ("third or fourth attempt", ("attempt 3/4",)),
    ("retried once already", ("attempt 2",)),
    ("how many attempts does it make", ()),
    ("it was off before the outage", ("context off before the outage True",)),
    ("it was running when the power went out",
     ("context off before the outage False", "happening power_lost")),
    ("the unit was not running before the blackout",
     ("context off before the outage True",)),
    ("was it off before the outage", ()),
    ("voltage dropped to 190 under load", ("reading voltage: 190 V loaded",)),
)  # fmt: skip
STOPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("tripped on high pressure 3 times in the last hour",
     ("protection_stop high pressure 3 within_s=3600.0",)),
    # Today began 857 minutes before 14:17.
    ("went out on low pressure twice today",
     ("protection_stop low pressure 2 since=857min",)),
    ("stopped 4 times today about 15 min apart",
     ("protection_stop 4 720.0/1080.0 since=857min",)),
    ("six pressure stops in an hour", ("protection_stop 6 within_s=3600.0",)),
    # "A couple" is two or three here as everywhere, "a few" two to five.
    ("stopped a few times on high pressure",
     ("protection_stop high pressure 2/3/4",)),
    ("stopped 4 times a couple of minutes apart",
     ("protection_stop 4 120.0/180.0",)),
    ("stopped 4 times in the last few hours",
     ("protection_stop 4 within_s=18000.0",)),
    ("fifth time this hour", ("protection_stop 5 within_s=3600.0",)),
    ("stopped on low pressure 3 times in a row",
     ("protection_stop low pressure 3 in_a_row",)),
    ("low pressure tripped four times back to back",
     ("protection_stop low pressure 4 in_a_row",)),
    ("high pressure tripped 4 times in one call",
     ("protection_stop high pressure 4 one_call",)),
    ("failed to start 6 times", ("protection_stop failed start 6",)),
    ("a dozen failed starts in a row",
     ("protection_stop failed start 12 in_a_row",)),
    ("tried to start five times and gave up", ("protection_stop failed start 5",)),
    ("stopped on high pressure at 10:05, 10:20 and 10:40",
     ("protection_stop high pressure 1 @252 min ago",
      "protection_stop high pressure 1 @237 min ago",
      "protection_stop high pressure 1 @217 min ago")),
    ("it keeps tripping on overcurrent 20 seconds after it starts",
     ("protection_stop overcurrent 2/3/4/5/6/7/8/9/10 ran_s=20.0/20.0",)),
    ("breaker tripped 3 times in a row",
     ("complaint breaker_trips", "breaker_trip 3")),
    # Whether breaker or protection tripped is not told, so neither is taken.
    ("tripped three times today", ()),
    ("tripped the breaker twice", ("complaint breaker_trips", "breaker_trip 2")),
    ("breaker tripped", ("complaint breaker_trips", "breaker_trip 1")),
    ("breaker hasnt tripped", ()),
    ("its in lockout", ("context locked out True",)),
    ("not locked out anymore", ("context locked out False",)),
    ("wont reset", ("context locked out True",)),
)  # fmt: skip
CHANGES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("set SW2-3 to on", ("setting_changed sw2-3 to on",)),
    ("changed dip switch 4", ("setting_changed dip switch 4",)),
    ("put a new capacitor in", ("part_fitted capacitor",)),
    ("new board fitted an hour ago", ("part_fitted board @60 min ago",)),
    ("compressor hums then trips on overload",
     ("complaint noise", "protection_stop overload 1")),
    ("ran fine for about an hour", ("good_run ran_s=2880.0/4320.0",)),
    ("did 3 good cycles", ("good_run cycles=3",)),
    ("it ran well in between", ("good_run",)),
    ("has it run fine for an hour", ()),
    ("should i replace the board", ()),
    ("do i need a new board", ()),
    ("changed the thermostat batteries", ()),
)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "facts"), [*RESETS, *HAPPENINGS, *WAITS, *STOPS, *CHANGES]
)
def test_an_event_is_told_with_its_time(
    text: str, facts: tuple[str, ...], tell: Tell
) -> None:
    assert tell(text)[0] == list(facts)


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("an hour and a half ago", "90"),
        ("1 hour 20 min ago", "80"),
        ("half an hour ago", "30"),
        ("2 hours ago", "120"),
        ("10 to 15 minutes ago", "10..15"),
        ("roughly an hour ago", "48..72"),
        ("a few minutes ago", "2..5"),
        ("ten minutes or so ago", "8..12"),
        ("at ten past", "7"),
        ("at 20 past", "57"),
        ("at ten past one", "67"),
        ("at 13:30", "47"),
        ("at 2pm", "17"),
        ("at 9:40 pm", "997"),
    ],
)
def test_a_time_is_counted_back_from_now(text: str, minutes: str, tell: Tell) -> None:
    assert tell(f"i reset it {text}")[0] == [f"reset @{minutes} min ago"]


def test_clock_times_are_the_writers_own(tell: Tell) -> None:
    # At 14:17 UTC it is 9:17 where the clock is five hours behind.
    behind = tell("reset it at 9:10", utc_offset_minutes=-300)
    ahead = tell("reset it at 15:10", utc_offset_minutes=60)

    assert behind[0] == ["reset @7 min ago"]
    assert ahead[0] == ["reset @7 min ago"]


def test_a_time_is_never_ahead_of_now() -> None:
    now = datetime(2024, 6, 3, 0, 3, tzinfo=UTC)

    (fact,) = understand("i reset it at ten past", now=now).facts

    assert fact.at is not None
    assert fact.at.latest == datetime(2024, 6, 2, 23, 10, tzinfo=UTC)


def test_a_time_goes_to_the_event_it_stands_beside(tell: Tell) -> None:
    told = tell("power came back an hour ago and i reset it ten minutes ago")[0]

    assert told == ["happening power_restored @60 min ago", "reset @10 min ago"]


def test_an_impossible_time_is_no_time(tell: Tell) -> None:
    assert tell("i reset it at 9:99")[0] == ["reset"]
    assert tell("i reset it 999999999 years ago")[0] == ["reset"]
