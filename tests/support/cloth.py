"""Swatches as a maker would have them, and three garments of them, for tests that reckon with whole garments."""

from logbook.craft.gauges.drift import drifts_of
from logbook.craft.pieces.options import Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges, gauges_for
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Ease

YARN = Yarn(uid="y", name="Heather", ball_grams=50, ball_metres=120)


def thrice(text: str) -> str:
    """The same reading at three places."""
    return "; ".join([text] * 3)


def swatch(tag: str, pattern: StitchPattern, readings: dict[Condition, str], **fields: object) -> Swatch:
    """A swatch of ``YARN`` with a 4.5 mm hook, and readings as typed in each condition."""
    taken = tuple(TakenReading(condition, reading) for condition, text in readings.items() for reading in read_readings(text))
    common = {"uid": tag, "tag": tag, "yarn": YARN, "hook_mm": 4.5, "pattern": pattern, "readings": taken}
    return Swatch(**(common | fields))  # type: ignore[arg-type]


def gauges_of_swatch(own: Swatch, *others: Swatch) -> PieceGauges:
    """What the swatches say of a piece, with the assumptions a logbook starts from."""
    return gauges_for(own, others, drifts_of(Assumptions()), Assumptions())


HDC = StitchPattern(uid="hdc", name="half double crochet", multiple=1, plus=0, extra_chains=2)
HDC_SWATCH = swatch(
    "H1",
    HDC,
    {
        Condition.WORKED: f"{thrice('20 sts = 14.4 cm')}; {thrice('20 rows = 17.8 cm')}",
        Condition.WASHED: f"{thrice('20 sts = 14 cm')}; {thrice('20 rows = 18 cm')}",
    },
    swatch_grams=12.0,
    swatch_stitches=24,
    swatch_rows=20,
)
LACE = StitchPattern(
    uid="lace", name="wide lace", multiple=16, plus=1, extra_chains=3, set_up_rows=1, rows_in_repeat=4, closing_rows=1
)
LACE_SWATCH = swatch("L1", LACE, {Condition.WASHED: f"{thrice('2 repeats = 16 cm')}; {thrice('12 rows = 12 cm')}"})
EDGE_SWATCH = swatch("H2", HDC, {Condition.WASHED: f"{thrice('20 sts = 12 cm')}; {thrice('20 rows = 18 cm')}"})
RIB = StitchPattern(uid="rib", name="sc rib", multiple=1, plus=0, extra_chains=1)
RIB_SWATCH = swatch(
    "R1",
    RIB,
    {
        Condition.WASHED: f"{thrice('20 sts = 12 cm')}; {thrice('20 rows = 14 cm')}",
        Condition.LENGTHWISE: f"{thrice('20 rows = 18.9 cm')}; {thrice('20 sts = 11.4 cm')}",
        Condition.HUNG: thrice("20 sts = 12.3 cm"),
    },
    swatch_grams=12.0,
    swatch_stitches=24,
    swatch_rows=20,
    hung_grams=9.5,
    hung_clip_mm=100.0,
)
VEST = PiecePlan(
    body_mm=940, ease=Ease(mm=80), seam="mattress stitch", length_mm=560, armhole_mm=200, neck_mm=240, upper_arm_mm=280
)
RIBBED = PiecePlan(
    body_mm=880,
    ease=Ease(mm=-60),
    seam="whip stitch",
    sideways=True,
    length_mm=520,
    armhole_mm=180,
    neck_mm=260,
    hip_mm=960,
    row_parity=Parity.EVEN,
)
LACE_PANEL = PiecePlan(
    width_mm=460,
    length_mm=580,
    bottom_edging_mm=30,
    top_edging_mm=20,
    edge_stitches=None,
    armhole_mm=200,
    slit_mm=120,
    neck_mm=206,
    head_mm=None,
)
