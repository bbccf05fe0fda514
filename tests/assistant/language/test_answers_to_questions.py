"""Short answers, each read in the light of what was asked; written by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.language.vocabulary import Pending, Vocabulary

Tell = Callable[..., tuple[list[str], list[str]]]

VOCABULARY = Vocabulary(
    models=("VET-O(35,50,71)*", "VEH-O(26,35,50)*"),
    labels=("LD1", "LD2", "run lamp"),
    boards=("outdoor main board", "fan board"),
    colours=("amber", "green", "red"),
    sensors=(("discharge", ("TH3", "discharge sensor")),),
    checks=(("p/fan", ("outdoor fan wheel",)), ("p/coil", ("coil fins",))),
    options=(("p/fan", ("spins free", "stuck")), ("p/coil", ("dirty", "clean"))),
)
FAN = ("spins free", "stuck")
BOXES = ("outdoor", "indoor")
MODELS = ("VET-O(35,50,71)*", "VEH-O(26,35,50)*")
DOUBTED = ("9.80 Ω", "9.80 kΩ")

ANSWERS: tuple[tuple[str, tuple[str, ...], str, tuple[str, ...]], ...] = (
    ("count", ("4", "6"), "six", ("lamp count count=6",)),
    ("count", (), "6 or 7", ("lamp count count=6/7",)),
    ("count", (), "twice", ("lamp count count=2",)),
    ("count", (), "six i think then it rests", ("lamp count count=6 pause=seen",)),
    ("count", (), "dunno", ()),
    ("pause", ("seen", "none"), "it rests after", ("lamp count pause=seen",)),
    ("pause", ("seen", "none"), "yep", ("lamp count pause=seen",)),
    ("pause", ("seen", "none"), "nope", ("lamp count pause=none",)),
    ("pause", ("seen", "none"), "no it just keeps going", ("lamp count pause=none",)),
    ("pause", (), "there's a gap of about 3 sec", ("lamp count pause=seen",)),
    ("pause", (), "doesnt pause", ("lamp count pause=none",)),
    ("colour", ("amber", "red"), "amber", ("lamp blink colour=amber",)),
    ("colour", ("amber", "red"), "orange", ("lamp blink colour=amber",)),
    ("colour", ("amber", "red"), "the other one", ("lamp blink colour=red",)),
    ("box", BOXES, "outdoor", ("lamp blink box=outdoor",)),
    ("box", BOXES, "nah other one", ("lamp blink box=indoor",)),
    ("box", BOXES, "the attic one", ("lamp blink box=indoor",)),
    ("box", (), "thermostat", ("lamp blink box=thermostat",)),
    ("board", (), "fan board", ("lamp blink board=fan board",)),
    ("board", (), "main", ("lamp blink board=outdoor main board",)),
    ("label", ("LD1", "LD2"), "LD2", ("lamp blink label=LD2",)),
    ("label", ("LD1", "LD2"), "led 2", ("lamp blink label=LD2",)),
    ("label", ("LD1", "LD2"), "second one", ("lamp blink label=LD2",)),
    ("code", (), "E4", ("lamp display code=E4",)),
    ("code", (), "e four", ("lamp display code=E4",)),
    ("code", (), "P nine something", ("lamp display",)),
    ("code", (), "54", ("lamp display code=54",)),
    ("code", (), "no code", ("lamp no_code",)),
    ("state", (), "solid", ("lamp on",)),
    ("state", (), "it's flashing", ("lamp blink",)),
    ("state", (), "flashing 4 times", ("lamp count count=4",)),
    ("state", (), "nothing", ("lamp off",)),
    ("lamp:LD1", (), "off", ("lamp off label=LD1",)),
    ("lamp:LD1", (), "steady on", ("lamp on label=LD1",)),
    ("lamp:LD1", (), "blinking", ("lamp blink label=LD1",)),
    ("unit", MODELS, "VET-O35", ("unit outdoor_model=VET-O35",)),
    ("unit", MODELS, "first one", ("unit outdoor_model=VET-O* unsure",)),
    ("unit", (), "plates gone", ("context plate readable False",)),
    ("unit", (), "starts with VET i think", ("unit outdoor_model=VET* unsure",)),
    ("unit:board_mark", (), "orange", ("unit board_mark=orange",)),
    ("unit:board_mark", ("blue label", "white label"), "the white one",
     ("unit board_mark=white label",)),
    ("unit:serial", (), "2314 0087", ("unit serial=23140087",)),
    ("unit:serial", (), "built week 14 of 23", ("unit built=2023-W14",)),
    ("unit:voltage", (), "230", ("unit voltage=230",)),
    ("role", (), "maintenance", ("role maintenance",)),
    ("role", (), "just a guest", ("role customer",)),
    ("role", (), "tech", ("role technician",)),
    ("role", (), "tech, no card", ("role technician",)),
    ("role", (), "licensed", ("role licensed technician",)),
    ("mode", (), "heat", ("mode heat",)),
    ("mode", ("cool", "heat"), "cooling", ("mode cool",)),
    ("time:power_on", (), "10 past", ("happening power_on @7 min ago",)),
    ("time:power_on", (), "ten minutes", ("happening power_on @10 min ago",)),
    ("time:power_on", (), "about 20 min ago", ("happening power_on @16..24 min ago",)),
    ("time:reset", (), "at 9:40", ("reset @277 min ago",)),
    ("time:power_restored", (), "around 2", ("happening power_restored @17 min ago",)),
    ("time:power_on", (), "no idea", ()),
    ("context:call present", (), "yep", ("context call present True",)),
    ("context:call present", (), "nope", ("context call present False",)),
    ("context:call present", (), "yes its calling", ("context call present True",)),
    ("context:power off", (), "no its live", ("context power off False",)),
    ("context:power off", (), "not yet", ("context power off False",)),
    ("context:call present", (), "i dont know", ()),
    ("look:p/fan", FAN, "spins easy", ("look p/fan spins free",)),
    ("look:p/fan", FAN, "its seized", ("look p/fan stuck",)),
    ("look:p/fan", FAN, "wont turn", ("look p/fan stuck",)),
    ("look:p/fan", FAN, "second", ("look p/fan stuck",)),
    ("look:x", ("yes", "no"), "yep", ("look x yes",)),
    ("look:x", ("dirty or blocked", "clean and free"), "filthy",
     ("look x dirty or blocked",)),
    ("look:x", ("loose", "tight"), "they were all tight", ("look x tight",)),
    ("look:x", ("come back", "stay away"), "it came back", ("look x come back",)),
    ("look:x", ("loose", "tight"), "no idea", ()),
    ("unit_of:coil", DOUBTED, "kilohms", ("reading coil: 9.80 kohm",)),
    ("unit_of:coil", DOUBTED, "k", ("reading coil: 9.80 kohm",)),
    ("unit_of:coil", DOUBTED, "the second", ("reading coil: 9.80 kΩ",)),
    # 9.8 V was not in question, so volts are no answer.
    ("unit_of:coil", DOUBTED, "volts", ()),
    ("reading:p/th3", (), "46k", ("reading p/th3: 46 kohm",)),
    ("reading:p/th3", (), "46k at 70F", ("reading p/th3: 46 kohm at 70 F",)),
    ("reading:p/th3", (), "46", ("reading p/th3: 46 V|46 ohm|46 kohm",)),
    ("reading:p/th3", (), "OL", ("reading p/th3: open",)),
    ("reading:p/th3", (), "discharge sensor reads 46 k",
     ("reading discharge: 46 kohm",)),
    ("reading:supply", (), "231", ("reading supply: 231 V",)),
    ("temperature:p/th3", (), "70F", ("reading :  at 70 F",)),
    ("reset_which", (), "the breaker", ("reset power",)),
    ("reset_which", (), "pushed the button", ("reset button",)),
    ("reset_which", (), "from the remote", ("reset remote",)),
    ("reset_by", (), "at the breaker", ("reset_detail power",)),
    ("reset_by", (), "the thermostat", ("reset_detail thermostat",)),
    ("reset_by", (), "I reset it just now", ("reset @0..2 min ago",)),
    ("off_time:lamp_dark", (), "about 5 min",
     ("reset_detail off_s=240.0/360.0 off_from=lamp_dark",)),
    ("off_time:power_off", (), "half a minute",
     ("reset_detail off_s=30.0/30.0 off_from=power_off",)),
    ("stop_event", (), "it was the high pressure one",
     ("protection_stop high pressure 1",)),
    ("before_reset", (), "before", ("lamp blink before reset",)),
    ("before_reset", (), "after", ("lamp blink after reset",)),
    ("count", (), "why", ()),
    ("look:p/fan", FAN, "skip", ()),
)  # fmt: skip


@pytest.mark.parametrize(("slot", "options", "text", "facts"), ANSWERS)
def test_an_answer_fills_the_slot(
    slot: str,
    options: tuple[str, ...],
    text: str,
    facts: tuple[str, ...],
    tell: Tell,
) -> None:
    told, _ = tell(text, pending=Pending(slot, options), vocabulary=VOCABULARY)

    assert told == list(facts)


@pytest.mark.parametrize(
    "text", ["sorry kilohms, not ohms", "i meant k", "no wait, k not ohms"]
)
def test_the_unit_of_the_last_reading_is_put_right(text: str, tell: Tell) -> None:
    last = Pending("", (), last_reading_of="coil", last_reading="9.8 Ω")

    told, acts = tell(text, pending=last)

    assert told == ["reading coil: 9.8 kohm"]
    assert acts == ["correct"]


def test_an_answer_may_tell_more_than_was_asked(tell: Tell) -> None:
    told, _ = tell(
        "yes its calling, and the comp isnt running",
        pending=Pending("context:call present"),
    )

    assert "context call present True" in told
    assert "context compressor running False" in told


def test_a_danger_is_heard_whatever_was_asked(tell: Tell) -> None:
    told, _ = tell("six, and i smell burning", pending=Pending("count"))

    assert told == ["lamp count count=6", "hazard burning"]


def test_a_whole_report_is_read_by_itself(tell: Tell) -> None:
    told, _ = tell(
        "actually hold on the outdoor board is flashing amber 4 times then it pauses "
        "and the power blipped at 2pm",
        pending=Pending("colour", ("red", "green")),
    )

    assert told == [
        "lamp count count=4 colour=amber box=outdoor pause=seen",
        "happening power_restored @17 min ago",
    ]


def test_a_look_told_unasked_is_put_under_each_packs_check(tell: Tell) -> None:
    both = Vocabulary(
        checks=(("a/fan", ("fan wheel",)), ("b/fan", ("fan wheel",))),
        options=(("a/fan", FAN), ("b/fan", FAN)),
    )

    told, _ = tell("outdoor fan wheel spins free", vocabulary=both)

    assert told == ["look a/fan spins free", "look b/fan spins free"]
    assert tell("is the fan wheel stuck", vocabulary=both)[0] == []
