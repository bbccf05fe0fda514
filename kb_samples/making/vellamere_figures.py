"""Figures of the two invented sister families of Vellamere.

The wording of both manuals is the same on purpose; only what stands here differs.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from kb_samples.making import vellamere_lamps as rows
from kb_samples.making.curves import Sensor
from kb_samples.making.vellamere_lamps import Lamp

AIR_TEMPS = (-20, -10, -5, 0, 5, 10, 15, 20, 25, 30, 40, 50)
HOT_TEMPS = (0, 10, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120)


@dataclass(frozen=True)
class Stop:
    """A protection stop and the number of them that locks the unit out."""

    name: str
    limit: str
    counted: str
    count: int


@dataclass(frozen=True)
class Family:
    """Every figure in which the two manuals differ."""

    name: str
    outdoor: tuple[str, ...]
    indoor: tuple[str, ...]
    number: str
    revision: str
    issued: date
    window_s: int
    repeat_s: int
    lamps: tuple[Lamp, ...]
    stops: tuple[Stop, ...]
    sensors: tuple[Sensor, Sensor, Sensor]
    start_delay_s: int
    off_time_min: int
    reset_wait_min: int
    second_window_min: int
    second_wait_min: int
    order: str
    standby_below: int
    back_from: int
    back_to: int
    back_hold_s: int
    give_up_min: int
    sag: int
    sag_floor: int
    reset_off: str
    supplies: str
    erases: str
    bleed_min: int
    bleed_volts: int
    points: str
    bus_low: int
    bus_high: int
    pfc: str
    logic: str
    command: str
    swing: str
    stuck: str
    winding: str
    winding_spread: str
    insulation: str
    valve: str
    reactor: str
    open_short: tuple[str, str]
    hot_open_short: tuple[str, str]
    charge: tuple[str, ...]
    current: tuple[str, ...]


def _sensors(air: Sensor, coil: Sensor, hot: Sensor) -> tuple[Sensor, Sensor, Sensor]:
    return air, coil, hot


HERON_LAMPS = (
    rows.air_sensor(1, 30),
    rows.coil_sensor(2, 3),
    rows.discharge_sensor(3, 3),
    rows.discharge_hot(4, 115, 80, 3),
    rows.high_pressure(5, 3),
    rows.overcurrent(6, 22, 3),
    rows.bus(7, 230, 420, 10),
    rows.start_failure(8, 6, 3),
    rows.fan_motor(9, 3, 30),
    rows.no_message(10, 60),
    rows.current_sensor(11),
    rows.heat_sink(12, 92, 70, 3),
    rows.stored_data(13),
)

# The same counts, and some of them mean something else.
TERN_LAMPS = (
    rows.air_sensor(1, 25),
    rows.coil_sensor(2, 4),
    rows.discharge_hot(3, 108, 75, 4),
    rows.discharge_sensor(4, 4),
    rows.high_pressure(5, 4),
    rows.start_failure(6, 8, 4),
    rows.bus(7, 240, 430, 15),
    rows.overcurrent(8, 27, 4),
    rows.fan_motor(9, 5, 45),
    rows.no_message(10, 120),
    rows.heat_sink(11, 88, 65, 4),
    rows.current_sensor(12),
    rows.stored_data(13),
    rows.four_way(14),
)

HERON = Family(
    name="Heron",
    outdoor=("VEH-O26", "VEH-O35", "VEH-O50"),
    indoor=("VEH-W26", "VEH-W35", "VEH-W50"),
    number="VSM-1407",
    revision="C",
    issued=date(2021, 3, 15),
    window_s=10,
    repeat_s=10,
    lamps=HERON_LAMPS,
    stops=(
        Stop("High pressure switch 63H", "opens at 4.15 MPa", "in 60 minutes", 6),
        Stop("Overcurrent", "22 A", "in 60 minutes", 3),
        Stop("Discharge temperature", "115 °C", "in 60 minutes", 3),
        Stop("DC bus out of range", "230 V / 420 V", "in 60 minutes", 3),
        Stop("Heat sink temperature", "92 °C", "in 60 minutes", 4),
        Stop("Compressor start failure", "no position in 6 s", "in a row", 8),
    ),
    sensors=_sensors(
        Sensor("TH1", "Outdoor air sensor", 15.0, 25, 3560, 3, AIR_TEMPS),
        Sensor("TH2", "Outdoor coil sensor", 10.0, 25, 3610, 3, AIR_TEMPS),
        Sensor("TH3", "Discharge sensor", 49.0, 80, 4085, 4, HOT_TEMPS),
    ),
    start_delay_s=20,
    off_time_min=3,
    reset_wait_min=4,
    second_window_min=60,
    second_wait_min=15,
    order="The compressor starts first. The outdoor fan follows 10 seconds later, and "
    "the indoor fan runs as it is set.",
    standby_below=187,
    back_from=198,
    back_to=253,
    back_hold_s=60,
    give_up_min=10,
    sag=15,
    sag_floor=198,
    reset_off="60 seconds",
    supplies="The indoor unit takes its supply from the outdoor unit over terminals 1 "
    "and 2; one isolator switches both.",
    erases="the lamp display and all counts of protection stops. The last fault stays "
    "in memory and can be called up with push button SW3 (hold for 5 seconds)",
    bleed_min=10,
    bleed_volts=42,
    points="TP1 and TP2",
    bus_low=230,
    bus_high=420,
    pfc="355 to 375 V DC",
    logic="14.3 to 15.7 V DC",
    command="0 V stopped, 2.0 to 6.5 V turning",
    swing="between 10 V and 30 V DC",
    stuck="30 to 34 V DC",
    winding="0.92 ohm",
    winding_spread="0.10 ohm",
    insulation="2 Mohm",
    valve="46 ohm, plus or minus 3 ohm",
    reactor="0.3 ohm or less",
    open_short=("above 500 kohm", "below 0.5 kohm"),
    hot_open_short=("above 2 Mohm", "below 0.4 kohm"),
    charge=("0.78 kg", "0.95 kg", "1.20 kg"),
    current=("8.5 A", "10.2 A", "14.0 A"),
)


TERN = Family(
    name="Tern",
    outdoor=("VET-O35", "VET-O50", "VET-O71"),
    indoor=("VET-W35", "VET-W50", "VET-W71"),
    number="VSM-1522",
    revision="B",
    issued=date(2023, 5, 8),
    window_s=8,
    repeat_s=10,
    lamps=TERN_LAMPS,
    stops=(
        Stop("High pressure switch 63H", "opens at 4.30 MPa", "in 40 minutes", 4),
        Stop("Overcurrent", "27 A", "in 60 minutes", 5),
        Stop("Discharge temperature", "108 °C", "in 90 minutes", 4),
        Stop("DC bus out of range", "240 V / 430 V", "in 60 minutes", 4),
        Stop("Heat sink temperature", "88 °C", "in 60 minutes", 3),
        Stop("Compressor start failure", "no position in 8 s", "in a row", 6),
    ),
    sensors=_sensors(
        Sensor("TH1", "Outdoor air sensor", 10.0, 25, 3740, 3, AIR_TEMPS),
        Sensor("TH2", "Outdoor coil sensor", 15.0, 25, 3395, 3, AIR_TEMPS),
        Sensor("TH3", "Discharge sensor", 53.0, 80, 4170, 4, HOT_TEMPS),
    ),
    start_delay_s=45,
    off_time_min=4,
    reset_wait_min=5,
    second_window_min=120,
    second_wait_min=25,
    order="The outdoor fan starts first. The compressor follows 5 seconds later, and "
    "the indoor fan runs as it is set.",
    standby_below=180,
    back_from=200,
    back_to=253,
    back_hold_s=90,
    give_up_min=15,
    sag=12,
    sag_floor=200,
    reset_off="3 minutes",
    supplies="The indoor unit has a supply of its own. Both isolators have to be off "
    "at the same time; one after the other does not reset the unit.",
    erases="the lamp display, all counts of protection stops and the memory. Nothing "
    "can be called up afterwards",
    bleed_min=12,
    bleed_volts=36,
    points="TP1 and TP2, and again TP5 and TP6",
    bus_low=240,
    bus_high=430,
    pfc="375 to 395 V DC",
    logic="13.6 to 14.8 V DC",
    command="0 V stopped, 1.5 to 5.5 V turning",
    swing="between 12 V and 48 V DC",
    stuck="48 to 54 V DC",
    winding="1.38 ohm",
    winding_spread="0.15 ohm",
    insulation="3 Mohm",
    valve="92 ohm, plus or minus 7 ohm",
    reactor="0.4 ohm or less",
    open_short=("above 400 kohm", "below 0.6 kohm"),
    hot_open_short=("above 3 Mohm", "below 0.5 kohm"),
    charge=("0.92 kg", "1.15 kg", "1.58 kg"),
    current=("9.8 A", "13.6 A", "18.5 A"),
)
