"""Rows that are right in form and at odds with themselves or with their quotes."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.rules.figures import numbers_in, quantities_in
from tests.pack_folders import GOOD, changed
from tests.verified_packs import LIBRARY, SERVICE, added, line_of, verified

BAND = """\
- id: band-5v
  kind: band
  name: five volts
  needs: live
  minutes: 3
  allowed_for: [technician]
  ask: How many volts?
  points: CN1 pins 1 and 3
  {limit}
  outcomes:
    - {{result: pass, says: good, moves: {{main-board: somewhat against}}}}
    - {{result: fail, says: bad, moves: {{main-board: {move}}}}}
  source: {{doc: service, page: 41, quote: "{quote}"}}
"""


def warned(
    folder: Path, limit: str, quote: str, move: str = "strongly for"
) -> list[str]:
    """Return what is said of a check whose limit and quote are these."""
    files = added("checks.yaml", BAND.format(limit=limit, quote=quote, move=move))
    library = {**LIBRARY, "QM service manual": {**SERVICE, 41: f"measure plug {quote}"}}
    return [m.what for m in verified(folder, files, library) if "band-5v" in m.what]


@pytest.mark.parametrize(
    ("limit", "quote"),
    [
        ("low: 4.5 V", "at least 4.5 V"),
        ("high: 5.5 V", "not above 5.5 V"),
        ("low: 4.5 V", "CN1: 4.5 V or more"),
        ("low: 4.5 V\n  high: 5.5 V", "5 V ± 0.5"),
        ("low: 4.5 V\n  high: 5.5 V", "5 V, ± 10 %"),
        ("low: 4.5 V\n  high: 5.5 V", "4.5 to 5.5 V"),
        ("low: 4.5 V\n  high: 5.5 V", "the pins of CN1"),
    ],
)
def test_a_band_that_is_its_quote_is_left_alone(
    limit: str, quote: str, tmp_path: Path
) -> None:
    assert warned(tmp_path, limit, quote) == []


@pytest.mark.parametrize(
    ("limit", "quote", "said"),
    [
        (
            "low: 4.6 V\n  high: 5.5 V",
            "4.5 to 5.5 V",
            "`low` 4.6 V is not in the quote",
        ),
        ("low: 4.5 V\n  high: 5.6 V", "5 V ± 0.5", "`high` 5.6 V is not in the quote"),
        ("high: 4.5 V", "at least 4.5 V", "the quote says `at least`"),
        ("low: 4.5 V", "4.5 V or less", "the quote says `or less`"),
    ],
)
def test_a_band_that_is_not_its_quote_is_pointed_out(
    limit: str, quote: str, said: str, tmp_path: Path
) -> None:
    found = warned(tmp_path, limit, quote)

    assert any(said in what for what in found), found


def test_a_failed_check_that_clears_everything_is_pointed_out(tmp_path: Path) -> None:
    found = warned(tmp_path, "low: 4.5 V", "at least 4.5 V", "strongly against")

    assert found == ["`band-5v`: a check that fails speaks against causes and for none"]


def test_a_normal_state_that_names_causes_is_pointed_out(tmp_path: Path) -> None:
    files = changed("signals.yaml", "  is_fault: true", "  is_fault: false")

    found = [m for m in verified(tmp_path, files) if "it is no fault" in m.what]

    assert [(m.severity, m.line) for m in found] == [
        ("warning", line_of(files, "signals.yaml", "is_fault: false"))
    ]


def test_a_code_that_its_quote_does_not_name_is_pointed_out(tmp_path: Path) -> None:
    files = changed("signals.yaml", 'code: "E4"', 'code: "E6"')

    found = [m for m in verified(tmp_path, files) if "does not name it" in m.what]

    assert [m.line for m in found] == [line_of(files, "signals.yaml", 'code: "E6"')]


def test_two_cells_exchanged_are_told_by_where_the_other_rows_have_them(
    tmp_path: Path,
) -> None:
    printed = ["0 180", "20 110", "40 80", "58 62"]
    rows = ["0,180", "20,110", "40,80", "62,58"]
    text = "temperature degC,resistance kohm,page,quote\n" + "".join(
        f'{row},40,"{quote}"\n' for row, quote in zip(rows, printed, strict=True)
    )
    page = "Discharge " + " / ".join(printed)
    library = {**LIBRARY, "QM service manual": {**SERVICE, 40: page}}

    found = verified(tmp_path, {**GOOD, "tables/discharge.csv": text}, library)

    told = [m for m in found if "were the two exchanged?" in m.hint]
    assert [(m.file, m.line) for m in told] == [("tables/discharge.csv", 5)]
    assert told[0].severity == "error"


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("3 to 5 minutes", (3, 5)),
        ("twice, then once", (2, 1)),
        ("E4 and M12 and R-32", ()),
        ("−20 105 97.5", (-20, 105, 97.5)),
        ("Four flashes", (4,)),
        ("no figures here", ()),
    ],
)
def test_numbers_are_found_in_words_and_digits(
    text: str, numbers: tuple[float, ...]
) -> None:
    assert numbers_in(text) == numbers


def test_quantities_carry_their_unit() -> None:
    found = quantities_in("Off for 2 minutes at 230 V, 15 kohm")

    assert [(value, unit) for value, unit, _ in found] == [
        (120.0, "s"),
        (230.0, "V"),
        (15_000.0, "ohm"),
    ]
