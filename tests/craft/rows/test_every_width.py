"""Rows at every width: a form with a unit that is put in again and again."""

from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.rows.every_width import FOUNDATION_CHAIN, FittingSteps, Misfit, Widths, lay_at_every_width
from logbook.craft.rows.laying import lay
from logbook.craft.rows.places import Place, Row, mirrored
from logbook.craft.rows.reader import read
from logbook.craft.words.terms import Terms

places = st.lists(st.sampled_from([Place("sc"), Place("dc"), Place("tr")]), max_size=5).map(tuple)


def first_rows(widths: Widths, count: int = 8) -> list[Row]:
    return [widths.at(step) for step in range(count)]


@given(places, places.filter(bool), places, st.integers(0, 3), st.integers(1, 3))
def test_forms_of_the_same_rows_settle_alike(head: Row, unit: Row, tail: Row, first: int, by: int) -> None:
    widths = Widths(head, unit, tail)
    assert first_rows(widths.settled()) == first_rows(widths)
    assert first_rows(widths.one_up()) == first_rows(widths)
    assert widths.one_up().settled() == widths.settled()
    assert first_rows(widths.every(first, by), 4) == [widths.at(first + by * step) for step in range(4)]
    turned = widths.met_from_other_side(joined=False)
    assert first_rows(turned) == [mirrored(row) for row in first_rows(widths)]


@given(places.filter(bool), places, places)
def test_a_joined_round_is_met_from_its_first_stitch(head: Row, unit: Row, tail: Row) -> None:
    widths = Widths(head, unit, tail)
    assert first_rows(widths.met_from_other_side(joined=True)) == [row[:1] + mirrored(row[1:]) for row in first_rows(widths)]


def fit(row: str, below: Widths = FOUNDATION_CHAIN) -> FittingSteps | Misfit:
    return lay_at_every_width(read(row, Terms.US).rows[0], below, {})


def test_the_form_of_a_row_is_what_laying_it_at_each_width_makes() -> None:
    text = (
        "dc in 4th ch from hook, dc in next ch, *ch 2, sk 3 ch, (dc, ch 1, dc) in next ch, sk 1 ch; rep from * to last 2 ch, "
        "dc in last 2 ch"
    )
    found = fit(text)
    assert isinstance(found, FittingSteps)
    assert (found.by, found.passes) == (5, 1)
    row = read(text, Terms.US).rows[0]
    fitting = [made.row for chain in range(1, 60) if (made := lay(row, FOUNDATION_CHAIN.at(chain - 1), {})).trouble is None]
    assert first_rows(found.widths, len(fitting)) == fitting
    assert len(fitting) > 8


def test_a_repeat_that_takes_no_stitch_is_no_fit() -> None:
    found = fit("sc in 2nd ch from hook, *ch 1; rep from * to end")
    assert isinstance(found, Misfit)


def test_a_row_of_fixed_numbers_fits_at_one_width() -> None:
    found = fit("sc in 2nd ch from hook, sc in next 4 ch")
    assert isinstance(found, FittingSteps)
    assert (found.first, found.by, len(found.widths.at(0))) == (5, 0, 5)
