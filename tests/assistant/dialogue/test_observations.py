"""Lamp reports merged into what is seen now."""

from __future__ import annotations

from datetime import UTC, datetime

from assistant.dialogue.observations import merge, overlay, same_lamp
from assistant.facts import LampFact
from assistant.jobs.fold import Held
from assistant.signals.observation import Observation

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def told(observation: Observation, turn: int, answers: str = "") -> Held:
    fact = LampFact(observation=observation)
    return Held(fact, f"E{turn}", 0, NOW, turn, answers)


AMBER_FOUR = Observation(colour=("amber",), state="count", count=(4,))


def test_a_later_count_of_the_same_lamp_replaces_the_earlier() -> None:
    two = Observation(state="count", count=(2,))

    seen = merge([told(AMBER_FOUR, 1), told(two, 2)])

    assert seen == (Observation(colour=("amber",), state="count", count=(2,)),)


def test_lamps_of_two_colours_stay_two_lamps() -> None:
    green = Observation(colour=("green",), state="on")

    assert merge([told(AMBER_FOUR, 1), told(green, 1)]) == (AMBER_FOUR, green)


def test_an_answer_about_the_pause_keeps_the_count() -> None:
    pause = Observation(state="blink", pause="seen")

    seen = merge([told(AMBER_FOUR, 1), told(pause, 2, answers="pause")])

    assert seen == (AMBER_FOUR.model_copy(update={"pause": "seen"}),)


def test_naming_the_board_later_adds_to_the_report() -> None:
    indoor = Observation(state="blink", box=("indoor",))

    assert merge([told(AMBER_FOUR, 1), told(indoor, 2)]) == (
        AMBER_FOUR.model_copy(update={"box": ("indoor",)}),
    )


def test_steady_said_after_a_count_drops_the_count() -> None:
    steady = Observation(state="on")

    assert overlay(AMBER_FOUR, steady) == Observation(colour=("amber",), state="on")


def test_a_display_is_never_the_same_as_a_lamp() -> None:
    assert not same_lamp(Observation(state="display", code="E4"), AMBER_FOUR)


def test_possibilities_that_share_a_colour_can_be_one_lamp() -> None:
    orange = Observation(colour=("orange", "amber"), state="on")

    assert same_lamp(orange, AMBER_FOUR)


def test_a_count_looked_at_again_outweighs_one_and_keeps_the_dissent() -> None:
    four, five = (Observation(state="count", count=(n,)) for n in (4, 5))
    looks = [told(four, 1), told(four, 2, answers="count")]

    (seen,) = merge([*looks, told(five, 3, answers="count")])

    assert seen.counted == (4, 4, 5)
    assert seen.count == (4, 5)


def test_a_count_of_another_pattern_stands_alone() -> None:
    four, nine = (Observation(state="count", count=(n,)) for n in (4, 9))

    (seen,) = merge([told(four, 1), told(nine, 2, answers="count")])

    assert (seen.count, seen.counted) == ((9,), ())


def test_every_lamp_told_later_takes_the_place_of_each() -> None:
    green = Observation(colour=("green",), state="on")
    dark = Observation(state="off", lamps="every")

    assert merge([told(AMBER_FOUR, 1), told(green, 1), told(dark, 2)]) == (dark,)


def test_every_other_lamp_stands_beside_the_one_named_in_the_same_breath() -> None:
    dark = Observation(state="off", lamps="every")

    assert merge([told(AMBER_FOUR, 1), told(dark, 1)]) == (AMBER_FOUR, dark)


def test_beeps_told_after_a_lamp_are_never_that_lamp() -> None:
    beeps = Observation(emitter="buzzer", box=("remote",), state="count", count=(5,))

    assert merge([told(AMBER_FOUR, 1), told(beeps, 2)]) == (AMBER_FOUR, beeps)


def test_a_count_without_a_name_can_turn_out_to_be_beeps() -> None:
    five = Observation(state="count", count=(5,))
    beeps = Observation(emitter="buzzer", state="count", count=(5,))

    assert merge([told(five, 1), told(beeps, 2)]) == (beeps,)


def test_lamps_told_instead_of_an_answer_each_take_their_own_place() -> None:
    green, red = (
        Observation(label=("H2",), state="blink"),
        Observation(label=("H3",), state="on"),
    )
    now = [
        Observation(label=("H2",), state="on"),
        Observation(label=("H3",), state="off"),
    ]

    for slot in ("stop_event", "pause"):
        seen = merge(
            [told(green, 1), told(red, 1), *(told(one, 2, answers=slot) for one in now)]
        )

        assert seen == tuple(now)


def test_a_code_that_names_the_protection_leaves_the_lamps_alone() -> None:
    steady = Observation(label=("H3",), state="on")
    code = Observation(state="display", code="J22")

    assert merge([told(steady, 1), told(code, 2, answers="stop_event")]) == (
        steady,
        code,
    )
