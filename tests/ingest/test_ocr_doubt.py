"""When what OCR gave is no reading, and how that is said: with an engine of ours."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from numpy.typing import NDArray

from ingest.readers import ocr
from ingest.readers.base import RawPage
from ingest.readers.ocr import read_pictures
from tests.ingest.sample_pdfs import canvas_pdf

Line = tuple[str, float, tuple[int, int, int, int]]


class Engine:
    """Gives one result after the other, as the library shapes them."""

    def __init__(self, *results: list[Line]) -> None:
        self.results = list(results)
        self.seen: list[tuple[int, ...]] = []

    def __call__(self, picture: NDArray[np.uint8]) -> SimpleNamespace:
        self.seen.append(picture.shape)
        lines = self.results.pop(0) if self.results else []
        boxes = [
            np.array([(x0, top), (x1, top), (x1, bottom), (x0, bottom)])
            for _, _, (x0, top, x1, bottom) in lines
        ]
        return SimpleNamespace(
            boxes=np.array(boxes) if lines else None,
            txts=tuple(text for text, _, _ in lines) if lines else None,
            scores=tuple(score for _, score, _ in lines) if lines else None,
        )


def read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, engine: Engine) -> RawPage:
    monkeypatch.setattr(ocr, "recogniser", lambda: engine)
    path = canvas_pdf(tmp_path / "page.pdf", [["drawn"]])
    _, page = read_pictures(path, pages=(1,))
    assert isinstance(page, RawPage)
    return page


def test_a_page_in_a_script_it_does_not_know_is_said_and_not_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # What the engine gave for a page in Cyrillic letters, rendered at 150 dpi: codes
    # are sure, and a whole line gives two letters.
    page = read(
        tmp_path,
        monkeypatch,
        Engine(
            [
                ("E4", 1.0, (0, 0, 36, 28)),
                ("CN5", 1.0, (600, 0, 656, 29)),
                ("e.", 0.74, (0, 40, 806, 75)),
            ]
        ),
    )

    assert not page.text
    assert "confidence of 0.77 only" in page.failure
    assert "a script that it does not know" in page.failure


def test_a_doubtful_line_is_left_out_of_a_page_that_is_sure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = read(
        tmp_path,
        monkeypatch,
        Engine(
            [
                ("E4 discharge sensor open", 0.99, (0, 0, 600, 30)),
                ("||..l", 0.31, (0, 40, 30, 70)),
            ]
        ),
    )

    assert page.text == "E4 discharge sensor open"
    assert page.source == "ocr"
    assert page.confidence == pytest.approx(0.958, abs=0.001)  # by width, by hand


def test_lines_askew_keep_their_cells(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rows: list[Line] = []
    boxes = []
    for at, (code, plug) in enumerate((("E4 sensor open", "CN5"), ("E5 low", "CN7"))):
        for x, width, text in ((0, 300, code), (900, 60, plug)):
            # Falls 5 in 100: over 900 px more than the 40 from line to line.
            top = 40 * at + 0.05 * x
            rows.append((text, 0.99, (x, int(top), x + width, int(top) + 30)))
            boxes.append(
                [
                    (x, top),
                    (x + width, top + 0.05 * width),
                    (x + width, top + 30 + 0.05 * width),
                    (x, top + 30),
                ]
            )
    engine = Engine(rows)
    monkeypatch.setattr(
        Engine,
        "__call__",
        lambda *_: SimpleNamespace(
            boxes=np.array(boxes),
            txts=tuple(text for text, _, _ in rows),
            scores=tuple(score for _, score, _ in rows),
        ),
    )

    page = read(tmp_path, monkeypatch, engine)

    assert page.text == "E4 sensor open  CN5\nE5 low  CN7"


def test_a_huge_page_is_drawn_smaller(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ocr, "MAX_PIXELS", 10_000)
    engine = Engine()

    page = read(tmp_path, monkeypatch, engine)

    (shape,) = engine.seen
    assert shape[0] * shape[1] <= 10_300  # sides are rounded up to whole pixels
    assert not page.text
