"""Plans and cloths for the tests of garments: one piece at a time, of a stitch of p × q mm."""

from collections.abc import Mapping
from typing import Any

from logbook.craft.garments.body import sizes_of
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize, work_out_garment
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.gauges.drift import drifts_of
from logbook.craft.pieces.piece_gauges import gauges_for
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading


def cloth(p: float, q: float, multiple: int = 1, plus: int = 0, extra: int = 1, **rest: Any) -> Cloth:
    """A cloth whose stitch is p mm wide and whose row is q mm high, read over a hundred of each."""
    readings = (
        _washed(f"100 stitches = {p * 10} cm", Direction.STITCHES),
        _washed(f"100 rows = {q * 10} cm", Direction.ROWS),
    )
    pattern = StitchPattern(name="plain", multiple=multiple, plus=plus, extra_chains=extra, **rest)
    swatch = Swatch(pattern=pattern, readings=readings, swatch_grams=10, swatch_stitches=20, swatch_rows=20)
    return Cloth(gauges=gauges_for(swatch, (), drifts_of(Assumptions()), Assumptions()))


def _washed(text: str, direction: Direction) -> TakenReading:
    (reading,) = read_readings(text, direction)
    return TakenReading(Condition.WASHED, reading)


def garment(plan: Mapping[str, Any], of: Cloth | Mapping[str, Cloth]) -> tuple[GarmentInSize, ...]:
    """The garment of a plan as a file holds it, all pieces of one cloth or each of its own."""
    made: GarmentPlan = plan_of(dict(plan))
    cloths = {piece.name: of[piece.name] if isinstance(of, Mapping) else of for piece in made.pieces}
    return work_out_garment(made, sizes_of(made, None), cloths)


def piece(shape: str, measures: Mapping[str, str], of: Cloth, **said: Any) -> ShapedPiece:
    """One piece by itself."""
    (size,) = garment({"name": "g", "pieces": [{"name": "it", "shape": shape, "measures": dict(measures), **said}]}, of)
    return size.pieces[0]
