"""Rows of the Vellamere lamp tables: one function a fault, figures as arguments."""

from __future__ import annotations

from dataclasses import dataclass

# Printed pages of the checks that the cause table points to.
SUPPLY, SENSORS, MOTORS, CIRCUIT = "15", "16", "17", "18"


@dataclass(frozen=True)
class Lamp:
    """One row of the lamp table with its causes, most frequent first."""

    count: int
    meaning: str
    action: str
    recovery: str
    detail: str
    causes: tuple[tuple[str, str], ...]


def air_sensor(count: int, substitute: int) -> Lamp:
    """Return the row of the outdoor air sensor."""
    return Lamp(
        count,
        "Outdoor air sensor TH1 open or short",
        f"runs on at {substitute} °C",
        "by itself",
        "The reading has been outside the limits of table 8-1 for 10 seconds. The unit "
        f"goes on with a fixed outdoor temperature of {substitute} °C, so the room is "
        "still cooled and the customer may notice nothing. The display ends when the "
        "reading is back.",
        (
            ("Plug CN11 not seated", SENSORS),
            ("Sensor TH1 defective", SENSORS),
            ("Outdoor main board", SENSORS),
        ),
    )


def coil_sensor(count: int, minutes: int) -> Lamp:
    """Return the row of the outdoor coil sensor."""
    return Lamp(
        count,
        "Outdoor coil sensor TH2 open or short",
        "stops after 10 s",
        f"by itself, {minutes} min",
        "The reading has been outside the limits of table 8-1 for 10 seconds. The "
        "lead of TH2 runs over the edge of the coil plate; look for a worn sleeve "
        "before the sensor is changed.",
        (
            ("Sensor TH2 chafed at the coil plate", SENSORS),
            ("Plug CN11 not seated", SENSORS),
            ("Outdoor main board", SENSORS),
        ),
    )


def discharge_sensor(count: int, minutes: int) -> Lamp:
    """Return the row of the discharge sensor."""
    return Lamp(
        count,
        "Discharge sensor TH3 out of range",
        "stops after 10 min",
        f"by itself, {minutes} min",
        "Open or short. An open circuit is judged only when the compressor has run for "
        "10 minutes, because a cold sensor of this kind has a very high resistance. A "
        "short circuit is judged after 10 seconds.",
        (
            ("Plug CN12 not seated", SENSORS),
            ("Sensor TH3 defective", SENSORS),
            ("Outdoor main board", SENSORS),
        ),
    )


def discharge_hot(count: int, limit: int, release: int, minutes: int) -> Lamp:
    """Return the row of the discharge temperature protection."""
    return Lamp(
        count,
        f"Discharge temperature above {limit} °C",
        "stops",
        f"below {release} °C, {minutes} min",
        f"TH3 has read more than {limit} °C for 20 seconds. The compressor may start "
        f"again below {release} °C. Repeated stops after 20 to 40 minutes of running "
        "point to the circuit, stops within the first minutes to the sensor or the "
        "valve.",
        (
            ("Refrigerant circuit short of charge or restricted", CIRCUIT),
            ("Expansion valve stuck or coil open", CIRCUIT),
            ("Discharge sensor TH3 off its curve", CIRCUIT),
        ),
    )


def high_pressure(count: int, minutes: int) -> Lamp:
    """Return the row of the high pressure switch."""
    return Lamp(
        count,
        "High pressure switch 63H open",
        "stops",
        f"closed, {minutes} min",
        "The switch opens at the pressure of table 4-1 and closes by itself. On a hot "
        "day look first for what hinders the air: fluff on the coil, a hedge, a cover, "
        "two units that blow at each other.",
        (
            ("Coil dirty or air path blocked", CIRCUIT),
            ("Outdoor fan slow or stopped", MOTORS),
            ("Plug CN13 of the switch loose", CIRCUIT),
            ("Overcharge or air in the circuit", CIRCUIT),
        ),
    )


def overcurrent(count: int, amps: int, minutes: int) -> Lamp:
    """Return the row of the power module's overcurrent."""
    return Lamp(
        count,
        f"Overcurrent, power module above {amps} A",
        "stops",
        f"by itself, {minutes} min",
        f"The peak current of the power module has exceeded {amps} A. A stop within "
        "one second of the start speaks for the winding or the module, a stop at high "
        "speed for the supply or for high pressure.",
        (
            ("Supply sags at start", SUPPLY),
            ("Compressor winding unequal or to ground", MOTORS),
            ("Power module on the outdoor main board", CIRCUIT),
        ),
    )


def bus(count: int, low: int, high: int, give_up: int) -> Lamp:
    """Return the row of the DC bus."""
    return Lamp(
        count,
        f"DC bus below {low} V or above {high} V",
        "stops",
        "supply in band",
        f"Either the bus itself was below {low} V or above {high} V, or the supply did "
        f"not come back into its band within {give_up} minutes (section 3.7). Short "
        "dips in a storm or on a generator end in standby and leave no display.",
        (
            ("Supply outside its band or a loose terminal", SUPPLY),
            ("Reactor lead open", CIRCUIT),
            ("Outdoor main board", SUPPLY),
        ),
    )


def start_failure(count: int, seconds: int, minutes: int) -> Lamp:
    """Return the row of the failed compressor start."""
    return Lamp(
        count,
        "Compressor start failed, position lost",
        "stops",
        f"tries again, {minutes} min",
        f"The position of the rotor was not found within {seconds} seconds of the "
        "start, or was lost while running. After work on the unit think of exchanged "
        "leads first; after a long stop in the cold, of liquid in the compressor.",
        (
            ("Leads U V W loose or exchanged", MOTORS),
            ("Pressures not yet equal", MOTORS),
            ("Compressor seized", MOTORS),
            ("Power module on the outdoor main board", CIRCUIT),
        ),
    )


def fan_motor(count: int, tries: int, seconds: int) -> Lamp:
    """Return the row of the outdoor fan motor."""
    return Lamp(
        count,
        "Outdoor fan motor gives no pulses",
        f"stops after {tries} tries",
        "reset only",
        f"The command was given and no pulses came back for 10 seconds. The board "
        f"tries {tries} times, each time after {seconds} seconds, and then gives up. "
        "Wind from behind can turn the fan the wrong way; the board waits for it to "
        "slow down and does not count this.",
        (
            ("Fan blocked by ice or leaves", MOTORS),
            ("Plug CN20 not seated", MOTORS),
            ("Outdoor fan motor", MOTORS),
            ("Outdoor main board", MOTORS),
        ),
    )


def no_message(count: int, seconds: int) -> Lamp:
    """Return the row of the lost communication."""
    return Lamp(
        count,
        f"No message from the indoor unit for {seconds} s",
        "stops",
        "first valid message",
        f"For {seconds} seconds no valid message has arrived over terminal 3. The stop "
        "is not counted for a lockout. A joint in the cable, water in a junction box "
        "and wires 2 and 3 exchanged are found more often than a bad board.",
        (
            ("Wires 2 and 3 exchanged or a joint in the cable", SENSORS),
            ("Indoor unit without supply", SENSORS),
            ("Indoor board", SENSORS),
            ("Outdoor main board", SENSORS),
        ),
    )


def current_sensor(count: int) -> Lamp:
    """Return the row of the current sensor's zero."""
    return Lamp(
        count,
        "Current sensor not at zero when stopped",
        "no start",
        "reset only",
        "With the compressor stopped the current reading must be zero. The sensor is "
        "part of the outdoor main board; no lead or plug outside the board can cause "
        "this display.",
        (("Outdoor main board", SUPPLY),),
    )


def heat_sink(count: int, limit: int, release: int, minutes: int) -> Lamp:
    """Return the row of the heat sink temperature."""
    return Lamp(
        count,
        f"Heat sink above {limit} °C",
        "stops",
        f"below {release} °C, {minutes} min",
        f"The heat sink of the power module has been above {limit} °C for 5 seconds. "
        "The fins lie in the air stream of the outdoor fan behind the partition plate; "
        "insects and poplar fluff close them unseen.",
        (
            ("Fins of the heat sink blocked", CIRCUIT),
            ("Outdoor fan slow", MOTORS),
            ("Heat paste under the power module", CIRCUIT),
        ),
    )


def stored_data(count: int) -> Lamp:
    """Return the row of the invalid stored data."""
    return Lamp(
        count,
        "Stored data of the board not valid",
        "no start",
        "reset only",
        "The check sum of the plug-in with the model data is wrong. After a change of "
        "the board make sure that the plug-in of the old board was moved over.",
        (
            ("Plug-in missing or wrong spare board", SUPPLY),
            ("Outdoor main board", SUPPLY),
        ),
    )


def four_way(count: int) -> Lamp:
    """Return the row of the four-way valve."""
    return Lamp(
        count,
        "Four-way valve not shifted",
        "stops after 5 min",
        "reset only",
        "Five minutes after the start the coils are at the wrong temperature for the "
        "mode that was asked for. The valve needs a pressure difference to shift; a "
        "compressor that pumps badly gives the same display.",
        (
            ("Valve coil plug CN15 not seated", CIRCUIT),
            ("Valve coil open", CIRCUIT),
            ("Four-way valve stuck", CIRCUIT),
        ),
    )
