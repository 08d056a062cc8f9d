import tkinter as tk

from logbook.craft.drawing.drawing import Drawing, Line, Marker, Polygon, Rect, Text
from logbook.window.canvas import DrawingCanvas
from logbook.window.look import Look
from logbook.window.palette import DARK, LIGHT
from tests.support.screen import settle


def panel(width: float, line: float) -> Drawing:
    shapes = (
        Rect(1, 1, width - 2, 2 * line, "band", "muted", dashed=True),
        Line(((0, 3 * line), (width, 3 * line)), "measure", arrows=True),
        Polygon(((0, 0), (9, 0), (9, 9)), "series1", None),
        Marker(20, 20, "circle", "series2"),
        Marker(40, 20, "triangle", "series3", hollow=True),
        Text(width / 2, 4 * line, "46.5 cm", style="bold"),
        Text(line, 2 * line, "rows", "muted", turned=True),
    )
    return Drawing(width, 5 * line, line, shapes)


def test_a_drawing_is_made_for_the_width_and_the_text_there_is(root: tk.Tk, look: Look) -> None:
    root.columnconfigure(0, weight=1)
    canvas = DrawingCanvas(root, look)
    canvas.grid(sticky="ew")
    canvas.show(panel)
    for percent, width in ((100, 500), (200, 300)):
        look.apply(percent=percent)
        root.geometry(f"{width}x600")
        settle(root)
        assert canvas.coords(canvas.find_all()[0]) == [1, 1, width - 1, 1 + 2 * look.line]
        assert canvas.winfo_height() == 5 * look.line
        box = canvas.bbox("all")
        assert box[0] + 2 >= 0
        assert box[2] <= width + 2


def test_it_is_painted_anew_in_another_palette(root: tk.Tk, look: Look) -> None:
    root.columnconfigure(0, weight=1)
    canvas = DrawingCanvas(root, look)
    canvas.grid(sticky="ew")
    canvas.show(panel)
    settle(root)
    for palette in (LIGHT, DARK):
        look.apply(palette)
        fills = [canvas.itemcget(item, "fill") for item in canvas.find_all()]
        colours = [palette.band, *[palette.focus] * 3, palette.series1, palette.series2, palette.surface, palette.ink]
        assert fills == [*colours, palette.muted]
        assert str(canvas["background"]) == palette.surface
    canvas.show(None)
    assert canvas.find_all() == ()
