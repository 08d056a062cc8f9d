"""What is to be said beside a chain, a piece or a run, as kinds with their values; who shows them makes the sentences.

How a piece fits, its growth by hanging and the drift speak for themselves. Lengths in mm.
"""

from enum import Enum, auto
from typing import NamedTuple

from logbook.craft.gauges.drift import Drift
from logbook.craft.gauges.hanging import Growth
from logbook.craft.gauges.washing import FinishedGauge
from logbook.craft.pieces.edge_stitches import EdgeStitch
from logbook.craft.pieces.fit import BodyOpening, Fit, FitVerdict
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.readings import Reading


class Plain(Enum):
    """What is said without figures."""

    CHILDRENS_WEAR = auto()
    NOT_AS_WIDE = auto()
    WIDER_THAN_ASKED = auto()
    ONE_REPEAT_TOO_WIDE = auto()
    RING = auto()
    SWATCH_FLAT = auto()
    SWATCH_ROUND = auto()
    FOUNDATION_STITCHES = auto()
    NOT_WEIGHED = auto()
    ROWS_OPEN = auto()
    HALF_REPEATS_PART = auto()
    LONG_HOURS = auto()


class PlusNotUsed(NamedTuple):
    """In the round, a flat plus of so many stitches."""

    plus: int


class NotAllowed(NamedTuple):
    """A chain that ``rule`` does not allow, and those it does allow beside it; ``stitches``: what it was asked for as."""

    chain: int
    rule: ChainRule
    others: tuple[int, ...]
    stitches: int | None = None


class TheirWidth(NamedTuple):
    """The width of so many at the gauge of another pattern: ``one`` is what one of them is called; ``chains``: the chain that was
    given instead of their number.
    """

    number: int
    one: str
    gauge: Reading
    mm: float
    chains: int | None = None


class CantTellApart(NamedTuple):
    """Options so many stitches apart lie within the give or take."""

    stitches: int


class Unusual(NamedTuple):
    """A stitch or row finer or larger than any that is crocheted: a reading may be mistyped."""

    pitch_mm: float
    direction: Direction


class Washed(NamedTuple):
    """Where the washing of a gauge comes from, and whether it is too coarse."""

    gauge: FinishedGauge
    direction: Direction


class WholePiece(NamedTuple):
    """How much a whole piece differs from its swatch, whose gauge has a give or take of its own."""

    drift: Drift
    gauge: FinishedGauge


class YarnUsed(NamedTuple):
    """How much more or less yarn than its swatch says a hand uses of it."""

    drift: Drift


class TimeTaken(NamedTuple):
    """How much longer or shorter than its swatch says a hand takes."""

    drift: Drift


class TooSmall(NamedTuple):
    """An opening that a part of the body does not go through as it is; ``give`` of the cloth, relative, None: not known."""

    opening: BodyOpening
    give: float | None


class OddRib(NamedTuple):
    """A rib worked sideways over an odd number of rows."""

    rows: int


class EdgesOf(NamedTuple):
    """So many edge stitches at each side, and whose they are."""

    each: int
    edge: EdgeStitch


class EdgeRows(NamedTuple):
    """The rows of the edge stitches are taller than the pattern's by this share (negative: shorter)."""

    taller: float


class Clip(NamedTuple):
    """The weight to clip on for a trial of hanging."""

    grams: float


class AllAlike(NamedTuple):
    """Sizes that come out the same."""

    names: tuple[str, ...]


class EdgesPart(NamedTuple):
    """So many edge stitches at each side would part them; None: as many as each size needs."""

    each: int | None


class HookParts(NamedTuple):
    """Another hook for one size would: with ``wanted_mm`` a stitch or row instead of ``now_mm``."""

    size: str
    direction: Direction
    wanted_mm: float
    now_mm: float


Note = (
    Plain | PlusNotUsed | NotAllowed | TheirWidth
    | CantTellApart | Unusual | Washed | WholePiece | YarnUsed | TimeTaken | TooSmall | OddRib | FitVerdict | Fit | EdgesOf
    | EdgeRows | Growth | Clip | AllAlike | EdgesPart | HookParts
)  # fmt: skip
