"""Which fields the form of a garment has, and that of a piece by its shape, in reading order."""

from typing import NamedTuple

from logbook.craft.garments.shapes import HALF_FRONT, NECKS, USUAL, Shape
from logbook.pages.garments.garment_texts import ENDS, FLAGS
from logbook.window.form_card import Section


class Entry(NamedTuple):
    """A field of the form; ``key`` is the name of its text. ``kind``: ``text``, ``measure`` (what it comes to stands after it),
    ``choice`` (of ``words``), ``swatch``, ``seam``, ``tick``, ``lines`` (so many as ``width``), ``joins`` or ``names``.
    ``example`` stands in it while it is empty: how it is typed, or what holds then.
    """

    key: str
    label: str
    kind: str = "text"
    width: int = 0
    words: tuple[str, ...] = ()
    example: str = ""


GARMENT_ITEMS: tuple[Entry | Section, ...] = (
    Entry("name", "Na&me"),
    Entry("ease", "Ease", width=12, example="e.g. 10 cm"),
    Entry("chart", "Si&zes from chart", "chart", 14),
    Entry("only", "Only these", example="all, or e.g. S, M, L"),
    Entry("range", "Of each range take", "choice", 10, tuple(ENDS)),
    Section("garments.own", "Sizes of your own", (Entry("own sizes", "A line each", "lines", 3),)),
    Section("garments.joins", "&Joins", (Entry("joins", "", "joins"),)),
    Entry("other costs", "Other costs", width=9),
    Entry("says", "Introd&uction", "lines", 2),
    Entry("notes", "Notes", "lines", 2),
)

_LABELS = {
    "upper arm round": "Upper arm",
    "right side rows": "Shape on right-side rows only",
    "whole repeats": "Whole repeats only",
    "exact": "Adjust the last round to the exact girth",
    "line stitches": "Raglan line sts",
    "each round": "More each round",
    "along": "Pick up along",
    "draw in": "Draw in",
    "neck": "Neck shape",
}


_EXAMPLES = {
    "width": "e.g. (bust + ease) / 2",
    "end width": "e.g. upper arm + 6 cm",
    "body round": "e.g. bust + ease",
    "upper arm round": "e.g. upper arm + 6 cm",
    "along": "e.g. neck of back, front of front",
    "each round": "so it lies flat",
    "draw in": "0 %",
}


def piece_items(shape: Shape, shapes: tuple[str, ...]) -> tuple[Entry | Section, ...]:
    """The fields of a piece of that shape."""
    measures = [Entry(name, _label(name), "measure", example=_example(name, shape)) for name in shape.measures]
    choices = [_choice(name) for name in shape.choices if name != "mirrored"]
    along = [entry for entry in choices if entry.key == "along"]
    ways = [Entry("worked", "Worked", "choice", 10, shape.ways)] if len(shape.ways) > 1 else []
    edge = [Entry("edge swatch", "Edge sts from", "swatch")] if shape.edge_stitches else []
    return (
        Entry("name", "Na&me"),
        Entry("shape", "Shape", "choice", 15, shapes),
        Entry("swatch", "From swat&ch", "swatch"),
        *ways,
        Entry("alike", "How many", width=5),
        *along,
        *measures,
        *(entry for entry in choices if entry not in along),
        *edge,
        Section("garments.names", "Names you can use", (Entry("names", "", "names"),)),
        Section(
            "garments.more",
            "Seam, words for the pattern",
            (Entry("seam", "Seam", "seam"), Entry("says", "Words", "lines", 2)),
        ),
    )


def _choice(name: str) -> Entry:
    if name in FLAGS:
        return Entry(name, _label(name), "tick")
    if name == "neck":
        return Entry(name, _label(name), "choice", 10, (USUAL["neck"], *(neck for neck in NECKS if neck != USUAL["neck"])))
    width = {"along": 0, "each round": 14}.get(name, 8)
    return Entry(name, _label(name), "text", width, example=_EXAMPLES.get(name) or str(USUAL[name]))


def _example(measure: str, shape: Shape) -> str:
    """How a measure that the shape needs is typed; that another may be left out."""
    if measure not in shape.needs:
        return "none"
    return "e.g. (bust + ease) / 4" if (measure, shape.name) == ("width", HALF_FRONT) else _EXAMPLES.get(measure, "e.g. 24 cm")


def _label(name: str) -> str:
    return _LABELS.get(name, name[:1].upper() + name[1:])
