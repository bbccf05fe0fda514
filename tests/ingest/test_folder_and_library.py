"""Whatever happens to a folder: added again with pruning, the library is its image."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.library.store import LibraryStore
from ingest.pipeline import Options
from tests.shelves import note, paths, take

_NAMES = ("a.txt", "b.txt", "sub/c.txt")
_TEXTS = tuple(f"Note {word}\nThe {word} turns." for word in ("fan", "valve", "relay"))
_STEPS = st.lists(
    st.one_of(
        st.tuples(st.just("write"), st.sampled_from(_NAMES), st.sampled_from(_TEXTS)),
        st.tuples(st.just("unlink"), st.sampled_from(_NAMES), st.just("")),
        st.tuples(st.just("move"), st.sampled_from(_NAMES), st.sampled_from(_NAMES)),
    ),
    min_size=1,
    max_size=3,
)


def _do(folder: Path, what: str, name: str, more: str) -> None:
    file = folder / name
    if what == "write":
        note(file, more)
    elif file.exists():
        if what == "unlink":
            file.unlink()
        else:
            (folder / more).parent.mkdir(exist_ok=True)
            file.rename(folder / more)


@settings(max_examples=8)
@given(st.lists(_STEPS, min_size=2, max_size=3))
def test_after_any_changes_the_library_holds_what_the_folder_holds(
    rounds: list[list[tuple[str, str, str]]],
) -> None:
    with (
        tempfile.TemporaryDirectory() as made,
        LibraryStore.open(Path(made) / "library", create=True) as store,
    ):
        folder = Path(made) / "folder"
        note(folder / "keep.txt", "Note that stays\nIt is never touched.")
        take(store, note(Path(made) / "other" / "z.txt", "Elsewhere\nNot in it."))
        for steps in rounds:
            for step in steps:
                _do(folder, *step)
            take(store, folder, options=Options(prune=True))

            there = {
                file.read_text(): file.relative_to(folder).as_posix()
                for file in folder.rglob("*.txt")
            }
            stored = {
                store.page_text(each.sha256, 1): each.path for each in store.documents()
            }
            assert stored.pop("Elsewhere\nNot in it.") == "z.txt"
            assert set(stored) == set(there)
            assert all((folder / path).exists() for path in stored.values())
            assert len(paths(store)) == len(set(paths(store)))
            assert store.check() == []
