"""A piece alone, a size run and a garment of straight panels answer from the same numbers, to the digit."""

from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from logbook.craft.garments.body import GarmentSize
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize, work_out_garment
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.garments.together import yarn_of_piece
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.size_run import size_run
from logbook.craft.words.lengths import Ease
from logbook.errors import LogbookError
from tests.support.shaped_pieces import cloth


@st.composite
def tops(draw: st.DrawFn) -> tuple[Cloth, PiecePlan, tuple[float, ...]]:
    """A stitch, a panel of it with marks, and the busts of its sizes."""
    multiple = draw(st.sampled_from([1, 1, 2, 6, 10, 17]))
    groups = draw(st.sampled_from([{}, {"rows_in_repeat": 4}, {"set_up_rows": 1, "rows_in_repeat": 6, "closing_rows": 2}]))
    plus = draw(st.integers(0, multiple - 1))
    of = cloth(
        draw(st.integers(30, 140)) / 10, draw(st.integers(30, 180)) / 10, multiple, plus, draw(st.integers(1, 4)), **groups
    )
    half = st.integers(0, 200).map(lambda length: float(length) or None)
    plan = PiecePlan(
        ease=Ease(mm=float(draw(st.integers(-60, 200)))),
        seam_mm=float(draw(st.integers(0, 15))),
        length_mm=float(draw(st.integers(250, 800))),
        armhole_mm=draw(half),
        neck_mm=draw(half),
        slit_mm=draw(half),
        sideways=draw(st.booleans()),
        head_mm=None,
    )
    busts = draw(st.lists(st.integers(500, 1700), min_size=1, max_size=4, unique=True))
    return of, plan, tuple(float(bust) for bust in sorted(busts))


def as_garment(of: Cloth, plan: PiecePlan, busts: tuple[float, ...]) -> tuple[GarmentInSize, ...]:
    marks = {"armhole": plan.armhole_mm, "neck width": plan.neck_mm, "slit": plan.slit_mm}
    measures = {"width": "(bust + ease) / 2", "length": f"{plan.length_mm} mm"}
    measures |= {name: f"{mm} mm" for name, mm in marks.items() if mm}
    edges = ("start", "end") if plan.sideways else ("left side", "right side")
    front: dict[str, Any] = {"shape": "straight panel", "measures": measures, "seam": f"{plan.seam_mm} mm"}
    front["worked"] = "sideways" if plan.sideways else "up"
    pieces = [{"name": "front", **front}, {"name": "back", **front}]
    joins = [{"of": "front", "edge": edge, "to": ["back"], "at": edge} for edge in edges]
    garment = plan_of({"name": "g", "pieces": pieces, "joins": joins})
    sizes = [GarmentSize(name=f"{bust:g}", body={"bust": bust}, ease=plan.ease) for bust in busts]
    return work_out_garment(garment, sizes, dict.fromkeys(("front", "back"), of))


def told(size: GarmentInSize, plan: PiecePlan, of: Cloth) -> dict[str, Any]:
    """What the garment says of one panel."""
    piece = size.pieces[0]
    up = piece.foundation if plan.sideways else piece.rows
    armhole, side = piece.edges.get("armhole"), piece.edges.get("side")
    under = up - (armhole.count if armhole else 0)
    yarn = yarn_of_piece(piece, of)
    return {
        "chain": piece.chain,
        "stitches": piece.foundation,
        "rows": piece.rows,
        "armhole": under if plan.armhole_mm else None,
        "slit": under - side.count if plan.slit_mm and side else None,
        "shoulder": piece.edges["shoulder"].count if plan.neck_mm else None,
        "neck": piece.edges["neck"].count if plan.neck_mm else None,
        "width": round(piece.rows * piece.row_mm if plan.sideways else piece.widths[-1], 9),
        "grams": round(2 * (yarn.grams if yarn else 0.0), 9),
    }


def of_piece(numbers: PieceNumbers) -> dict[str, Any]:
    """The same of a piece worked out by itself."""
    return {
        "chain": numbers.chain,
        "stitches": numbers.stitches,
        "rows": numbers.rows,
        "armhole": numbers.armhole and numbers.armhole.at,
        "slit": numbers.slit and numbers.slit.at,
        "shoulder": numbers.neck and numbers.neck.shoulder,
        "neck": numbers.neck and numbers.neck.units,
        "width": round(numbers.width.mm, 9),
        "grams": round(numbers.yarn.grams if numbers.yarn else 0.0, 9),
    }


@given(tops())
@settings(max_examples=60)
def test_piece_run_and_garment_agree(top: tuple[Cloth, PiecePlan, tuple[float, ...]]) -> None:
    of, plan, busts = top
    sizes = tuple(SizePlan(name=f"{bust:g}", body_mm=bust) for bust in busts)
    try:
        run = size_run(plan, sizes, of.gauges)
    except LogbookError:
        assume(False)
        raise
    made = as_garment(of, plan, busts)
    for bust, size, one in zip(busts, made, run.sizes, strict=True):
        alone = PiecePlan(**{**{name: getattr(plan, name) for name in plan.__slots__}, "body_mm": bust})
        assert told(size, plan, of) == of_piece(one.piece) == of_piece(work_out(alone, of.gauges))
