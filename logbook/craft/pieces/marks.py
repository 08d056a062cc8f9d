"""Where armhole, slit and neck come to lie on a panel, given as a row or a stitch.

A panel has an axis up the body and one across it: rows and stitches where it is worked from the bottom up, stitches and rows
where it is worked sideways. Units of the pattern are counted from the hem and from the side edge::

    armhole of depth A      ends at unit  N − round((A + seam − top edging)/p)       of N units up
    slit of length L        ends at unit  round((L − bottom edging)/p)
    neck of width W         the middle n units across, n ≡ M (mod 2) of M, so that both shoulders are equal

Snapped to whole repeats, armhole and slit end at a repeat and each shoulder is whole repeats.
"""

from dataclasses import dataclass

from logbook.craft.swatches.conditions import Direction
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class Axis:
    """``count`` units of ``pitch_mm``, running in ``direction``; repeats of ``step`` units begin after ``first``.

    ``start_mm`` and ``end_mm``: edging and foundation before the first unit and after the last; ``seam_mm``: what a seam
    takes off at the end (the shoulder's).
    """

    direction: Direction
    count: int
    pitch_mm: float
    step: int = 1
    first: int = 0
    start_mm: float = 0.0
    end_mm: float = 0.0
    seam_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A mark at the end of unit ``at`` (a row or a stitch, by ``direction``), counted from the hem or the side edge.

    ``true_mm`` is what the armhole, slit or neck really measures for the ``wanted_mm``.
    """

    direction: Direction
    at: int
    wanted_mm: float
    true_mm: float


@dataclass(frozen=True, slots=True)
class Neck:
    """The middle ``units`` of a panel are neck, the ``shoulder`` on either side equal. The marks are its two ends."""

    units: int
    shoulder: int
    begins: Mark
    ends: Mark


def armhole_mark(depth_mm: float, up: Axis, *, snap: bool = False) -> Mark:
    """Where the armhole begins. Raises RefusedError if it would be no row deep or leave nothing under it."""
    above = round((depth_mm + up.seam_mm - up.end_mm) / up.pitch_mm)
    at = _snapped(up.count - above, up) if snap else up.count - above
    if not 0 < at < up.count:
        raise RefusedError(
            "That armhole does not fit on the panel: it must be less deep than the panel is long, and at least one row deep."
        )
    true = (up.count - at) * up.pitch_mm - up.seam_mm + up.end_mm
    return Mark(direction=up.direction, at=at, wanted_mm=depth_mm, true_mm=true)


def slit_mark(length_mm: float, up: Axis, *, snap: bool = False) -> Mark:
    """Where the slit ends and the side seam begins. Raises RefusedError if it would be no row or the whole side."""
    at = round((length_mm - up.start_mm) / up.pitch_mm)
    at = _snapped(at, up) if snap else at
    if not 0 < at < up.count:
        raise RefusedError("That slit does not fit on the panel: it must be shorter than the panel, and at least one row long.")
    return Mark(direction=up.direction, at=at, wanted_mm=length_mm, true_mm=at * up.pitch_mm + up.start_mm)


def neck_of(width_mm: float, across: Axis, *, snap: bool = False) -> Neck:
    """The neck in the middle. Raises RefusedError if no shoulder would be left, or no neck."""
    if snap:
        shoulder = _shoulder_in_repeats(width_mm, across)
    else:
        wanted = width_mm / across.pitch_mm
        units = across.count % 2 + 2 * round((wanted - across.count % 2) / 2)
        shoulder = (across.count - units) // 2
    units = across.count - 2 * shoulder
    if shoulder < 1 or units < 1:
        raise RefusedError(
            "That neck does not fit on the panel: it must leave a shoulder on each side, and a stitch or row of neck."
        )
    true = units * across.pitch_mm

    begins, ends = (
        Mark(direction=across.direction, at=at, wanted_mm=width_mm, true_mm=true) for at in (shoulder, shoulder + units)
    )
    return Neck(units, shoulder, begins, ends)


def _snapped(at: int, axis: Axis) -> int:
    """The end of the repeat nearest to unit ``at``."""
    return axis.first + axis.step * round((at - axis.first) / axis.step)


def _shoulder_in_repeats(width_mm: float, across: Axis) -> int:
    """The shoulder of whole repeats (beside what comes before them) that leaves the neck nearest to the width."""
    whole = (across.count - 2 * across.first) // across.step
    shoulders = [across.first + across.step * j for j in range(1, (whole - 1) // 2 + 1)]
    if not shoulders:
        raise RefusedError("There are too few repeats for shoulders of whole repeats: leave that out.")
    return min(shoulders, key=lambda shoulder: abs((across.count - 2 * shoulder) * across.pitch_mm - width_mm))
