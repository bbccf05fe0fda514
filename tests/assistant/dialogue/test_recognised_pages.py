"""What stands only on a page read by OCR never settles a decode alone."""

from __future__ import annotations

from dataclasses import replace

from assistant.dialogue.answer import Answer
from assistant.dialogue.replies import TO_CONFIRM
from assistant.facts import LampFact
from assistant.library.types import Document
from assistant.record import Source
from assistant.signals.observation import Observation
from tests.conversation import Talk, pack

MANUAL = Document("c" * 64, "board.pdf", "Laboratory manual", revision="A")


def told(*, recognised: bool) -> Answer:
    """Decode four amber flashes, whose row stands on page 7 of the manual."""
    whole = pack()
    source = Source(doc="manual", page=7, quote="4 discharge sensor")
    sourced = whole.model_copy(
        update={
            "signals": tuple(
                signal.model_copy(update={"source": source}) for signal in whole.signals
            ),
        }
    )
    talk = Talk(packs=(sourced,))
    pages = frozenset({(MANUAL.document_id, 7)} if recognised else ())
    knowledge = replace(talk.situation.knowledge, documents=(MANUAL,), recognised=pages)
    talk.situation = replace(talk.situation, knowledge=knowledge)
    seen = Observation(colour=("amber",), state="count", count=(4,), pause="seen")
    return talk.enter(LampFact(observation=seen))


def test_a_row_read_by_ocr_is_to_be_confirmed_on_the_page() -> None:
    answer = told(recognised=True)

    (decode,) = answer.decodes
    (row,) = decode.candidates
    assert decode.verdict == "several"
    assert decode.reason == TO_CONFIRM
    assert row.to_confirm
    assert [source.read_by for source in row.sources] == ["ocr"]
    texts = [statement.text for statement in answer.statements]
    assert TO_CONFIRM in texts
    assert any(text.startswith("It can mean: ") for text in texts)


def test_a_row_read_from_the_file_itself_decides() -> None:
    answer = told(recognised=False)

    (decode,) = answer.decodes
    assert decode.verdict == "exact"
    assert not decode.candidates[0].to_confirm
    assert TO_CONFIRM not in [statement.text for statement in answer.statements]
