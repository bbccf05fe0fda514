"""What hostile and broken files do: each alone, then all of them among good ones.

Run it from the project's folder (Linux)::

    python tests/evaluation/hostile.py [NAME ...]

It makes some sixty files, prints for each what came of it with the reason, the most
memory its reading process held and the seconds it took, then adds all of them
together with good manuals and says whether what must hold does.
"""

from __future__ import annotations

import sys
import tempfile
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from assistant.errors import InputError  # noqa: E402
from assistant.library.search import Search  # noqa: E402
from assistant.library.store import LibraryStore  # noqa: E402
from assistant.library.types import PageStatus  # noqa: E402
from ingest.outcome import Ingested  # noqa: E402
from ingest.pipeline import add  # noqa: E402
from ingest.readers.archive import is_archive  # noqa: E402
from ingest.readers.base import RawPage  # noqa: E402
from ingest.readers.isolation import Reading  # noqa: E402
from ingest.readers.limits import Limits  # noqa: E402
from ingest.readers.sniff import reader_of  # noqa: E402
from tests.evaluation.machine import (  # noqa: E402
    MIB,
    Checks,
    Watched,
    say,
    table,
    watching,
)
from tests.fakes import HashEncoder  # noqa: E402
from tests.ingest.hostile_files import good_files, hostile_files  # noqa: E402

MAY_GROW = 300 * MIB
"""What this process may grow by: a document of the largest size, read and cut."""
WIDEST = 60


@dataclass(frozen=True, slots=True)
class Row:
    """What came of one file."""

    name: str
    result: str
    reason: str
    peak: int = 0
    seconds: float = 0.0

    def cells(self) -> tuple[str, ...]:
        """Return the row as it is printed."""
        return (
            self.name,
            self.result,
            self.reason[:WIDEST],
            f"{self.peak / MIB:.0f}" if self.peak else "-",
            f"{self.seconds:.1f}",
        )


def alone(path: Path) -> Row:
    """Read one file as the library would."""
    if is_archive(path):
        return Row(path.name, "archive", "unpacked when it is added, below")
    began = perf_counter()
    try:
        reading = Reading(path, reader_of(path))
    except InputError as error:
        return Row(path.name, "refused", error.what, 0, perf_counter() - began)
    try:
        pages = [page for page in reading.items() if isinstance(page, RawPage)]
        result, reason = _result(pages)
    except InputError as error:
        result, reason = "refused", error.what
    return Row(path.name, result, reason, reading.peak, perf_counter() - began)


def _result(pages: Sequence[RawPage]) -> tuple[str, str]:
    reasons = Counter(page.failure for page in pages if page.failure)
    lost = sum(reasons.values())
    letters = sum(len(page.text) for page in pages)
    reason = "; ".join(reasons) or f"{letters} characters"
    return f"{len(pages) - lost} of {len(pages)} pages", reason


def together(folder: Path, library: Path) -> tuple[Ingested, int, Watched, float]:
    """Add all, and return the result, good answers, sizes and seconds."""
    began = perf_counter()
    result = Ingested()
    answered = 0
    with LibraryStore.open(library, create=True) as store:
        with watching() as watched:
            count = HashEncoder().count_tokens
            for step in add([folder], store, count=count):
                if isinstance(step, Ingested):
                    result = step
        for number in range(1, 7):
            found = Search(store).search(f"lamp LD{number} flashes, sensor open")
            titles = [hit.document for hit in found.hits[:1]]
            answered += titles == [f"good/good-{number}.pdf"]
        result.warnings.extend(_unexplained(store))
    return result, answered, watched, perf_counter() - began


def _unexplained(store: LibraryStore) -> list[str]:
    """Return what is wrong with the library, and every lost page without reason."""
    lost = [
        f"{document.path}: page {page.number} is lost without a reason"
        for document in store.documents()
        for page in store.pages(document.sha256)
        if page.status is PageStatus.UNREADABLE and not page.reason
    ]
    return [*store.check(), *lost]


def judged(rows: Sequence[Row], folder: Path, library: Path) -> Checks:
    """Add all of it together and say what holds."""
    checks = Checks()
    result, answered, watched, seconds = together(folder, library)
    say()
    for reason, many in _reasons(result).items():
        say(f"refused  {reason[:100]}" + (f" (and {many - 1} alike)" * (many > 1)))
    say()
    twice = [each.partition(":")[0] for each in result.duplicates]
    told = [*result.added, *twice, *(refusal.path for refusal in result.refused)]
    named = {part for path in told for part in Path(path).parts}
    unnamed = sorted(row.name for row in rows if row.name not in named)
    checks.hold(f"the build ended by itself, in {seconds:.0f} s", holds=True)
    checks.hold(f"every file is named ({unnamed or 'all'})", holds=not unnamed)
    faults = [each for each in result.warnings if "cannot be searched" not in each]
    checks.hold(
        f"every refusal and lost page has its reason, the library is whole {faults}",
        holds=all(refusal.reason for refusal in result.refused) and not faults,
    )
    grown = watched.own - watched.before
    checks.hold(
        f"this process grew by {grown / MIB:.0f} MiB from {watched.before / MIB:.0f}",
        holds=grown < MAY_GROW,
    )
    limit = Limits().memory
    most = max(watched.child, *(row.peak for row in rows))
    checks.hold(
        f"no reading process held over {limit / MIB:.0f} MiB ({most / MIB:.0f})",
        holds=most <= limit,
    )
    checks.hold(f"good manuals that answer: {answered} of 6", holds=answered == 6)
    return checks


def _reasons(result: Ingested) -> Counter[str]:
    """Count the refusals, those of one file's many members as one."""
    seen: dict[tuple[str, str], str] = {}
    count: Counter[str] = Counter()
    for refusal in result.refused:
        kind = Path(refusal.path).parts[:2], refusal.reason.rpartition(": ")[2]
        count[seen.setdefault((str(kind[0]), kind[1]), refusal.reason)] += 1
    return count


def main(only: Sequence[str]) -> int:
    """Make the files, print the table, add all, and return 0 when all holds."""
    with tempfile.TemporaryDirectory() as place:
        shelf = Path(place) / "shelf"
        files = hostile_files(shelf / "hostile", only)
        good_files(shelf / "good")
        rows = [alone(path) for path in files]
        heads = ("file", "result", "reason", "MiB", "s")
        table(heads, [row.cells() for row in rows])
        say(f"\n{len(rows)} files")
        return judged(rows, shelf, Path(place) / "library").code()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
