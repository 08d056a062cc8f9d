"""The run of sizes that tests reckon with: shells of 6 plus 1, extra chain 1, 38.18 mm a repeat, two panels, ease 5 cm."""

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import WrittenSizes
from logbook.craft.sizes.size_run import size_run
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Ease
from logbook.craft.words.terms import Terms
from tests.support.cloth import gauges_of_swatch, swatch, thrice

SHELL = StitchPattern(uid="shell", name="shell stitch", multiple=6, plus=1, extra_chains=1, first_stitch=2)
SWATCH = swatch(
    "S1",
    SHELL,
    {Condition.WASHED: f"4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm; {thrice('20 rows = 18 cm')}"},
    swatch_grams=12.0,
    swatch_stitches=24,
    swatch_rows=20,
    foundation_hook_mm=5.0,
)
PLAN = PiecePlan(name="Boathouse vest", ease=Ease(mm=50), length_mm=560, armhole_mm=200, neck_mm=240)
BUSTS = tuple(SizePlan(name=name, body_mm=bust) for name, bust in (("A", 785.0), ("B", 835.0), ("C", 940.0), ("D", 1040.0)))


def written(
    plan: PiecePlan = PLAN, own: Swatch = SWATCH, terms: Terms = Terms.US, sizes: tuple[SizePlan, ...] = BUSTS
) -> WrittenSizes:
    """That run worked out, or another."""
    gauges = gauges_of_swatch(own)
    return WrittenSizes(plan=plan, sizes=size_run(plan, sizes, gauges).sizes, swatch=own, gauges=gauges, terms=terms)
