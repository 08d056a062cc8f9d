"""The page to print: it says all, it is one file, and nothing typed is taken for a tag."""

from dataclasses import replace
from datetime import date
from xml.etree import ElementTree

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Units
from logbook.pages.session import Session
from logbook.tasks.pieces import basis_of_tag, work_out_piece
from logbook.tasks.printed.piece_page import print_page
from tests.support.cloth import VEST


def test_it_holds_title_source_date_units_drawing_and_numbers(session: Session) -> None:
    answer = work_out_piece(basis_of_tag(session.book, "H1"), replace(VEST, name="Vest <b> & co"))
    html = print_page(answer, Units.CM, "From swatch H1: half double crochet", "for <Nora>", date(2026, 5, 31))
    page = ElementTree.fromstring(html.removeprefix("<!DOCTYPE html>\n").replace('<meta charset="utf-8">', ""))
    said = " ".join(page.itertext())
    for words in (
        "Vest <b> & co: chain 76, 62 rows",
        "From swatch H1: half double crochet. Finished sizes in centimetres. 31 May 2026.",
        "! The neck is 47.6 cm round",
        "Armhole: mark the end of row 40",
        "for <Nora>",
        "51.8 cm",
        "A finished garment usually differs",
    ):
        assert words in said, words
    assert said.count("The neck is 47.6 cm round") == 1
    assert page.find(".//{http://www.w3.org/2000/svg}svg") is not None
    assert "http://" not in html.replace("http://www.w3.org/2000/svg", "")


def test_the_rows_of_the_stitch_pattern_are_charted_where_they_help(session: Session) -> None:
    answer = work_out_piece(basis_of_tag(session.book, "H1"), VEST)
    rows = StitchPattern(name="Rows <i>", rows_text="Row 1: Hdc in 3rd ch from hook, hdc in each ch to end.", terms="US")
    charted = replace(answer, gauges=replace(answer.gauges, pattern=rows))
    html = print_page(charted, Units.CM, "")
    assert html.count("<svg") == 2
    assert "<b>Rows &lt;i&gt;</b>" in html
    assert "Drawn on 5 chains." in html
    assert "Drawn on" not in print_page(replace(charted, plan=replace(VEST, foundation_stitches=True)), Units.CM, "")


def test_what_is_to_be_minded_is_printed_once(session: Session) -> None:
    answer = work_out_piece(basis_of_tag(session.book, "H1"), replace(VEST, name="Vest"))
    yarn = replace(answer.gauges.yarn, fibre="60 % acrylic, 40 % wool")
    answer = replace(answer, gauges=replace(answer.gauges, yarn=yarn))
    html = print_page(answer, Units.CM, "From swatch H1", "For a christening.")
    assert html.count("can melt or go flat for good under a hot iron") == 1
    assert html.count("allergies to wool") == 1
    assert html.count("no cords or drawstrings at the neck") == 1
    assert "hot iron" not in print_page(replace(answer, gauges=replace(answer.gauges, yarn=Yarn(fibre="linen"))), Units.CM, "")
