"""The lexicon is data: every line is read, and says one thing for each phrase."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from assistant.library import lexicon as module
from assistant.library.asked import asked
from assistant.library.lexicon import FILES, Lexicon, entries, lexicon, stems
from assistant.library.talk import in_print, plain_words

FOLDER = Path(module.__file__).parent / "talk_words"


def test_every_file_of_the_folder_is_read_and_every_line_has_its_form() -> None:
    assert sorted(path.stem for path in FOLDER.glob("*.txt")) == sorted(FILES)
    for path in FOLDER.glob("*.txt"):
        for line in path.read_text("utf-8").splitlines():
            said, equals, printed = line.partition(" = ")
            assert not line or line.startswith("# ") or (said and equals and printed)


def test_no_phrase_is_given_twice_and_each_is_as_a_question_gives_it() -> None:
    counted = Counter(phrase for phrase, _ in entries())
    assert max(counted.values()) == 1
    assert len(counted) > 1500
    for phrase in counted:
        assert " ".join(plain_words(phrase)) == phrase


def test_words_of_print_are_terms_of_the_trade_and_no_sentences_of_one_manual() -> None:
    for phrase, printed in entries():
        if phrase != printed:
            assert len(printed.split()) <= 5, phrase
            assert not any(map(str.isdecimal, printed)), phrase


def test_only_what_was_typed_is_a_figure_that_the_literature_must_have() -> None:
    assert asked("what superheat do i want").figures == ("superheat",)
    for phrase, _ in entries():
        assert set(asked(phrase).figures) <= set(plain_words(phrase))


def test_forms_of_a_phrase_are_known_without_being_listed() -> None:
    known = Lexicon({"kicks out": "trips", "blows": "fan runs", "blow": "trips"})

    assert known["kicked out"] == "trips"
    assert known["kicked it out"] == "trips"
    assert known["kicked it right out"] == ""
    # two meanings for one stem: only what is listed counts
    assert known["blows"] == "fan runs"
    assert known["blowing"] == ""


def test_fillers_count_at_the_ends_of_a_phrase() -> None:
    assert stems("pop the breakers") == stems("pops breaker")
    assert stems("the breaker") != stems("breaker")


def test_words_of_print_are_no_forms_of_talk() -> None:
    for plain in ("main board", "windings", "discharge", "rated", "shows", "comes"):
        assert in_print(plain) == ("", ())


def test_the_longest_phrase_wins() -> None:
    assert lexicon()["caps"] == "capacitors"
    assert in_print("drain the caps")[0] != "drain the capacitors"


def test_talk_of_three_countries_is_understood() -> None:
    for phrase in ("leccy", "carked it", "breaker panel"):
        assert in_print(phrase)[1]
    assert in_print("gone walkabout") == ("", ())
