"""A measure on a drawing: a line with arrows from end to end, and its words beside it."""

from collections.abc import Iterator

from logbook.craft.drawing.drawing import Line, Shape, Text


def measured_across(left: float, right: float, y: float, words: str, line: float) -> Iterator[Shape]:
    """A measure from left to right, its words beneath; ``line`` is the height of a line of text."""
    yield Line(((left, y), (right, y)), "measure", arrows=True)
    yield Text((left + right) / 2, y + 0.7 * line, words, "ink", "center", "bold")


def measured_up(top: float, bottom: float, x: float, words: str, line: float) -> Iterator[Shape]:
    """A measure from top to bottom, its words at the right, reading upwards."""
    yield Line(((x, top), (x, bottom)), "measure", arrows=True)
    yield Text(x + 0.7 * line, (top + bottom) / 2, words, "ink", "center", "bold", True)
