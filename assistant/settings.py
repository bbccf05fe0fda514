"""Where things live on disk; touches no disk itself."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import platformdirs

APP = "faultleaf"


@dataclass(frozen=True, slots=True)
class Settings:
    """The places and limits one run works with."""

    library: Path
    """Folder of `library.sqlite` and the vector cache."""
    jobs: Path
    """The SQLite file of jobs."""
    cache: Path
    """Folder of the exported encoder; may be deleted at any time."""
    model: Path | None = None
    """A sentence-transformers folder; None means the packaged model."""
    threads: int = 2
    """Threads the encoder may use."""
    config: Path | None = None
    """Folder of what a person set up, such as their meters; None for none."""


def settings(
    library: Path | None = None,
    jobs: Path | None = None,
    environment: Mapping[str, str] | None = None,
) -> Settings:
    """Resolve every place: the argument, else the environment, else the platform.

    Parameters
    ----------
    library, jobs : Path, optional
        What the command line named.
    environment : mapping of str to str, optional
        Read instead of the process environment.
    """
    env = os.environ if environment is None else environment

    def place(given: Path | None, name: str, default: Path) -> Path:
        if given is not None:
            return given.expanduser()
        return Path(env[name]).expanduser() if env.get(name) else default

    data = Path(platformdirs.user_data_dir(APP, appauthor=False))
    state = Path(platformdirs.user_state_dir(APP, appauthor=False))
    cache = Path(platformdirs.user_cache_dir(APP, appauthor=False))
    config = Path(platformdirs.user_config_dir(APP, appauthor=False))
    return Settings(
        library=place(library, "FAULTLEAF_LIBRARY", data / "library"),
        jobs=place(jobs, "FAULTLEAF_JOBS", state / "jobs.sqlite"),
        cache=place(None, "FAULTLEAF_CACHE", cache),
        model=Path(env["FAULTLEAF_MODEL"]) if env.get("FAULTLEAF_MODEL") else None,
        threads=min(4, os.cpu_count() or 1),
        config=place(None, "FAULTLEAF_CONFIG", config),
    )
