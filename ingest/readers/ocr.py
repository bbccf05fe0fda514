"""The reader of pages that are pictures: rendered, then recognised letter by letter.

Needs the extra `faultleaf[ocr]`, whose models lie in its package: nothing is ever
fetched. Runs only in a reading process of its own, see `ingest.readers.scans`.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.errors import InputError
from ingest.readers.base import FileFacts, RawPage, Read
from ingest.readers.sheet import GAP, one_line

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from ingest.readers.pdfium import Document

READER = "ingest.readers.ocr:read_pictures"
DPI = 150
"""More hardly helps: on eight pages at 100 to 300 dpi the words found were alike."""
POINTS = 72
MAX_PIXELS = 40_000_000
DOUBTFUL = 0.5
"""Confidence below which a line is no reading at all."""
IMPLAUSIBLE = 0.87
"""Mean confidence below which a page is none. Rendered at 150 dpi, Latin pages give
0.99, at a fifth of that 0.91, pages in Greek or Cyrillic 0.76 to 0.81."""
SCRIPTS = "Latin letters, Chinese and Japanese"
TALL = 1.5
"""A box so much taller than wide is a line that runs up or down."""
UPRIGHT = 0.95
"""Mean confidence below which a page may stand on its head."""
CELL_GAP = 1.2
"""Line heights between two boxes of one line that are two cells."""
SAME_LINE = 0.6
"""Share of the lower box's height by which two boxes of one line overlap."""
LONG = 4.0
"""Heights; only boxes that long tell how far a page is askew."""
ASKEW = 0.12
"""About seven degrees."""
_PACKAGE = "rapidocr"
_MODELS = {
    "Det.model_path": "PP-OCRv6_det_small.onnx",
    "Rec.model_path": "PP-OCRv6_rec_small.onnx",
    "Cls.model_path": "ch_ppocr_mobile_v2.0_cls_mobile.onnx",
}


@dataclass(frozen=True, slots=True)
class Piece:
    """Words found together, in pixels from the top left."""

    text: str
    confidence: float
    x0: float
    top: float
    x1: float
    bottom: float

    @property
    def height(self) -> float:
        """How tall its letters are, about."""
        return self.bottom - self.top


def models_folder() -> Path | None:
    """Return where the models are installed; None without the extra."""
    found = find_spec(_PACKAGE)
    if found is None or found.origin is None:
        return None
    folder = Path(found.origin).parent / "models"
    whole = all((folder / name).is_file() for name in _MODELS.values())
    return folder if whole else None


def read_pictures(
    path: Path,
    first: int = 1,
    password: str | None = None,
    pages: Sequence[int] = (),
) -> Iterator[Read]:
    """Recognise pages of a PDF: its facts, then those of `pages` from `first` on.

    Raises
    ------
    InputError
        The extra is not installed, or the file cannot be opened.
    """
    from ingest.readers.pdfium import PdfiumError, open_document

    recognise = recogniser()
    try:
        with open_document(path, password) as document:
            yield FileFacts(len(document))
            for number in sorted(pages):
                if first <= number <= len(document):
                    yield _page(document, number, recognise)
    except PdfiumError as error:
        raise InputError(f"{path.name}: damaged PDF ({error})") from error


def _page(document: Document, number: int, recognise: Any) -> RawPage:  # noqa: ANN401 - a library without types
    import numpy as np

    from ingest.readers.pdfium import PdfiumError

    label = str(number)
    try:
        drawn = document.picture(number - 1, DPI / POINTS, MAX_PIXELS)
    except PdfiumError as error:
        return RawPage(number, label, failure=f"it cannot be drawn ({error})")
    grey = np.frombuffer(drawn.grey, np.uint8)
    picture = grey.reshape(drawn.height, drawn.width)
    pieces, confidence = _upright(picture, recognise)
    if pieces and confidence < IMPLAUSIBLE:
        return RawPage(number, label, failure=_doubt(confidence))
    kept = [piece for piece in pieces if piece.confidence >= DOUBTFUL]
    text = "\n".join(lines_of(kept))
    return RawPage(number, label, text, source="ocr", confidence=confidence)


def _doubt(confidence: float) -> str:
    return (
        f"read by OCR with a confidence of {confidence:.2f} only: a poor picture, or a "
        f"script that it does not know (it knows {SCRIPTS})"
    )


def _upright(picture: NDArray[np.uint8], recognise: Any) -> tuple[list[Piece], float]:  # noqa: ANN401 - a library without types
    """Recognise a picture, turned where its lines run up or down."""
    import numpy as np

    pieces = _pieces(recognise(picture))
    best = (pieces, _sure(pieces))
    if not pieces:
        return best
    for turns in _turns(pieces, best[1]):
        other = _pieces(recognise(np.rot90(picture, turns).copy()))
        if _sure(other) > best[1]:
            best = (other, _sure(other))
        if best[1] >= UPRIGHT:
            break
    return best


def _turns(pieces: Sequence[Piece], confidence: float) -> tuple[int, ...]:
    """Return the quarter turns that are worth trying, anticlockwise."""
    tall = sum(each.height for each in pieces if each.height > TALL * _width(each))
    if 2 * tall > sum(max(each.height, _width(each)) for each in pieces):
        return (1, 3)
    return (2,) if confidence < UPRIGHT else ()


def _sure(pieces: Sequence[Piece]) -> float:
    """Return the mean confidence over all that was found, by its width.

    Not by letters: of a script that it does not know the engine gives a few letters
    for a whole line.
    """
    width = sum(map(_width, pieces))
    sure = sum(piece.confidence * _width(piece) for piece in pieces)
    return round(sure / width, 3) if width else 0.0


def _width(piece: Piece) -> float:
    return piece.x1 - piece.x0


def recogniser() -> Any:  # noqa: ANN401 - a library without types
    """Return the engine, with its own models and no way to fetch others."""
    folder = models_folder()
    if folder is None:
        raise InputError(
            "reading pictures needs an extra", "pip install 'faultleaf[ocr]'"
        )
    stay_offline()
    from rapidocr import RapidOCR

    params: dict[str, object] = {
        name: str(folder / file) for name, file in _MODELS.items()
    }
    threads = max(1, min(2, os.cpu_count() or 1))
    params |= {
        "Global.log_level": "critical",
        # It would turn each line for itself, and leave a page on its head unnoticed.
        "Global.use_cls": False,
        "Global.text_score": 0.0,  # how much is doubtful is looked at here
        "EngineConfig.onnxruntime.intra_op_num_threads": threads,
        "EngineConfig.onnxruntime.inter_op_num_threads": 1,
    }
    return RapidOCR(params=params)


def stay_offline() -> None:
    """Let nothing in this process open a connection, whatever a library wants.

    The models are the package's own; this is for the day that it thinks otherwise.
    An audit hook (PEP 578) sees every call, and cannot be taken out again.
    """
    sys.addaudithook(_refuse_connections)


def _refuse_connections(event: str, _: tuple[object, ...]) -> None:
    if event in _CONNECTING:
        raise OSError("reading pictures never uses a network")


_CONNECTING = frozenset(
    ("socket.connect", "socket.getaddrinfo", "socket.gethostbyname", "socket.sendto")
)


def _pieces(found: Any) -> list[Piece]:  # noqa: ANN401 - a library without types
    """Return what was found, put straight where the page was scanned askew."""
    if found.boxes is None or found.txts is None or found.scores is None:
        return []
    boxes = [box.astype(float) for box in found.boxes]
    slope = _slope(boxes)
    pieces: list[Piece] = []
    for box, text, score in zip(boxes, found.txts, found.scores, strict=True):
        words = one_line(str(text))
        if words:
            xs, ys = box[:, 0], box[:, 1] - slope * box[:, 0]
            sides = (xs.min(), ys.min(), xs.max(), ys.max())
            pieces.append(Piece(words, float(score), *map(float, sides)))
    return pieces


def _slope(boxes: Sequence[NDArray[np.float64]]) -> float:
    """Return how far lines fall a pixel to the right: the middle of all long boxes.

    A box is four corners from the top left, clockwise. A page that is more than
    slightly askew is left as it is.
    """
    slopes: list[float] = []
    for box in boxes:
        across, down = box[1] - box[0]
        height = abs(box[3][1] - box[0][1])
        if across > LONG * max(height, 1.0):
            slopes.append(float(down / across))
    middle = sorted(slopes)[len(slopes) // 2] if slopes else 0.0
    return middle if abs(middle) <= ASKEW else 0.0


def lines_of(pieces: Sequence[Piece]) -> list[str]:
    """Put pieces into lines from the top, cells two spaces apart.

    Examples
    --------
    >>> lines_of([Piece("sensor", 1, 90, 1, 150, 11), Piece("E4", 1, 0, 0, 20, 10)])
    ['E4  sensor']
    """
    rows: list[list[Piece]] = []
    for piece in sorted(pieces, key=lambda each: (each.top, each.x0, each.text)):
        row = next((row for row in reversed(rows) if _beside(row, piece)), None)
        if row is None:
            rows.append([piece])
        else:
            row.append(piece)
    return [_joined(sorted(row, key=lambda each: (each.x0, each.top))) for row in rows]


def _beside(row: Sequence[Piece], piece: Piece) -> bool:
    """Whether a piece stands on the line of a row, and free of what is on it."""
    return all(
        min(each.bottom, piece.bottom) - max(each.top, piece.top)
        > SAME_LINE * min(each.height, piece.height)
        for each in row[-1:]
    ) and not any(each.x0 < piece.x1 and piece.x0 < each.x1 for each in row)


def _joined(row: Sequence[Piece]) -> str:
    text = row[0].text
    for left, right in pairwise(row):
        wide = right.x0 - left.x1 > CELL_GAP * min(left.height, right.height)
        text += (GAP if wide else " ") + right.text
    return text
