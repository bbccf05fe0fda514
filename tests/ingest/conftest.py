"""An empty library, and a small folder of literature."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.library.store import LibraryStore
from tests.shelves import note


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path / "library", create=True) as opened:
        yield opened


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Two folders of two makers, with a file of the same name in each."""
    root = tmp_path / "literature"
    note(root / "larch" / "manual.txt", "LARCH MANUAL\nLamp LD2 flashes four times.")
    note(root / "cedar" / "manual.txt", "CEDAR MANUAL\nLamp H1 flashes in groups.")
    note(root / "shop.txt", "Boathouse notes\nThe supply dips when the lift starts.")
    return root
