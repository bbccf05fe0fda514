"""UTF-8 read as Windows-1252 or Latin-1 is put right, and nothing else is touched."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ingest.cleaning import repair
from ingest.mojibake import unmangled

SIGNS = "°µ±²éüößÄÖÜłęšΩμ–—…≤≥→•℃½"


@pytest.mark.parametrize("sign", SIGNS)
def test_a_sign_that_was_mangled_is_read_as_what_it_was(sign: str) -> None:
    # The damage is made by Python's own codecs: what other programs do to text.
    text = f"65 °C {sign}x 10"
    for codec in ("cp1252", "latin-1"):
        data = text.encode()
        try:
            mangled = data.decode(codec)
        except UnicodeDecodeError:
            continue

        assert unmangled(mangled) == text


@pytest.mark.parametrize(
    "text",
    [
        "„GROSSÄ“ – groß“ und weiß»",
        "NÃO MAÇÃ– é à É ÊTRE",
        "20 °C ± 5 µF, 10 kΩ — §3",
        "Ångström, Århus, Île, Ïambe",
    ],
)
def test_what_is_written_so_stays(text: str) -> None:
    assert unmangled(text) == text


@given(st.text(alphabet="abc 0123°µΩéüß–", max_size=40))
def test_sound_text_is_never_changed(text: str) -> None:
    assert unmangled(text) == text


@given(st.text(alphabet=SIGNS + "abC 019", max_size=30))
def test_what_was_mangled_whole_comes_back(text: str) -> None:
    mangled = f"°{text}".encode().decode("latin-1")

    assert unmangled(mangled) == f"°{text}"


def test_it_is_done_line_by_line_before_the_page_is_stored() -> None:
    assert repair("Stops at 65 Â°C\nand at 20 °C") == "Stops at 65 °C\nand at 20 °C"
