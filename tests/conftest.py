"""Shared ground of the suite: no network, homes in a temporary folder."""

from __future__ import annotations

import os
import socket
from pathlib import Path
from typing import Any

import pytest
from filelock import FileLock
from hypothesis import settings

from assistant.settings import Settings

settings.register_profile("suite", derandomize=True, deadline=None, max_examples=60)
settings.load_profile("suite")

_REAL_SOCKET = socket.socket


class _LocalOnly(_REAL_SOCKET):
    """A socket that refuses the internet families; asyncio needs AF_UNIX."""

    def __init__(self, family: int = -1, *args: Any, **kwargs: Any) -> None:
        if family in (-1, socket.AF_INET, socket.AF_INET6):
            raise OSError("the suite runs without a network")
        super().__init__(family, *args, **kwargs)


@pytest.fixture(autouse=True)
def _no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(socket, "socket", _LocalOnly)


@pytest.fixture(scope="session")
def shared_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder that all processes of one run of the tests share."""
    own = tmp_path_factory.getbasetemp()
    return own.parent if "PYTEST_XDIST_WORKER" in os.environ else own


@pytest.fixture(scope="session")
def shared_cache(shared_folder: Path) -> Path:
    """Where the exported encoder lies; FAULTLEAF_TEST_CACHE outlives the run."""
    cache = os.environ.get("FAULTLEAF_TEST_CACHE")
    return Path(cache) if cache else shared_folder / "cache"


@pytest.fixture(autouse=True)
def _own_home(
    tmp_path: Path, shared_cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Library and jobs start empty in every test; the encoder cache is shared."""
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(tmp_path / "library"))
    monkeypatch.setenv("FAULTLEAF_JOBS", str(tmp_path / "jobs.sqlite"))
    monkeypatch.setenv("FAULTLEAF_CACHE", str(shared_cache))


@pytest.fixture(scope="session")
def sample_places(shared_folder: Path, shared_cache: Path) -> Settings:
    """Return places with the sample library, real vectors, built once; read only."""
    from tests.exported import exported_to
    from tui.plain.console import Console
    from tui.samples import build

    folder = shared_folder / "samples"
    places = Settings(
        library=folder / "library", jobs=folder / "jobs.sqlite", cache=shared_cache
    )
    folder.mkdir(exist_ok=True)
    with FileLock(folder / "lock"):
        if not (folder / "built").exists():
            exported_to(places)
            build(places.library, places, Console())
            (folder / "built").touch()
    return places
