"""A piece that was really worked: what was chained and what it measured, beside what was predicted."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class MadePiece:
    """One made piece. ``piece`` and ``swatch`` are uids of the plan and the swatch it came from ("": none). None: not known.

    ``size`` is the size's name, ``date`` ISO text. The predicted figures are those of the day it was begun; worked is measured
    before washing, washed after. Lengths in mm. ``yarn_used`` and ``lot_used`` name what it was really worked of,
    ``grams_used`` of it; ``minutes`` is how long it took, ``changed`` what was done otherwise than planned.
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
