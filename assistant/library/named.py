"""Models that a question names, against what the documents are about. Pure."""

from __future__ import annotations

from collections.abc import Collection, Iterable
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
