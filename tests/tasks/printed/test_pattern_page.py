"""A stitch pattern on paper."""

from datetime import date
from xml.etree import ElementTree

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.tasks.printed.pattern_page import pattern_page

MESH = StitchPattern(
    name="Mesh <i>",
    terms="US",
    notes="Block it.",
    rows_text="Row 1: Sc in 2nd ch from hook, *ch 5, sk 3 ch, sc in next ch; rep from * to end.",
)


def test_it_says_chain_and_rows_and_draws_them() -> None:
    html = pattern_page(MESH, "Chain a multiple of 4 plus 2.", date(2026, 5, 31))
    page = ElementTree.fromstring(html.removeprefix("<!DOCTYPE html>\n").replace('<meta charset="utf-8">', ""))
    said = " ".join(page.itertext())
    for words in ("Mesh <i>", "US terms. 31 May 2026.", "Chain a multiple of 4 plus 2.", "Row 1: Sc", "repeat of 4 ch"):
        assert words in said, words
    assert page.find(".//{http://www.w3.org/2000/svg}svg") is not None


def test_rows_that_cannot_be_drawn_are_written_all_the_same() -> None:
    html = pattern_page(StitchPattern(name="Odd", rows_text="Rnd 1: 6 sc in ring."), "")
    assert "6 sc in ring" in html
    assert "<svg" not in html
