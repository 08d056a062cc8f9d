"""What a whole pattern is written from."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.shapes import EDGING
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.terms import Terms, translated
from logbook.tasks.written.parts import lengths
from logbook.tasks.written.piece_in_sizes import PieceInSizes


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenGarment:
    """What a whole pattern is made of: the garment in its sizes, the cloth and swatch of each piece by its name, the terms.

    ``exact``: lengths unrounded, which proofreading goes by.
    """

    plan: GarmentPlan
    sizes: Sequence[GarmentInSize]
    cloths: Mapping[str, Cloth]
    swatches: Mapping[str, Swatch]
    terms: Terms = Terms.US
    exact: bool = False

    def lengths(self, mm: Iterable[float]) -> str:
        """Lengths of all sizes as they are printed."""
        return lengths(mm, exact=self.exact)

    @property
    def names(self) -> tuple[str, ...]:
        """The sizes' names."""
        return tuple(size.name for size in self.sizes)

    def piece(self, name: str) -> PieceInSizes:
        """A piece in all sizes."""
        pattern = self.swatches[name].pattern or StitchPattern()
        several = len({swatch.pattern.name for swatch in self.swatches.values() if swatch.pattern}) > 1
        named = several or any(size.piece(name).planned.shape == EDGING for size in self.sizes)
        stitch = translated(pattern.name, Terms(pattern.terms or Terms.US), self.terms) if named else ""
        return PieceInSizes(self.names, tuple(size.piece(name) for size in self.sizes), pattern, stitch)

    @property
    def pieces(self) -> tuple[PieceInSizes, ...]:
        """Every piece in all sizes."""
        return tuple(self.piece(piece.name) for piece in self.plan.pieces)
