"""Says sentences into one job of a pack, through the real parser."""

from __future__ import annotations

from datetime import timedelta

from assistant.dialogue.answer import Answer
from assistant.dialogue.step import _view
from assistant.dialogue.vocabulary import pending, vocabulary
from assistant.dialogue.words import told
from assistant.language.understand import understand
from assistant.rules.applicability import Plate
from assistant.rules.pack import Pack
from tests.conversation import Talk
from tests.scheme_pack import scheme_pack


def said(*texts: str) -> list[Answer]:
    """Return the answers to sentences said one after another about a known unit."""
    return said_about(scheme_pack(), "QS-24", *texts)


def said_about(
    pack: Pack, model: str, *texts: str, after_minutes: float = 1
) -> list[Answer]:
    """Return the answers to sentences about a unit of a pack, so far apart."""
    talk = Talk([pack], unit=Plate(outdoor_model=model))
    answers = []
    for text in texts:
        state = talk.situation.state
        understood = understand(
            text,
            now=talk.clock.now() + timedelta(minutes=after_minutes),
            pending=pending(state),
            vocabulary=vocabulary(_view(talk.situation)),
        )
        body = told(state, text, understood)
        answers.append(talk.tell(body, after_minutes=after_minutes))
    return answers


def decoded(answer: Answer) -> list[str]:
    """Return the rows that an answer holds possible, without the pack's name."""
    return [one.id.partition("/")[2] for d in answer.decodes for one in d.candidates]


def lines(answer: Answer) -> str:
    """Return everything that an answer states, one line each."""
    return "\n".join(statement.text for statement in answer.statements)


def slot(answer: Answer) -> str | None:
    """Return what an answer asks about."""
    return answer.question.slot if answer.question is not None else None
