"""Lamps, flashes and codes in workshop words; expectations written by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.language.vocabulary import Vocabulary

Tell = Callable[..., tuple[list[str], list[str]]]

COUNTED: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("amber light on the outdoor board is flashing 4 times then a pause",
     ("lamp count count=4 colour=amber box=outdoor pause=seen",)),
    ("Yellow LED blinking 4x, pause, repeat",
     ("lamp count count=4 colour=yellow pause=seen",)),
    ("LD2 blinks 5 times every 10 seconds",
     ("lamp count count=5 label=LD2 window=10",)),
    ("counted 4 flashes over 8 seconds", ("lamp count count=4 window=8",)),
    ("its flashing 4 every 8 seconds", ("lamp count count=4 window=8",)),
    ("i see 3 flashes, a gap, then 3 again", ("lamp count count=3 pause=seen",)),
    ("it flashes twice, waits, flashes twice", ("lamp count count=2 pause=seen",)),
    ("It blinks 4 times. Then there is a pause.", ("lamp count count=4 pause=seen",)),
    ("7 or 8 blinks hard to count", ("lamp count count=7/8",)),
    ("between 7 and 8 flashes", ("lamp count count=7/8",)),
    ("6-7 flashes on the red", ("lamp count count=6/7 colour=red",)),
    ("a couple of flashes", ("lamp count count=2/3",)),
    ("flashes 12 times", ("lamp count count=12",)),
    ("flashes twenty one times", ("lamp count count=21",)),
    ("counted it three times, always 6", ("lamp count count=6 rounds=3",)),
    ("watched 2 rounds, 6 each time", ("lamp count count=6 rounds=2",)),
    ("the status light blinks once every second",
     ("lamp count count=1 label=status window=1",)),
    ("blinking about once a second", ("lamp count count=1 window=1",)),
    ("two greens and one red",
     ("lamp count count=2 colour=green", "lamp count count=1 colour=red")),
    ("red flashing 2 times and green flashing 5 times",
     ("lamp count count=2 colour=red", "lamp count count=5 colour=green")),
    ("the light by the transformer blinks red 2 green 3",
     ("lamp count count=2 colour=red", "lamp count count=3 colour=green")),
    ("amber flashes 4 then pauses, green flashes 2",
     ("lamp count count=4 colour=amber pause=seen",
      "lamp count count=2 colour=green")),
    ("four flashes on the yellow led outside",
     ("lamp count count=4 colour=yellow box=outdoor",)),
    ("the yellow one does 3 quick ones then stops for 2 seconds",
     ("lamp count count=3 colour=yellow pause=seen rate=fast",)),
    ("led 3 is flashing 4 times", ("lamp count count=4 label=LED3",)),
    ("4 flashes on led 2", ("lamp count count=4 label=LED2",)),
    ("it ran fine, now just blinks 5, waits, 5 again",
     ("lamp count count=5 pause=seen",)),
    ("just the one wink and the rooms cold enough", ("lamp count count=1",)),
    ("14 of em, new one on me", ("lamp count count=14",)),
    ("seventeen yellows on the lodge one", ("lamp count count=17 colour=yellow",)),
    ("a dozen reds on the main board",
     ("lamp count count=12 colour=red board=main",)),
    ("keeps doing the four", ("lamp count count=4",)),
    ("red does 18 on the mainboard",
     ("lamp count count=18 colour=red board=main",)),
    ("power light green, run light amber flashing 3 times",
     ("lamp count count=3 colour=amber label=run",)),
)  # fmt: skip
STATES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("red led solid, green led flashing 3",
     ("lamp on colour=red", "lamp count count=3 colour=green")),
    ("green steady red off", ("lamp on colour=green", "lamp off colour=red")),
    ("both lights are off", ("lamp off",)),
    ("the light is on", ("lamp on",)),
    ("light on the board is out", ("lamp off",)),
    ("no lights on the indoor unit", ("lamp off box=indoor",)),
    ("green light is flashing slowly", ("lamp blink colour=green rate=slow",)),
    ("fast blinking red light on the main board",
     ("lamp blink colour=red board=main rate=fast",)),
    ("LED1 off LED2 on LED3 flashing",
     ("lamp off label=LED1", "lamp on label=LED2", "lamp blink label=LED3")),
    ("LD1 off, LD2 4 flashes",
     ("lamp off label=LD1", "lamp count count=4 label=LD2")),
    ("H1P blinking, H2P off", ("lamp blink label=H1P", "lamp off label=H2P")),
    ("top led on bottom led flashing",
     ("lamp on label=top one", "lamp blink label=bottom one")),
    ("orange light flashing, didnt count", ("lamp blink colour=orange",)),
    ("flashing continuously without pause", ("lamp blink pause=none",)),
    ("keeps blinking non stop", ("lamp blink pause=none",)),
    ("constant flashing no gap", ("lamp blink pause=none",)),
    ("1 long 2 short", ("lamp short_long count=2 long=1",)),
    ("green out, red winking on the inverter pcb",
     ("lamp off colour=green", "lamp blink colour=red board=inverter")),
    ("seven yellows but the mains looks fine, what set it off",
     ("lamp count count=7 colour=yellow",)),
    ("six winks, blue sticker",
     ("lamp count count=6", "unit board_mark=blue")),
    ("frozen solid indoors", ()),
    ("how many secs do i count the blinks for", ()),
    # What is not there is not seen: nothing says whether it is dark or steady.
    ("not flashing at all", ()),
    ("its not blinking any more", ()),
    ("the light isnt red its amber and its flashing 4",
     ("lamp count count=4 colour=amber",)),
    ("flahsing amber 4 tiems", ("lamp count count=4 colour=amber",)),
)  # fmt: skip
CODES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("display shows E4", ("lamp display code=E4",)),
    ("shows e-4 on the wall controller", ("lamp display box=remote code=E4",)),
    ("fault code F12 on the remote", ("lamp display box=remote code=F12",)),
    ("error 5", ("lamp display code=5",)),
    ("it says H11", ("lamp display code=H11",)),
    ("P nine", ("lamp display code=P9",)),
    ("its showing E oh", ("lamp display code=EO",)),
    ("E4 and P6 alternating", ("lamp display code=E4", "lamp display code=P6")),
    ("thermostat says error code 105", ("lamp display box=thermostat code=105",)),
    ("stored code P6 in the history", ("lamp display code=P6 stored",)),
    ("code P6 in memory", ("lamp display code=P6 stored",)),
    ("display is blank", ("lamp no_code",)),
    ("no error codes", ("lamp no_code",)),
    ("no fault code on the remote but outdoor light blinks 6",
     ("lamp no_code box=remote", "lamp count count=6 box=outdoor")),
    ("it was showing U4 before i reset it, now E7",
     ("lamp display code=U4 before reset", "reset",
      "lamp display code=E7 after reset")),
    ("code was E3 not E8", ("lamp display code=E3",)),
    ("it wasnt E4", ()),
    ("P3 flashing at me", ("lamp display code=P3",)),
    ("L3 came up", ("lamp display code=L3",)),
    ("CL on the screen", ("lamp display code=CL",)),
    ("thermostat wires on Y1 and W2", ()),
)  # fmt: skip


@pytest.mark.parametrize(("text", "facts"), [*COUNTED, *STATES, *CODES])
def test_a_report_gives_these_lamps(
    text: str, facts: tuple[str, ...], tell: Tell
) -> None:
    assert tell(text)[0] == list(facts)


VOCABULARY = Vocabulary(
    labels=("LD1", "LD2", "run lamp", "H1"),
    boards=("outdoor main board", "fan board", "main board"),
    colours=("amber", "green", "red"),
)


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("orange flashing 3", ["lamp count count=3 colour=amber"]),
        ("red flashing 3", ["lamp count count=3 colour=red"]),
        ("purple flashing 3", ["lamp count count=3 colour=red"]),
        ("led 2 flashing 4", ["lamp count count=4 label=LD2"]),
        ("red led 2 short 3 long", ["lamp short_long count=2 long=3 colour=red"]),
        ("the red light just sits there", ["lamp on colour=red"]),
        ("no code, the unit just sits there", ["lamp no_code"]),
        ("ld-2 flashing 4", ["lamp count count=4 label=LD2"]),
        ("run lamp flashing 2", ["lamp count count=2 label=run lamp"]),
        (
            "fan board light flashing 2",
            ["lamp count count=2 board=fan board"],
        ),
        (
            "blinking 2 on the outdoor main board",
            ["lamp count count=2 board=outdoor main board box=outdoor"],
        ),
        (
            "the main board blinks 2",
            ["lamp count count=2 board=main board"],
        ),
    ],
)
def test_words_of_the_packs_name_the_lamp(
    text: str, facts: list[str], tell: Tell
) -> None:
    assert tell(text, vocabulary=VOCABULARY)[0] == facts


def test_a_colour_keeps_its_name_where_the_packs_have_it(tell: Tell) -> None:
    both = Vocabulary(colours=("amber", "yellow"))

    assert tell("amber blinks 2", vocabulary=both)[0] == [
        "lamp count count=2 colour=amber"
    ]
    assert tell("orange blinks 2", vocabulary=both)[0] == [
        "lamp count count=2 colour=amber/yellow"
    ]
