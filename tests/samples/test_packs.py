"""The sample packs: they load, every source stands, and every row leads somewhere.

The quotes are proved here against the pages as they are read into a library; none is
built.
"""

from __future__ import annotations

import csv
import math
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import get_args

import pytest

from assistant.checks.kinds import ResistanceTable
from assistant.rules.applicability import Plate
from assistant.rules.inforce import in_force
from assistant.rules.kinds import Card, ComplaintCall, PackDocument, StopCall
from assistant.rules.loader import load_pack, load_pack_with_lines
from assistant.rules.mistakes import Mistake
from assistant.rules.pack import Pack
from assistant.rules.verify import verify_pack
from assistant.signals.kinds import SignalItem
from assistant.timing.stop_kinds import Stop, resets_at
from assistant.timing.wait_kinds.every import Wait
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.sniff import PDF

SAMPLES = Path(__file__).parents[2] / "kb_samples"
FOLDERS = sorted(path for path in (SAMPLES / "packs").iterdir() if path.is_dir())
NAMES = [path.name for path in FOLDERS]
MAKERS = ["ondreval-pochard", "skarnvik-lomvi", "vellamere-heron", "vellamere-tern"]
POINTS_ELSEWHERE = {
    "ondreval-pochard/operation-41",
    "vellamere-heron/indoor-run-lamp",
    "vellamere-tern/indoor-run-lamp",
}
"""Lamps that only say: look at the other box."""
LAST_RESORT = {
    "skarnvik-lomvi/indoor-board-fan",
    "skarnvik-lomvi/main-board",
    "vellamere-heron/outdoor-board",
    "vellamere-tern/outdoor-board",
}
"""Boards that the literature suspects only when all else is proved."""
EVERYBODY = {"customer", "maintenance", "technician", "licensed technician"}


@cache
def pack_of(name: str) -> Pack:
    return load_pack(SAMPLES / "packs" / name)


@cache
def pages_of(title: str) -> tuple[str, ...]:
    """Pages of a document by its title, white space folded; none: not there."""
    for path in sorted((SAMPLES / "literature").iterdir()):
        if path.suffix == ".pdf":
            facts, *pages = read_file(path, PDF)
            found = facts.title if isinstance(facts, FileFacts) else None
            texts = [page.text for page in pages if isinstance(page, RawPage)]
        else:
            texts = [path.read_text(encoding="utf-8")]
            found = texts[0].splitlines()[0]
        if found == title:
            return tuple(" ".join(text.split()) for text in texts)
    return ()


def page_text(document: PackDocument, page: int) -> str | None:
    pages = pages_of(document.title)
    return pages[page - 1] if 1 <= page <= len(pages) else None


def proved(name: str) -> tuple[Mistake, ...]:
    pack, lines = load_pack_with_lines(SAMPLES / "packs" / name)
    return verify_pack(pack, page_text, lines)


def suspected(pack: Pack) -> set[str]:
    """Global ids of every cause that a lamp, a counter or a call names."""
    named = [
        *(name for row in pack.rows for name in row.causes),
        *(name for row in pack.stops for name in row.causes),
        *(
            name
            for row in pack.procedures
            if isinstance(row, ComplaintCall)
            for name in row.causes
        ),
    ]
    return {name if "/" in name else f"{pack.head.id}/{name}" for name in named}


@pytest.mark.parametrize("name", NAMES)
def test_a_sample_pack_loads_under_its_own_name_and_stands_on_its_pages(
    name: str,
) -> None:
    errors = [each for each in proved(name) if each.severity == "error"]

    assert pack_of(name).head.id == name
    assert errors == []


def test_only_the_counts_that_a_bulletin_leaves_to_the_manual_are_warned_of() -> None:
    warned = {str(each).split(":")[0] for name in NAMES for each in proved(name)}

    assert warned <= {
        (SAMPLES / "packs" / "vellamere-vsb-2231" / "signals.yaml").as_posix()
    }


@pytest.mark.parametrize("name", NAMES)
def test_the_revision_a_pack_names_is_printed_in_the_document(name: str) -> None:
    for document in pack_of(name).head.documents.values():
        opening = " ".join(pages_of(document.title)[:2]).casefold()
        words = ("revision", "rev.", "issue")

        assert opening
        assert document.date is not None
        assert document.date in opening
        assert document.revision == "" or any(
            f"{word} {document.revision}".casefold() in opening for word in words
        )


@pytest.mark.parametrize("name", NAMES)
def test_every_fault_leads_to_causes_and_no_normal_state_does(name: str) -> None:
    for row in pack_of(name).rows:
        gid = f"{name}/{row.id}"

        assert bool(row.causes) == (row.is_fault and gid not in POINTS_ELSEWHERE), gid


@pytest.mark.parametrize("name", NAMES)
def test_every_cause_is_suspected_by_something_and_moved_by_some_check(
    name: str,
) -> None:
    pack = pack_of(name)
    causes = {f"{name}/{row.id}" for row in pack.causes}
    moved = {
        f"{name}/{cause}"
        for check in pack.checks
        for outcome in check.outcomes
        for cause in outcome.moves
    }
    everywhere = set().union(*(suspected(pack_of(other)) for other in NAMES))

    assert causes <= everywhere
    assert causes - moved <= LAST_RESORT


@pytest.mark.parametrize("name", NAMES)
def test_every_check_tells_something_of_a_cause_that_is_suspected(name: str) -> None:
    everywhere = set().union(*(suspected(pack_of(other)) for other in NAMES))
    for check in pack_of(name).checks:
        moves = [outcome.moves for outcome in check.outcomes]

        assert {f"{name}/{c}" for move in moves for c in move} & everywhere, check.id
        assert any(move != moves[0] for move in moves[1:]), check.id


@pytest.mark.parametrize("name", NAMES)
def test_a_reference_to_another_pack_names_a_row_of_it(name: str) -> None:
    named = suspected(pack_of(name)) | {
        row for entry in pack_of(name).head.supersedes for row in entry.rows
    }
    held = {
        f"{other}/{item.id}"
        for other in NAMES
        for kind in ("signals", "stops", "causes")
        for item in getattr(pack_of(other), kind)
    }

    assert named <= held


@pytest.mark.parametrize("name", NAMES)
def test_looks_are_for_everybody_and_gauges_for_a_licence(name: str) -> None:
    for check in pack_of(name).checks:
        allowed = set(check.allowed_for)
        match check.needs:
            case "look":
                assert {"technician", "licensed technician"} <= allowed
            case "gauges" | "opens_circuit":
                assert allowed == {"licensed technician"}
            case _:
                assert allowed == {"technician", "licensed technician"}
        if "customer" in allowed:
            assert allowed == EVERYBODY
            assert check.needs == "look"


@pytest.mark.parametrize("name", NAMES)
def test_a_part_is_ordered_only_after_a_proof_that_is_written_down(name: str) -> None:
    for cause in pack_of(name).causes:
        assert (cause.part is None) == (cause.before_ordering is None), cause.id
        assert cause.part or cause.remedy, cause.id


@pytest.mark.parametrize("name", MAKERS)
def test_a_board_is_never_a_likelier_cause_than_its_plug(name: str) -> None:
    frequency = {row.id: row.frequency for row in pack_of(name).causes}
    boards = {i for i in frequency if "board" in i and i != "fan-board-tripped"}

    assert boards
    assert {frequency[board] for board in boards} == {"rare"}


@pytest.mark.parametrize("name", MAKERS)
def test_a_maker_pack_is_enough_to_work_a_case(name: str) -> None:
    pack = pack_of(name)
    kinds = {check.kind for check in pack.checks}

    assert len(pack.checks) >= 10
    assert {"look", "thermistor", "supply_voltage", "standby_bus", "band"} <= kinds
    assert any(not row.is_fault for row in pack.rows)
    assert any(row.latched and row.stops for row in pack.rows)
    waits = {wait.kind for wait in pack.waits}
    assert {"startup_order", "minimum_off", "standby"} <= waits
    assert {"power_off_hold", "reset_window"} & waits
    for stop in pack.stops:
        resets = [reset for _, reset in resets_at(stop)]
        ends_alone = stop.kind in {"auto_release", "log_only"}

        assert bool(resets) != ends_alone, stop.id
        assert all(reset.off_at_least for reset in resets), stop.id


@pytest.mark.parametrize("name", MAKERS)
def test_a_sensor_table_falls_smoothly_over_the_whole_range(name: str) -> None:
    for sensor in pack_of(name).sensors:
        assert isinstance(sensor, ResistanceTable)
        rows = [(p.temperature.value, p.resistance.value) for p in sensor.points]
        betas = [
            math.log(r1 / r2) / (1 / t1 - 1 / t2)
            for (t1, r1), (t2, r2) in pairwise(rows)
        ]

        assert len(rows) >= 12
        assert rows == sorted(rows)
        # A thermistor's B lies between 3000 and 4500 K (common practice, no source);
        # a slip of one digit in a row shows as a jump of B between neighbours.
        assert all(3000 < beta < 4500 for beta in betas)
        assert all(abs(b - a) < 0.08 * a for a, b in pairwise(betas))


@pytest.mark.parametrize("name", MAKERS)
def test_the_figures_of_a_table_row_stand_in_its_own_quote(name: str) -> None:
    for path in sorted((SAMPLES / "packs" / name / "tables").glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                words = row["quote"].split()

                assert words[0] == row["temperature degC"], path.name
                assert row["resistance kohm"] in words[1:], path.name


def kinds_of(union: object) -> set[str]:
    """Return the names of all kinds that a discriminated union holds."""
    models = get_args(get_args(union)[0])
    return {get_args(model.model_fields["kind"].annotation)[0] for model in models}


@pytest.mark.parametrize(
    ("union", "family"), [(SignalItem, "signals"), (Wait, "waits"), (Stop, "stops")]
)
def test_every_kind_that_can_be_written_has_a_sample_row(
    union: object, family: str
) -> None:
    written = {row.kind for name in NAMES for row in getattr(pack_of(name), family)}

    assert kinds_of(union) == written


def test_a_leak_alarm_stops_the_work_and_a_fault_of_its_sensor_does_not() -> None:
    pack = pack_of("ondreval-smew")
    (stop,) = [item for item in pack.cautions if isinstance(item, StopCall)]
    rows = {row.id: row for row in pack.rows}
    alarms = [rows[name] for name in ("code-j20", "lamps-alarm")]
    faults = [rows[name] for name in ("code-j25", "code-j26", "code-j27", "code-j28")]

    # OSG-325, PDF page 4: J20 is an alarm, J25 to J28 are faults of the sensor.
    assert all(row.latched and "refrigerant-leak" in row.causes for row in alarms)
    assert all("refrigerant-leak" not in row.causes for row in faults)
    assert not any("J25" in phrase or "J26" in phrase for phrase in stop.phrases)
    assert any("J20" in phrase for phrase in stop.phrases)


def test_sister_series_disagree_on_purpose_and_say_so_by_page() -> None:
    heron = {row.id: row for row in pack_of("vellamere-heron").rows}
    tern = {row.id: row for row in pack_of("vellamere-tern").rows}
    # Lamp tables of VSM-1407 and VSM-1522, pages 11 and 12.
    differ = {"amber-3", "amber-4", "amber-6", "amber-8", "amber-11", "amber-12"}

    for name in sorted(differ):
        mine, theirs = heron[name].meaning.split(), tern[name].meaning.split()

        assert mine[:2] != theirs[:2], name
    assert "amber-14" in tern
    assert "amber-14" not in heron


@pytest.mark.parametrize(
    ("plate", "shown"),
    [
        # Bulletin page 2: the label on the board decides; VEH-O26 is not concerned.
        ({"outdoor_model": "VEH-O35", "board_mark": "blue label"}, {"blue-6"}),
        ({"outdoor_model": "VEH-O35", "board_mark": "white label"}, {"amber-6"}),
        ({"outdoor_model": "VEH-O35"}, {"amber-6", "blue-6"}),
        (
            {"outdoor_model": "VEH-O35", "serial": "2240-00012"},
            {"amber-6", "blue-6"},
        ),
        ({"outdoor_model": "VEH-O26", "board_mark": "blue label"}, {"amber-6"}),
        ({"outdoor_model": "VET-O35", "board_mark": "blue label"}, {"amber-6"}),
    ],
)
def test_the_label_on_the_board_decides_between_manual_and_bulletin(
    plate: dict[str, str], shown: set[str]
) -> None:
    force = in_force([pack_of(name) for name in NAMES], Plate(**plate))
    six = {
        row.gid.partition("/")[2]
        for row in force.signals
        if row.gid.endswith("-6") and not row.gid.startswith("skarnvik")
    }

    assert six == shown


def test_common_practice_brings_two_calls_two_cards_and_its_own_dangers() -> None:
    pack = pack_of("common")
    calls = {row.complaint for row in pack.procedures if isinstance(row, ComplaintCall)}
    cards = {row.when: row for row in pack.procedures if isinstance(row, Card)}
    items = (*pack.checks, *pack.causes, *pack.procedures)
    first = " ".join(cards["first_minute"].steps)

    assert calls == {"no_cooling", "breaker_trips"}
    assert set(cards) == {"first_minute", "before_reset"}
    assert all(word in first for word in ("20 seconds", "nameplates", "wiring", "mode"))
    assert {item.note for item in items} == {"common practice, no source"}
    assert any(isinstance(row, StopCall) for row in pack.cautions)


def test_a_shop_rule_names_who_wrote_it_and_when() -> None:
    head = pack_of("otter-narrows").head

    assert head.kind == "shop"
    assert head.author
    assert head.date == "2024-05-06"


def test_no_complaint_of_common_practice_measures_what_a_maker_measures() -> None:
    # A supply or a sensor told once must fall to one check only.
    kinds = {check.kind for check in pack_of("common").checks}

    assert kinds == {"look"}
