"""A panel in all sizes: drawn once, its measures lettered, and each letter's figures of every size beneath."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Rect, Shape, Text
from logbook.craft.sizes.run_numbers import SizeFigures
from logbook.craft.words.lengths import Units
from logbook.craft.words.printed_sizes import alike, printed_length

_LETTER = 0.42
"""Of a plain letter on the average, in line heights."""


@dataclass(frozen=True, slots=True)
class LetteredMeasure:
    """One lettered measure: its letter, what it is, and its mm in every size."""

    letter: str
    name: str
    lengths_mm: tuple[float, ...]

    def words(self, units: Units) -> str:
        """``A  width: 42.5 (46.5, 50.5) cm``."""
        return f"{self.letter}  {self.name}: {alike(printed_length(mm, units) for mm in self.lengths_mm)} {units.value}"


def measures_of(sizes: Sequence[SizeFigures]) -> tuple[LetteredMeasure, ...]:
    """What the drawing measures, as far as every size has it; letters from A on."""
    named = [(name, [size.length(name) for size in sizes]) for name in ("width", "length", "armhole", "neck", "slit")]
    named.insert(4, ("shoulder", [size.shoulder_mm for size in sizes]))
    there = [(name, tuple(mm for mm in lengths if mm is not None)) for name, lengths in named]
    whole = [(name, lengths) for name, lengths in there if len(lengths) == len(sizes)]
    return tuple(LetteredMeasure(letter, name, lengths) for letter, (name, lengths) in zip("ABCDEF", whole, strict=False))


def run_drawing(sizes: Sequence[SizeFigures], units: Units) -> Draw:
    """Draws the panel of the middle size with lettered measures, for any width and text size."""
    return lambda width, line: _drawn(sizes, units, width, line)


def _drawn(sizes: Sequence[SizeFigures], units: Units, width: float, line: float) -> Drawing:
    measures = measures_of(sizes)
    middle = sizes[len(sizes) // 2]
    panel = _Panel(middle, {one.name: one.letter for one in measures}, width, line)
    shapes = list(panel.shapes())
    below = panel.bottom + 2.9 * line
    for words in (words for one in measures for words in _folded(one.words(units), width, line)):
        shapes.append(Text(0, below, words, "ink", "w"))
        below += 1.1 * line
    return Drawing(width, below, line, tuple(shapes))


def _folded(words: str, width: float, line: float) -> Iterator[str]:
    """A long line of figures over several lines, broken at its commas."""
    room = max(12, int(width / (line * _LETTER)))
    while len(words) > room and ", " in words[:room]:
        cut = words.rindex(", ", 0, room) + 1
        yield words[:cut]
        words = "    " + words[cut:].strip()
    yield words


class _Panel:
    """The panel to the proportions of one size, as large as there is room."""

    def __init__(self, size: SizeFigures, letters: dict[str, str], width: float, line: float) -> None:
        self._size, self._letters, self._line = size, letters, line
        wide = size.length("width") or 1.0
        length = size.length("length") or 0.6 * wide
        scale = min((width - 8 * line) / wide, 16 * line / length)
        self._wide, self._high, self._scale = wide * scale, length * scale, scale
        self._x, self._y = (width - self._wide) / 2, 2.4 * line
        self.bottom = self._y + self._high

    def shapes(self) -> Iterator[Shape]:
        x, y, line = self._x, self._y, self._line
        yield Rect(x, y, self._wide, self._high, "page", "ink")
        yield from self._across("width", x, x + self._wide, self.bottom + line)
        yield from self._up("length", y, self.bottom, x + self._wide + 3 * line)
        neck = self._size.length("neck")
        if neck is not None:
            left = x + (self._wide - neck * self._scale) / 2
            right = left + neck * self._scale
            yield Line(((left, y), (right, y)), "surface", 3)
            yield Line(((left, y), (right, y)), "ink", dashed=True)
            yield from self._across("neck", left, right, y - line)
            yield from self._across("shoulder", x, left, y - line)
        for name in ("armhole", "slit"):
            yield from self._height(name)

    def _height(self, name: str) -> Iterator[Shape]:
        true = self._size.length(name)
        if true is None:
            return
        from_top = name == "armhole"
        mark = self._y + true * self._scale if from_top else self.bottom - true * self._scale
        yield Line(((self._x, mark), (self._x + self._wide, mark)), "series2", dashed=True)
        ends = (self._y, mark) if from_top else (mark, self.bottom)
        yield from self._up(name, *ends, self._x + self._wide + 1.2 * self._line)

    def _across(self, name: str, left: float, right: float, y: float) -> Iterator[Shape]:
        if name in self._letters:
            yield Line(((left, y), (right, y)), "measure", arrows=True)
            yield Text((left + right) / 2, y + (0.7 if y > self.bottom else -0.7) * self._line, self._letters[name], style="bold")

    def _up(self, name: str, top: float, bottom: float, x: float) -> Iterator[Shape]:
        if name in self._letters:
            yield Line(((x, top), (x, bottom)), "measure", arrows=True)
            yield Text(x + 0.7 * self._line, (top + bottom) / 2, self._letters[name], style="bold")
