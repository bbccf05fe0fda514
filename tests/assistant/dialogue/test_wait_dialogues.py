"""Waits in conversation: what is asked, what changes it, what is said of it."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from tests.conversation import START
from tests.spoken import Spoken, only, texts


def clock(hour: int, minute: int, second: int = 0) -> datetime:
    return START.replace(hour=hour, minute=minute, second=second)


def test_a_restart_delay_is_shown_for_every_attempt_until_it_is_told_which(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"restart_delay"})

    open_ = job.say("the compressor stopped just a minute ago, when will it retry")
    second = job.say("its on the second try")

    assert open_.status == "waiting"
    assert open_.question is not None
    assert open_.question.slot == "attempt"
    assert [one.over is None for one in only(open_).choices] == [False] * 3 + [True]
    assert "6 min" in texts(open_)
    assert "3 min" in texts(open_)
    # By hand: stopped at 08:30, 6 min for the first and 3 for the second.
    assert only(open_).earliest == clock(8, 36)
    assert only(second).earliest == clock(8, 33)
    assert "Counted as: 2nd restart" in texts(second)


def test_a_bare_answer_names_the_attempt_and_another_stop_makes_it_unknown(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"restart_delay"})
    job.say("compressor stopped 1 min ago")

    answered = job.say("the third", after=0.1)
    again = job.say("the compressor stopped 10 sec ago", after=20)

    assert len(only(answered).choices) == 1
    assert only(answered).choices[0].text == "3rd restart"
    assert len(only(again).choices) == 4


def test_after_the_last_restart_the_unit_stays_off_and_counts_as_locked(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"restart_delay"})

    last = job.say("the compressor stopped 1 min ago, that was the fourth attempt")

    assert last.status == "unit_lockout"
    assert only(last).latched == "yes"
    assert "No more retries" in texts(last)


def test_a_supply_that_came_back_late_stays_latched_through_power_off_and_on(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"standby"})

    waiting = job.say("power went out at 8:20")
    late = job.say("power came back at 8:40", after=12)
    cycled = job.say("turned the breaker back on", after=5)

    # The row gives 12 minutes: 08:32.
    assert only(waiting).give_up == clock(8, 32)
    assert only(waiting).state == "running"
    assert late.status == "unit_lockout"
    assert only(late).latched == "yes"
    assert "power off and on does not clear it" in texts(late)
    assert only(cycled).latched == "yes"


def test_whether_it_latched_is_asked_and_a_return_in_time_ends_the_wait(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"standby"})
    job.say("power went out at 8:20")

    unknown = job.say("is it still in the wait", after=10)
    ended = job.say("at 8:25", after=1)

    assert only(unknown).latched == "cannot_tell"
    assert unknown.question is not None
    assert unknown.question.slot == "time:value_back"
    assert ended.waits == ()
    assert "No longer waiting: standby for the supply" in texts(ended)


@pytest.mark.parametrize(
    ("said", "until"),
    [
        ("it was off before the outage", clock(8, 31, 10)),
        ("yes it was off already", clock(8, 31, 10)),
        ("it was running when the power went out", clock(8, 34, 30)),
        ("no", clock(8, 34, 30)),
    ],
)
def test_a_unit_off_before_the_outage_waits_the_shorter_time(
    said: str, until: datetime, tmp_path: Path
) -> None:
    # By hand: power back at 08:30:30, then 40 s or 4 min.
    job = Spoken(tmp_path, {"start_delay"})

    first = job.say("power came back 30 sec ago")
    second = job.say(said, after=0.05)

    assert first.question is not None
    assert first.question.slot == "context:off before the outage"
    assert only(first).earliest == clock(8, 34, 30)
    assert only(second).earliest == until


def test_a_second_reset_soon_after_the_first_waits_longer(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"reset_delay"})

    once = job.say("i reset it at 8:05")
    twice = job.say("reset it again just now")

    assert once.waits == ()
    assert only(twice).id == "quellmar/second-reset"
    assert only(twice).earliest == clock(8, 32) + timedelta(minutes=25)


def test_an_earlier_reset_told_later_leaves_the_later_one_the_second(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"reset_delay"})

    job.say("i reset it at 8:25")
    answer = job.say("i had reset it at 8:05 before that")

    # By hand: 08:25 is the second, 20 min after the first; 25 min from then.
    assert only(answer).earliest == clock(8, 50)


def test_a_second_reset_long_after_the_first_is_a_first_one(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"reset_delay"})

    answer = job.say("i reset it at 7:20 and again at 8:30")

    assert answer.waits == ()


def test_no_code_is_too_early_to_judge_while_the_display_is_late(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"display_delay"})

    early = job.say("compressor stopped 30 sec ago, no code anywhere")
    no_call = job.say("there is no call for cooling", after=0.2)

    assert early.status == "waiting"
    assert "does not mean that nothing is wrong" in texts(early)
    assert "call present" in texts(early)
    assert no_call.waits == ()


def test_a_restart_ends_the_late_display(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"display_delay"})
    job.say("compressor stopped 30 sec ago")

    started = job.say("the compressor started up 10 sec ago", after=1)

    assert started.waits == ()
    assert "No longer waiting: delay until a code is shown" in texts(started)


def test_which_part_should_run_by_now_is_told_and_a_late_one_named(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"startup_order"})

    asked = job.say("been 2 min since i flipped it on, should it be running by now?")
    late = job.say("the compressor is not running", after=0.1)

    # By hand from 08:29: fan by 08:29:15, compressor by 08:29:55, indoor from 08:30:40.
    standing = {part.part: part.standing for part in only(asked).parts}
    assert standing == {
        "outdoor fan": "should_run",
        "compressor": "should_run",
        "indoor fan": "may_run",
    }
    assert "compressor should be running" in texts(asked)
    assert "compressor is late: it should run since 08:29:55" in texts(late)


def test_a_time_that_is_over_is_not_taken_for_the_value_too(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"value_and_time"})

    over = job.say("it stopped on high pressure ten minutes ago")
    hot = job.say("discharge temperature is 92C")
    cool = job.say("discharge temperature is 70C", after=3)

    assert (over.status, only(over).state) == ("waiting", "running")
    assert only(over).holds == ("discharge temperature below 75.0 °C",)
    assert over.question is not None
    assert over.question.slot == "reading:discharge temperature"
    assert only(hot).state == "running"
    assert "told: 92.0 °C, not met" in texts(hot)
    assert only(cool).state == "ready"


def test_charge_is_measured_whatever_the_time_and_never_called_safe(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"capacitor_bleed"})

    rule = job.say("how long for the caps to bleed off")
    waiting = job.say("pulled the disconnect 20 min ago and left it off")
    measured = job.say("bus reads 45 v", after=1)

    assert "at least 8 min" in texts(rule)
    assert only(waiting).state == "running"
    assert "time alone proves nothing" in texts(waiting)
    assert only(measured).state == "ready"
    assert "measure at every marked bank" in texts(measured)
    for answer in (rule, waiting, measured):
        assert "safe" not in texts(answer).casefold()
        assert "discharged" not in texts(answer).casefold()


def test_a_reset_window_is_told_and_the_off_time_judged_afterwards(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"reset_window"})

    off = job.say("power has been off for 2 min, when can i turn it back on")
    on = job.say("turned it back on 1 min ago", after=5)

    # By hand: off at 08:29, on at 08:35; the window is 3 to 9 min.
    assert "Switch on between 08:32 and 08:38" in texts(off)
    assert "off for 6 min, as asked" in texts(on)
    assert "not discharged" in texts(on)


def test_a_way_past_a_wait_is_never_said_without_its_side_effect(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"minimum_off"})

    asked = job.say("how long till it lets the compressor start")
    running = job.say("the compressor stopped a minute ago")

    for answer in (asked, running):
        assert "side effect: the board does not look at the low pressure" in texts(
            answer
        )
    assert only(running).bypass == "bridge the two test pins for a second"
    assert only(running).bypass_side_effect is not None


def test_a_customer_is_shown_no_way_past_a_wait_and_nothing_to_measure(
    tmp_path: Path,
) -> None:
    kinds = {"minimum_off", "capacitor_bleed", "button"}
    job = Spoken(tmp_path, kinds, role="customer")

    stopped = job.say("the compressor stopped a minute ago")
    charge = job.say("how long for the caps to bleed off")
    button = job.say("how long do i hold the button")

    assert only(stopped).bypass is None
    for answer in (stopped, charge, button):
        assert "test pins" not in texts(answer)
        assert "measure" not in texts(answer)
        assert "SW3" not in texts(answer)
    assert "leave covers on" in texts(charge)


def test_the_lamp_during_a_wait_is_said_to_be_no_fault(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"defrost"})

    answer = job.say("it went into defrost 2 min ago")

    assert only(answer).lamp_during == "waiting before a start"
    assert "While it lasts that is no fault" in texts(answer)
    assert only(answer).give_up == clock(8, 29) + timedelta(minutes=11)


def test_after_a_defrost_its_end_is_asked_and_its_sequence_told(
    tmp_path: Path,
) -> None:
    job = Spoken(tmp_path, {"defrost"})
    job.say("it went into defrost 5 min ago")

    asked = job.say("defrost is over")
    told = job.say("10 sec ago")

    assert asked.question is not None
    assert asked.question.slot == "time:defrost_ended"
    # By hand: over at 08:32:50; 40 s of dripping, then 20 to 30 s; 35 min to the next.
    assert "dripping off 08:33:30; compressor 08:33:50 to 08:34" in texts(told)
    assert "does not begin before 09:07:50" in texts(told)


def test_a_soft_stop_told_twice_is_not_waited_for(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"soft_stop"})

    once = job.say("it stopped on high pressure 40 min ago")
    twice = job.say("it stopped on high pressure again just now")

    assert only(once).latched is None
    assert twice.status == "unit_lockout"
    assert only(twice).latched == "yes"


@pytest.mark.parametrize(
    ("question", "kind", "says"),
    [
        ("do i gotta wait before it shows a fault", "detection_time", "12 s"),
        ("how long does it pump down", "run_on", "3 min"),
        ("how long before i can ohm out the dome", "cooling", "50 min"),
        ("when will the transformer come back", "self_reset", "20 min"),
        ("how long do i hold the button", "button", "press SW3 3 times within 6 s"),
        ("how long does it ignore the switch", "ignore_window", "1 min 50 s"),
        ("how long till the blower comes on", "blower_delay", "45 s"),
        ("how long does it preheat", "preheat", "2 h"),
        ("how long till the lockout releases", "auto_release", "1 h 10 min"),
        ("when does it leave the history", "history_exit", "3 min"),
        ("how long must it run before it stops again", "minimum_run", "5 min"),
    ],
)
def test_a_rule_is_told_to_who_asks_for_its_kind(
    question: str, kind: str, says: str, tmp_path: Path
) -> None:
    job = Spoken(tmp_path, {kind, "minimum_off"})

    answer = job.say(question)

    assert answer.status == "answered"
    assert says in texts(answer)


def test_vague_times_are_ranges_and_the_careful_end_is_told(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"auto_release"})

    answer = job.say("it stopped on high pressure quarter or twenty past")

    # 08:15 or 08:20 and 70 minutes, counted from the later.
    assert only(answer).started == clock(8, 20)
    assert only(answer).earliest == clock(9, 30)


def test_starts_that_failed_leave_two_restarts_possible(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"restart_delay"})

    answer = job.say("compressor stopped 1 min ago, it tried to start twice")

    # Two starts, the first among them or not: the second restart or the third.
    told = job.say("when will it retry", after=0.1)
    assert {one.text for one in only(told).choices} == {"2nd restart", "3rd restart"}
    assert answer.waits[0].choices == only(told).choices


def test_an_overload_that_opened_closes_by_itself_in_its_time(tmp_path: Path) -> None:
    job = Spoken(tmp_path, {"self_reset"})

    answer = job.say("the internal overload opened ten minutes ago")

    assert only(answer).usual == clock(8, 21) + timedelta(minutes=20)
