"""What holds of every shape, whatever its measures and gauge."""

from collections import Counter
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from logbook.craft.garments.outline import outline
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import CROWN, HALF_FRONT, PANEL, RAGLAN, ROUND_YOKE, TAPERED, TRIANGLE
from logbook.craft.pieces.shaping import rows_text
from logbook.errors import LogbookError
from tests.support.shaped_pieces import cloth, piece
from tests.support.technical_editor import rows_said

RANGES: dict[str, dict[str, tuple[int, int]]] = {
    PANEL: {"width": (120, 900), "length": (80, 900), "armhole": (20, 400), "inset": (0, 120), "neck width": (20, 300),
            "neck depth": (10, 400)},
    HALF_FRONT: {"width": (80, 450), "length": (80, 900), "armhole": (20, 400), "inset": (0, 120), "neck width": (20, 200),
                 "neck depth": (10, 600)},
    TAPERED: {"start width": (40, 700), "end width": (40, 700), "length": (20, 900), "straight": (0, 90)},
    RAGLAN: {"neck round": (200, 700), "yoke depth": (80, 400), "body round": (400, 1600), "upper arm round": (120, 600),
             "underarm": (0, 140)},
    CROWN: {"round": (250, 700), "height": (60, 400)},
    TRIANGLE: {"wingspan": (60, 2200)},
}  # fmt: skip
RANGES[ROUND_YOKE] = RANGES[RAGLAN]
CHOICES: dict[str, dict[str, Any]] = {
    PANEL: {"neck": st.sampled_from(["round", "square", "v"])},
    HALF_FRONT: {"neck": st.sampled_from(["round", "square", "v"])},
    TAPERED: {"right side rows": st.booleans(), "worked": st.sampled_from(["up", "down", "round"])},
    RAGLAN: {"line stitches": st.integers(0, 3)},
    ROUND_YOKE: {},
    CROWN: {"each round": st.integers(3, 16), "exact": st.booleans()},
    TRIANGLE: {"first stitches": st.integers(1, 9), "more a row": st.integers(1, 6)},
}
EIGHTHS = 25.4 / 8


@st.composite
def planned_pieces(draw: st.DrawFn, shape: str) -> tuple[dict[str, int], dict[str, Any], float, float]:
    """Measures in eighths of an inch, choices, stitch and row pitch."""
    measures = {name: draw(st.integers(int(a / EIGHTHS), int(b / EIGHTHS))) for name, (a, b) in RANGES[shape].items()}
    choices = {name: draw(of) for name, of in CHOICES[shape].items()}
    return measures, choices, draw(st.integers(30, 140)) / 10, draw(st.integers(30, 180)) / 10


def in_cm(measures: Mapping[str, int]) -> dict[str, str]:
    return {name: f"{eighths * 0.3175:.4f} cm" for name, eighths in measures.items()}


def in_inches(measures: Mapping[str, int]) -> dict[str, str]:
    return {
        name: f"{eighths // 8} {eighths % 8}/8 in" if eighths % 8 else f"{eighths // 8} in" for name, eighths in measures.items()
    }


def made_of(shape: str, planned: tuple[dict[str, int], dict[str, Any], float, float]) -> ShapedPiece:
    """The piece; a plan that can't be is passed over, which hypothesis counts."""
    measures, choices, p, q = planned
    try:
        return piece(shape, in_cm(measures), cloth(p, q), **choices)
    except LogbookError:
        assume(False)
        raise


def changes_said(made: ShapedPiece) -> Counter[int]:
    """What shaping and stitches left say of each row."""
    said: Counter[int] = Counter()
    for shaping in made.shapings:
        for row in shaping.at:
            said[row] += shaping.by * shaping.edges
    sides = 1 if made.planned.shape == HALF_FRONT else 2
    for place, row, count in made.left:
        said[row] -= count * (sides if place == "armhole" else 1)
    if made.planned.shape == CROWN:
        said[1] += made.parts["each_round"]
    return said


@pytest.mark.parametrize("shape", [shape for shape in RANGES if shape != ROUND_YOKE])
@given(st.data())
@settings(max_examples=30)
def test_every_count_is_the_one_before_and_what_is_said_of_the_row(shape: str, data: st.DataObject) -> None:
    made = made_of(shape, data.draw(planned_pieces(shape)))
    said = changes_said(made)
    for row, (before, now) in enumerate(pairwise((made.foundation, *made.counts)), 1):
        assert now - before == said[row]
    assert min(made.counts) >= 1


@given(planned_pieces(ROUND_YOKE))
@settings(max_examples=40)
def test_a_round_yoke_grows_evenly(planned: tuple[dict[str, int], dict[str, Any], float, float]) -> None:
    made = made_of(ROUND_YOKE, planned)
    gains = [now - before for before, now in pairwise((made.foundation, *made.counts)) if now != before]
    assert not gains or max(gains) - min(gains) <= 1
    parts = made.parts
    assert made.counts[-1] == 2 * (parts["back"] + parts["sleeve"])
    assert parts["body"] == 2 * (parts["back"] + parts["underarm"])
    assert parts["arm"] == parts["sleeve"] + parts["underarm"]


@pytest.mark.parametrize("shape", [TAPERED, RAGLAN, HALF_FRONT, PANEL])
@given(st.data())
@settings(max_examples=30)
def test_gaps_differ_by_one_and_are_said_in_a_sentence_that_can_be_worked(shape: str, data: st.DataObject) -> None:
    made = made_of(shape, data.draw(planned_pieces(shape)))
    for shaping in made.shapings:
        at = [row - shaping.first + 1 for row in shaping.at]
        if not at:
            continue
        each = Counter(at).values()
        assert max(each) - min(each) <= 1 or max(each) <= -(-len(at) // shaping.rows)
        right = shaping.place == "edges" and made.planned.choice("right side rows")
        if max(each) == 1 and not right:
            gaps = [later - row for row, later in pairwise(at)]
            assert not gaps or max(gaps) - min(gaps) <= 1
        text = rows_text(at, shaping.rows)
        assert "\n" not in text
        if not right:
            again, even = rows_said(text, shaping.rows)
            assert again == at
            assert not even or at[-1] + even == shaping.rows


@given(planned_pieces(TAPERED))
@settings(max_examples=40)
def test_a_taper_stays_by_its_line(planned: tuple[dict[str, int], dict[str, Any], float, float]) -> None:
    planned[1]["right side rows"] = False
    made = made_of(TAPERED, planned)
    assume(made.shapings)
    d, rows = len(made.shapings[0].at), made.shapings[0].rows
    far = max(
        abs((made.widths[row] - made.widths[0]) / 2 - (made.widths[rows] - made.widths[0]) / 2 * row / rows)
        for row in range(1, rows + 1)
    )
    assert far == pytest.approx(made.off_line_mm, abs=1e-6)
    assert far <= made.stitch_mm * (0.5 + d * d / (4 * rows)) + 1e-6
    assert abs(made.widths[0] - _mm(planned, "start width")) <= made.stitch_mm / 2 + 1e-6
    assert abs(made.widths[-1] - _mm(planned, "end width")) <= made.stitch_mm + 1e-6


def _mm(planned: tuple[dict[str, int], dict[str, Any], float, float], name: str) -> float:
    return planned[0][name] * EIGHTHS


@pytest.mark.parametrize("shape", RANGES)
@given(st.data())
@settings(max_examples=20)
def test_cm_and_inches_agree(shape: str, data: st.DataObject) -> None:
    planned = data.draw(planned_pieces(shape))
    made = made_of(shape, planned)
    other = piece(shape, in_inches(planned[0]), cloth(planned[2], planned[3]), **planned[1])
    assert (made.chain, made.foundation, made.counts, made.shapings) == (
        other.chain,
        other.foundation,
        other.counts,
        other.shapings,
    )


@pytest.mark.parametrize("shape", [shape for shape in RANGES if shape != HALF_FRONT])
@given(st.data())
@settings(max_examples=20)
def test_both_sides_mirror(shape: str, data: st.DataObject) -> None:
    points = [(round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y in outline(made_of(shape, data.draw(planned_pieces(shape)))).points]
    assert {(-x + 0.0, y) for x, y in points} == set(points)


@given(planned_pieces(HALF_FRONT))
@settings(max_examples=30)
def test_two_half_fronts_are_the_front_that_is_cut_in_the_middle(
    planned: tuple[dict[str, int], dict[str, Any], float, float],
) -> None:
    half = made_of(HALF_FRONT, planned)
    shape = outline(half)
    assert shape.width == pytest.approx(max(half.widths))
    front = [x for line in shape.edges["front"] for x, _ in line]
    side = [x for line in shape.edges["side"] for x, _ in line]
    assert max(front) < min(side)
    assert half.edges["start"].count == half.foundation


GROWING = {
    PANEL: {"width": 0, "length": -1},
    TAPERED: {"start width": 0, "end width": 1, "length": -1},
    RAGLAN: {"body round": "body", "upper arm round": "arm", "yoke depth": -1},
    ROUND_YOKE: {"body round": "body", "upper arm round": "arm", "yoke depth": -1},
    CROWN: {"round": 1, "height": -1},
    TRIANGLE: {"wingspan": 1},
    HALF_FRONT: {"width": 0, "length": -1},
}  # 0: stitches at the start, 1: at the end, -1: rows, else the part of that name


@pytest.mark.parametrize(("shape", "measure"), [(shape, name) for shape, of in GROWING.items() for name in of])
@given(st.data())
@settings(max_examples=12)
def test_sizes_grow_with_the_body(shape: str, measure: str, data: st.DataObject) -> None:
    planned = data.draw(planned_pieces(shape))
    more = data.draw(st.integers(1, 60))
    larger = ({**planned[0], measure: planned[0][measure] + more}, *planned[1:])
    small, large = (_number(made_of(shape, each), GROWING[shape][measure]) for each in (planned, larger))  # type: ignore[index]
    assert large >= small


def _number(made: ShapedPiece, what: int | str) -> int:
    if isinstance(what, str):
        return made.parts[what]
    return {0: made.foundation, 1: made.counts[-1], -1: made.rows}[what]
