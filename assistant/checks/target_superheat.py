"""Target superheat of a fixed orifice: a published charging table, cell by cell."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

_BASIS = "the published table"
_COLUMNS = (50, 52, 54, 56, 58, 60, 62, 64, 66, 68, 70, 72, 74, 76)
_ROWS = (55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 105, 110, 115)
_WET, _DRY = 2, 5
_SLACK = 1e-6
"""K that the last bit of a converted temperature may stand beyond the table."""


def _limit(what: str, ends: tuple[int, ...]) -> Limit:
    low, high = ((end + 459.67) / 1.8 for end in (ends[0], ends[-1]))
    return Limit(what, low - _SLACK, high + _SLACK, "K", _BASIS)


OUTDOOR = _limit("outdoor dry bulb", _ROWS)
INDOOR = _limit("indoor wet bulb", _COLUMNS)

TARGET = Law(
    name="target superheat of a fixed orifice",
    formula="the table's cell; between cells, linear in both temperatures",
    source="a maker's published charging table, held cell by cell in the tests",
    limits=(OUTDOOR, INDOOR),
    note=(
        "A fixed orifice at a fixed speed only. Where the table prints a dash the "
        "charge cannot be set by superheat: weigh it in. An inverter or an "
        "expansion valve sets its own superheat."
    ),
)

# fmt: off
_CELLS: tuple[tuple[int, ...], ...] = (
    (9, 12, 14, 17, 20, 23, 26, 29, 32, 35, 37, 40, 42, 45),
    (7, 10, 12, 15, 18, 21, 24, 27, 30, 33, 35, 38, 40, 43),
    (6, 10, 13, 16, 19, 21, 24, 27, 30, 33, 36, 38, 41),
    (7, 10, 13, 16, 19, 21, 24, 27, 30, 33, 36, 39),
    (6, 9, 12, 15, 18, 21, 24, 28, 31, 34, 37),
    (5, 8, 12, 15, 18, 21, 26, 28, 31, 35),
    (8, 11, 15, 19, 22, 26, 30, 33),
    (5, 9, 13, 16, 20, 24, 27, 31),
    (6, 10, 14, 18, 22, 25, 29),
    (8, 12, 15, 20, 23, 27),
    (5, 9, 13, 17, 22, 26),
    (6, 11, 15, 20, 25),
    (8, 14, 18, 23),
)
# fmt: on
"""°F, without the leading dashes: each row ends at the last column."""


class NotBySuperheatError(OutOfRangeError):
    """The table prints a dash: the charge is not set by superheat there."""


@stated(TARGET)
def target_superheat(outdoor: float, indoor_wet_bulb: float) -> float:
    """Return the superheat that the charging table asks for.

    Parameters
    ----------
    outdoor : float
        Dry bulb of the air that enters the outdoor coil, [K].
    indoor_wet_bulb : float
        Wet bulb of the air that enters the indoor coil, [K].

    Returns
    -------
    float
        Superheat at the suction service valve, [dK].

    Raises
    ------
    NotBySuperheatError
        Where the table prints a dash, or a cell beside it does.
    OutOfRangeError
        Outside the table.

    Examples
    --------
    95 °F outdoors and 67 °F wet bulb indoors: 12 °F.

    >>> round(target_superheat((95 + 459.67) / 1.8, (67 + 459.67) / 1.8) * 1.8, 2)
    12.0
    """
    OUTDOOR.hold(outdoor)
    INDOOR.hold(indoor_wet_bulb)
    row, down = _place(outdoor * 1.8 - 459.67, _ROWS, _DRY)
    column, right = _place(indoor_wet_bulb * 1.8 - 459.67, _COLUMNS, _WET)
    found = 0.0
    for dy, weight_y in ((0, 1 - down), (1, down)):
        for dx, weight_x in ((0, 1 - right), (1, right)):
            if weight_y and weight_x:
                found += weight_y * weight_x * _cell(row + dy, column + dx)
    return found / 1.8


def _place(value: float, ends: tuple[int, ...], step: int) -> tuple[int, float]:
    """Return the cell below `value` and the share of the way to the next."""
    far = max(round((value - ends[0]) / step, 6), 0.0)
    at = min(int(far), len(ends) - 1)
    return at, far - at


def _cell(row: int, column: int) -> int:
    cells = _CELLS[row]
    place = column - (len(_COLUMNS) - len(cells))
    if place < 0:
        raise NotBySuperheatError(
            f"the table prints no superheat for {_ROWS[row]} °F outdoors with "
            f"{_COLUMNS[column]} °F wet bulb indoors: it is not charged by superheat",
            "weigh the charge in, by the plate",
        )
    return cells[place]
