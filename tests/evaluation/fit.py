"""Fit the weights of search on tuning and practice questions; kept ones are not read.

The lexicon was written with many of these questions in view, so each is taken apart
with a lexicon that lacks what was heard in questions on its own page only; and it is
judged by weights fitted on the questions on other pages. What is printed is thus
what to expect of questions that nobody has seen, or a little less.

Run it from the project's folder::

    python tests/evaluation/fit.py

It prints what `assistant/library/fusion.py` holds as constants: the weights of the
order (a softmax over all passages of a question, the right pages together), and
those of the verdict (logistic regression, both classes weighted alike), with and
without vectors, and how both do on questions that were left out in turn.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path.insert(0, str(ROOT))

import numpy as np  # noqa: E402
from numpy.typing import NDArray  # noqa: E402
from ruamel.yaml import YAML  # noqa: E402
from scipy.optimize import minimize  # noqa: E402

from assistant.library.asked import asked  # noqa: E402
from assistant.library.candidates import Gathered, Vectors, gather  # noqa: E402
from assistant.library.encoder import Encoder  # noqa: E402
from assistant.library.fusion import Evidence, strongest  # noqa: E402
from assistant.library.lexicon import Lexicon, lexicon, stems  # noqa: E402
from assistant.library.lookup import Lookup  # noqa: E402
from assistant.library.named import without_models  # noqa: E402
from assistant.library.store import LibraryStore  # noqa: E402
from assistant.library.talk import heard  # noqa: E402
from assistant.library.vectors import VectorIndex  # noqa: E402
from tests.evaluation.measure import (  # noqa: E402
    Question,
    build,
    read_questions,
    verdicts_for,
)

OWN = [*Evidence._fields]
PAGE = [f"page {name}" for name in Evidence._fields]
ORDER = [*OWN, *PAGE, "confirmed"]
VERDICT = [*OWN, "bm25", "unknown", "elsewhere", "constant"]
LEFT_OUT = {"coverage", "page coverage", "page words", "page words_print"}
"""Evidence that cross-validation showed to add nothing to the order."""
ONLY_WORDS = ["coverage", "coverage_print", "code", "elsewhere", "constant"]
SCALE = 8.0
PARTS = 7
Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Sample:
    """One question as numbers."""

    question: Question
    evidence: Array
    """Shape (passages, len(ORDER))."""
    right: NDArray[np.bool_]
    pages: list[tuple[int, int]]
    verdict: Array
    """Shape (len(VERDICT),)."""
    hard: bool
    """Something that it names stands nowhere: not found without any sum."""


def practice() -> list[Question]:
    """Read the questions that were invented while search was built."""
    entries = YAML(typ="safe").load((HERE / "practice.yaml").read_text("utf-8"))
    return [
        Question(
            id=f"practice-{at}",
            text=each["text"],
            part="practice",
            places=((each["document"], each["page"]),) if each["document"] else (),
            unit=each["unit"],
        )
        for at, each in enumerate(entries)
    ]


def page_of(question: Question) -> str:
    """Return what a question is about: a page, the same one for sister manuals.

    A question without an answer stands by itself.
    """
    if not question.places:
        return question.id
    document, page = question.places[0]
    return f"{document.replace('tern', 'heron')} {page}"


def unheard(questions: Sequence[Question]) -> Iterator[tuple[Question, Lexicon]]:
    """Yield each question with a lexicon not written for its own page."""
    pages: dict[str, set[str]] = {}
    for each in questions:
        for phrase in heard(each.text, lexicon()):
            pages.setdefault(stems(phrase), set()).add(page_of(each))
    for each in questions:
        own = {page_of(each)}
        left = {
            phrase: printed
            for phrase, printed in lexicon().entries.items()
            if pages.get(stems(phrase)) != own
        }
        yield each, Lexicon(left)


def sample(
    question: Question, known: Lexicon, store: LibraryStore, encoder: Encoder | None
) -> Sample:
    """Gather the evidence of one question, just as search does."""
    lookup = Lookup(store)
    told = verdicts_for(store, question.unit)
    everything = lookup.documents()
    field = {
        key: each
        for key, each in everything.items()
        if told is None or told[each.sha256] != "excluded"
    }
    taken = without_models(asked(question.text, known), tuple(field.values()))
    vectors = None
    if encoder is not None:
        typed = encoder.embed_query(taken.text)
        printed = encoder.embed_query(taken.said) if taken.said else typed
        index = VectorIndex(store, encoder.model_hash, encoder.dimension)
        vectors = Vectors(index, typed, printed)
    gathered = gather(lookup, taken, vectors, field)
    confirmed = {
        key for key, each in field.items() if told and told[each.sha256] == "confirmed"
    }
    return _numbers(
        question, gathered, confirmed, {k: d.path for k, d in field.items()}
    )


def _numbers(
    question: Question, gathered: Gathered, confirmed: set[int], paths: dict[int, str]
) -> Sample:
    ids = list(gathered.evidence)
    pages = [
        (gathered.found[key].document, gathered.found[key].passage.page) for key in ids
    ]
    grouped: dict[tuple[int, int], list[Evidence]] = {}
    for page, key in zip(pages, ids, strict=True):
        grouped.setdefault(page, []).append(gathered.evidence[key])
    best = {page: strongest(each) for page, each in grouped.items()}
    rows = [
        [*gathered.evidence[key], *best[page], float(page[0] in confirmed)]
        for key, page in zip(ids, pages, strict=True)
    ]
    right = [(paths[page[0]], page[1]) in question.places for page in pages]
    summary = gathered.best
    elsewhere = float(min(summary.elsewhere, 2))
    against = [summary.bm25, summary.unknown, elsewhere, 1.0]
    return Sample(
        question=question,
        evidence=np.array(rows).reshape(len(ids), len(ORDER)),
        right=np.array(right, dtype=bool),
        pages=pages,
        verdict=np.array([*summary.evidence, *against]),
        hard=bool(gathered.missing),
    )


def fit_order(samples: Sequence[Sample], ridge: float = 0.02) -> Array:
    """Return non-negative weights that make the right pages likely."""
    free = np.array([name not in LEFT_OUT for name in ORDER])

    def loss(weights: Array) -> tuple[float, Array]:
        total, slope = 0.0, np.zeros(len(weights))
        for each in samples:
            if not each.right.any():
                continue
            scores = SCALE * (each.evidence @ weights)
            likely = np.exp(scores - scores.max())
            likely /= likely.sum()
            right = likely[each.right].sum() + 1e-12
            total -= float(np.log(right))
            pull = np.where(each.right, likely / right, 0.0) - likely
            slope -= SCALE * (pull @ each.evidence)
        size = len(samples)
        penalty = ridge * float(weights @ weights)
        return total / size + penalty, slope / size + 2 * ridge * weights

    bounds = [(0, None) if each else (0, 0) for each in free]
    start = np.where(free, 0.2, 0.0)
    return np.asarray(
        minimize(loss, start, jac=True, method="L-BFGS-B", bounds=bounds).x
    )


def fit_verdict(
    samples: Sequence[Sample], used: Sequence[str], ridge: float = 0.003
) -> Array:
    """Return weights whose sum is positive where something should be found."""
    soft = [each for each in samples if not each.hard]
    free = np.array([name in used for name in VERDICT])
    rows = np.array([each.verdict for each in soft]) * free
    answered = np.array([bool(each.question.places) for each in soft])
    share = np.where(answered, 0.5 / answered.mean(), 0.5 / (1 - answered.mean()))
    bound = np.append(np.ones(len(VERDICT) - 1), 0.0)

    def loss(weights: Array) -> tuple[float, Array]:
        sure = 1 / (1 + np.exp(-(rows @ weights)))
        fit = np.where(answered, np.log(sure + 1e-9), np.log(1 - sure + 1e-9))
        penalty = ridge * float((weights * bound) @ weights)
        slope = rows.T @ (share * (sure - answered)) / len(soft)
        return float(
            -(share * fit).mean()
        ) + penalty, slope + 2 * ridge * weights * bound

    fitted: Array = np.asarray(minimize(loss, np.zeros(len(VERDICT)), jac=True).x)
    kept: Array = fitted * free
    return kept


def ranks(samples: Sequence[Sample], weights: Array) -> Array:
    """Return the place of each question's first right page; 99 where it has none."""
    found = []
    for each in samples:
        order = np.argsort(-(each.evidence @ weights), kind="stable")
        pages = list(dict.fromkeys(each.pages[at] for at in order))
        right = {each.pages[at] for at in np.flatnonzero(each.right)}
        found.append(
            next((at for at, page in enumerate(pages, 1) if page in right), 99)
        )
    return np.array(found, dtype=float)


def left_out(
    samples: Sequence[Sample],
    judge: Callable[[Sequence[Sample], Sequence[Sample]], Array],
) -> Array:
    """Judge every sample by what was fitted on other pages; the order is kept."""
    result = np.zeros(len(samples))
    pages = sorted({page_of(each.question) for each in samples})
    mixed = np.random.default_rng(0).permutation(len(pages))
    part = {page: int(at) % PARTS for page, at in zip(pages, mixed, strict=True)}
    parts = [part[page_of(each.question)] for each in samples]
    for now in range(PARTS):
        held = [at for at, each in enumerate(parts) if each == now]
        rest = [samples[at] for at, each in enumerate(parts) if each != now]
        result[held] = judge(rest, [samples[at] for at in held])
    return result


def report(samples: Sequence[Sample], used: Sequence[str], title: str) -> str:
    """Fit, and return the weights and how they do on questions left out."""
    asked_for = [each for each in samples if each.question.places]
    order = fit_order(asked_for)
    places = left_out(asked_for, lambda rest, held: ranks(held, fit_order(rest)))
    verdict = fit_verdict(samples, used)

    def sums(rest: Sequence[Sample], held: Sequence[Sample]) -> Array:
        weights = fit_verdict(rest, used)
        values = [-99.0 if e.hard else float(e.verdict @ weights) for e in held]
        return np.array(values)

    values = left_out(samples, sums)
    answered = np.array([bool(each.question.places) for each in samples])
    lines = [title, f"  order: {_named(ORDER, order)}"]
    tune = np.array([each.question.part == "tune" for each in asked_for])
    for part, at in (("all", tune | ~tune), ("sample", tune), ("practice", ~tune)):
        shares = [f"{(places[at] <= depth).mean():.1%}" for depth in (1, 3, 5)]
        lines += [f"  left out, {part}: right page first, in 3, 5: {', '.join(shares)}"]
    lines += [f"  verdict: {_named(VERDICT, verdict)}"]
    for lost in (0.01, 0.02, 0.03, 0.04, 0.06, 0.08):
        least = float(np.quantile(values[answered], lost))
        caught = (values[~answered] < least).mean()
        lines += [
            f"  left out: at {least:+.2f} loses {lost:.0%}, not found {caught:.1%}"
        ]
    return "\n".join(lines)


def _named(names: Sequence[str], weights: Array) -> str:
    return ", ".join(
        f"{name}={weight:.2f}"
        for name, weight in zip(names, weights, strict=True)
        if abs(weight) >= 0.005
    )


def main() -> None:
    """Fit and print."""
    tuning = [each for each in read_questions() if each.part == "tune"]
    tuning += practice()
    with tempfile.TemporaryDirectory() as folder:
        store, encoder = build(Path(folder) / "library")
        with store:
            each_own = list(unheard(tuning))
            full = [sample(*each, store, encoder) for each in each_own]
            words = [sample(*each, store, None) for each in each_own]
    everything = [name for name in VERDICT if name != "coverage"]
    sys.stdout.write(report(full, everything, "with vectors") + "\n")
    sys.stdout.write(report(words, ONLY_WORDS, "keywords only") + "\n")


if __name__ == "__main__":
    main()
