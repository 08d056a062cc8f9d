"""A piece that was really worked: what was chained and what it measured, beside what was predicted."""

from dataclasses import dataclass

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.swatch import TakenReading


@dataclass(frozen=True, slots=True, kw_only=True)
class MadePiece:
    """One made piece. ``piece`` and ``swatch`` are uids of the plan and the swatch it came from ("": none). None: not known.

    ``size`` is the size's name, ``date`` ISO text. The predicted figures are those of the day it was begun; worked is measured
    before washing, washed after. Lengths in mm. ``yarn_used`` and ``lot_used`` name what it was really worked of,
    ``grams_used`` of it; ``minutes`` is how long it took, ``changed`` what was done otherwise than planned.
    ``predicted_growth_mm`` is what its own weight was said to add in wear. The readings are its own gauge, as a cell of the log
    has them; ``wear`` is read by ``wear.py``, ``pictures`` names its picture files.
    """

    uid: str = ""
    name: str = ""
    piece: str = ""
    swatch: str = ""
    size: str = ""
    date: str = ""
    chain: int | None = None
    rows: int | None = None
    hook_mm: float | None = None
    predicted_width_mm: float | None = None
    predicted_length_mm: float | None = None
    worked_width_mm: float | None = None
    worked_length_mm: float | None = None
    washed_width_mm: float | None = None
    washed_length_mm: float | None = None
    fits: str = ""
    notes: str = ""
    worked_by: str = ""
    yarn_used: str = ""
    lot_used: str = ""
    grams_used: float | None = None
    minutes: float | None = None
    changed: str = ""
    predicted_grams: float | None = None
    predicted_minutes: float | None = None
    predicted_growth_mm: float | None = None
    worked_readings: str = ""
    washed_readings: str = ""
    wear: str = ""
    pictures: str = ""

    def own_readings(self) -> tuple[TakenReading, ...]:
        """Its readings with the condition each was taken in."""
        return tuple(
            TakenReading(condition, reading)
            for condition, text in ((Condition.WORKED, self.worked_readings), (Condition.WASHED, self.washed_readings))
            for reading in read_readings(text)
        )
