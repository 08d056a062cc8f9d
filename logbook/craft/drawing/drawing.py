"""A drawing as a list of shapes with roles instead of colours, shown by the window and written as SVG alike.

Lengths are in the drawing's own unit, x to the right and y downwards: pixels on the screen, the same numbers in an
SVG file. A page makes a drawing for a width and a line height (see ``Draw``), so that text keeps its size and is
never squeezed.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

Role = Literal["ink", "muted", "line", "accent", "measure", "error", "series1", "series2", "series3", "band", "surface", "page"]
Anchor = Literal["n", "ne", "e", "se", "s", "sw", "w", "nw", "center"]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """A line through two or more points; ``arrows`` puts a head at both ends, as on a measure."""

    points: tuple[Point, ...]
    role: Role = "ink"
    thick: float = 1.0
    dashed: bool = False
    arrows: bool = False


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle with its top left corner at x, y."""

    x: float
    y: float
    width: float
    height: float
    fill: Role | None = None
    outline: Role | None = "ink"
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Polygon:
    """A closed shape of three or more corners."""

    points: tuple[Point, ...]
    fill: Role | None = None
    outline: Role | None = "ink"


@dataclass(frozen=True, slots=True)
class Marker:
    """A small sign around x, y; the kind tells series apart where colour cannot."""

    x: float
    y: float
    kind: Literal["circle", "square", "triangle"]
    role: Role
    size: float = 8.0
    hollow: bool = False


@dataclass(frozen=True, slots=True)
class Text:
    """A line of text; ``anchor`` says which point of it lies at x, y. Text that is ``turned`` reads upwards."""

    x: float
    y: float
    text: str
    role: Role = "ink"
    anchor: Anchor = "center"
    style: Literal["plain", "bold", "large"] = "plain"
    turned: bool = False


Shape = Line | Rect | Polygon | Marker | Text


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes painted in their order on a sheet; plain text stands on lines of the height ``line``."""

    width: float
    height: float
    line: float
    shapes: tuple[Shape, ...]


Draw = Callable[[float, float], Drawing]
"""Makes the drawing for a width and the height of a line of plain text."""


def tick_step(apart: float, least: float) -> int:
    """Every how many-th tick to draw, 1, 2, 5, 10, 20 …, so that ticks ``apart`` stand no closer than ``least``."""
    power = 1
    while 5 * power * apart < least:
        power *= 10
    return next(n * power for n in (1, 2, 5) if n * power * apart >= least)


def corners(marker: Marker) -> tuple[Point, ...]:
    """The corners of a square or triangular marker."""
    half = marker.size / 2
    x, y = marker.x, marker.y
    if marker.kind == "square":
        return ((x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half))
    return ((x, y - 1.15 * half), (x + 1.15 * half, y + 0.85 * half), (x - 1.15 * half, y + 0.85 * half))


def arrow_head(tip: Point, tail: Point, length: float) -> tuple[Point, ...]:
    """The triangle at ``tip`` of a line that comes from ``tail``; of no size if the two are the same."""
    dx, dy = tip[0] - tail[0], tip[1] - tail[1]
    reach = (dx * dx + dy * dy) ** 0.5 or 1.0
    ux, uy = dx / reach, dy / reach
    foot = (tip[0] - length * ux, tip[1] - length * uy)
    half = length * 0.4
    return (tip, (foot[0] - half * uy, foot[1] + half * ux), (foot[0] + half * uy, foot[1] - half * ux))
