"""Every text on the screen can be read: contrast in colour, attributes without."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.pilot import Pilot

from assistant.settings import Settings
from tests.desk_driver import desk_on, keys, settle, shown, type_in

pytestmark = pytest.mark.model
LEAST = 4.5
"""WCAG 2.2, success criterion 1.4.3, for text of usual size."""
Colour = tuple[int, int, int]
STATES: tuple[tuple[str, ...], ...] = (
    (),
    ("tab",),
    ("question_mark",),
    ("q", "t", "space", "space"),
    ("q", "r"),
    (*"nine", "enter"),
    (*["tab"] * 6, "enter", "j"),
    ("q", "s"),
    ("enter",),
    ("q", "l"),
    ("q", "slash"),
)
"""Keys that lead through every kind of sheet, one after another."""


def luminance(colour: Colour) -> float:
    """Relative luminance, as WCAG 2.2 defines it."""
    parts = []
    for value in colour:
        part = value / 255
        parts.append(
            part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        )
    red, green, blue = parts
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Colour, other: Colour) -> float:
    """Contrast ratio, as WCAG 2.2 defines it."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_ratio_is_that_of_the_definition() -> None:
    # WCAG 2.2 names the ends of the scale: 1 to 1 and 21 to 1.
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21)
    assert contrast((90, 90, 90), (90, 90, 90)) == pytest.approx(1)


def pairs(pilot: Pilot[None]) -> dict[tuple[Colour, Colour], str]:
    """Return each pair of colours in view, with a text that is drawn in it."""
    found: dict[tuple[Colour, Colour], str] = {}
    for strip in pilot.app.screen._compositor.render_strips():
        for text, style, _ in strip:
            if not any(letter.isalnum() for letter in text):
                continue
            assert style is not None
            assert style.color is not None
            assert style.bgcolor is not None
            assert not style.dim
            fore, back = (each.get_truecolor() for each in (style.color, style.bgcolor))
            pair: tuple[Colour, Colour] = (fore, back)
            found.setdefault((back, fore) if style.reverse else pair, text)
    return found


def is_coloured(pilot: Pilot[None]) -> bool:
    """Say whether anything in view has a hue."""
    styles = [
        segment.style
        for strip in pilot.app.screen._compositor.render_strips()
        for segment in strip
        if segment.style
    ]
    used = [each for style in styles for each in (style.color, style.bgcolor) if each]
    return any(
        len(set(each.get_truecolor())) > 1 for each in used if not each.is_default
    )


async def to_a_job(pilot: Pilot[None]) -> None:
    await settle(pilot)
    await type_in(pilot, "unit VET-O50, I am a technician, I reset it 2 minutes ago")
    await type_in(pilot, "amber light LD2 flashes 4 times, then a pause")


async def test_every_text_stands_out_from_its_ground(
    sample_places: Settings, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    found: dict[tuple[Colour, Colour], str] = {}
    async with desk.run_test(size=(120, 40)) as pilot:
        await to_a_job(pilot)
        for state in STATES:
            await keys(pilot, *state)
            found |= pairs(pilot)

    low = {text: pair for pair, text in found.items() if contrast(*pair) < LEAST}
    assert low == {}
    assert len(found) > 5


async def test_without_colour_all_is_grey_and_says_the_same(
    sample_places: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[list[str]] = []
    coloured: list[bool] = []
    for name in ("coloured", "grey"):
        desk = desk_on(sample_places, tmp_path / name)
        async with desk.run_test(size=(80, 24)) as pilot:
            await to_a_job(pilot)
            seen.append([])
            for state in STATES:
                await keys(pilot, *state)
                seen[-1].append(shown(pilot))
                coloured.append(is_coloured(pilot))
        monkeypatch.setenv("NO_COLOR", "1")

    assert coloured == [True] * len(STATES) + [False] * len(STATES)
    assert seen[0] == seen[1]
