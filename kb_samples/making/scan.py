"""A typed sheet as a picture: what a copier makes of a page."""

from __future__ import annotations

from io import BytesIO

from PIL import Image, ImageDraw, ImageFont

# A4 at 110 dots per inch: readable, small, and without any text in the file.
SIZE = (910, 1286)
MARGIN, STEP = 96, 30


def picture_of(lines: tuple[str, ...]) -> bytes:
    """Return a grey PNG of `lines` as typed, slightly tilted like a copy.

    The first line is drawn larger. The face is the one that Pillow carries, so no
    font of the machine matters.
    """
    image = Image.new("L", SIZE, 247)
    draw = ImageDraw.Draw(image)
    large, plain = ImageFont.load_default(size=26), ImageFont.load_default(size=18)
    y = 120
    for index, text in enumerate(lines):
        draw.text((MARGIN, y), text, font=plain if index else large, fill=35)
        y += STEP if index else 2 * STEP
    draw.rectangle((60, 80, SIZE[0] - 60, SIZE[1] - 90), outline=120, width=2)
    tilted = image.rotate(0.6, fillcolor=247).convert("P", colors=16)
    out = BytesIO()
    tilted.save(out, format="PNG")
    return out.getvalue()
