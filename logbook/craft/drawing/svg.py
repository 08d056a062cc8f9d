"""A drawing as an SVG file that stands alone on paper: with title and notes, within A4 and Letter, in grey too."""

import re
import textwrap
from collections.abc import Sequence
from xml.sax.saxutils import escape

from logbook.craft.drawing.drawing import (
    Anchor,
    Drawing,
    Line,
    Marker,
    Point,
    Polygon,
    Rect,
    Role,
    Shape,
    Text,
    arrow_head,
    corners,
)

PAPER_WIDTH_MM = 180.0
PAPER_HEIGHT_MM = 245.0
"""What A4 (210 × 297 mm) and Letter (216 × 279 mm) both leave inside margins of 15 mm and more."""

COLOURS: dict[Role, str] = {
    "ink": "#000000",
    "muted": "#444444",
    "line": "#B8B2A6",
    "accent": "#7A3B5D",
    "measure": "#0A666E",
    "error": "#A12622",
    "series1": "#7A3B5D",
    "series2": "#0A6C74",
    "series3": "#946300",
    "band": "#E4E0E2",
    "surface": "#FFFFFF",
    "page": "#F4F4F4",
}
NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
LETTER_WIDTH = 0.43
"""Of a bold sans-serif letter on the average, in line heights."""
TEXT_SIZE = {"plain": 1.0, "bold": 1.0, "large": 1.6}


def to_svg(drawing: Drawing, title: str, notes: Sequence[str] = ()) -> str:
    """The whole file as text: ``title`` above the drawing, ``notes`` (units, date) on lines of their own below it."""
    line = drawing.line
    room = max(10, int(drawing.width / (line * LETTER_WIDTH)))
    heading = textwrap.wrap(title, room)
    foot = [part for note in notes for part in textwrap.wrap(note, room)]
    above = (len(heading) + 1) * line
    height = above + drawing.height + (len(foot) + 0.5) * line
    millimetre = min(PAPER_WIDTH_MM / drawing.width, PAPER_HEIGHT_MM / height)
    below = above + drawing.height + line
    body = [_text(Text(0, (0.9 + i) * line, part, anchor="w", style="bold"), line) for i, part in enumerate(heading)]
    body.append(f'<g transform="translate(0 {_n(above)})">')
    body += [part for shape in drawing.shapes for part in _shape(shape, line)]
    body.append("</g>")
    body += [_text(Text(0, below + i * line, part, "muted", "w"), line) for i, part in enumerate(foot)]
    size = f'width="{_n(drawing.width * millimetre)}mm" height="{_n(height * millimetre)}mm"'
    head = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="0 0 {_n(drawing.width)} {_n(height)}"'
        ' font-family="sans-serif" stroke-linejoin="round">',
        f"<title>{_escaped(title)}</title>",
    ]
    return "\n".join([*head, *body, "</svg>", ""])


def _shape(shape: Shape, line: float) -> list[str]:
    match shape:
        case Line():
            return _line(shape, line)
        case Rect(x, y, width, height, fill, outline, dashed):
            place = f'x="{_n(x)}" y="{_n(y)}" width="{_n(width)}" height="{_n(height)}"'
            return [f"<rect {place}{_paint(fill, outline, 1, dashed)}/>"]
        case Polygon(points, fill, outline):
            return [_polygon(points, fill, outline)]
        case Marker():
            return [_marker(shape)]
        case Text():
            return [_text(shape, line)]


def _line(line: Line, text_line: float) -> list[str]:
    points = " ".join(f"{_n(x)},{_n(y)}" for x, y in line.points)
    parts = [f'<polyline points="{points}"{_paint(None, line.role, line.thick, line.dashed)}/>']
    if line.arrows:
        ends = ((line.points[0], line.points[1]), (line.points[-1], line.points[-2]))
        parts += [_polygon(arrow_head(tip, tail, text_line * 0.45), line.role, None) for tip, tail in ends]
    return parts


def _polygon(points: Sequence[Point], fill: Role | None, outline: Role | None) -> str:
    return f'<polygon points="{" ".join(f"{_n(x)},{_n(y)}" for x, y in points)}"{_paint(fill, outline)}/>'


def _marker(marker: Marker) -> str:
    fill: Role = "surface" if marker.hollow else marker.role
    if marker.kind == "circle":
        place = f'cx="{_n(marker.x)}" cy="{_n(marker.y)}" r="{_n(marker.size / 2)}"'
        return f"<circle {place}{_paint(fill, marker.role)}/>"
    return _polygon(corners(marker), fill, marker.role)


def _text(text: Text, line: float) -> str:
    size = line * 0.7 * TEXT_SIZE[text.style]
    across, down = _text_anchor(text.anchor)
    turn = f' transform="rotate(-90 {_n(text.x)} {_n(text.y)})"' if text.turned else ""
    weight = "" if text.style == "plain" else ' font-weight="bold"'
    place = f'x="{_n(text.x)}" y="{_n(text.y)}" dy="{_n(down * size)}"'
    look = f'font-size="{_n(size)}" fill="{COLOURS[text.role]}" text-anchor="{across}"{weight}'
    return f"<text {place} {look}{turn}>{_escaped(text.text)}</text>"


def _text_anchor(anchor: Anchor) -> tuple[str, float]:
    """SVG's word for across, and how far the baseline lies below the point, in font sizes."""
    across = "start" if "w" in anchor else "end" if anchor in ("e", "ne", "se") else "middle"
    down = 0.95 if anchor in ("n", "ne", "nw") else -0.25 if anchor in ("s", "se", "sw") else 0.35
    return across, down


def _paint(fill: Role | None, outline: Role | None, thick: float = 1.0, dashed: bool = False) -> str:
    stroke = f' stroke="{COLOURS[outline]}" stroke-width="{_n(thick)}"' if outline else ""
    dashes = ' stroke-dasharray="5 4"' if dashed else ""
    return f' fill="{COLOURS[fill] if fill else "none"}"{stroke}{dashes}'


def _escaped(text: str) -> str:
    return escape(NOT_IN_XML.sub("\ufffd", text))


def _n(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")
