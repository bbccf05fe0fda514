"""The pages that any way of searching thinks of, to be judged by a person.

Run it from the project's folder::

    python tests/evaluation/pool.py PART FILE

For each question of a part (`tune` or `kept`) it writes the best pages of all ways of
searching together, with their text, in an order that tells nothing. A judge who has
seen neither the search nor its results says of each whether it answers the question;
what does is entered as `also`. Without this a page counts as wrong that nobody
thought of when the question was written (pooling: Voorhees and Harman, TREC:
Experiment and Evaluation in Information Retrieval, 2005, chapter 2; from memory).
"""

from __future__ import annotations

import hashlib
import json
import sys
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from assistant.library.store import LibraryStore  # noqa: E402
from tests.evaluation.measure import (  # noqa: E402
    Outcome,
    Place,
    Question,
    build,
    measure,
    read_questions,
)

DEPTH = 4
"""Pages of each way that are judged."""


def pooled(
    question: Question, given: Mapping[str, Mapping[str, Outcome]]
) -> list[Place]:
    """Return the pages to judge, in an order that no way of searching gave."""
    found = {
        page
        for outcomes in given.values()
        for page in outcomes[question.id].pages[:DEPTH]
    }

    def shuffled(page: Place) -> str:
        return hashlib.sha256(f"{question.id} {page}".encode()).hexdigest()

    return sorted(found | set(question.places), key=shuffled)


def entries(
    store: LibraryStore,
    questions: Sequence[Question],
    given: Mapping[str, Mapping[str, Outcome]],
) -> Iterator[dict[str, object]]:
    """Give what is judged of each question."""
    texts = {
        (document.path, page.number): page.text
        for document in store.documents()
        for page in store.pages(document.sha256)
    }
    for each in questions:
        yield {
            "id": each.id,
            "text": each.text,
            "unit": each.unit,
            "pages": [
                {"document": name, "page": number, "text": texts[name, number]}
                for name, number in pooled(each, given)
            ],
        }


def main(part: str, file: Path) -> None:
    """Write the pool of a part as lines of JSON."""
    questions = read_questions()
    judged = [each for each in questions if each.part == part]
    with tempfile.TemporaryDirectory() as folder:
        store, encoder = build(Path(folder) / "library")
        with store:
            given = measure(store, encoder, questions)
            lines = [json.dumps(each) for each in entries(store, judged, given)]
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]))
