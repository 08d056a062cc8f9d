"""The marks of a piece as formulas: slit, armhole, shoulders and neck, at rows or stitches counted from the hem."""

from typing import NamedTuple

from logbook.craft.pieces.piece import PiecePlan
from logbook.sheets.cells import Content, Formula
from logbook.sheets.live_cells import Cells, LiveSize
from logbook.sheets.rounding import halves_even

_NO_FIT = "does not fit"


class _Axis(NamedTuple):
    """How many units there are, how long one is (mm), in what steps from which on marks lie, and what is at both ends (cm)."""

    units: str
    pitch: str
    step: str
    first: str
    start: str
    end: str


class LiveMarks:
    """The marks of a plan, each None where it is not wanted; ``edges``: edge stitches are taken."""

    def __init__(self, plan: PiecePlan, at: Cells, *, edges: bool) -> None:
        self._plan, self._edges = plan, edges
        self._b, self._c = at.b, at.c

    def _axis(self, x: str, *, up: bool) -> _Axis:
        """The axis up the body or across it; lengths as formulas in cm."""
        along_stitches = up is self._plan.sideways
        start, end = (self._b("bottom"), self._b("top")) if up else ("0", "0")
        if along_stitches:
            wider = f"{self._c('edges', x)}*({self._b('edge_mm')}-{self._b('stitch')})/10" if self._edges else "0"
            first = self._c("edges", x) if self._edges else "0"
            return _Axis(
                self._c("stitches", x),
                self._b("stitch"),
                self._b("multiple"),
                first,
                f"({start}+{wider})",
                f"({end}+{wider})",
            )
        below = f"({start}+{self._b('foundation')})" if up else "0"
        return _Axis(self._c("rows", x), self._b("row"), self._b("in_repeat"), self._b("set_up"), below, end)

    def _snapped(self, at: str, axis: _Axis) -> str:
        return f"({axis.first}+{axis.step}*{halves_even(f'({at}-{axis.first})/{axis.step}')})" if self._plan.snap else at

    def _mark(self, at: str, axis: _Axis, value: int) -> Content:
        return Formula(f'IF(AND({at}>0,{at}<{axis.units}),{at},"{_NO_FIT}")', value)

    def armhole_at(self, size: LiveSize, x: str) -> Content:
        """After which row or stitch the armhole begins."""
        if size.numbers.armhole is None:
            return None
        axis = self._axis(x, up=True)
        depth = f"({self._c('armhole_wanted', x)}+{self._b('shoulder_seam')}-{axis.end})"
        return self._mark(
            self._snapped(f"({axis.units}-{halves_even(f'{depth}*10/{axis.pitch}')})", axis), axis, size.numbers.armhole.at
        )

    def armhole(self, size: LiveSize, x: str) -> Content:
        """How deep the armhole comes out, cm."""
        if size.numbers.armhole is None:
            return None
        axis, at = self._axis(x, up=True), self._c("armhole_at", x)
        true = f"({axis.units}-{at})*{axis.pitch}/10-{self._b('shoulder_seam')}+{axis.end}"
        return Formula(f'IF(ISNUMBER({at}),{true},"")', size.numbers.armhole.true_mm / 10)

    def slit_at(self, size: LiveSize, x: str) -> Content:
        """After which row or stitch the slit ends."""
        if size.numbers.slit is None:
            return None
        axis = self._axis(x, up=True)
        at = self._snapped(halves_even(f"({self._c('slit_wanted', x)}-{axis.start})*10/{axis.pitch}"), axis)
        return self._mark(at, axis, size.numbers.slit.at)

    def slit(self, size: LiveSize, x: str) -> Content:
        """How long the slit comes out, cm."""
        if size.numbers.slit is None:
            return None
        axis, at = self._axis(x, up=True), self._c("slit_at", x)
        return Formula(f'IF(ISNUMBER({at}),{at}*{axis.pitch}/10+{axis.start},"")', size.numbers.slit.true_mm / 10)

    def shoulder(self, size: LiveSize, x: str) -> Content:
        """Stitches or rows of each shoulder."""
        if size.numbers.neck is None:
            return None
        axis, wanted = self._axis(x, up=False), self._c("neck_wanted", x)
        if self._plan.snap:
            most = f"INT((INT(({axis.units}-2*{axis.first})/{axis.step})-1)/2)"
            exact = f"((({axis.units}-{wanted}*10/{axis.pitch})/2-{axis.first})/{axis.step})"
            own = f"({axis.first}+{axis.step}*MAX(1,MIN({most},ROUNDDOWN(ROUND({exact}+0.5,9),0))))"
        else:
            odd = f"MOD({axis.units},2)"
            pairs = halves_even(f"({wanted}*10/{axis.pitch}-{odd})/2")
            own = f"(({axis.units}-{odd}-2*{pairs})/2)"
        return Formula(f'IF(AND({own}>=1,{axis.units}-2*{own}>=1),{own},"{_NO_FIT}")', size.numbers.neck.shoulder)

    def neck_units(self, size: LiveSize, x: str) -> Content:
        """Stitches or rows of the neck."""
        if size.numbers.neck is None:
            return None
        axis, shoulder = self._axis(x, up=False), self._c("shoulder", x)
        return Formula(f'IF(ISNUMBER({shoulder}),{axis.units}-2*{shoulder},"{_NO_FIT}")', size.numbers.neck.units)

    def neck(self, size: LiveSize, x: str) -> Content:
        """How wide the neck comes out, cm."""
        if size.numbers.neck is None:
            return None
        axis, units = self._axis(x, up=False), self._c("neck_units", x)
        return Formula(f'IF(ISNUMBER({units}),{units}*{axis.pitch}/10,"")', size.numbers.neck.begins.true_mm / 10)
