"""The arithmetic of the sheet "Starting chain", beside its formulas: what they come to as the workbook is written.

With p mm a stitch, m stitches in a repeat, b the plus, t the extra chains and T mm wanted (see ``pieces/starting_chain.py``)::

    k = max(1, round((T/p − b)/m)), halves down        S = m·k + b        chain S + t        width S·p
    j = max(1, round((H/p_row − r0 − r1)/r)), halves down        rows r0 + r·j + r1
"""

import math
from dataclasses import dataclass

from logbook.craft.gauges.drift import combined

_MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Reckoned:
    """What the calculator reckons with: mm per stitch and row (0: not known), give or take (None: not known), counts."""

    stitch_mm: float = 0.0
    row_mm: float = 0.0
    stitch_sure: float | None = None
    row_sure: float | None = None
    stitch_before_mm: float = 0.0
    row_before_mm: float = 0.0
    multiple: int = 1
    plus: int = 0
    extra: int = 0
    set_up: int = 0
    in_repeat: int = 1
    closing: int = 0
    drift: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One count (of chains or rows) and what it makes, in mm; None: not known."""

    groups: int
    count: int
    total: int
    mm: float
    off_mm: float
    swatch_mm: float | None
    piece_mm: float | None
    before_mm: float | None

    @property
    def cm(self) -> float:
        """Its size in cm."""
        return self.mm / 10

    @property
    def inches(self) -> float:
        """Its size in inches, to the nearest 1/8."""
        return math.floor(self.mm / _MM_PER_INCH * 8 + 0.5) / 8


def chain_option(with_: Reckoned, target_mm: float, away: int = 0) -> Option | None:
    """The chain nearest to the width, or so many repeats ``away`` from it; None where there is none."""
    if with_.stitch_mm <= 0 or target_mm <= 0:
        return None
    repeats = _nearest((target_mm / with_.stitch_mm - with_.plus) / with_.multiple) + away
    stitches = with_.multiple * repeats + with_.plus
    return (
        None
        if repeats < 1
        else _option(
            repeats, stitches, with_.extra, target_mm, with_.stitch_mm, with_.stitch_sure, with_.stitch_before_mm, with_.drift
        )
    )


def row_option(with_: Reckoned, target_mm: float) -> Option | None:
    """The rows nearest to the length; None where there are none."""
    if with_.row_mm <= 0 or target_mm <= 0:
        return None
    beside = with_.set_up + with_.closing
    groups = _nearest((target_mm / with_.row_mm - beside) / with_.in_repeat)
    rows = with_.in_repeat * groups + beside
    return _option(groups, rows, 0, target_mm, with_.row_mm, with_.row_sure, with_.row_before_mm, with_.drift)


def _nearest(exact: float) -> int:
    return max(1, math.ceil(round(exact, 9) - 0.5))


def _option(
    groups: int, count: int, beside: int, target: float, pitch: float, sure: float | None, before: float, drift: float
) -> Option:
    mm = count * pitch
    swatch = None if sure is None else sure * mm
    return Option(
        groups=groups,
        count=count,
        total=count + beside,
        mm=mm,
        off_mm=mm - target,
        swatch_mm=swatch,
        piece_mm=combined(swatch, drift * mm),
        before_mm=count * before if before else None,
    )
