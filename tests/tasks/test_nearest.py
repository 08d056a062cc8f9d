"""Nearest swatches of a logbook, by the gauges that are kept and by those reckoned anew."""

import pytest

from logbook.book.swatches import swatches
from logbook.craft.gauges.nearest_gauge import WantedGauge
from logbook.craft.gauges.washing import Washing
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import gauges_of
from logbook.tasks.find import Filters, FoundSwatch
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.nearest import FINISHED, LookedThrough, look_through, nearest_of, nearest_to
from tests.support.books import COTTON, swatch, taken


def test_kept_gauges_lend_washing_as_reckoned_ones_do(book: Logbook) -> None:
    worked, washed = taken("18 sts = 11.5 cm", Condition.WORKED), taken("18 sts = 11.0 cm")
    for number in range(1, 7):
        readings = worked if number % 2 else worked + washed
        save_swatch(book, swatch(number, yarn=COTTON, way_of_washing="by hand", readings=readings))
    with book.reading() as connection:
        found = swatches(connection)
    reckoned = LookedThrough([FoundSwatch(one, gauges_of(one, Assumptions())) for one in found], found, Assumptions())
    wanted = WantedGauge(stitch_mm=6.2)
    near = nearest_to(book, wanted, Filters())
    assert {one.washing for one in near} == {Washing.MEASURED, Washing.BORROWED}
    assert [(one.found.swatch.tag, one.off, one.washing) for one in near] == [
        (one.found.swatch.tag, one.off, one.washing) for one in nearest_of(reckoned, wanted, Condition.WASHED)
    ]
    assert not any(one.found.swatch.readings for one in near)


def test_what_is_reckoned_beforehand_is_not_reckoned_again(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    """In a logbook of a hundred thousand it takes seconds, and a key in the dialog must not wait for it."""
    for number in range(1, 5):
        save_swatch(book, swatch(number, yarn=COTTON, readings=taken(f"{17 + number} sts = 11.5 cm")))
    wanted = WantedGauge(stitch_mm=6.0)
    through = look_through(book, Filters(), FINISHED)
    fresh = nearest_to(book, wanted, Filters())

    def never(*_: object) -> None:
        raise AssertionError("reckoned again")

    monkeypatch.setattr("logbook.tasks.nearest.Lending", never)
    assert nearest_of(through, wanted, Condition.WASHED) == fresh
    uid = fresh[0].found.swatch.uid
    assert [near.found.swatch.uid for near in nearest_of(through, wanted, Condition.WASHED, uid)] == [
        near.found.swatch.uid for near in fresh[1:]
    ]
