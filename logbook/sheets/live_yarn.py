"""The yarn and the time of a piece as formulas: by the stitches worked, and the thread of the seams."""

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.seams import TAIL_MM, seam_called
from logbook.sheets.cells import Content, Formula
from logbook.sheets.live_cells import Cells, LiveSize


class LiveYarn:
    """What a plan takes, each None where it is not known."""

    def __init__(self, plan: PiecePlan, at: Cells) -> None:
        self._plan, self._at = plan, at
        self._b, self._c = at.b, at.c

    def yarn(self, size: LiveSize, x: str) -> Content:
        """Grams of all panels with their edgings and seams."""
        yarn = size.numbers.yarn
        if yarn is None or "weight" not in self._at:
            return None if yarn is None else yarn.grams
        thread = self._thread(size, x)
        per_gram = f"/1000*{self._b('ball_g')}/{self._b('ball_m')}" if thread and "ball_m" in self._at else ""
        seams = f"+({thread}){per_gram}" if per_gram else ""
        used = f"*(1+{self._b('used')})" if "used" in self._at else ""
        return Formula(f"({self._b('weight')}/100*{self._worked(x)}{seams}){used}", yarn.grams)

    def balls(self, size: LiveSize, x: str) -> Content:
        """Whole balls with the reserve."""
        yarn = size.numbers.yarn
        if yarn is None or yarn.balls is None or "ball_g" not in self._at:
            return None
        return Formula(f"ROUNDUP({self._c('yarn', x)}*(1+{self._b('reserve')})/{self._b('ball_g')}-0.000000001,0)", yarn.balls)

    def hours(self, size: LiveSize, x: str) -> Content:
        """How long its stitches take."""
        time = size.numbers.time
        if time is None or "minutes" not in self._at:
            return None if time is None else time.hours
        return Formula(f"{self._b('minutes')}/100*{self._worked(x)}/60", time.hours)

    def _worked(self, x: str) -> str:
        """The stitches of all panels with their edgings."""
        side, above = f"(2*{self._b('side')})", f"({self._b('top')}+{self._b('bottom')})"
        stitch_ends, row_ends = (above, side) if self._plan.sideways else (side, above)
        stitches, rows = self._c("stitches", x), self._c("rows", x)
        one = f"({stitches}*{rows}+{stitch_ends}*10/{self._b('stitch')}*{rows}+{stitches}*{row_ends}*10/{self._b('row')})"
        return f"{one}*{self._b('panels')}"

    def _thread(self, size: LiveSize, x: str) -> str:
        """Yarn of the seams, in mm."""
        plan = size.plan
        if not plan.seam or plan.in_round or size.numbers.length is None:
            return ""
        factor, tails = seam_called(plan.seam).thread, 2 * TAIL_MM
        open_sides = "".join(
            f"-N({self._c(key, x)})" for key, mark in (("slit", size.numbers.slit), ("armhole", size.numbers.armhole)) if mark
        )
        thread = f"{self._b('panels')}*({factor}*10*MAX(0,{self._c('length', x)}{open_sides})+{tails})"
        if size.numbers.neck is not None:
            shoulders = f"2*({factor}*10*({self._c('width', x)}-N({self._c('neck', x)}))/2+{tails})"
            thread += f"+IF({self._b('panels')}=2,{shoulders},0)"
        return thread
