"""What speaks against a pack: sources, gaps, safe order, dead rows."""

from __future__ import annotations

from pathlib import Path

from assistant.rules.loader import load_pack_with_lines
from assistant.rules.verify import verify_pack
from tests.pack_folders import GOOD, changed, write_pack
from tests.verified_packs import (
    LIBRARY,
    SERVICE,
    added,
    line_of,
    pages,
    verified,
)


def test_a_pack_that_keeps_its_word_has_nothing_against_it(tmp_path: Path) -> None:
    library = {**LIBRARY, "QM service manual": {**SERVICE, 2: "Stored charge"}}

    assert verified(tmp_path, GOOD, library) == []


def test_a_document_not_held_is_told_once_with_the_way_out(tmp_path: Path) -> None:
    found = verified(tmp_path, GOOD, {"QM service manual": SERVICE})

    assert len(found) == 1
    assert str(found[0]) == (
        f"pack.yaml:{line_of(GOOD, 'pack.yaml', '  bulletin:')}: `bulletin` (QM "
        "bulletin 7, revision A) is not in the library; add the document first: "
        "faultleaf add PATH"
    )


def test_a_page_that_is_not_there_is_told(tmp_path: Path) -> None:
    files = changed("signals.yaml", "page: 33", "page: 330")

    (found,) = verified(tmp_path, files)

    assert found.line == line_of(files, "signals.yaml", "page: 330")
    assert "QM service manual has no page 330" in found.what


def test_a_quote_on_the_next_page_is_told_where_it_stands(tmp_path: Path) -> None:
    files = changed("signals.yaml", "page: 33", "page: 34")

    (found,) = verified(tmp_path, files)

    assert "`E4` does not stand on page 34" in found.what
    assert found.hint == "it stands on page 33"


def test_a_quote_keeps_its_case_and_may_break_its_lines(tmp_path: Path) -> None:
    files = changed("signals.yaml", 'quote: "E4"', 'quote: "e4"')

    (found,) = verified(tmp_path, files)

    assert found.hint == "it stands there in other capitals"
    # "3 times in 60 minutes", over two lines of page 14, is found: nothing else told.
    assert found.line == line_of(files, "signals.yaml", 'quote: "e4"')


def test_each_row_of_a_table_is_proved_at_its_own_line(tmp_path: Path) -> None:
    files = changed("tables/discharge.csv", '"20 68"', '"68 20"')

    (found,) = verified(tmp_path, files)

    assert (found.file, found.line) == ("tables/discharge.csv", 3)


def test_a_point_that_is_not_its_own_quote_is_told_at_its_line(tmp_path: Path) -> None:
    files = changed("tables/discharge.csv", "20,68,", "20,86,")

    (found,) = verified(tmp_path, files)

    assert (found.file, found.line, found.severity) == (
        "tables/discharge.csv",
        3,
        "error",
    )
    assert "86 kohm is not in the quote `20 68`" in found.what


def test_a_count_that_is_not_the_one_of_its_quote_is_told(tmp_path: Path) -> None:
    files = changed("signals.yaml", "  count: 4\n", "  count: 5\n")

    found = [m for m in verified(tmp_path, files) if "quote says" in m.what]

    assert [m.severity for m in found] == ["error"]
    assert found[0].line == line_of(files, "signals.yaml", "count: 5")


def test_a_time_that_only_the_quote_has_is_pointed_out(tmp_path: Path) -> None:
    files = changed("waits.yaml", "minimum: 3 min", "minimum: 4 min")

    found = [m for m in verified(tmp_path, files) if "the quote says" in m.what]

    assert [(m.severity, m.file) for m in found] == [("warning", "waits.yaml")]
    assert "`3 minutes`" in found[0].what


def test_a_supersession_is_proved_too(tmp_path: Path) -> None:
    files = changed("pack.yaml", "replaces the row", "withdraws the row")

    (found,) = verified(tmp_path, files)

    assert (found.file, found.line) == (
        "pack.yaml",
        line_of(files, "pack.yaml", "quote:"),
    )


def test_a_quote_is_no_part_of_a_longer_word_or_number(tmp_path: Path) -> None:
    files = changed("signals.yaml", 'page: 33, quote: "E4"', 'page: 33, quote: "4"')

    found = verified(tmp_path, files)

    assert any("`4` does not stand on page 33" in m.what for m in found)


def test_a_count_left_out_of_a_table_is_told_with_what_would_be_answered(
    tmp_path: Path,
) -> None:
    rows = "".join(
        f"- id: red-{n}\n  kind: group_then_pause\n  lamp: {{colour: red}}\n"
        f"  count: {n}\n  meaning: m{n}\n  is_fault: true\n"
        '  source: {doc: service, page: 31, quote: "flashes"}\n'
        for n in (1, 2, 3, 4, 6, 7, 8)
    )
    files = added("signals.yaml", rows)

    (found,) = verified(tmp_path, files)

    assert found.severity == "warning"
    assert found.line == line_of(files, "signals.yaml", "- id: red-6")
    assert "red: 5 flashes" in found.what
    assert "not in this document" in found.hint


def test_a_wait_without_an_end_keeps_a_pack_out(tmp_path: Path) -> None:
    files = changed("waits.yaml", "  minimum: 3 min\n  give_up: 10 min\n", "")

    (found,) = verified(tmp_path, files)

    assert (found.file, found.line, found.severity) == ("waits.yaml", 1, "error")
    assert "has no end" in found.what


def test_a_power_reset_without_a_time_off_keeps_a_pack_out(tmp_path: Path) -> None:
    files = changed("stops.yaml", "      off_at_least: 30 s\n", "")

    (found,) = verified(tmp_path, files)

    assert found.line == line_of(files, "stops.yaml", "- name: power")
    assert "names no time off" in found.what


def test_a_row_whose_scope_fits_no_unit_of_the_pack_is_dead(tmp_path: Path) -> None:
    files = changed("signals.yaml", "- board_mark: orange dot", '- voltage: "115"')

    found = [m for m in verified(tmp_path, files) if "fits no unit" in m.what]

    assert len(found) == 1
    assert found[0].severity == "error"
    assert found[0].line == line_of(files, "signals.yaml", "applies_to:")


def test_a_row_replaced_everywhere_is_dead(tmp_path: Path) -> None:
    files = changed("signals.yaml", "  applies_to:\n    - board_mark: orange dot\n", "")

    found = verified(tmp_path, files)

    assert [m.severity for m in found] == ["warning"]
    assert "`amber-4-late` replaces it on every unit" in found[0].what


def test_a_cause_that_nothing_names_and_an_idle_check_are_dead(tmp_path: Path) -> None:
    cause = """\
- id: nobody
  kind: part
  name: nobody
  frequency: rare
  source: {doc: service, page: 31, quote: "board"}
"""
    idle = """\
- id: idle
  kind: look
  name: idle
  needs: look
  minutes: 1
  allowed_for: [customer]
  ask: Is it there?
  options: ["there", "gone"]
  outcomes:
    - {result: "there", says: it is there}
    - {result: "gone", says: it is gone}
  source: {doc: service, page: 41, quote: "plug"}
"""
    files = {
        **GOOD,
        "causes.yaml": GOOD["causes.yaml"] + cause,
        "checks.yaml": GOOD["checks.yaml"] + idle,
    }

    found = verified(tmp_path, files)

    assert [(m.file, m.severity) for m in found] == [
        ("causes.yaml", "warning"),
        ("checks.yaml", "warning"),
    ]
    assert "never suspected" in found[0].what
    assert "never the next check" in found[1].what


def test_without_lines_the_file_is_still_named(tmp_path: Path) -> None:
    pack, _ = load_pack_with_lines(
        write_pack(tmp_path, changed("signals.yaml", "page: 33", "page: 330"))
    )

    (found,) = verify_pack(pack, pages(LIBRARY))

    assert (found.file, found.line) == ("signals.yaml", 0)


def test_a_quote_on_a_page_read_by_ocr_is_for_a_person_to_confirm(
    tmp_path: Path,
) -> None:
    pack, lines = load_pack_with_lines(write_pack(tmp_path, GOOD))

    found = verify_pack(
        pack, pages(LIBRARY), lines, recognised=lambda _, page: page == 33
    )

    assert found
    assert {each.severity for each in found} == {"warning"}
    assert all("page 33 of" in each.what for each in found)
    assert all("was read by OCR" in each.what for each in found)
    assert {each.hint for each in found} == {
        "a person must confirm the quote on the page itself"
    }


def test_rows_of_other_packs_are_looked_for_among_those_in_force(
    tmp_path: Path,
) -> None:
    files = changed("pack.yaml", "rows: [amber-4]", "rows: [other/amber-4, gone/x]")
    files["signals.yaml"] = files["signals.yaml"].replace(
        "causes: [main-board]", "causes: [other/mainboard]"
    )
    held = {"other": frozenset({"amber-4", "main-board"})}
    pack, lines = load_pack_with_lines(write_pack(tmp_path, files))

    found = verify_pack(pack, pages(LIBRARY), lines, elsewhere=held.get)

    told = [(m.severity, m.what, m.hint) for m in found if "pack `" in m.what]
    assert told == [
        ("warning", "supersedes: no pack `gone` is in force, which `gone/x` names",
         "add that pack as well"),
        ("error", "`amber-4-late`: pack `other` has no `mainboard`",
         "did you mean `main-board`?"),
    ]  # fmt: skip


def test_a_source_inside_a_row_is_proved_as_well(tmp_path: Path) -> None:
    row = """\
- id: slow-1
  kind: rate_blink
  lamp: {label: LD9}
  rate_class: slow
  rate:
    hz_low: 0.5
    hz_high: 0.5
    defined_in: {doc: service, page: 31, quote: "slow is once in 2 s"}
  meaning: standby
  is_fault: false
  source: {doc: service, page: 30, quote: "LD1 lit"}
"""
    files = added("signals.yaml", row)

    (found,) = verified(tmp_path, files)

    assert found.line == line_of(files, "signals.yaml", "defined_in")
    assert "`slow is once in 2 s` does not stand on page 31" in found.what


def test_the_lamp_of_a_level_in_another_pack_is_looked_for_there(
    tmp_path: Path,
) -> None:
    row = """\
- id: two-levels
  kind: levels
  name: lockouts
  event: high pressure
  levels:
    - {name: soft, limit: 2, window: 5 h, edge: counts, signal: other/soft,
       release: by itself}
    - {name: hard, limit: 3, window: 9 h, edge: counts, signal: other/hart,
       release: by itself}
  source: {doc: service, page: 14, quote: "3 times"}
"""
    files = added("stops.yaml", row)
    pack, lines = load_pack_with_lines(write_pack(tmp_path, files))
    held = {"other": frozenset({"soft", "hard"})}

    found = verify_pack(pack, pages(LIBRARY), lines, elsewhere=held.get)

    told = [m for m in found if "pack `" in m.what]
    assert [(m.what, m.hint) for m in told] == [
        ("`two-levels`: pack `other` has no `hart`", "did you mean `hard`?")
    ]
    assert told[0].line == line_of(files, "stops.yaml", "signal: other/hart")
