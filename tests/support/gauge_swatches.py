"""Swatches of one yarn and stitch for the tests of what a gauge is worth."""

from typing import Any

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn

COTTON = Yarn(uid="cotton", name="Harbour cotton")
SHELLS = StitchPattern(uid="shells", name="Shells", multiple=6, plus=1, terms="US")
SC = StitchPattern(uid="sc", name="single crochet", multiple=1, terms="US")
THREE = "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm"


def measured(**texts: str) -> tuple[TakenReading, ...]:
    """Typed readings by the condition they were taken in: ``measured(washed="4 repeats = 15.1 cm")``."""
    return tuple(
        TakenReading(Condition(condition), reading) for condition, text in texts.items() for reading in read_readings(text)
    )


def shells(tag: str, hook: float | None = 4.5, *, worked: str = "", washed: str = "", **more: Any) -> Swatch:
    """A swatch of shells; ``more`` are readings in other conditions, and fields."""
    others = {condition: more.pop(condition) for condition in tuple(more) if condition in set(Condition)}
    readings = measured(worked=worked, washed=washed, **others)
    return Swatch(**({"uid": tag, "tag": tag, "yarn": COTTON, "pattern": SHELLS, "hook_mm": hook, "readings": readings} | more))


PULLED = shells(
    "A",
    worked="4 repeats = 15 cm; 10 rows = 10 cm",
    washed="4 repeats = 14.4 cm; 10 rows = 10.5 cm",
    sideways="4 repeats = 18 cm; 10 rows = 9 cm",
)
