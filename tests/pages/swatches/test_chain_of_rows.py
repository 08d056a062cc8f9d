"""The chain of a swatch and the written rows of its stitch pattern."""

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.pages.session import Session
from logbook.pages.swatches.chain_of_rows import contradiction, with_chain
from logbook.pages.swatches.chain_text import CHAIN
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.tasks.stitch_patterns import save_pattern

ROWS = (
    "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end. Turn.\n"
    "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * ending with "
    "3 dc in last sc. Turn.\n"
    "Row 3: Ch 1, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to end, last sc in top of "
    "turning ch. Turn.\nRep rows 2 and 3."
)
FANS = StitchPattern(name="Fans", rows_text=ROWS, terms="US")


def test_proven_rows_fill_the_chain_of_a_swatch(session: Session) -> None:
    assert (with_chain(FANS).multiple, with_chain(FANS).extra()) == (6, 1)
    save_pattern(session.book, FANS)
    form = SwatchForm(session)
    form.new()
    form.type_in("stitch pattern", "Fans")
    assert form.texts[CHAIN] == "multiple of 6 plus 1, add 1 for the base chain"
    assert (form.texts["set-up rows"], form.texts["rows in repeat"]) == ("1", "2")
    assert form.warnings() == {}


def test_what_contradicts_the_rows_is_said_once_something_is_typed(session: Session) -> None:
    save_pattern(session.book, FANS)
    form = SwatchForm(session)
    form.new()
    form.type_in("stitch pattern", "Fans")
    form.type_in(CHAIN, "multiple of 8 plus 2")
    assert form.warnings() == {CHAIN: "The rows fit on a multiple of 6 plus 2 chains, not on a multiple of 8."}


def test_rows_that_are_not_proven_say_nothing() -> None:
    odd = StitchPattern(name="odd", multiple=5, plus=0, extra_chains=1, rows_text="Row 1: quux in each ch.")
    assert with_chain(odd) == odd
    assert contradiction(odd) == ""
