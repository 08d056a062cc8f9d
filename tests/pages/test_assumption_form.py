"""The assumptions as they are typed."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook, new_logbook
from logbook.craft.swatches.assumptions import Assumptions
from logbook.pages.assumption_form import AssumptionForm
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.browsing import assumptions_of


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with new_logbook(tmp_path / "a.logbook") as book:
        yield Session(book, Settings())


def texts(form: AssumptionForm, **typed: str) -> dict[str, str]:
    return {line.name: line.text for line in form.lines} | typed


def kept(book: Logbook) -> Assumptions:
    return assumptions_of(book)


def test_what_is_shown_read_again_changes_nothing(session: Session) -> None:
    form = AssumptionForm(session)
    shown = texts(form)
    assert (shown["variation"], shown["tape_mm"], shown["tape_inch_mm"], shown["count_step"]) == ("2", "1", "0.0625", "")
    assert form.errors(shown) == {}
    form.save(shown)
    assert kept(session.book) == Assumptions()


def test_per_cent_are_shares_inches_millimetres_and_an_empty_count_is_as_it_shows(session: Session) -> None:
    form = AssumptionForm(session)
    form.save(texts(form, drift="3.1", reserve="12,5", tape_inch_mm="1/8", count_step="1/4", most_edge_stitches="6"))
    found = kept(session.book)
    assert (found.drift, found.reserve, found.tape_inch_mm) == pytest.approx((0.031, 0.125, 3.175))
    assert (found.count_step, found.most_edge_stitches) == (0.25, 6)
    again = AssumptionForm(session)
    assert texts(again)["drift"] == "3.1"
    again.save(texts(again, count_step=" "))
    assert kept(session.book).count_step is None


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("drift", "a lot"),
        ("drift", "31"),
        ("drift", "0"),
        ("tape_mm", ""),
        ("most_edge_stitches", "1.5"),
        ("most_edge_stitches", "21"),
    ],
)
def test_what_can_not_be_is_said_under_its_name(session: Session, name: str, text: str) -> None:
    form = AssumptionForm(session)
    assert set(form.errors(texts(form, **{name: text}))) == {name}
