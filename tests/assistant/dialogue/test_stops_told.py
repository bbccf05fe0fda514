"""Calls about protection stops, said in plain words and replayed turn by turn.

Every counter is one of the invented rows of `stop_rows`; what must follow is worked
out by hand from its figures. The first sentence is said at 8:31, each next a minute on.
"""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer, StopShown
from tests.said_aloud import lines, said_about, slot
from tests.stop_rows import stop_pack

NO_TESTS = "Find the cause; do not use them as tests."


def told(*texts: str) -> list[Answer]:
    return said_about(stop_pack(), "QT-20", *texts)


def stop(answer: Answer, name: str) -> StopShown:
    """Return one counter of an answer."""
    return {one.id.partition("/")[2]: one for one in answer.stops}[name]


def cited(answer: Answer, text: str) -> list[str]:
    """Return the rules that the statement with a text cites."""
    (found,) = (one for one in answer.statements if text in one.text)
    return [source.rule for source in found.sources]


ONE_SENTENCE = (
    ("stopped on high pressure twice, ten minutes apart", "window-5", "open", 3),
    ("stopped on high pressure 5 times, 10 minutes apart", "window-5", "locked", 0),
    # 4 x 11 minutes are more than 40.
    ("stopped on high pressure 5 times, 11 minutes apart", "window-5", "open", 1),
    # About ten is 8 to 12: four times that may be in 40 minutes or not.
    ("stopped on high pressure 5 times, about ten minutes apart",
     "window-5", "unknown", 0),
    ("stopped on high pressure 5 times within 40 minutes", "window-5", "locked", 0),
    ("stopped on high pressure 5 times today", "window-5", "unknown", 0),
    ("stopped on high pressure at 8:05, 8:10 and 8:25", "window-5", "open", 2),
    ("stopped on low pressure 3 times in a row", "row-3", "locked", 0),
    ("stopped on low pressure 3 times, an hour apart", "row-3", "unknown", 0),
    ("limit switch opened 4 times in one call", "call-4", "locked", 0),
    ("limit switch opened 4 times", "call-4", "unknown", 0),
    ("failed to start 6 times in a row", "starts-20", "open", 14),
    ("failed to start 20 times in a row", "starts-20", "locked", 0),
    ("fan 1 restarted 3 times in the last hour", "fans-3", "locked", 0),
    ("stopped on overcurrent 3 times, a minute apart, 20 seconds after it starts",
     "early-3", "locked", 0),
    ("stopped on overcurrent 3 times, a minute apart, 2 minutes after it starts",
     "early-3", None, None),
    ("stopped on discharge temperature 10 min ago", "once-by-itself", "open", 1),
    ("stopped on discharge temperature twice, an hour apart",
     "once-by-itself", "locked", 0),
    ("low voltage trip 5 minutes ago", "not-back", "open", 0),
    ("low voltage trip 20 minutes ago", "not-back", "unknown", 0),
    ("locked rotor stop", "at-once", "locked", 0),
    ("freeze protection trip twice, half an hour apart", "one-hour", "locked", 0),
    ("inverter temperature trip 4 times in the last hour", "history", "open", 0),
)  # fmt: skip


@pytest.mark.parametrize(("text", "name", "state", "left"), ONE_SENTENCE)
def test_a_sentence_comes_to_this_count(
    text: str, name: str, state: str | None, left: int | None
) -> None:
    (answer,) = told(text)

    if state is None:
        assert answer.stops == ()
        return
    found = stop(answer, name)
    assert (found.state, found.left) == (state, left)
    assert cited(answer, found.name + ":") == [f"quellmar-stops/{name}"]
    assert (answer.status == "unit_lockout") == (state == "locked")
    assert (NO_TESTS in lines(answer)) == (left != 0)


def test_soft_lockouts_become_a_hard_one_with_a_reset_of_its_own() -> None:
    soft, again, hard, remote = told(
        "stopped on head pressure at 7:00 and 7:10",
        "stopped on head pressure again at 8:00 and 8:10",
        "went out on head pressure at 8:20 and again at 8:28",
        "reset it from the remote",
    )

    # The first soft lockout, at 7:10, ended by itself at 7:40.
    assert (stop(soft, "two-levels").state, stop(soft, "two-levels").left) == (
        "open",
        2,
    )
    assert stop(again, "two-levels").levels == (1,)
    assert "locked out (soft lockout). It ends by itself at 08:40." in lines(again)
    assert "off and on at the remote" in lines(again)
    assert "switch both supplies off" not in lines(again)
    assert stop(hard, "two-levels").levels == (2,)
    assert stop(hard, "two-levels").further[0].count.max == 3
    assert stop(hard, "two-levels").cleared_by == (
        "switch both supplies off, wait, switch both on",
    )
    assert stop(remote, "two-levels").levels == (2,)
    assert "That did not reset it: it takes the one by power." in lines(remote)
    assert remote.status == "unit_lockout"


def test_a_good_run_begins_a_row_anew() -> None:
    two, ran, third = told(
        "stopped on low pressure twice in a row, at 7:30 and 7:40",
        "then it ran fine for 40 minutes",
        "now it stopped on low pressure again",
    )

    assert stop(two, "row-3").left == 1
    assert ran.stops == ()
    assert (stop(third, "row-3").state, stop(third, "row-3").count.max) == ("open", 1)
    assert "counts anew after a run of 30 min" in lines(third)


def test_what_lay_between_is_asked_and_settles_it() -> None:
    asked, yes = told("low pressure tripped 3 times, an hour apart", "yes")

    assert slot(asked) == "context:stops in a row"
    assert stop(yes, "row-3").state == "locked"


def test_a_reset_with_one_supply_left_on_did_not_reset() -> None:
    locked, one_on, both = told(
        "stopped on low pressure 3 times in a row, ten minutes apart",
        "killed the outdoor power for 5 minutes but left the indoor on",
        "killed both supplies together for 5 min",
    )

    assert locked.status == "unit_lockout"
    assert stop(one_on, "row-3").state == "locked"
    text = "That did not reset it: one supply stayed on"
    assert text in lines(one_on)
    assert cited(one_on, text) == ["quellmar-stops/row-3"]
    assert both.stops == ()
    assert "By the rule that reset took. It erased: the lamp and all counts." in (
        lines(both)
    )
    assert both.status == "answered"


BAND = (
    ("killed both supplies together for 2 min", "not off long enough", "locked"),
    ("killed both supplies together for 30 min", "off too long", "locked"),
    ("turned off the outdoor breaker, then later the indoor one",
     "one after the other", "locked"),
    ("pressed the reset button", "it clears the lamp, not the lockout", "locked"),
    ("killed both supplies together for 5 min but it wouldn't clear",
     "told not to have cleared", "locked"),
)  # fmt: skip


@pytest.mark.parametrize(("reset", "why", "state"), BAND)
def test_a_reset_that_cannot_have_reset_is_said_so(
    reset: str, why: str, state: str
) -> None:
    _, after = told("stopped on low pressure 3 times in a row", reset)

    assert "That did not reset it" in lines(after)
    assert why in lines(after)
    assert stop(after, "row-3").state == state


def test_what_is_not_known_of_a_reset_is_asked_and_the_answer_is_taken() -> None:
    _, first, second, third = told(
        "stopped on low pressure 3 times in a row",
        "cycled the breaker",
        "yes, all together",
        "about 5 minutes",
    )

    assert slot(first) == "context:supplies off together"
    assert stop(first, "row-3").state == "unknown"
    assert slot(second) == "off_time:power_off"
    assert "By the rule that reset took" in lines(third)
    assert third.stops == ()


def test_a_lamp_that_says_lockout_stands_beside_a_count_that_does_not() -> None:
    _, both = told(
        "red on the outdoor board flashes 5 times then a pause",
        "stopped on high pressure twice, ten minutes apart",
    )

    found = stop(both, "window-5")
    assert (found.state, found.left) == ("open", 3)
    assert found.conflict == ("the lamp says lockout by high pressure",)
    assert cited(both, "Conflict, both shown") == [
        "quellmar-stops/window-5",
        "quellmar-stops/lock-5",
    ]
    assert "Neither is taken over the other" in lines(both)


def test_a_count_that_says_lockout_stands_beside_a_lamp_that_does_not() -> None:
    _, both = told(
        "red on the outdoor board flashes 2 times then a pause",
        "stopped on high pressure 5 times, 5 minutes apart",
    )

    assert stop(both, "window-5").state == "locked"
    assert "the lamp says high pressure stop, it will retry" in lines(both)
    assert cited(both, "Conflict, both shown") == [
        "quellmar-stops/window-5",
        "quellmar-stops/pressed",
    ]


def test_the_tellers_word_stands_beside_the_count() -> None:
    (answer,) = told("stopped on high pressure twice, won't take a reset")

    assert stop(answer, "window-5").conflict == ("you say it is locked out",)
    assert answer.status == "unit_lockout"


def test_a_lamp_that_agrees_is_no_conflict() -> None:
    _, both = told(
        "red on the outdoor board flashes 5 times then a pause",
        "stopped on high pressure 5 times, 5 minutes apart",
    )

    assert stop(both, "window-5").conflict == ()
    assert "Conflict" not in lines(both)


def test_a_breaker_trip_is_never_counted_as_a_protection_stop() -> None:
    trips, stops = told(
        "breaker tripped 5 times",
        "stopped on high pressure once",
    )

    assert trips.stops == ()
    assert "not counted as protection stops" in lines(trips)
    assert stop(stops, "window-5").count.max == 1


def test_the_lamp_is_looked_at_before_any_reset_is_named() -> None:
    (answer,) = told("locked rotor stop")

    said = [one.text for one in answer.statements]
    film = next(n for n, text in enumerate(said) if "film them for 20 s" in text)
    reset = next(n for n, text in enumerate(said) if text.startswith("Reset (power)"))
    assert film < reset
    assert "It erases: the lamp and all counts." in said[reset]
    assert slot(answer) == "state"


def test_the_protection_is_asked_where_several_count_and_its_name_is_enough() -> None:
    asked, named = told("third time today, ten minutes apart", "high pressure")

    assert slot(asked) == "stop_event"
    assert (stop(named, "window-5").count.max, stop(named, "window-5").left) == (3, 2)


def test_a_lockout_that_only_a_lamp_shows_names_the_resets_of_its_level() -> None:
    (soft,) = told(
        "red on the outdoor board flashes 6 times then a pause, counted two groups"
    )
    (hard,) = told(
        "red on the outdoor board flashes 7 times then a pause, counted two groups"
    )

    assert "Reset (remote, soft lockout)" in lines(soft)
    assert "Reset (power" not in lines(soft)
    assert "Reset (power, hard lockout)" in lines(hard)
    assert "Reset (remote" not in lines(hard)


def test_a_power_cut_may_have_reset_what_stopped_before_it() -> None:
    _, after = told(
        "stopped on high pressure 5 times, 5 minutes apart",
        "power went out at 8:31 and came back at 8:31",
    )
    _, long_after = told(
        "locked rotor stop at 7:00",
        "power went out at 7:30 and came back at 7:40",
    )

    # No time at all is too short; ten minutes will do if every supply was cut.
    assert stop(after, "window-5").state == "locked"
    assert stop(long_after, "at-once").state == "unknown"
