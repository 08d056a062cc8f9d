"""Which fields the form of a piece has, in reading order: what most pieces need in sight, the rest in sections that fold."""

from collections.abc import Iterable
from typing import NamedTuple

from logbook.pages.pieces.plan_texts import CHOOSE, EDGES, FINISH, LAST_ROW, PARITY, SEAM_NAMES, WORKED
from logbook.window.form_card import Section


class Entry(NamedTuple):
    """A field of the form; ``key`` is the name of its text. A ``length`` is in the user's units, ``choices`` are its words;
    with ``swatches`` it names one of them, with ``lines`` it is a text of several."""

    key: str
    label: str
    width: int = 9
    unit: str = ""
    length: bool = False
    choices: tuple[str, ...] = ()
    swatches: bool = False
    lines: int = 0

    @property
    def grows(self) -> bool:
        """Whether the field takes all the width there is."""
        return self.width == 0


class Tick(NamedTuple):
    """Something to tick."""

    key: str
    label: str


def _length(key: str, label: str) -> Entry:
    return Entry(key, label, length=True)


def _choice(key: str, label: str, choices: Iterable[str]) -> Entry:
    return Entry(key, label, 18, choices=tuple(choices))


ITEMS: tuple[Entry | Tick | Section, ...] = (
    Entry("name", "Na&me", 0),
    Entry("swatch", "From swat&ch", 0, swatches=True),
    _choice("worked", "Worked", WORKED),
    _length("width", "Width w&anted"),
    _length("body", "or &body measure"),
    Entry("ease", "Ease"),
    Entry("panels", "Panels round", 6),
    _choice("seam", "Seam", SEAM_NAMES),
    _length("length", "Length wanted"),
    _length("armhole", "Armh&ole depth"),
    _length("neck", "Nec&k width"),
    _length("slit", "Slit"),
    _choice("edge stitches", "Edge stitches", EDGES),
    Section(
        "pieces.edgings",
        "Edgings, edge swatch",
        (
            _length("side edging", "At each side"),
            _length("top edging", "At the top"),
            _length("bottom edging", "At the bottom"),
            _length("seam takes", "A seam takes"),
            _length("shoulder seam", "shoulders too"),
            Tick("foundation chain", "Count the chain row’s own 4 mm"),
            Entry("edge swatch", "Edges like swatch", 0, swatches=True),
        ),
    ),
    Section(
        "pieces.body",
        "To get it on: head, arm, hip",
        (_length("head", "Head"), _length("upper arm", "Upper arm"), _length("hip", "Hip")),
    ),
    Section(
        "pieces.ways",
        "More wa&ys",
        (
            _choice("width choose", "Width should be", CHOOSE),
            _choice("length choose", "Length should be", CHOOSE),
            _choice("stitch parity", "Stitch count", PARITY),
            _choice("last row", "Last row", LAST_ROW),
            _choice("finish", "Finished size is", FINISH),
            Tick("snap", "Marks at whole repeats"),
            Tick("any row", "May stop inside a row repeat"),
            Entry("row heights", "Row heights", 14, "like 1 : 2"),
            Tick("half repeats", "Half repeats"),
            Tick("foundation stitches", "Foundation stitches"),
            Entry("round plus", "Plus in the round", 6),
            Tick("joined", "Row 1 flat, then joined"),
        ),
    ),
    Entry("notes", "Notes", 0, lines=3),
)
