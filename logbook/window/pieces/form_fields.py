"""Which fields the form of a piece has, in reading order: what most pieces need in sight, the rest in sections that fold."""

from collections.abc import Iterable
from typing import NamedTuple

from logbook.pages.pieces.plan_texts import CHOOSE, EDGES, FINISH, LAST_ROW, PARITY, SEAM_NAMES, WORKED
from logbook.window.form_card import Section, SideBySide

LABEL_LETTERS, SECOND_LETTERS = 15, 8
"""Of the labels at the left, and of those that stand second in a line."""


class Entry(NamedTuple):
    """A field of the form; ``key`` is the name of its text. A ``length`` is in the user's units, ``choices`` are its words;
    with ``swatches`` it names one of them, with ``lines`` it is a text of several. ``example`` stands in the empty field:
    what holds then. In a row its label has ``letters``."""

    key: str
    label: str
    width: int = 9
    length: bool = False
    choices: tuple[str, ...] = ()
    swatches: bool = False
    lines: int = 0
    example: str = ""
    letters: int = LABEL_LETTERS

    @property
    def grows(self) -> bool:
        """Whether the field takes all the width there is."""
        return self.width == 0


class Tick(NamedTuple):
    """Something to tick."""

    key: str
    label: str


def _length(key: str, label: str, example: str = "") -> Entry:
    return Entry(key, label, length=True, example=example)


def _row(first: Entry, second: Entry) -> SideBySide:
    return SideBySide((first, second._replace(letters=SECOND_LETTERS)))


def _choice(key: str, label: str, choices: Iterable[str]) -> Entry:
    return Entry(key, label, 18, choices=tuple(choices))


NONE = "none"
ITEMS: tuple[Entry | Tick | SideBySide | Section, ...] = (
    Entry("name", "Na&me", 0),
    Entry("swatch", "From swat&ch", 0, swatches=True),
    _choice("worked", "Worked", WORKED),
    _row(_length("width", "Width w&anted"), _length("body", "or &body")),
    _row(_length("ease", "Ease", NONE), Entry("panels", "Panels", example="2")),
    _choice("seam", "Seam", SEAM_NAMES),
    _row(_length("length", "Length wanted"), _length("armhole", "Armh&ole")),
    _row(_length("neck", "Nec&k width"), _length("slit", "Slit")),
    _choice("edge stitches", "Edge stitches", EDGES),
    Section(
        "pieces.edgings",
        "Edgings, edge swatch",
        (
            _row(_length("side edging", "At each side", NONE), _length("top edging", "Top", NONE)),
            _row(_length("bottom edging", "At the bottom", NONE), _length("seam takes", "Per seam", "as sewn")),
            _length("shoulder seam", "Shoulder seams", NONE),
            Tick("foundation chain", "Count the height of the chain row"),
            Entry("edge swatch", "Edge sts from", 0, swatches=True),
        ),
    ),
    Section(
        "pieces.body",
        "To get it on: head, arm, hip",
        (_row(_length("head", "Head"), _length("upper arm", "Arm")), _length("hip", "Hip")),
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
            Entry("row heights", "Row heights", 14, example="like 1 : 2"),
            Tick("half repeats", "Half repeats"),
            Tick("foundation stitches", "Foundation stitches"),
            Entry("round plus", "Plus in the round", example="0"),
            Tick("joined", "Row 1 flat, then joined"),
            Entry("other costs", "Other costs"),
        ),
    ),
    Entry("notes", "Notes", 0, lines=3),
)
