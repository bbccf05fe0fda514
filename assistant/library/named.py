"""Codes, counts and models that a question names, against the documents. Pure."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace

from assistant.library.asked import Asked
from assistant.library.codes import codes_in, normal
from assistant.library.types import Document
from assistant.rules.patterns import can_match


def without_models(question: Asked, documents: Collection[Document]) -> Asked:
    """Return the question with every model that a document is about set aside.

    Such a model says which unit is meant; it need not stand in any passage.
    """
    models = {code for code in question.codes if _is_model(code, documents)}
    return replace(
        question,
        codes=tuple(code for code in question.codes if code not in models),
        loose=tuple(sorted({*question.loose, *models})),
    )


def unknown(question: Asked, having: Mapping[str, frozenset[int]]) -> tuple[str, ...]:
    """Return the codes or counts asked for of which no passage names any.

    Codes and counts are judged apart, and each kind is unknown only when none of
    it is known: "E4, then E9" is answered for E4.

    Parameters
    ----------
    having : mapping of str to set of int
        Code or count -> passages that name it.

    Examples
    --------
    >>> from assistant.library.asked import asked
    >>> unknown(asked("E9?"), {"E9": frozenset()})
    ('E9',)
    """
    counts = [code for code in question.codes if code.startswith("#")]
    codes = [code for code in question.codes if not code.startswith("#")]
    missing: list[str] = []
    for kind in (codes, counts):
        if kind and not any(having.get(code) for code in kind):
            missing += kind
    return tuple(missing)


def _is_model(code: str, documents: Iterable[Document]) -> bool:
    return any(
        code in codes_in(f"{document.title} {document.path}")
        or any(
            can_match(pattern, code) or normal(pattern).startswith(code)
            for scope in document.applies_to
            for pattern in scope.models
        )
        for document in documents
    )
