"""What a piece takes in hours and money, reckoned by hand.

The vest of ``tests/support/cloth.py``: 2 panels of 74 stitches by 62 rows, 9,176 stitches, 0.2 minutes a stitch, 30.6 hours.
Its yarn comes in balls of 50 g at 4.95 EUR.
"""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.gauges.drift import drifts_of
from logbook.craft.pieces.time_and_money import Price, TimeNeeded, price_of, time_needed, time_together, yarn_cost
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Units
from logbook.tasks.browsing import save_assumptions, swatch_in_hand
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.money_words import HANDS_CAUTION, price_words, sentence_of, time_words
from logbook.tasks.note_words import said
from logbook.tasks.piece_words import counts
from logbook.tasks.pieces import basis_of_tag, work_out_piece
from tests.support.cloth import VEST
from tests.support.garments import garment_book, uid_of


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "a.logbook") as made:
        one = swatch_in_hand(made, uid_of(made, "H1"))
        assert one is not None
        assert one.yarn is not None
        save_swatch(made, replace(one, minutes=96.0, yarn=replace(one.yarn, ball_price=4.95, currency="EUR")))
        yield made


def test_a_piece_says_its_hours_and_what_it_costs(book: Logbook) -> None:
    save_assumptions(book, Assumptions(hourly_rate=12.0))
    answer = work_out_piece(basis_of_tag(book, "H1"), replace(VEST, other_costs=6.0))
    sentences = list(counts(answer, Units.CM))
    assert answer.numbers.yarn is not None
    balls = (answer.numbers.yarn.balls or 0) * 4.95
    work = 9176 * 0.2 / 60 * 12
    assert sentences[-2] == "About 31 hours."
    assert sentences[-1] == (
        f"Your costs: yarn {balls:.2f}, other costs 6.00, work {work:.2f} (30.6 hours at 12.00); "
        f"together {balls + 6 + work:.2f} EUR."
    )
    assert said(answer.remarks).count(HANDS_CAUTION) == 1


def test_without_a_rate_work_is_not_counted(book: Logbook) -> None:
    answer = work_out_piece(basis_of_tag(book, "H1"), VEST)
    assert answer.numbers.yarn is not None
    assert list(counts(answer, Units.CM))[-1] == f"The balls cost {(answer.numbers.yarn.balls or 0) * 4.95:.2f} EUR."


def test_nothing_is_said_of_what_is_not_known(tmp_path: Path) -> None:
    with garment_book(tmp_path / "b.logbook") as book:
        answer = work_out_piece(basis_of_tag(book, "H1"), VEST)
    assert answer.numbers.time is None
    assert HANDS_CAUTION not in said(answer.remarks)
    assert not any("hour" in sentence or "cost" in sentence for sentence in counts(answer, Units.CM))
    assert list(price_words(Price(None, 6.0, 100.0), 10.0, 10.0)) == []


def test_one_pace_is_in_all_pieces_so_half_widths_add() -> None:
    pace = replace(drifts_of(Assumptions()).minutes, pieces=2, give_or_take=0.2)
    two = [time_needed(0.5, stitches, pace) for stitches in (1000, 600)]
    assert time_together(two) == TimeNeeded(800.0, 160.0)
    assert time_together([*two, None]) is None
    assert time_together([]) is None
    assert time_together([TimeNeeded(10, None), TimeNeeded(20, 2.0)]) == TimeNeeded(30.0, None)
    assert time_needed(None, 1000, pace) is None
    assert time_needed(0.5, None, pace) is None


def test_the_price_is_hours_by_rate_and_yarn_and_else() -> None:
    price = price_of(29.7, "EUR", TimeNeeded(1200.0, 120.0), 12.0, 6.0)
    assert price == Price(29.7, 6.0, 240.0, 24.0, "EUR")
    assert price.whole == pytest.approx(275.7)
    assert price_of(29.7, "EUR", TimeNeeded(1200.0, None), 0.0).whole == pytest.approx(29.7)
    assert yarn_cost(Yarn(name="a", ball_price=4.95), 6) == pytest.approx(29.7)
    assert yarn_cost(Yarn(name="a"), 6) is None
    assert list(price_words(price, 20.0, 12.0)) == [
        "Your costs: yarn 29.70, other costs 6.00, work 240.00 (20 hours at 12.00); together 275.70 EUR, give or take 24.00."
    ]


@pytest.mark.parametrize(
    ("time", "words"),
    [
        (TimeNeeded(2460, 540), "about 41 hours, give or take 9"),
        (TimeNeeded(150, None), "about 2.5 hours"),
        (TimeNeeded(25, 4), "about 25 minutes, give or take 4"),
        (TimeNeeded(60, None), "about 1 hour"),
    ],
)
def test_a_time_is_told_as_finely_as_it_is_known(time: TimeNeeded, words: str) -> None:
    assert time_words(time) == words
    assert sentence_of(words)[0] == "A"
