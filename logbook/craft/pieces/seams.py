"""Seams: what they take from each joined edge, and the yarn they need."""

from dataclasses import dataclass

from logbook.errors import RefusedError

TAIL_MM = 150.0
"""Yarn left hanging at each end of a seam."""


@dataclass(frozen=True, slots=True)
class Seam:
    """One way to join. ``least`` and ``most``: what it takes from each edge, in stitches; ``thread``: yarn, times its length."""

    name: str
    least: float
    most: float
    thread: float

    def allowance_mm(self, stitch_mm: float) -> float:
        """What it takes from each edge, in mm: the middle of the usual range; ``stitch_mm`` is the pitch across the edge."""
        return (self.least + self.most) / 2 * stitch_mm

    def thread_mm(self, length_mm: float) -> float:
        """The yarn for a seam of that length, with a tail at each end."""
        return self.thread * length_mm + 2 * TAIL_MM


SEAMS = (
    Seam("whip stitch", 0.0, 0.0, 3.0),
    Seam("mattress stitch", 0.5, 1.0, 2.5),
    Seam("slip stitch", 0.5, 1.0, 4.0),
    Seam("single crochet", 0.0, 0.5, 6.0),
)


def seam_if_named(text: str) -> Seam | None:
    """The seam of that name; None for any other text."""
    return next((seam for seam in SEAMS if seam.name == text.strip().casefold()), None)


def seam_called(name: str) -> Seam:
    """The seam of that name. Raises RefusedError, naming those there are."""
    found = seam_if_named(name)
    if found is None:
        raise RefusedError(f"“{name}” is not a seam known here: it is {', '.join(seam.name for seam in SEAMS)}.")
    return found
