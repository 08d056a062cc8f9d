import itertools
import re
from typing import get_args

import pytest

from logbook.craft.drawing.drawing import Role
from logbook.window.palette import DARK, LIGHT, Palette


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour as the Web Content Accessibility Guidelines define it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_of_black_and_white_is_21() -> None:
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("palette", [LIGHT, DARK])
class TestContrast:
    def check(self, palette: Palette, texts: str, grounds: str, least: float) -> None:
        for text, ground in itertools.product(texts.split(), grounds.split()):
            ratio = contrast(getattr(palette, text), getattr(palette, ground))
            assert ratio >= least, f"{text} on {ground}: {ratio:.2f}"

    def test_of_text(self, palette: Palette) -> None:
        every_ground = "page surface stripe selection unfocused error_field band button button_hover button_pressed"
        self.check(palette, "ink", every_ground, 4.5)
        self.check(palette, "muted accent error warning good", "page surface", 4.5)
        self.check(palette, "on_accent", "accent accent_hover accent_pressed", 4.5)

    def test_of_signs(self, palette: Palette) -> None:
        self.check(palette, "focus outline error", "page surface", 3)
        self.check(palette, "outline", "error_field", 3)
        self.check(palette, "series1 series2 series3 accent", "surface stripe band", 3)
        self.check(palette, "on_accent", "accent", 3)


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_every_colour_is_one_and_every_role_has_one(palette: Palette) -> None:
    assert all(re.fullmatch("#[0-9A-F]{6}", colour) for colour in palette._asdict().values())
    assert {palette.of_role(role) for role in get_args(Role)} <= set(palette._asdict().values())
