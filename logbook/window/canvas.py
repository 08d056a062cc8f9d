"""Shows a drawing, made anew for the width it gets, in the colours and the text size of the moment."""

import tkinter as tk

from logbook.craft.drawing.drawing import (
    Draw,
    Line,
    Marker,
    Polygon,
    Rect,
    Role,
    Shape,
    Text,
    arrow_head,
    corners,
)
from logbook.window.look import Look

FONTS = {"plain": "TkDefaultFont", "bold": "TkHeadingFont", "large": "ResultFont"}


class DrawingCanvas(tk.Canvas):
    """As high as its drawing; grid it with ``sticky="ew"``."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        # Of a window that asks for 1 × 1 pixels Tk believes that it has not asked yet, and never shows it.
        super().__init__(parent, width=2, height=2, highlightthickness=0, borderwidth=0)
        self._look = look
        self._draw: Draw | None = None
        self._width = 1
        self.bind("<Configure>", self._follow_width)
        look.when_changed(self, self._paint)

    def show(self, draw: Draw | None) -> None:
        """Shows what ``draw`` makes for the width there is, at once; None shows nothing and keeps the height."""
        self._draw = draw
        self._paint()

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        if event.width != self._width:
            self._width = event.width
            self._paint()

    def _paint(self) -> None:
        self.configure(background=self._colour("surface"))
        self.delete("all")
        if self._draw is None or self._width <= 1:
            return
        drawing = self._draw(float(self._width), float(self._look.line))
        self.configure(height=max(2, round(drawing.height)))
        for shape in drawing.shapes:
            self._shape(shape)

    def _shape(self, shape: Shape) -> None:
        match shape:
            case Line():
                self._line(shape)
            case Rect(x, y, width, height, fill, outline, dashed):
                self.create_rectangle(
                    x,
                    y,
                    x + width,
                    y + height,
                    fill=self._colour(fill),
                    outline=self._colour(outline),
                    dash=(5, 4) if dashed else (),
                )
            case Polygon(points, fill, outline):
                self.create_polygon(points, fill=self._colour(fill), outline=self._colour(outline))
            case Marker():
                self._marker(shape)
            case Text(x, y, text, role, anchor, style, turned):
                angle = 90 if turned else 0
                colour = self._colour(role)
                self.create_text(x, y, text=text, anchor=anchor, angle=angle, font=FONTS[style], fill=colour)

    def _line(self, line: Line) -> None:
        colour = self._colour(line.role)
        self.create_line(list(line.points), fill=colour, width=line.thick, dash=(5, 4) if line.dashed else ())
        if line.arrows:
            for tip, tail in ((line.points[0], line.points[1]), (line.points[-1], line.points[-2])):
                self.create_polygon(arrow_head(tip, tail, self._look.line * 0.45), fill=colour, outline="")

    def _marker(self, marker: Marker) -> None:
        colour = self._colour(marker.role)
        fill = self._colour("surface") if marker.hollow else colour
        if marker.kind == "circle":
            half, x, y = marker.size / 2, marker.x, marker.y
            self.create_oval(x - half, y - half, x + half, y + half, fill=fill, outline=colour)
        else:
            self.create_polygon(corners(marker), fill=fill, outline=colour)

    def _colour(self, role: Role | None) -> str:
        return self._look.palette.of_role(role) if role else ""
