"""Where a superheat or a subcooling means anything: by port, mode and valve.

A gauge shows what its port carries. In cooling with the expansion valve outdoors the
small line already carries a mixture; in heating the large line is the high side.
"""

from __future__ import annotations

from assistant.checks.gauge_kinds import Metering, Port
from assistant.record import Mode

PRESSURE = {
    "superheat": "suction pressure",
    "subcooling": "discharge pressure",
    "discharge_superheat": "discharge pressure",
}
TEMPERATURE = {
    "superheat": "suction temperature",
    "subcooling": "liquid temperature",
    "discharge_superheat": "discharge temperature",
}
"""Kind of check to the reading it needs, as it is told."""

_HOT_GAS = (
    "in heating the large line is the high side: it carries hot gas, so no superheat "
    "of the suction is read there"
)
_NO_LIQUID = (
    "with the expansion valve outdoors there is no subcooling at the service valves "
    "in cooling: the small line already carries a mixture"
)
_MIXTURE = (
    "in heating the small line is liquid only where a valve outdoors feeds the "
    "outdoor coil: with this one it already carries a mixture"
)
_SUCTION_PORTS = ("large line", "suction pipe")


def misplaced(kind: str, port: Port, mode: Mode | None, metering: Metering) -> str:
    """Return why a figure means nothing there; empty when it does.

    Parameters
    ----------
    kind : str
        ``superheat``, ``subcooling`` or ``discharge_superheat``.
    port : str
        Where the gauge is.
    mode : str or None
        Only cool and heat carry such a figure.
    metering : str
        What drops the pressure in cooling, and where it sits.

    Examples
    --------
    >>> misplaced("superheat", "large line", "cool", "valve indoors")
    ''
    >>> misplaced("superheat", "large line", "heat", "valve indoors")[:37]
    'in heating the large line is the high'
    """
    if mode not in {"cool", "heat"}:
        return f"in {mode} the lines carry nothing that can be judged" if mode else ""
    if kind == "superheat":
        return _superheat(port, mode)
    if kind == "subcooling":
        return _subcooling(port, mode, metering)
    return _discharge(port, mode)


def _superheat(port: Port, mode: Mode) -> str:
    if port not in _SUCTION_PORTS:
        return f"a suction superheat is not read at the {port}"
    return _HOT_GAS if port == "large line" and mode == "heat" else ""


def _subcooling(port: Port, mode: Mode, metering: Metering) -> str:
    if port != "small line":
        return f"a subcooling is not read at the {port}"
    if mode == "cool":
        return _NO_LIQUID if metering == "valve outdoors" else ""
    return "" if metering == "valve outdoors" else _MIXTURE


def _discharge(port: Port, mode: Mode) -> str:
    if port == "discharge pipe" or (port == "large line" and mode == "heat"):
        return ""
    return f"the {port} carries no hot gas in {'cooling' if mode == 'cool' else mode}"
