"""The state a fabric was measured in, and the direction the measurement ran."""

from enum import StrEnum


class Condition(StrEnum):
    """The state in which a reading was taken."""

    WORKED = "worked"
    WASHED = "washed"
    PINNED = "pinned"
    SIDEWAYS = "sideways"
    LENGTHWISE = "lengthwise"
    HUNG = "hung"

    @property
    def words(self) -> str:
        """How the state is said on screen."""
        return _WORDS[self]


_WORDS = {
    Condition.WORKED: "as worked",
    Condition.WASHED: "washed, laid flat",
    Condition.PINNED: "washed, pinned out",
    Condition.SIDEWAYS: "pulled sideways",
    Condition.LENGTHWISE: "pulled lengthwise",
    Condition.HUNG: "hung",
}


class Direction(StrEnum):
    """Along a row (counted in stitches or repeats), or up the rows. Whatever way the piece will be worn."""

    STITCHES = "stitches"
    ROWS = "rows"

    @property
    def one(self) -> str:
        """One unit of the direction: ``stitch`` or ``row``."""
        return "stitch" if self is Direction.STITCHES else "row"

    @property
    def short(self) -> str:
        """Its units as patterns write them: ``sts`` or ``rows``."""
        return "sts" if self is Direction.STITCHES else "rows"

    def than(self, ratio: float) -> str:
        """What a unit is that is ``ratio`` times as large as another: ``wider``, ``narrower``; ``taller``, ``shorter``."""
        if self is Direction.STITCHES:
            return "wider" if ratio > 1 else "narrower"
        return "taller" if ratio > 1 else "shorter"
