"""Which fields the form of a swatch has, in reading order: what every swatch needs in sight, the rest in sections that fold."""

from typing import NamedTuple

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.yarn import YARN_CLASSES, class_words
from logbook.craft.words.terms import Terms
from logbook.pages.swatches.chain_text import CHAIN
from logbook.pages.swatches.form_texts import readings_key
from logbook.window.form_card import Section, SideBySide

NOT_SAID = "not given"


class Entry(NamedTuple):
    """A field of the form; ``key`` is the name of its text. With ``suggests`` it knows what was written before, with ``choices``
    (text → as shown) it is one of them, with ``lines`` it is a text of several. ``example`` stands in it while it is empty."""

    key: str
    label: str
    width: int = 8
    unit: str = ""
    suggests: bool = False
    choices: dict[str, str] | None = None
    lines: int = 0
    example: str = ""

    @property
    def grows(self) -> bool:
        """Whether the field takes all the width there is."""
        return self.width == 0


class Pictures(NamedTuple):
    """The pictures of the swatch, and the button that takes one in."""

    key: str = "pictures"


class ReadingsEntry(NamedTuple):
    """The readings of one condition."""

    key: str
    label: str
    hint: str = ""


def _readings(condition: Condition, label: str, hint: str = "") -> ReadingsEntry:
    return ReadingsEntry(readings_key(condition), label, hint)


PULLED = "Pull to a comfortable limit, and measure both ways in that state."


YARN_CLASS = {"": NOT_SAID} | {str(one.number): class_words(one.number) for one in YARN_CLASSES}
TERMS = {"": NOT_SAID} | {terms.value: f"{terms.value} terms" for terms in Terms}
WORKED = {"": NOT_SAID, "flat": "flat, to and fro", "round": "in the round"}

ITEMS: tuple[Entry | ReadingsEntry | SideBySide | Section, ...] = (
    Entry("yarn", "&Yarn", 0, suggests=True),
    Entry("stitch pattern", "Stit&ch", 0, suggests=True),
    Entry(CHAIN, "The chain", 0, example="e.g. multiple of 10 plus 4"),
    Entry("hook mm", "H&ook", 6, "mm"),
    Section(
        "swatches.yarn",
        "Yarn details",
        (
            Entry("fibre", "Fibre", 0),
            Entry("yarn class", "Class", 22, choices=YARN_CLASS),
            Entry("ball grams", "Ball weight", unit="g"),
            Entry("ball metres", "Ball length", unit="m"),
            Entry("ball price", "Ball price"),
            Entry("currency", "in", 8),
        ),
    ),
    Section(
        "swatches.pattern",
        "Stitch and hook details",
        (
            Entry("multiple", "Multiple of", 6, "stitches"),
            Entry("plus", "plus", 6, "stitches"),
            Entry("extra chains", "Extra chains", 6),
            Entry("first stitch in chain", "or first stitch in", 6, "chain from hook"),
            Entry("skipped chains cover", "skipped ch count as", 6, "stitches"),
            Entry("set-up rows", "Set-up rows", 6),
            Entry("rows in repeat", "Rows in a repeat", 6),
            Entry("closing rows", "Closing rows", 6),
            Entry("terms", "Written in", 12, choices=TERMS),
            Entry("hook note", "Hook made of", 0, suggests=True),
            Entry("worked", "Worked", 16, choices=WORKED),
            Entry("foundation hook mm", "Hook for chain", 6, "mm"),
        ),
    ),
    SideBySide((_readings(Condition.WORKED, "Measured as wor&ked"), _readings(Condition.WASHED, "Meas&ured washed"))),
    Section(
        "swatches.conditions",
        "Pulled, hung, pinned",
        (
            _readings(Condition.PINNED, "Pinned out"),
            _readings(Condition.SIDEWAYS, "Pulled sideways", PULLED),
            _readings(Condition.LENGTHWISE, "Pulled lengthwise", PULLED),
            _readings(Condition.HUNG, "Hung", "Let it hang overnight."),
            Entry("hung grams", "Weight hung on", unit="g"),
            Entry("hung clip cm", "over a width of"),
        ),
    ),
    Section(
        "swatches.more",
        "Washing, weight, notes",
        (
            Entry("tag", "Tag", 12),
            Entry("date", "Date", 12),
            Entry("colour", "Colour", 0, suggests=True),
            Entry("dye lot", "Dye lot", 12, suggests=True),
            Entry("strands", "Strands held", 6),
            Entry("worked by", "Worked by", 0, suggests=True),
            Entry("way of washing", "Washing", 0, suggests=True),
            Entry("swatch grams", "It weighs", unit="g"),
            Entry("swatch stitches", "and has", unit="stitches"),
            Entry("swatch rows", "by", unit="rows"),
            Entry("minutes", "It took", unit="minutes"),
            Entry("notes", "Notes", 0, lines=3),
            Pictures(),
        ),
    ),
)
