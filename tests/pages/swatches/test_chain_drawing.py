"""The bar is to scale, and nothing of it lies outside the sheet."""

from itertools import pairwise

import pytest

from logbook.craft.drawing.drawing import Line, Rect, Text
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Units
from logbook.pages.swatches.chain_drawing import LETTER, chain_drawing
from logbook.tasks.chain import ChainAnswer, chain_by_hand

SHELLS = StitchPattern(multiple=6, plus=1, extra_chains=1)
GAUGE = read_readings("4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm")


def answer(width_mm: float, pattern: StitchPattern = SHELLS, edging_mm: float = 0.0, gauge: str = "") -> ChainAnswer:
    plan = PiecePlan(width_mm=width_mm, side_edging_mm=edging_mm)
    return chain_by_hand(read_readings(gauge) if gauge else GAUGE, pattern, plan)


def test_repeats_are_ticked_and_the_edge_has_its_reach() -> None:
    found = answer(460)
    drawing = chain_drawing(found, found.recommended, Units.CM)(400, 20)
    bar, repeats = [shape for shape in drawing.shapes if isinstance(shape, Rect) and shape.outline == "ink"]
    scale = bar.width / found.recommended.mm
    assert repeats.width == pytest.approx(12 * found.repeat_mm * scale)
    ticks = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "accent"]
    assert len(ticks) == 11
    measure = next(shape for shape in drawing.shapes if isinstance(shape, Line) and shape.arrows)
    assert measure.points[1][0] - measure.points[0][0] == pytest.approx(460 * scale)
    piece = next(shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "series3")
    half = found.recommended.give_or_take_mm
    assert half is not None
    assert piece.points[1][0] - piece.points[0][0] == pytest.approx(2 * half * scale)
    words = [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
    assert words == ["asked: 46.0 cm", "swatch ± 1.2 cm", "whole piece ± 2.8 cm", "46.5 cm"]


@pytest.mark.parametrize("width_mm", [20.0, 460.0, 3000.0])
@pytest.mark.parametrize("sheet", [(260.0, 39.0), (413.0, 34.0), (420.0, 20.0), (1200.0, 20.0)])
def test_nothing_lies_outside_the_sheet(width_mm: float, sheet: tuple[float, float]) -> None:
    for pattern, gauge in ((SHELLS, ""), (StitchPattern(multiple=1), "18 sts = 11 cm")):
        found = answer(width_mm, pattern, 5.0, gauge)
        for option in found.options:
            drawing = chain_drawing(found, option, Units.CM)(*sheet)
            for shape in drawing.shapes:
                if isinstance(shape, Line):
                    assert all(-0.01 <= x <= sheet[0] + 0.01 and 0 <= y <= drawing.height for x, y in shape.points)
                elif isinstance(shape, Rect):
                    assert shape.x >= -0.01
                    assert shape.x + shape.width <= sheet[0] + 0.01
                elif isinstance(shape, Text) and LETTER * sheet[1] * len(shape.text) <= sheet[0] - 0.6 * sheet[1]:
                    wide = LETTER * sheet[1] * len(shape.text)
                    left = shape.x - {"w": 0.0, "e": wide, "center": wide / 2}[shape.anchor]
                    assert -0.1 * wide <= left <= sheet[0] - 0.9 * wide, shape


def test_many_stitches_are_ticked_in_fives_and_tens() -> None:
    found = answer(1000, StitchPattern(multiple=1), gauge="18 sts = 9 cm")
    drawing = chain_drawing(found, found.recommended, Units.CM)(300, 20)
    ticks = [shape.points[0][0] for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "accent"]
    assert len(ticks) == 19
    assert min(b - a for a, b in pairwise(ticks)) >= 7
