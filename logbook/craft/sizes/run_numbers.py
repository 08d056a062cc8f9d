"""The numbers of a size, in one table for the command line, the page, the print, the workbook and the pattern's lines."""

from collections.abc import Callable, Mapping
from enum import Enum, auto
from typing import NamedTuple

from logbook.craft.sizes.size_run import SizeNumbers

Value = int | float | str | None


class NumberKind(Enum):
    """What a number counts; lengths in mm."""

    WORDS = auto()
    COUNT = auto()
    LENGTH = auto()
    DIFFERENCE = auto()
    GRAMS = auto()


class Number(NamedTuple):
    """What it is and how it comes of a size; None: that size has none."""

    kind: NumberKind
    of: Callable[[SizeNumbers], Value]


NUMBERS: Mapping[str, Number] = {
    "size": Number(NumberKind.WORDS, lambda size: size.name),
    "body": Number(NumberKind.LENGTH, lambda size: size.body_mm),
    "chain": Number(NumberKind.COUNT, lambda size: size.piece.chain),
    "stitches": Number(NumberKind.COUNT, lambda size: size.piece.stitches),
    "repeats": Number(NumberKind.COUNT, lambda size: size.piece.repeats),
    "edge stitches": Number(NumberKind.COUNT, lambda size: size.piece.edge_stitches),
    "rows": Number(NumberKind.COUNT, lambda size: size.piece.rows),
    "width": Number(NumberKind.LENGTH, lambda size: size.piece.width.mm),
    "width wanted": Number(NumberKind.LENGTH, lambda size: size.piece.width.wanted_mm),
    "width give or take": Number(NumberKind.LENGTH, lambda size: size.piece.width.give_or_take_mm),
    "width before washing": Number(NumberKind.LENGTH, lambda size: size.piece.width.before_washing_mm),
    "all round": Number(NumberKind.LENGTH, lambda size: size.piece.fit.around_mm if size.piece.fit else None),
    "ease": Number(NumberKind.DIFFERENCE, lambda size: size.piece.fit.ease_mm if size.piece.fit else None),
    "length": Number(NumberKind.LENGTH, lambda size: size.piece.length.mm if size.piece.length else None),
    "length before washing": Number(
        NumberKind.LENGTH, lambda size: size.piece.length.before_washing_mm if size.piece.length else None
    ),
    "slit at": Number(NumberKind.COUNT, lambda size: size.piece.slit.at if size.piece.slit else None),
    "slit": Number(NumberKind.LENGTH, lambda size: size.piece.slit.true_mm if size.piece.slit else None),
    "armhole at": Number(NumberKind.COUNT, lambda size: size.piece.armhole.at if size.piece.armhole else None),
    "armhole": Number(NumberKind.LENGTH, lambda size: size.piece.armhole.true_mm if size.piece.armhole else None),
    "neck begins at": Number(NumberKind.COUNT, lambda size: size.piece.neck.begins.at if size.piece.neck else None),
    "neck ends at": Number(NumberKind.COUNT, lambda size: size.piece.neck.ends.at if size.piece.neck else None),
    "neck units": Number(NumberKind.COUNT, lambda size: size.piece.neck.units if size.piece.neck else None),
    "shoulder units": Number(NumberKind.COUNT, lambda size: size.piece.neck.shoulder if size.piece.neck else None),
    "neck": Number(NumberKind.LENGTH, lambda size: size.piece.neck.begins.true_mm if size.piece.neck else None),
    "yarn": Number(NumberKind.GRAMS, lambda size: size.piece.yarn.grams if size.piece.yarn else None),
    "balls": Number(NumberKind.COUNT, lambda size: size.piece.yarn.balls if size.piece.yarn else None),
    "hours": Number(NumberKind.COUNT, lambda size: round(size.piece.time.hours, 1) if size.piece.time else None),
    "same as": Number(NumberKind.WORDS, lambda size: ", ".join(size.same_as)),
}
"""Each by its name."""


class SizeFigures(dict[str, Value]):
    """The numbers of one size by the names of ``NUMBERS``: all of them as worked out, or those that were published."""

    def length(self, name: str) -> float | None:
        """A length in mm; None: not there."""
        mm = self.get(name)
        return float(mm) if isinstance(mm, int | float) else None

    @property
    def shoulder_mm(self) -> float | None:
        """How wide each shoulder is; None without a neck."""
        neck, width = self.length("neck"), self.length("width")
        return None if neck is None or width is None else (width - neck) / 2


def figures_of(size: SizeNumbers) -> SizeFigures:
    """All numbers of a size worked out."""
    return SizeFigures((name, number.of(size)) for name, number in NUMBERS.items())
