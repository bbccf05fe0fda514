"""Readings in workshop words: units, measurands, doubt; written by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.language.vocabulary import Vocabulary

Tell = Callable[..., tuple[list[str], list[str]]]

READINGS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("discharge sensor reads 12.4k at 70F",
     ("reading discharge: 12.4 kohm at 70 F",)),
    ("12.4k at 70F", ("reading resistance: 12.4 kohm at 70 F",)),
    ("coil sensor 9.8 kohm at 72 F", ("reading coil: 9.8 kohm at 72 F",)),
    ("outdoor sensor is 15 k", ("reading outdoor: 15 kohm",)),
    ("room sensor OL", ("reading room: open",)),
    ("suction sensor open line", ("reading suction: open",)),
    ("discharge thermistor reads nothing", ("reading discharge: open",)),
    ("sensor reads infinite", ("reading sensor: open",)),
    ("u to ground open", ("reading u to ground: open",)),
    ("discharge sensor 4,7k", ("reading discharge: 4.7 kohm",)),
    ("12,400 ohms on the coil sensor", ("reading coil: 12400 ohm",)),
    ("the discharge one is 46 kilohms", ("reading discharge: 46 kohm",)),
    ("discharge sensor is nine point eight k", ("reading discharge: 9.8 kohm",)),
    ("power off, discharge sensor 46k",
     ("context power off True", "reading discharge: 46 kohm")),
    ("sensor unplugged reads 46k",
     ("context sensor unplugged True", "reading sensor: 46 kohm off")),
    ("230 at the terminals",
     ("reading supply: 230 V", "context mains at the terminals True")),
    ("241 volts L1 to L2", ("reading supply: 241 V",)),
    ("supply is two hundred and thirty", ("reading supply: 230 V",)),
    ("line voltage 208, drops to 190 when it starts",
     ("reading supply: 208 V", "reading supply: 190 V loaded")),
    ("bus is 320 dc", ("reading bus: 320 V DC",)),
    ("dc bus 325", ("reading bus: 325 V",)),
    ("got 325 vdc across the big caps", ("reading bus: 325 V DC",)),
    ("p-n 318", ("reading bus: 318 V",)),
    ("u to v 1.2 ohm, v to w 1.2 ohm, u to w 1.3 ohm",
     ("reading u to v: 1.2 ohm", "reading v to w: 1.2 ohm",
      "reading u to w: 1.3 ohm")),
    ("winding to ground 2 meg", ("reading winding to ground: 2 megohm",)),
    ("compressor pulling 12 amps", ("reading current: 12 A",)),
    ("cap reads 34.5 uf", ("reading capacitor: 34.5 uF",)),
    ("fan motor plug has 310 volts dc", ("reading fan motor plug: 310 V DC",)),
    ("15 volts on the white wire", ("reading white wire: 15 V",)),
    ("voltage between 2 and 3 swings from 20 to -20",
     ("reading 2 to 3: 20 V", "reading 2 to 3: -20 V")),
    ("suction 118 psi head 390 psi",
     ("reading suction pressure: 118 psi", "reading discharge pressure: 390 psi")),
    ("head pressure is 28 bar", ("reading discharge pressure: 28 bar",)),
    ("temp at the sensor is 70F", ("reading sensor temperature: 70 F",)),
    ("discharge pipe is 180F", ("reading discharge temperature: 180 F",)),
    ("fin sensor is 50k", ("reading heat sink: 50 kohm",)),
)  # fmt: skip
PLACES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("outside is 95", ("temperature outdoor 95 F",)),
    ("it is 30 c outside", ("temperature outdoor 30 C",)),
    ("indoor 75F outdoor 98F",
     ("temperature indoor 75 F", "temperature outdoor 98 F")),
    ("ambient 35C", ("temperature outdoor 35 C",)),
    # 25 could be either scale indoors, so neither is chosen.
    ("room is 25", ("reading indoor temperature: 25 C|25 F",)),
    # A room of a guest house is a number and no temperature.
    ("room 12 is not cooling", ("complaint no_cooling",)),
    ("cabin 7 no cooling", ("complaint no_cooling",)),
)  # fmt: skip
DOUBT: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("coil sensor 9.8", ("reading coil: 9.8 ohm|9.8 kohm",)),
    ("superheat 12",
     ("reading superheat: 12 K difference|12 F difference",)),
    # 60 bar is the ceiling of what a system can hold; 200 bar is not possible.
    ("low side 60 high side 200",
     ("reading suction pressure: 60 psi|60 kPa|60 bar",
      "reading discharge pressure: 200 psi|200 kPa")),
    ("12,400", ()),
    ("its 9.8", ()),
    ("no reading on the meter", ()),
    ("high pressure switch is open", ()),
    ("page 46 says so", ()),
    ("pin 3 and pin 4", ()),
)  # fmt: skip


@pytest.mark.parametrize(("text", "facts"), [*READINGS, *PLACES, *DOUBT])
def test_a_reading_is_told(text: str, facts: tuple[str, ...], tell: Tell) -> None:
    assert tell(text)[0] == list(facts)


def test_a_winding_reading_of_zero_to_ground_is_a_danger_too(tell: Tell) -> None:
    assert tell("u to ground is 0")[0] == [
        "hazard compressor_to_ground",
        "reading u to ground: 0 ohm",
    ]


def test_what_packs_call_a_sensor_or_check_names_the_reading(tell: Tell) -> None:
    words = Vocabulary(
        sensors=(("discharge", ("TH3", "hot gas sensor")),),
        checks=(
            ("p/comms", ("signal line",)),
            ("p/supply", ("line voltage",)),
            ("p/look", ("oil stain",)),
        ),
        options=(("p/look", ("yes", "no")),),
    )

    def of(text: str) -> list[str]:
        return tell(text, vocabulary=words)[0]

    assert of("TH3 reads 46k") == ["reading discharge: 46 kohm"]
    assert of("hot gas sensor is 46k") == ["reading discharge: 46 kohm"]
    assert of("signal line 20 V") == ["reading p/comms: 20 V"]
    assert of("line voltage 231") == ["reading supply: 231 V"]


def test_a_temperature_without_its_scale_is_no_second_reading(tell: Tell) -> None:
    assert tell("pipe sensor about 8.7k at forty")[0] == ["reading coil: 8.7 kohm"]


def test_a_word_that_two_packs_use_stays_a_word(tell: Tell) -> None:
    shared = Vocabulary(
        checks=(("a/fan", ("fan command",)), ("b/fan", ("fan command", "pin 5")))
    )

    assert tell("fan command 3.1 V", vocabulary=shared)[0] == [
        "reading fan command: 3.1 V"
    ]
    assert tell("pin 5 at 15 V", vocabulary=shared)[0] == ["reading b/fan: 15 V"]
