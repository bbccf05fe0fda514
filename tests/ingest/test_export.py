"""The export is the model: same vectors, nothing cut, whole or not there."""

from __future__ import annotations

import json
import re
import shutil
import warnings
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from assistant.errors import LibraryError
from assistant.library.encoder import (
    EXPORTS,
    MANIFEST,
    MAX_TOKENS,
    PACKAGED_SHA256,
    export_folder,
    find_model_folder,
    verify_export,
)
from assistant.settings import Settings, settings
from ingest import export as exporting
from tests.exported import real_encoder, real_settings

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "kb_samples"
COSINE = 0.9999
SENTENCE = "fan lamp board wait three minutes test the cable at nine inch power off"
WORDS = SENTENCE.split()
"""Each one token of the model's vocabulary."""


def _texts() -> list[str]:
    """Every sample question, and texts of many lengths and scripts."""
    texts = ["", "E4", "Ω µ ½ °C", "Лампа мигает", "灯 6", "ﬂash \u00a0 \t\n x"]
    texts += [" ".join((WORDS * 15)[start : start + 7 * start]) for start in range(20)]
    for file in sorted(SAMPLES.glob("questions/*.yaml")):
        found = re.findall(r"text: *(.+)", file.read_text("utf-8"))
        texts += [line.strip("\"' ") for line in found]
    return texts


def _reference(texts: list[str]) -> NDArray[np.float32]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        model = exporting.load(find_model_folder(settings()))
        model.max_seq_length = 256
        vectors = model.encode(
            texts, batch_size=64, show_progress_bar=False, normalize_embeddings=True
        )
    return np.asarray(vectors, dtype=np.float32)


@pytest.mark.slow
@pytest.mark.model
def test_vectors_agree_with_sentence_transformers() -> None:
    encoder = real_encoder()
    long = " ".join((WORDS * 20)[:238])
    texts = [*_texts(), long, long + " end"]
    assert encoder.count_tokens(long) == 240

    ours = encoder.embed_passages(texts)

    cosines = (ours * _reference(texts)).sum(axis=1)
    assert len(texts) >= 28
    assert cosines.min() > COSINE
    # Had the text been cut at 128 tokens, its end would change nothing.
    assert not np.array_equal(ours[-1], ours[-2])


@pytest.mark.model
def test_an_export_notes_what_it_was_made_of() -> None:
    folder = export_folder(real_settings())
    assert folder is not None
    noted = json.loads((folder / MANIFEST).read_text("utf-8"))

    assert noted["model_hash"] == folder.name == PACKAGED_SHA256
    assert (noted["dimension"], noted["pooling"], noted["normalise"]) == (
        384,
        "mean",
        True,
    )
    assert (noted["query_prompt"], noted["passage_prompt"]) == ("", "")
    assert noted["max_tokens"] == MAX_TOKENS
    assert set(noted["versions"]) == set(exporting.LIBRARIES)
    assert verify_export(folder) == []
    assert [each.name for each in folder.parent.iterdir()] == [folder.name]


def test_other_weights_in_the_package_are_refused_before_torch_is_imported(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exporting, "PACKAGED_SHA256", "0" * 64)
    monkeypatch.setattr(exporting, "load", _must_not_load)

    with pytest.raises(LibraryError, match="not those of the packaged model") as raised:
        exporting.export(replace(settings(), cache=tmp_path))
    assert "reinstall" in raised.value.hint


def test_a_folder_without_weights_is_refused(tmp_path: Path) -> None:
    (tmp_path / "modules.json").write_text("[]")

    with pytest.raises(LibraryError, match="has no weights"):
        exporting.export(replace(settings(), model=tmp_path))


def test_a_cache_that_cannot_be_made_is_told_before_torch_is_imported(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("x")
    monkeypatch.setattr(exporting, "load", _must_not_load)

    with pytest.raises(LibraryError, match="cannot be written") as raised:
        exporting.export(replace(settings(), cache=tmp_path / "file"))
    assert "FAULTLEAF_CACHE" in raised.value.hint


@pytest.mark.model
def test_an_export_that_fails_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_model: object, folder: Path) -> None:
        (folder / "model.onnx").write_bytes(b"half")
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(exporting, "_write_graph", fail)

    with pytest.raises(LibraryError, match="No space left"):
        exporting.export(replace(settings(), cache=tmp_path))
    assert list((tmp_path / EXPORTS).iterdir()) == []


@pytest.mark.model
def test_an_export_that_does_not_agree_is_not_put_in_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = export_folder(real_settings())
    assert folder is not None

    def of_another_text(_model: object, beside: Path) -> None:
        for name in ("model.onnx", "model.onnx.data"):
            shutil.copyfile(folder / name, beside / name)

    monkeypatch.setattr(exporting, "_write_graph", of_another_text)
    monkeypatch.setattr(exporting, "AGREEMENT", 1.1)

    with pytest.raises(LibraryError, match="does not agree with the model"):
        exporting.export(replace(settings(), cache=tmp_path))
    assert list((tmp_path / EXPORTS).iterdir()) == []


@pytest.mark.model
def test_a_model_of_another_make_is_refused(tmp_path: Path) -> None:
    source = find_model_folder(settings())
    other = tmp_path / "cls model"
    shutil.copytree(source, other)
    pooling = other / "1_Pooling" / "config.json"
    said = json.loads(pooling.read_text())
    said["pooling_mode_mean_tokens"] = False
    said["pooling_mode_cls_token"] = True
    pooling.write_text(json.dumps(said))
    places = Settings(tmp_path / "l", tmp_path / "j", tmp_path / "c", model=other)

    with pytest.raises(LibraryError, match="cls pooling"):
        exporting.export(places)


def _must_not_load(_folder: Path) -> None:
    raise AssertionError("torch was about to be imported")
