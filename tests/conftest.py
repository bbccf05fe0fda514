"""Shared ground of the suite: no network, homes in a temporary folder."""

from __future__ import annotations

import os
import socket
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

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


@pytest.fixture(autouse=True)
def _own_home(
    tmp_path: Path,
    tmp_path_factory: pytest.TempPathFactory,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Library and jobs start empty in every test; the encoder cache is shared."""
    cache = os.environ.get("FAULTLEAF_TEST_CACHE")
    shared = Path(cache) if cache else tmp_path_factory.getbasetemp() / "cache"
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(tmp_path / "library"))
    monkeypatch.setenv("FAULTLEAF_JOBS", str(tmp_path / "jobs.sqlite"))
    monkeypatch.setenv("FAULTLEAF_CACHE", str(shared))
