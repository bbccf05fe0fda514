"""Compares an answer with what a dialogue file expects of it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from assistant.dialogue.answer import Answer, SourceRef
from tui.plain.script import Expected, ExpectedStop, ExpectedWait


def differences(answer: Answer, expected: Expected) -> list[str]:
    """Return every way in which an answer is not what was expected."""
    return [
        *_plain(answer, expected),
        *_decode(answer, expected),
        *(line for wait in expected.waits for line in _wait(answer, wait)),
        *(line for stop in expected.stops for line in _stop(answer, stop)),
        *_lists(answer, expected),
        *_words(answer, expected),
    ]


def sources_of(answer: Answer) -> Iterator[SourceRef]:
    """Yield every source that an answer cites, wherever it does."""
    for cited in (
        answer.statements,
        answer.waits,
        answer.stops,
        answer.verdicts,
        *(decode.candidates for decode in answer.decodes),
        (answer.next_check,) if answer.next_check else (),
    ):
        for each in cited:
            yield from each.sources


def texts_of(answer: Answer) -> Iterator[str]:
    """Yield every text of an answer that a person reads, quotes left out."""
    for statement in answer.statements:
        yield statement.text
    for caution in answer.cautions:
        yield caution.text
    if answer.question:
        yield answer.question.text
    for verdict in answer.verdicts:
        yield verdict.reason
    if answer.next_check:
        yield from (answer.next_check.name, answer.next_check.ask)
        yield from answer.next_check.steps


def _plain(answer: Answer, expected: Expected) -> Iterator[str]:
    if expected.status is not None and answer.status != expected.status:
        yield f"status {answer.status}, expected {expected.status}"
    check = answer.next_check.id if answer.next_check else None
    if expected.next_check is not None and check != expected.next_check:
        yield f"next check {check}, expected {expected.next_check}"
    asked = answer.question.text if answer.question else ""
    if expected.question is not None and not _holds(asked, expected.question):
        yield f"question {asked!r}, expected {expected.question!r} in it"


def _decode(answer: Answer, expected: Expected) -> Iterator[str]:
    wanted = expected.decode
    if wanted is None:
        return
    if not answer.decodes:
        yield f"no decode, expected {wanted.verdict}"
        return
    found = answer.decodes[-1]
    ids = [candidate.id for candidate in found.candidates]
    if found.verdict != wanted.verdict:
        yield f"decode {found.verdict} {ids}, expected {wanted.verdict}"
    if wanted.ids is not None and sorted(ids) != sorted(wanted.ids):
        yield f"decoded {ids}, expected {list(wanted.ids)}"


def _wait(answer: Answer, wanted: ExpectedWait) -> Iterator[str]:
    found = {wait.id: wait for wait in answer.waits}.get(wanted.id)
    if found is None:
        yield f"no wait {wanted.id}; there: {[wait.id for wait in answer.waits]}"
        return
    for name in ("state", "earliest", "usual", "give_up"):
        value, here = getattr(wanted, name), getattr(found, name)
        if value is not None and here != value:
            yield f"wait {wanted.id}: {name} {here}, expected {value}"


def _stop(answer: Answer, wanted: ExpectedStop) -> Iterator[str]:
    found = {stop.id: stop for stop in answer.stops}.get(wanted.id)
    if found is None:
        yield f"no counter {wanted.id}; there: {[stop.id for stop in answer.stops]}"
        return
    for name in ("state", "left"):
        value, here = getattr(wanted, name), getattr(found, name)
        if value is not None and here != value:
            yield f"counter {wanted.id}: {name} {here}, expected {value}"


def _lists(answer: Answer, expected: Expected) -> Iterator[str]:
    causes = tuple(cause.id for cause in answer.causes)
    if causes[: len(expected.causes)] != expected.causes:
        yield f"causes {causes}, expected first {expected.causes}"
    results = {verdict.check: verdict.result for verdict in answer.verdicts}
    for verdict in expected.verdicts:
        if results.get(verdict.check) != verdict.result:
            yield f"verdicts {results}, expected {verdict.check}: {verdict.result}"
    pages = {(_name(each.document), each.page) for each in sources_of(answer)}
    for page in expected.pages:
        if (_name(page.document), page.page) not in pages:
            yield f"{page.document} PDF page {page.page} is not cited; are: {pages}"


def _words(answer: Answer, expected: Expected) -> Iterator[str]:
    texts = list(texts_of(answer))
    for words in expected.says:
        if not any(_holds(text, words) for text in texts):
            yield f"nothing says {words!r}; said: {texts}"
    for words in expected.never:
        if any(_holds(text, words) for text in texts):
            yield f"something says {words!r}"


def _holds(text: str, words: str) -> bool:
    return " ".join(words.casefold().split()) in " ".join(text.casefold().split())


def _name(document: str) -> str:
    return PurePosixPath(document).name
