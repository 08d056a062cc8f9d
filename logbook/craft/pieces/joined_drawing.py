"""The panels of a piece as they are joined, and where a panel lies in its drawing."""

from collections.abc import Iterator
from dataclasses import dataclass

from logbook.craft.drawing.drawing import Line, Rect, Shape, Text
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.words.lengths import Units, show_length

_LETTER = 0.46
"""A letter of what stands below, in line heights, in a wide font."""
_STRIP = 3.0
"""How high a panel is drawn whose length is not said, in line heights."""


@dataclass(frozen=True, slots=True)
class Frame:
    """Where a panel lies: its corner, its size, and how much a mm is."""

    x: float
    y: float
    width: float
    height: float
    scale: float

    def moved(self, right: float, down: float) -> "Frame":
        return Frame(self.x + right, self.y + down, self.width, self.height, self.scale)

    @property
    def right(self) -> float:
        return self.x + self.width

    @property
    def bottom(self) -> float:
        return self.y + self.height

    @property
    def middle(self) -> float:
        return self.x + self.width / 2


def frame_of(numbers: PieceNumbers, room: float, line: float, panels: int = 1, margin: float = 4.6, most: float = 17) -> Frame:
    """As large as fits between margins of so many line heights, and no higher than ``most`` line heights."""
    width, length = numbers.width.mm * panels, numbers.length.mm if numbers.length else None
    scale = max(room - 2 * margin * line, line) / width
    if length is not None:
        scale = min(scale, most * line / length)
    height = length * scale if length is not None else _STRIP * line
    return Frame((room - width * scale) / 2, 4.0 * line, width * scale, height, scale)


def around(plan: PiecePlan) -> int:
    """How many panels the joined drawing shows side by side: two lie on each other, and in the round there is one."""
    return 1 if plan.in_round or plan.panels <= 2 else plan.panels


class JoinedPanels:
    """The panels as they are joined: two laid on each other, more side by side, or the one that is worked in the round.

    ``room`` is how wide their place is.
    """

    def __init__(self, plan: PiecePlan, numbers: PieceNumbers, units: Units, frame: Frame, room: float, line: float) -> None:
        self._plan, self._numbers, self._units, self._f, self._line = plan, numbers, units, frame, line
        self._room = room
        self._said_below = self._words()
        self.bottom = frame.bottom + (0.6 + len(self._said_below)) * line

    def shapes(self) -> Iterator[Shape]:
        f, line = self._f, self._line
        title = "in the round" if self._plan.in_round else "joined" if self._plan.panels > 1 else "as worn"
        yield Text(f.middle, f.y - 2.8 * line, title, "muted")
        if self._plan.panels == 2 and not self._plan.in_round:
            back = 0.5 * line
            yield Rect(f.x + back, f.y - back, f.width, f.height, "band", "muted")
        yield Rect(f.x, f.y, f.width, f.height, "page", "ink")
        panels = around(self._plan)
        for seam in range(panels + 1) if panels > 1 else (0, 1):
            yield from self._side(f.x + f.width * seam / panels)
        yield from self._shoulders()
        for place, words in enumerate(self._said_below):
            yield Text(f.middle, f.bottom + (0.8 + place) * line, words, "ink")

    def _side(self, x: float) -> Iterator[Shape]:
        """A side: sewn from slit to armhole, open beyond; in the round nothing is sewn."""
        f = self._f
        if self._plan.in_round:
            return
        armhole, slit = self._numbers.armhole, self._numbers.slit
        top = f.y if armhole is None else f.y + (armhole.true_mm + self._plan.shoulder_seam_mm) * f.scale
        foot = f.bottom - (slit.true_mm if slit else 0.0) * f.scale
        for y_from, y_to in ((f.y, top), (foot, f.bottom)):
            if y_to > y_from:
                yield Line(((x, y_from), (x, y_to)), "surface", 4)
                yield Line(((x, y_from), (x, y_to)), "series2", 2, dashed=True)
        if self._plan.panels > 1:
            yield Line(((x, top), (x, foot)), "accent", 4)

    def _shoulders(self) -> Iterator[Shape]:
        f, neck = self._f, self._numbers.neck
        if neck is None or self._plan.panels != 2 or self._plan.in_round:
            return
        half = neck.begins.true_mm * f.scale / 2
        yield Line(((f.x, f.y), (f.middle - half, f.y)), "accent", 4)
        yield Line(((f.middle + half, f.y), (f.right, f.y)), "accent", 4)
        yield Line(((f.middle - half, f.y), (f.middle + half, f.y)), "surface", 4)
        yield Line(((f.middle - half, f.y), (f.middle + half, f.y)), "series2", 2, dashed=True)

    def _words(self) -> tuple[str, ...]:
        fit, two = self._numbers.fit, self._plan.panels == 2 and not self._plan.in_round
        around = f"{show_length(fit.around_mm, self._units)} all round" if fit else ""
        neck, armhole = self._numbers.neck, self._numbers.armhole
        sewn = self._plan.panels > 1 and not self._plan.in_round
        said = (
            around,
            f"neck {show_length(2 * neck.begins.true_mm, self._units)} round" if neck and two else "",
            f"armhole {show_length(2 * armhole.true_mm, self._units)} round" if armhole and sewn else "",
            "thick: seam · dashed: opening" if sewn else "",
        )
        return tuple(line for words in said if words for line in self._in_lines(words))

    def _in_lines(self, words: str) -> tuple[str, ...]:
        """In one line where there is room."""
        return (words,) if len(words) * _LETTER * self._line <= self._room else tuple(words.split(" · "))
