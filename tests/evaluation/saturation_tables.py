"""Makes the committed saturation tables from the pinned CoolProp.

Run it only to renew them: ``python tests/evaluation/saturation_tables.py`` rewrites
``assistant/checks/saturation_table.py``. The version is pinned in the test extra,
because the model of R-454B changed with it.

R-410A and R-407C are CoolProp's pseudo-pure fluids. R-454B and R-452B are mixtures: a
plain call fails at some temperatures, so the phase envelope is built first and only
the two saturated states are asked for.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

VERSION = "8.0.0"
LOWEST, HIGHEST, STEP = 213.15, 339.15, 3.0
"""K: -60 to 66 °C, so that the stated -40 to 65 °C lie well inside."""
SLOPE_STEP = 0.02
"""K either way for the slope, where rounding and curvature are both far below 1e-6."""
TARGET = (
    Path(__file__).resolve().parents[2] / "assistant" / "checks" / "saturation_table.py"
)

PURE = {"R-22": "R22", "R-32": "R32", "R-134a": "R134a", "R-290": "R290"}
PSEUDO = {"R-407C": "R407C", "R-410A": "R410A"}
MIXED: dict[str, dict[str, float]] = {
    "R-452B": {"R32": 0.67, "R125": 0.07, "R1234yf": 0.26},
    "R-454B": {"R32": 0.689, "R1234yf": 0.311},
}
"""Mass fractions of ASHRAE 34."""

Pressure = Callable[[float], float]


def source(refrigerant: str, quality: int) -> Pressure:
    """Return CoolProp's saturation pressure [Pa] over temperature [K]."""
    from CoolProp.CoolProp import QT_INPUTS, AbstractState, PropsSI

    if refrigerant in MIXED:
        parts = MIXED[refrigerant]
        state = AbstractState("HEOS", "&".join(parts))
        state.set_mass_fractions(list(parts.values()))
        state.build_phase_envelope("none")

        def mixed(temperature: float) -> float:
            state.update(QT_INPUTS, quality, temperature)
            return float(state.p())

        return mixed
    fluid = (PURE | PSEUDO)[refrigerant]
    return lambda temperature: float(
        PropsSI("P", "T", temperature, "Q", quality, fluid)
    )


def curve(pressure: Pressure) -> tuple[list[float], list[float]]:
    """Return ln(p / Pa) at the stated temperatures and its slope over 1/T [K]."""
    count = round((HIGHEST - LOWEST) / STEP) + 1
    logs, slopes = [], []
    for place in range(count):
        t = LOWEST + place * STEP
        rise = math.log(pressure(t + SLOPE_STEP) / pressure(t - SLOPE_STEP))
        fall = 1 / (t + SLOPE_STEP) - 1 / (t - SLOPE_STEP)
        logs.append(math.log(pressure(t)))
        slopes.append(rise / fall)
    return logs, slopes


def module() -> str:
    """Return the text of the module with all tables."""
    names = sorted(PURE | PSEUDO | MIXED)
    lines = [
        '"""Saturation of the refrigerants: ln p and its slope, at equal steps.',
        "",
        f"Made by tests/evaluation/saturation_tables.py from CoolProp {VERSION}, the",
        "version pinned in the test extra; not written by hand.",
        '"""',
        "",
        "from __future__ import annotations",
        "",
        f'MADE_FROM = "CoolProp {VERSION}"',
        f"LOWEST = {LOWEST}",
        '"""Temperature of the first row, K."""',
        f"STEP = {STEP}",
        '"""Between two rows, K."""',
        "",
        "Curve = tuple[tuple[float, ...], tuple[float, ...]]",
        '"""ln(p / Pa), and its slope over 1/T in K, at every row."""',
        "",
        "# fmt: off",
    ]
    for kind, quality in (("BUBBLE", 0), ("DEW", 1)):
        what = "liquid" if quality == 0 else "vapour"
        lines.append(f"{kind}: dict[str, Curve] = {{")
        for name in names:
            if quality and name in PURE:
                lines.append(f'    "{name}": BUBBLE["{name}"],')
                continue
            logs, slopes = curve(source(name, quality))
            lines.append(f'    "{name}": (')
            lines += _rows([f"{value:.8f}" for value in logs])
            lines += _rows([f"{value:.4f}" for value in slopes])
            lines.append("    ),")
        lines += ["}", f'"""Saturated {what}, by refrigerant."""']
    return "\n".join([*lines, ""])


def _rows(texts: list[str]) -> list[str]:
    rows, row = ["        ("], "           "
    for text in texts:
        if len(row) + len(text) + 2 > 88:
            rows.append(row)
            row = "           "
        row += f" {text},"
    return [*rows, row, "        ),"]


if __name__ == "__main__":
    TARGET.write_text(module(), encoding="utf-8")
