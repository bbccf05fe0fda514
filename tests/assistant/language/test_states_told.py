"""Context, complaints, roles, modes, plates, dangers, wishes; written by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.language.vocabulary import Vocabulary

Tell = Callable[..., tuple[list[str], list[str]]]

CONTEXT: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("thermostat is calling", ("context call present True",)),
    ("stat is calling for cool", ("context call present True",)),
    ("no call from the stat", ("context call present False",)),
    ("its not calling", ("context call present False",)),
    ("there is no call for heat", ("context call present False",)),
    ("room is satisfied", ("context call present False",)),
    ("breaker is off", ("context power off True",)),
    ("power is off at the disconnect", ("context power off True",)),
    ("the power is on", ("context power off False",)),
    ("its still live", ("context power off False",)),
    ("is the power off", ()),
    ("make sure the breaker is off", ()),
    ("compressor is running", ("context compressor running True",)),
    ("comp isnt running",
     ("complaint wont_start", "context compressor running False")),
    ("fan runs but comp doesn't", ("context compressor running False",)),
    ("outdoor fan is running", ("context outdoor fan running True",)),
    ("outside fan isnt spinning", ("context outdoor fan running False",)),
    ("blower is running", ("context indoor fan running True",)),
    ("unplugged the sensor", ("context sensor unplugged True",)),
    ("sensor still plugged in", ("context sensor unplugged False",)),
    ("unplugged the sensor and it still faults", ("context sensor unplugged True",)),
    ("no gauges on me", ("context gauges at hand False",)),
    ("i have gauges", ("context gauges at hand True",)),
    ("got my meter", ("context meter at hand True",)),
    ("no meter with me", ("context meter at hand False",)),
    ("lightning hit nearby last night", ("context surge True",)),
    ("coil is frosted", ("complaint icing", "context frosted True")),
    ("not frosted", ("context frosted False",)),
    ("no ice", ("context frosted False",)),
    ("im alone here", ("context alone True",)),
    ("compressor at fixed frequency", ("context fixed speed True",)),
    ("data plate is missing", ("context plate readable False",)),
    ("can't read the nameplate", ("context plate readable False",)),
)  # fmt: skip
COMPLAINTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("not cooling", ("complaint no_cooling",)),
    ("its not blowing cold", ("complaint no_cooling",)),
    ("blowing warm air", ("complaint no_cooling",)),
    ("room wont get cold", ("complaint no_cooling",)),
    ("the ac quit", ("complaint no_cooling",)),
    ("its hot in here", ("complaint no_cooling",)),
    ("no heat", ("complaint no_heat",)),
    ("heat pump not heating", ("complaint no_heat",)),
    ("room wont get warm", ("complaint no_heat",)),
    ("short cycling", ("complaint short_cycling",)),
    ("keeps cycling on and off", ("complaint short_cycling",)),
    ("freezing up", ("complaint icing",)),
    ("making a loud noise", ("complaint noise",)),
    ("buzzing noise from outside", ("complaint noise",)),
    ("water leaking from the head", ("complaint water",)),
    ("dripping on the floor", ("complaint water",)),
    ("electric bill doubled", ("complaint high_bill",)),
    ("thermostat is blank", ("complaint blank_thermostat",)),
    ("wont turn on", ("complaint wont_start",)),
    ("outdoor unit wont start", ("complaint wont_start",)),
    ("nothing happens when i turn it on", ("complaint wont_start",)),
    ("no noise, no water", ()),
    ("sounds like the sensor to me", ()),
)  # fmt: skip
PEOPLE: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("im the homeowner", ("role customer",)),
    ("i'm a guest in cabin 4", ("role customer",)),
    ("im the maintenance guy", ("role maintenance",)),
    ("i work in maintenance at the resort", ("role maintenance",)),
    ("im a tech", ("role technician",)),
    ("service tech on site", ("role technician",)),
    ("im a licensed tech", ("role licensed technician",)),
    ("got my EPA card", ("role licensed technician",)),
    ("i hold an f-gas ticket", ("role licensed technician",)),
    ("im a tech but not licensed", ("role technician",)),
    # A missing licence makes nobody a technician.
    ("im not licensed", ()),
    ("tenant says its not cooling", ("complaint no_cooling",)),
    ("im not a tech", ()),
    ("its in cooling mode", ("mode cool",)),
    ("running in heat", ("mode heat",)),
    ("stat set to off", ("mode off",)),
    ("not in heat", ()),
)  # fmt: skip
PLATES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("outdoor unit model RKX18B2", ("unit outdoor_model=RKX18B2",)),
    ("serial number 2408123456", ("unit serial=2408123456",)),
    ("serial 2408-00123", ("unit serial=2408-00123",)),
    ("built week 14 of 23", ("unit built=2023-W14",)),
    ("it takes r410a", ("unit refrigerant=R-410A",)),
    ("R-32 unit", ("unit refrigerant=R-32",)),
    ("uses 454b", ("unit refrigerant=R-454B",)),
    ("115 volt unit", ("unit voltage=115 V",)),
    ("nameplate says 208/230", ("unit voltage=208/230 V",)),
    ("three phase", ("unit phase=3",)),
    ("green dot on the processor", ("unit board_mark=green dot",)),
    ("sticker on the chip is red", ("unit board_mark=red",)),
    ("the code is on page 12", ()),
)  # fmt: skip
DANGERS: tuple[tuple[str, str], ...] = (
    ("i smell burning", "burning"),
    ("somethings burning", "burning"),
    ("burny smell off it", "burning"),
    ("smells hot", "burning"),
    ("smells like burnt plastic", "burning"),
    ("smoke coming out of the unit", "burning"),
    ("saw a spark at the board", "burning"),
    ("board is smoking", "burning"),
    ("breaker tripped again", "breaker_again"),
    ("it trips the breaker as soon as it starts", "breaker_again"),
    ("the breaker keeps tripping", "breaker_again"),
    ("breaker wont hold", "breaker_again"),
    ("reset the breaker and it tripped again", "breaker_again"),
    ("i can smell gas", "gas"),
    ("co alarm went off", "gas"),
    ("carbon monoxide detector beeping", "gas"),
    ("leak alarm is going off", "leak_alarm"),
    ("refrigerant detector keeps beeping", "leak_alarm"),
    ("guest feels dizzy", "unwell"),
    ("my mate fainted", "unwell"),
    ("im getting a headache", "unwell"),
    ("i got a shock off the panel", "unwell"),
    ("water dripping on the board", "water_on_electrics"),
    ("water is running into the disconnect", "water_on_electrics"),
    ("electrical box is wet", "water_on_electrics"),
    ("compressor is shorted to ground", "compressor_to_ground"),
    ("dead short to ground on u", "compressor_to_ground"),
    ("megger shows 0 to ground", "compressor_to_ground"),
    ("windings grounded", "compressor_to_ground"),
    ("thunderstorm rolling in", "storm_or_alone"),
    ("im alone on the roof", "storm_or_alone"),
    ("lightning everywhere here", "storm_or_alone"),
    ("rain is getting in the control box", "water_on_electrics"),
    ("im on the roof by myself", "storm_or_alone"),
)
HARMLESS = (
    "no burning smell",
    "no smoke",
    "breaker tripped once",
    "leak sensor error E9",
    "water leaking on the floor",
    "compressor to ground is fine",
    "u to ground reads 4 meg",
    "power blipped in the storm last night",
    "never got a shock",
    "it used to smell burnt last year",
    "oil boiler locks out on flame",
    "suction pressure 118, is she low on gas",
    "thunder last night, do i panic",
)
WISHES: tuple[tuple[str, str], ...] = (
    ("can i jump out the low pressure switch", "bypass_protection"),
    ("jumper the float switch", "bypass_protection"),
    ("hold in the door switch", "bypass_protection"),
    ("i jumped the pressure switch and it still wont run", "bypass_protection"),
    ("the high pressure switch is jumped out", "bypass_protection"),
    ("can i put a bigger breaker in", "bypass_protection"),
    ("defeat the interlock", "bypass_protection"),
    ("L4, can i bypass it til the spare arrives", "bypass_protection"),
    ("just bridge it", "bypass_protection"),
    ("can i swap the fuse for a bigger one", "bypass_protection"),
    ("should i bypass the leak sensor", "bypass_leak_sensor"),
    ("can i tape over the leak detector", "bypass_leak_sensor"),
    ("unplug the leak sensor so it runs", "bypass_leak_sensor"),
    ("how do i short the capacitor", "short_capacitor"),
    ("discharge the capacitor with a screwdriver", "short_capacitor"),
    ("work on it live", "live_work"),
    ("can i leave the power on while i swap the fan motor", "live_work"),
    ("can i swap the board with the power on", "live_work"),
    ("do i have to kill the power to unplug the fan", "live_work"),
    ("can i push the contactor in by hand", "live_work"),
    ("pressurize it above the plate", "over_pressure"),
)
NO_WISH = (
    "i unplugged the sensor and it still faults",
    "the capacitor is shorted",
    "ok to discharge the caps with a resistor",
    "checked the high pressure switch",
    "i didnt jump anything",
    "i would never bypass the high pressure switch",
    "is the high pressure switch supposed to be closed",
    "short the R and W at the stat to test the heat",
)


@pytest.mark.parametrize(("text", "facts"), [*CONTEXT, *COMPLAINTS, *PEOPLE, *PLATES])
def test_a_state_is_told(text: str, facts: tuple[str, ...], tell: Tell) -> None:
    assert tell(text)[0] == list(facts)


@pytest.mark.parametrize(("text", "hazard"), DANGERS)
def test_a_danger_is_heard(text: str, hazard: str, tell: Tell) -> None:
    assert f"hazard {hazard}" in tell(text)[0]


@pytest.mark.parametrize("text", HARMLESS)
def test_what_is_denied_or_over_is_no_danger(text: str, tell: Tell) -> None:
    assert not [fact for fact in tell(text)[0] if fact.startswith("hazard")]


@pytest.mark.parametrize(("text", "act"), WISHES)
def test_a_wish_to_defeat_protection_is_heard(text: str, act: str, tell: Tell) -> None:
    assert f"bypass {act}" in tell(text)[0]


@pytest.mark.parametrize("text", NO_WISH)
def test_what_was_seen_or_refused_is_no_wish(text: str, tell: Tell) -> None:
    assert not [fact for fact in tell(text)[0] if fact.startswith("bypass")]


VOCABULARY = Vocabulary(
    models=("VET-O(35,50,71)*", "VEH-O(26,35,50)*", "KX-24B"),
    stop_phrases=(("p/siren", ("boat house siren",)),),
)


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("VET-O35 flashing 4", ["unit outdoor_model=VET-O35",
                                "lamp count count=4"]),
        ("it's a veto35", ["unit outdoor_model=VETO35"]),
        ("veh-o 26 on the roof", ["unit outdoor_model=VEHO26"]),
        ("indoor head is a KX-24B", ["unit indoor_model=KX-24B"]),
        ("unit is a KX24C", ["unit outdoor_model=KX24B unsure"]),
        ("code E4 on a vet-o71", ["lamp display code=E4",
                                  "unit outdoor_model=VET-O71"]),
        ("outdoor starts with VE i think", ["unit outdoor_model=VE* unsure"]),
        ("error F12", ["lamp display code=F12"]),
    ],
)  # fmt: skip
def test_models_of_the_packs_are_known(text: str, facts: list[str], tell: Tell) -> None:
    assert tell(text, vocabulary=VOCABULARY)[0] == facts


def test_a_packs_own_stop_phrase_is_a_danger(tell: Tell) -> None:
    assert tell("the boat house siren is on", vocabulary=VOCABULARY)[0] == [
        "hazard p/siren"
    ]
    assert tell("no boat house siren", vocabulary=VOCABULARY)[0] == []
