"""What holds for rows of every scheme, whatever their numbers."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.signals.decode import decode
from assistant.signals.observation import Observation, SignalRow
from assistant.signals.sights import sight_of
from tests.scheme_pack import scheme_rows
from tests.signal_rows import ids, row

ROWS = scheme_rows()
A = {"label": "A", "colour": "green"}
B = {"label": "B", "colour": "red"}
C = {"label": "C", "colour": "blue"}
digit = st.integers(0, 9)
count = st.integers(1, 20)
OPEN_TO_FORGETTING = (
    "box",
    "board",
    "label",
    "colour",
    "pause",
    "window_s",
    "rate",
    "rate_hz",
    "phase",
    "first",
    "long_count",
    "sub",
    "display_level",
    "unit_state",
    "conditions",
    "mode",
    "stored",
)
"""Slots that a person may leave out."""


def short_long(pair: tuple[int, int]) -> SignalRow:
    short, long = pair
    return row(f"sl-{short}-{long}", "short_long", lamp=A, short=short, long=long)


def tens(number: int) -> SignalRow:
    name = f"t-{number}"
    return row(name, "tens_units", number=number, tens_emitter=A, units_emitter=B)


def bank(key: tuple[str, int]) -> SignalRow:
    state, flashes = key
    fields: dict[str, Any] = {"bank_state": state, "count": flashes}
    return row(
        f"b-{state}-{flashes}", "bank_count", bank_emitter=A, count_emitter=B, **fields
    )


def flicker(key: tuple[str, int]) -> SignalRow:
    level, flashes = key
    fields: dict[str, Any] = {"display_level": level, "count": flashes}
    name = f"f-{level}-{flashes}"
    return row(name, "flicker_count", flicker_emitter=A, count_emitter=B, **fields)


def weighted(number: int) -> SignalRow:
    lamps = tuple({"lamp": L, "weight": w} for L, w in ((A, 4), (B, 2), (C, 1)))
    name = f"w-{number}"
    return row(name, "weighted_lamps", lamps=lamps, number=number, weights_stated=True)


def rate(word: str) -> SignalRow:
    hertz = {"slow": 0.5, "fast": 4.0}[word]
    definition = {"hz_low": hertz, "hz_high": hertz}
    return row(f"r-{word}", "rate_blink", lamp=A, rate_class=word, rate=definition)


def code(text: str) -> SignalRow:
    return row(f"c-{text.lower()}", "display_code", code=text)


def sub_code(pair: tuple[str, str]) -> SignalRow:
    main, sub = pair
    return row(
        f"m-{main.lower()}-{sub}",
        "main_sub_code",
        code=main,
        sub=sub,
        sub_meaning_type="finer cause",
    )


def place(key: tuple[int, str]) -> SignalRow:
    at, sign = key
    name = f"p-{at}-{sign or 'blank'}"
    return row(name, "digit_position", position=at, of=3, sign=sign)


def beeps(number: int) -> SignalRow:
    return row(f"beeps-{number}", "beeps", count=number)


letters = st.sampled_from("AEFHP")
main_codes = st.tuples(letters, st.sampled_from("1234")).map("".join)
Table = tuple[SignalRow, ...]


def tables(make: Callable[[Any], SignalRow], keys: st.SearchStrategy[Any]) -> Any:
    """Return a strategy of tables of one kind, no two rows alike."""
    found = st.lists(keys, min_size=1, max_size=5, unique=True)
    return found.map(lambda chosen: tuple(make(key) for key in chosen))


TABLES: st.SearchStrategy[Table] = st.one_of(
    tables(short_long, st.tuples(digit, digit).filter(any)),
    tables(tens, st.integers(1, 99)),
    tables(bank, st.tuples(st.sampled_from(["on", "off", "flash"]), count)),
    tables(flicker, st.tuples(st.sampled_from(["first", "detail"]), count)),
    tables(weighted, st.integers(0, 7)),
    tables(rate, st.sampled_from(["slow", "fast"])),
    tables(code, main_codes),
    tables(sub_code, st.tuples(main_codes, st.sampled_from(["01", "02", "13"]))),
    tables(place, st.tuples(st.integers(1, 3), st.sampled_from(["", "1", "4", "7"]))),
    tables(beeps, count),
)


@given(table=TABLES, at=st.integers(0, 4))
def test_the_whole_sight_of_any_row_puts_it_first(
    table: tuple[SignalRow, ...], at: int
) -> None:
    wanted = table[at % len(table)]

    match = decode(sight_of(wanted.signal), table)

    heaviest = max(one.weight for one in match.candidates)
    best = [one.row.gid for one in match.candidates if one.weight == heaviest]
    assert wanted.gid in best
    assert match.verdict in ("exact", "several")


@given(
    at=st.integers(0, len(ROWS) - 1),
    forgotten=st.sets(st.sampled_from(OPEN_TO_FORGETTING)),
)
def test_what_was_left_out_never_rules_the_true_row_out(
    at: int, forgotten: set[str]
) -> None:
    row_seen = ROWS[at]
    fields = Observation.model_fields
    less = [
        one.model_copy(update={slot: fields[slot].default for slot in forgotten})
        for one in sight_of(row_seen.signal)
    ]

    match = decode(less, ROWS)

    assert row_seen.gid in [one.row.gid for one in match.candidates]


@given(
    at=st.integers(0, len(ROWS) - 1),
    forgotten=st.sets(st.sampled_from(OPEN_TO_FORGETTING)),
)
def test_a_question_leaves_the_true_row_under_the_answer_it_bears(
    at: int, forgotten: set[str]
) -> None:
    fields = Observation.model_fields
    less = [
        one.model_copy(update={slot: fields[slot].default for slot in forgotten})
        for one in sight_of(ROWS[at].signal)
    ]

    match = decode(less, ROWS)

    if match.question is not None and match.question.gain_bits > 0:
        left = {gid for _, gids in match.question.options for gid in gids}
        assert left == {one.row.gid for one in match.candidates}


@given(table=st.sets(st.tuples(digit, digit).filter(any), min_size=1, max_size=6),
       told=st.integers(1, 18))  # fmt: skip
def test_a_total_gives_the_pairs_that_make_it_and_no_other(
    table: set[tuple[int, int]], told: int
) -> None:
    rows = [short_long(pair) for pair in sorted(table)]

    match = decode([Observation(state="count", count=(told,), label=("A",))], rows)

    found = {tuple(map(int, name.split("-")[1:])) for name in ids(match)}
    assert found == {pair for pair in table if sum(pair) == told}


@given(
    listed=st.sets(st.integers(1, 99), min_size=1, max_size=6), told=st.integers(1, 99)
)
def test_tens_and_units_outside_the_table_are_not_answered(
    listed: set[int], told: int
) -> None:
    assume(told not in listed and told % 10 and told // 10)
    assume(all(digit < 7 for digit in divmod(told, 10)))
    rows = [tens(number) for number in sorted(listed)]
    seen = [
        Observation(label=("A",), state="count", count=(told // 10,)),
        Observation(label=("B",), state="count", count=(told % 10,)),
    ]

    assert decode(seen, rows).verdict == "none"


@given(counted=st.lists(st.integers(3, 6), min_size=1, max_size=6))
def test_the_number_counted_most_often_is_never_behind_another(
    counted: list[int],
) -> None:
    rows = [row(f"g-{n}", "group_then_pause", lamp=A, count=n) for n in range(1, 9)]
    seen = Observation(
        state="count",
        count=tuple(sorted(set(counted))),
        counted=tuple(counted),
        label=("A",),
    )

    match = decode([seen], rows)

    most = max(counted.count(n) for n in counted)
    first = int(ids(match)[0].removeprefix("g-"))
    assert counted.count(first) == most
    assert set(counted) <= {int(name.removeprefix("g-")) for name in ids(match)}
