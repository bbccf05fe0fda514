"""`faultleaf library verify`: every stored text proved on the page of its file."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from assistant.errors import ANSWERED, WITH_WARNINGS, FaultleafError, LibraryError
from tui.plain.console import Console
from tui.wiring import reading_library

if TYPE_CHECKING:
    from ingest.proof import Proof

MOST = 10
"""So many strays of a document are shown; `--json` has all of them."""
DAMAGED = "put a backup in its place, or add its documents again"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Declare which documents are proved."""
    parser.add_argument("names", nargs="*", metavar="DOC", help="else every document")
    parser.add_argument("--password", help="of encrypted PDF files")


def run(args: argparse.Namespace, console: Console) -> int:
    """Prove the store in itself, then each document against its file.

    0 all proved; 2 something stored does not stand on its page; 3 a file has
    changed, is gone or cannot be read; 4 the store is damaged.
    """
    from ingest.proof import How, prove
    from tui.plain.as_json import plain
    from tui.plain.one_document import named_document

    with reading_library(args) as store:
        problems = store.check()
        chosen = [named_document(store, name) for name in args.names]
        proofs = []
        documents = chosen or store.documents()
        for done, document in enumerate(documents, start=1):
            line = f"proving {document.path}, {done} of {len(documents)}"
            console.progress(line, last=done == len(documents))
            proofs.append(prove(store, document, How(args.password)))
    code = _code(problems, proofs)
    if console.json:
        fields = [plain(each) for each in map(_fields, proofs)]
        console.document({"damage": problems, "documents": fields})
    else:
        console.lines(_lines(problems, proofs, console.width))
    return code


def _code(problems: Sequence[str], proofs: Sequence[Proof]) -> int:
    from ingest.proof import Verdict

    if problems:
        return LibraryError.exit_code
    verdicts = {each.verdict for each in proofs}
    if Verdict.DIFFERS in verdicts:
        return FaultleafError.exit_code
    return WITH_WARNINGS if verdicts - {Verdict.PROVED} else ANSWERED


def _fields(proof: Proof) -> dict[str, object]:
    return {
        "document": proof.document.path,
        "document_id": proof.document.document_id,
        "verdict": proof.verdict.value,
        "place": proof.place,
        "reason": proof.reason,
        "hint": proof.hint,
        "pages": proof.pages,
        "passages": proof.passages,
        "rows": proof.rows,
        "ocr": proof.ocr,
        "strays": proof.strays,
    }


def _lines(problems: Sequence[str], proofs: Sequence[Proof], width: int) -> list[str]:
    from ingest.proof import Verdict
    from tui.plain.text import count, wrap

    lines = [line for each in problems for line in wrap(each, width, "damaged: ")]
    if problems:
        lines += wrap(DAMAGED, width, "  try: ")
    for proof in proofs:
        lines += [
            line for lead, text in _told(proof) for line in wrap(text, width, lead)
        ]
    proved = sum(each.verdict is Verdict.PROVED for each in proofs)
    total = f"{proved} of {count(len(proofs), 'document')} proved"
    return [*lines, *wrap(total, width)]


def _told(proof: Proof) -> Iterator[tuple[str, str]]:
    from tui.plain.text import count, numbers

    path = proof.document.path
    if not proof.reason:
        parts = (
            count(proof.pages, "page"),
            count(proof.passages, "passage"),
            count(proof.rows, "table row"),
        )
        yield "proved ", f"{path}: {', '.join(parts)}"
    else:
        where = f" ({proof.place})" if proof.place else ""
        yield f"{proof.verdict.value} ", f"{path}: {proof.reason}{where}"
    if proof.ocr:
        yield "  ", f"not read by OCR again: page {numbers(proof.ocr)}"
    for stray in proof.strays[:MOST]:
        yield "  ", f"p. {stray.page}: {stray.what}"
    if len(proof.strays) > MOST:
        yield "  ", f"and {len(proof.strays) - MOST} more; --json has them all"
    if proof.hint:
        yield "  try: ", proof.hint
