"""Which fields the form of a stitch pattern has, in reading order."""

from typing import NamedTuple

from logbook.pages.patterns.pattern_texts import SENTENCE, TERMS
from logbook.pages.patterns.wording import COVERS
from logbook.window.form_card import Section, SideBySide

ROWS, CHART, BEGINS = "rows_text", "chart", "begins"


class Entry(NamedTuple):
    """A field of the form; ``key`` is the name of its text. With ``choices`` it is one of them, with ``lines`` a text of several;
    without a width it takes all there is."""

    key: str
    label: str
    width: int = 0
    unit: str = ""
    choices: tuple[str, ...] = ()
    lines: int = 0


NUMBERS = "patterns.numbers"
"""The section of the numbers, which the sentence says as well."""
ITEMS: tuple[Entry | SideBySide | Section, ...] = (
    Entry("name", "Na&me"),
    Entry(SENTENCE, "The &chain, in words"),
    Entry(BEGINS, ""),
    Section(
        NUMBERS,
        "Numbers",
        (
            SideBySide((Entry("multiple", "Multi&ple", 6), Entry("plus", "Plus", 6), Entry("extra_chains", "E&xtra chains", 6))),
            SideBySide(
                (
                    Entry("first_stitch", "First stitch, in ch&ain", 6, "from the hook"),
                    Entry("skip_cover", "S&kipped chains count as", 20, choices=COVERS),
                )
            ),
            SideBySide(
                (
                    Entry("set_up_rows", "Set-up rows", 6),
                    Entry("rows_in_repeat", "Rows in a repeat", 6),
                    Entry("closing_rows", "Closing rows", 6),
                )
            ),
            Entry("half_plus", "Plus for a half repeat", 6),
        ),
    ),
    Entry("terms", "Terms", 10, choices=TERMS),
    Entry(ROWS, "Written r&ows", lines=8),
    Entry(CHART, ""),
    Entry("notes", "Notes", lines=3),
)
