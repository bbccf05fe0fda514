"""How well the right page is found: sample questions, five ways of searching.

Run it from the project's folder::

    python tests/evaluation/measure.py [--misses]

It builds the sample library in a temporary folder with the real encoder and
prints, for the questions that search may be tuned on and for those kept apart,
hit at 1, 3 and 5 and the mean reciprocal rank of the right page, and precision
and recall of "not found". A right page that is not shown, because "not found" was
said, is a miss. The four simple ways have no say of their own about "not found":
each gets the score threshold that does best on the tuning questions.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from ruamel.yaml import YAML  # noqa: E402

from assistant.dialogue.knowledge import Knowledge  # noqa: E402
from assistant.library.encoder import (  # noqa: E402
    TOKENIZER,
    Encoder,
    find_model_folder,
    load_encoder,
)
from assistant.library.search import Search  # noqa: E402
from assistant.library.store import LibraryStore  # noqa: E402
from assistant.library.tokens import TokenCounter  # noqa: E402
from assistant.library.types import Document  # noqa: E402
from assistant.rules.applicability import Plate  # noqa: E402
from assistant.rules.stored import read_stored  # noqa: E402
from assistant.settings import settings  # noqa: E402
from tests.evaluation.simple import Simple  # noqa: E402

SAMPLES = ROOT / "kb_samples"
DEPTH = 10
Place = tuple[str, int]
Verdicts = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Question:
    """One question and the pages that answer it; none when nothing does."""

    id: str
    text: str
    part: str
    places: tuple[Place, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one way of searching gave for a question."""

    pages: tuple[Place, ...]
    """Best first, each once."""
    found: bool


@dataclass(frozen=True, slots=True)
class Row:
    """The figures of one way on one part; shares from 0 to 1."""

    hit1: float
    hit3: float
    hit5: float
    mrr: float
    not_found_precision: float
    not_found_recall: float


def read_questions(samples: Path = SAMPLES) -> list[Question]:
    """Read every sample question, in order of its file."""
    found = []
    for file in sorted((samples / "questions").glob("*.yaml")):
        for entry in YAML(typ="safe").load(file.read_text("utf-8")):
            named = [entry, *entry.get("also", [])] if entry["document"] else []
            found.append(
                Question(
                    id=entry["id"],
                    text=entry["text"],
                    part=entry["set"],
                    places=tuple((each["document"], each["page"]) for each in named),
                    unit=entry.get("unit", ""),
                )
            )
    return found


def build(folder: Path, samples: Path = SAMPLES) -> tuple[LibraryStore, Encoder]:
    """Make the sample library, embedded, and give it with its encoder."""
    from ingest.embedding import embed_missing
    from ingest.export import export
    from ingest.packs import take_pack
    from ingest.pipeline import Options, add

    places = settings(library=folder)
    encoder = load_encoder(places)
    if encoder is None:
        export(places)
        encoder = load_encoder(places)
    assert encoder is not None
    counter = TokenCounter(find_model_folder(places) / TOKENIZER)
    store = LibraryStore.open(folder, create=True)

    def put(pack: Path) -> None:
        take_pack(pack, store)

    options = Options(add_pack=put)
    parts = [samples / "literature", samples / "packs"]
    list(add(parts, store, count=counter.count, options=options))
    list(embed_missing(store, encoder))
    return store, encoder


def verdicts_for(store: LibraryStore, unit: str) -> Verdicts | None:
    """Say by sha256 which documents apply to a model; None when it is not told."""
    if not unit:
        return None
    packs = tuple(read_stored(pack.payload) for pack in store.packs())
    knowledge = Knowledge(packs=packs, documents=store.documents())
    told = [
        knowledge.document_match(plate)
        for plate in (Plate(outdoor_model=unit), Plate(indoor_model=unit))
    ]
    return max(told, key=lambda each: list(each.values()).count("confirmed"))


def ours(search: Search, question: Question, verdicts: Verdicts | None) -> Outcome:
    """Search as the program does."""

    def match(document: Document) -> str:
        return verdicts[document.sha256] if verdicts else "possible"

    result = search.search(question.text, match=match, limit=DEPTH)
    pages = dict.fromkeys((hit.document, hit.page) for hit in result.hits)
    return Outcome(tuple(pages), result.found)


def simple_outcomes(
    way: Callable[[str, Verdicts | None], Sequence[tuple[Place, float]]],
    questions: Sequence[Question],
    verdicts: Mapping[str, Verdicts | None],
) -> dict[str, Outcome]:
    """Search a simple way, with the best threshold on the tuning questions."""
    ranked = {each.id: way(each.text, verdicts[each.unit]) for each in questions}
    best = {key: pages[0][1] if pages else -1e9 for key, pages in ranked.items()}
    tune = [each for each in questions if each.part == "tune"]

    def right(threshold: float) -> float:
        said = [(best[each.id] >= threshold) == bool(each.places) for each in tune]
        yes = [ok for ok, each in zip(said, tune, strict=True) if each.places]
        no = [ok for ok, each in zip(said, tune, strict=True) if not each.places]
        return sum(yes) / len(yes) + sum(no) / len(no)

    threshold = max(sorted(set(best.values())), key=right)
    return {
        key: Outcome(tuple(page for page, _ in pages), best[key] >= threshold)
        for key, pages in ranked.items()
    }


def figures(questions: Sequence[Question], outcomes: Mapping[str, Outcome]) -> Row:
    """Return the figures of one way over some questions."""
    answerable = [each for each in questions if each.places]
    ranks = [rank(each, outcomes[each.id]) for each in answerable]
    said = [each for each in questions if not outcomes[each.id].found]
    rightly = [each for each in said if not each.places]

    def within(limit: int) -> float:
        return sum(1 for place in ranks if place and place <= limit) / len(ranks)

    return Row(
        hit1=within(1),
        hit3=within(3),
        hit5=within(5),
        mrr=sum(1 / place for place in ranks if place) / len(ranks),
        not_found_precision=len(rightly) / len(said) if said else 0.0,
        not_found_recall=len(rightly) / (len(questions) - len(answerable)),
    )


def rank(question: Question, outcome: Outcome) -> int:
    """Return the place of the first right page, from 1; 0 when it is not shown."""
    if not outcome.found:
        return 0
    for place, page in enumerate(outcome.pages, start=1):
        if page in question.places:
            return place
    return 0


def measure(
    store: LibraryStore, encoder: Encoder, questions: Sequence[Question]
) -> dict[str, dict[str, Outcome]]:
    """Return by way what it gave for every question."""
    verdicts = {unit: verdicts_for(store, unit) for unit in {q.unit for q in questions}}
    simple = Simple(store, encoder)
    search = Search(store, encoder)
    ways = {
        "FTS5": simple.fts5,
        "bm25s": simple.bm25s,
        "vectors": simple.vectors,
        "rank fusion": simple.fusion,
    }
    given = {
        name: simple_outcomes(way, questions, verdicts) for name, way in ways.items()
    }
    given["ours"] = {
        each.id: ours(search, each, verdicts[each.unit]) for each in questions
    }
    return given


def table(
    questions: Sequence[Question], given: Mapping[str, Mapping[str, Outcome]]
) -> str:
    """Return the figures as lines of text."""
    lines = []
    for part in ("tune", "kept"):
        of_part = [each for each in questions if each.part == part]
        if not of_part:
            continue
        number = sum(1 for each in of_part if each.places)
        lines.append(
            f"{part}: {number} questions with a page, {len(of_part) - number} without"
        )
        lines.append(
            f"{'':12} hit@1  hit@3  hit@5    MRR  not found: precision  recall"
        )
        for name, outcomes in given.items():
            row = figures(of_part, outcomes)
            lines.append(
                f"{name:12} {row.hit1:5.1%}  {row.hit3:5.1%}  {row.hit5:5.1%}  "
                f"{row.mrr:5.3f}  {row.not_found_precision:20.1%}  "
                f"{row.not_found_recall:6.1%}"
            )
    return "\n".join(lines)


def misses(questions: Sequence[Question], outcomes: Mapping[str, Outcome]) -> str:
    """Return the tuning questions that our search gets wrong, a line each."""
    lines = []
    for each in questions:
        outcome = outcomes[each.id]
        place = rank(each, outcome)
        if each.part != "tune" or (place == 1 if each.places else not outcome.found):
            continue
        wrong = "found" if outcome.found else "not found"
        lines.append(
            f"{each.id} {each.unit} {each.text!r}: {wrong}, right at {place or '-'}; "
            f"first {outcome.pages[:1]}, wanted {each.places[:2]}"
        )
    return "\n".join(lines)


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--misses", action="store_true", help="list what went wrong")
    args = parser.parse_args()
    questions = read_questions()
    with tempfile.TemporaryDirectory() as folder:
        store, encoder = build(Path(folder) / "library")
        with store:
            given = measure(store, encoder, questions)
    sys.stdout.write(table(questions, given) + "\n")
    if args.misses:
        sys.stdout.write(misses(questions, given["ours"]) + "\n")


if __name__ == "__main__":
    main()
