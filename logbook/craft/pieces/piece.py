"""A flat part of a garment: what is wanted of it, and the numbers that come out.

Worked from the bottom up, stitches run across the body and rows up it. Worked sideways the chain runs up the body: the chain
comes from the length and the stitch pitch, the rows from the width and the row pitch, armhole and slit are counted in stitches,
the neck in rows, and the garment stretches along its rows and hangs along its stitches. Lengths in mm; every target is a
finished size.
"""

from dataclasses import dataclass

from logbook.craft.gauges.hanging import Growth
from logbook.craft.pieces.fit import ADULT_HEAD_MM, Fit, panel_width
from logbook.craft.pieces.marks import Mark, Neck
from logbook.craft.pieces.options import Choose, Option, Parity
from logbook.craft.pieces.seams import seam_called
from logbook.craft.pieces.time_and_money import TimeNeeded
from logbook.craft.pieces.yarn_needed import YarnNeeded
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.lengths import NO_EASE, Ease
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePlan:
    """What is wanted. The width is ``width_mm``, or comes from ``body_mm``, ``ease`` and ``panels``, all alike.

    ``seam`` is the name of the seam used ("": none said), ``seam_mm`` what it takes from each joined edge (None: by its name).
    ``side_edging_mm`` is added at each side, the other edgings once. ``foundation_chain``: count its own 4 mm.
    ``edge_stitches`` at each side; None: as many as bring the width near. ``row_parity`` ODD ends on a right-side row.
    ``any_row``: the pattern lets one stop inside a group. ``snap``: marks at whole repeats. ``head_mm``, ``upper_arm_mm`` and
    ``hip_mm`` are what must go through neck, armholes and hem (None: not checked). ``other_costs``: what it takes beside yarn and
    work, in the yarn's currency.
    """

    name: str = ""
    width_mm: float | None = None
    body_mm: float | None = None
    ease: Ease = NO_EASE
    panels: int = 2
    seam: str = ""
    seam_mm: float | None = None
    shoulder_seam_mm: float = 0.0
    length_mm: float | None = None
    sideways: bool = False
    in_round: bool = False
    round_plus: int = 0
    joined_after_row_1: bool = False
    foundation_stitches: bool = False
    foundation_chain: bool = False
    half_repeats: bool = False
    side_edging_mm: float = 0.0
    top_edging_mm: float = 0.0
    bottom_edging_mm: float = 0.0
    edge_stitches: int | None = 0
    stitch_parity: Parity = Parity.ANY
    row_parity: Parity = Parity.ANY
    width_choose: Choose = Choose.NEAREST
    length_choose: Choose = Choose.NEAREST
    any_row: bool = False
    row_shares: tuple[float, ...] = ()
    armhole_mm: float | None = None
    neck_mm: float | None = None
    slit_mm: float | None = None
    snap: bool = False
    head_mm: float | None = ADULT_HEAD_MM
    upper_arm_mm: float | None = None
    hip_mm: float | None = None
    other_costs: float | None = None

    @property
    def round_body(self) -> Direction:
        """The direction of the cloth that runs round the body."""
        return Direction.ROWS if self.sideways else Direction.STITCHES

    @property
    def panels_joined(self) -> int:
        """Panels that go round: in the round there is 1."""
        return 1 if self.in_round else self.panels

    def seam_allowance(self, across_mm: float) -> float:
        """What each joined edge loses; ``across_mm``: the pitch across the edge. Raises RefusedError for an unknown seam."""
        if self.in_round:
            return 0.0
        if self.seam_mm is not None:
            return self.seam_mm
        return seam_called(self.seam).allowance_mm(across_mm) if self.seam else 0.0

    def target_width(self, across_mm: float) -> float:
        """The panel's finished width. Raises RefusedError if neither a width nor a body measure is given."""
        if self.width_mm is not None:
            return self.width_mm
        if self.body_mm is None:
            raise RefusedError("Give the finished width, or the body measure and the ease.")
        return panel_width(self.body_mm, self.ease, self.panels_joined, self.seam_allowance(across_mm))

    def require_possible(self) -> None:
        """Raises RefusedError where one thing wanted contradicts another."""
        if self.sideways and self.in_round:
            raise RefusedError("A piece worked in the round is not worked sideways: choose one.")
        if self.length_mm is None and (self.armhole_mm is not None or self.slit_mm is not None):
            raise RefusedError("An armhole or slit needs the length of the piece: give it too.")
        if self.edge_stitches is not None and self.edge_stitches < 0:
            raise RefusedError("The edge stitches must be 0 or more at each side.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNumbers:
    """The numbers of a piece. ``stitches`` counts edge stitches in (``edge_stitches`` at each side), ``repeats`` does not.

    ``width`` and ``length`` are the options taken, one of stitches, one of rows.
    ``rows`` = ``set_up`` + whole groups + ``closing``; None, as ``length``, where no length was wanted. Slit, armhole and
    neck are None where they were not wanted. ``stitches_worked`` are those of all panels and edgings, None where there are no
    rows to count; yarn and time are for them all. ``clip_grams`` is the weight to try hanging with, ``growth`` what hanging adds.
    """

    chain: int
    stitches: int
    repeats: float
    edge_stitches: int
    rows: int | None
    groups: int | None
    set_up: int
    closing: int
    width: Option
    length: Option | None
    slit: Mark | None
    armhole: Mark | None
    neck: Neck | None
    fit: Fit | None
    stitches_worked: float | None
    yarn: YarnNeeded | None
    time: TimeNeeded | None
    clip_grams: float | None
    growth: Growth | None

    @property
    def marks(self) -> dict[str, Mark]:
        """The marks that there are from the hem upward, then the neck's, by what they are called."""
        neck = (self.neck.begins, self.neck.ends) if self.neck else (None, None)
        named = zip(("slit", "armhole", "neck begins", "neck ends"), (self.slit, self.armhole, *neck), strict=True)
        return {name: mark for name, mark in named if mark is not None}

    @property
    def last_row_is_right_side(self) -> bool | None:
        """Row 1 being a right-side row; None where there are no rows to count."""
        return None if self.rows is None else self.rows % 2 == 1
