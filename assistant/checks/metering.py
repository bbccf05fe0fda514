"""A meter's figures from text: percent, digits, resolution and the end of a range."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.checks.inputs import COUNT, READING, Input, read_inputs
from assistant.checks.kinds import MeterRange
from assistant.errors import UsageError

_INPUTS = (
    Input("percent", "ratio", "0.5 %", "share of the reading", required=True),
    Input("digits", COUNT, "2", "counts of the last digit", required=True),
    Input("resolution", READING, "0.1 V", "one count of the range", required=True),
    Input("up_to", READING, "600 V", "end of the range"),
)


def figures_of(given: Mapping[str, str]) -> MeterRange:
    """Return a meter's figures on one range.

    Parameters
    ----------
    given : mapping of str to str
        ``percent``, ``digits``, ``resolution`` and perhaps ``up_to``.

    Raises
    ------
    UsageError
        When one is missing, cannot be read, or they are in two units.

    Examples
    --------
    >>> told = {"percent": "0.5 %", "digits": "2", "resolution": "0.1 V"}
    >>> figures_of(told).digits
    2
    """
    values, _ = read_inputs("meter", _INPUTS, given)
    resolution, end = values.quantity("resolution"), values.maybe("up_to")
    if end is not None and end.unit != resolution.unit:
        raise UsageError(
            f"up_to={end.text!r} is not in the unit of resolution={resolution.text!r}",
            "give both in volts, both in ohms, or both in amperes",
        )
    return MeterRange(
        percent=values.number("percent") * 100,
        digits=int(values.number("digits")),
        resolution=resolution,
        up_to=end,
    )
