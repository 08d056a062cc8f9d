"""Swatches as a maker would have them, for tests that reckon with whole garments."""

from logbook.craft.assumptions import Assumptions
from logbook.craft.conditions import Condition
from logbook.craft.drift import drift_of
from logbook.craft.piece_gauges import PieceGauges, gauges_for
from logbook.craft.readings import read_readings
from logbook.craft.stitch_pattern import StitchPattern
from logbook.craft.swatch import Swatch, TakenReading
from logbook.craft.yarn import Yarn

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
    return gauges_for(own, others, drift_of(Assumptions()), Assumptions())
