"""A piece as it is kept: its plan, the swatch it is reckoned from, and the sizes it is written for."""

from dataclasses import dataclass, field, replace

from logbook.craft.pieces.measures import OF_A_SIZE
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Ease


@dataclass(frozen=True, slots=True, kw_only=True)
class SizePlan:
    """One size of a run: what it measures, and what is wanted of it beside the piece's own plan. Lengths in mm.

    None: as in the plan of the piece.
    """

    uid: str = ""
    name: str = ""
    body_mm: float | None = None
    ease: Ease | None = None
    length_mm: float | None = None
    armhole_mm: float | None = None
    neck_mm: float | None = None
    slit_mm: float | None = None
    upper_arm_mm: float | None = None
    hip_mm: float | None = None
    head_mm: float | None = None

    def plan(self, plan: PiecePlan) -> PiecePlan:
        """The plan of this size: what it says itself, and for the rest what the plan of the piece says."""
        fields = ("ease", *(measure.field for measure in OF_A_SIZE))
        own = {name: value for name in fields if (value := getattr(self, name)) is not None}
        return replace(plan, **own)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedPiece:
    """A planned piece. ``swatch`` and ``edge_swatch`` are uids ("": none chosen); the plan holds the name.

    ``condition`` is the state that finished sizes speak of: washed, or pinned if it will be pinned out whenever it is washed.
    ``published`` is the run as it was set, as JSON text; None: not set.
    """

    uid: str = ""
    plan: PiecePlan = field(default_factory=PiecePlan)
    swatch: str = ""
    edge_swatch: str = ""
    condition: Condition = Condition.WASHED
    notes: str = ""
    published: str | None = None
    sizes: tuple[SizePlan, ...] = ()

    @property
    def name(self) -> str:
        """What it is called."""
        return self.plan.name
