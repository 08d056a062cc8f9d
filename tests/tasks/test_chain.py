"""From a swatch to its starting chains: what is passed on, and what is said beside it."""

from pathlib import Path

import pytest

from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.notes import Plain
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import read_ease
from logbook.craft.words.numbers import show_percent
from logbook.errors import RefusedError
from logbook.tasks.browsing import save_assumptions
from logbook.tasks.chain import chain_by_hand, chain_for_tag
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.note_words import said
from tests.support.books import COTTON, SHELLS, swatch, taken

PLAIN = StitchPattern(name="single crochet", multiple=1, extra_chains=1)


class TestTarget:
    def test_body_ease_panels_and_seams(self) -> None:
        plan = PiecePlan(body_mm=900, ease=read_ease("-10 %"), panels=3, seam_mm=5)
        assert plan.target_width(5.0) == pytest.approx(900 * 0.9 / 3 + 10)

    def test_in_the_round_it_is_the_whole_girth(self) -> None:
        assert PiecePlan(body_mm=900, ease=read_ease("5"), in_round=True, panels=3, seam_mm=5).target_width(5.0) == 950

    def test_without_either_it_is_refused(self) -> None:
        with pytest.raises(RefusedError, match="Give the finished width"):
            PiecePlan().target_width(5.0)
        with pytest.raises(RefusedError, match="nothing would be left"):
            PiecePlan(body_mm=90, ease=read_ease("-10")).target_width(5.0)


class TestLogged:
    def test_the_condition_asked_for(self, book: Logbook) -> None:
        readings = (
            taken("20 sts = 10 cm") + taken("20 sts = 11 cm", Condition.PINNED) + taken("20 sts = 10.5 cm", Condition.WORKED)
        )
        save_swatch(book, swatch(yarn=COTTON, pattern=PLAIN, readings=readings))
        washed = chain_for_tag(book, "S-01", PiecePlan(width_mm=460))
        pinned = chain_for_tag(book, " S-01 ", PiecePlan(width_mm=460), Condition.PINNED)
        assert (washed.stitch_mm, pinned.stitch_mm) == (5, 5.5)
        assert washed.recommended.before_washing_mm == pytest.approx(washed.recommended.count * 5.25)

    def test_what_the_logbook_assumes_counts(self, book: Logbook) -> None:
        save_swatch(book, swatch(yarn=COTTON, pattern=PLAIN, readings=taken("40 sts = 20 cm")))
        before = chain_for_tag(book, "S-01", PiecePlan(width_mm=460))
        save_assumptions(book, Assumptions(drift=0.04, variation=0.04))
        after = chain_for_tag(book, "S-01", PiecePlan(width_mm=460))
        assert after.drift.give_or_take == pytest.approx(2 * before.drift.give_or_take)
        assert before.finished.give_or_take is not None
        assert after.finished.give_or_take is not None
        assert after.finished.give_or_take > 1.9 * before.finished.give_or_take

    def test_washing_is_borrowed_by_way_of_washing_and_never_from_plain_to_lace(self, book: Logbook) -> None:
        both = taken("50 sts = 20 cm", Condition.WORKED) + taken("50 sts = 19 cm")
        for number, (pattern, way) in enumerate([(PLAIN, "by hand"), (PLAIN, "machine"), (SHELLS, "by hand")], start=1):
            save_swatch(book, swatch(number, yarn=COTTON, pattern=pattern, way_of_washing=way, readings=both))
        worked = taken("40 sts = 20 cm", Condition.WORKED)
        save_swatch(book, swatch(7, yarn=COTTON, pattern=PLAIN, way_of_washing="by hand", readings=worked))
        answer = chain_for_tag(book, "S-07", PiecePlan(width_mm=460))
        finished = answer.finished
        assert finished.give_or_take is not None
        whole = f"{show_percent(finished.give_or_take)}, borrowed washing included, that comes to about"
        assert any(f"With the swatch’s {whole}" in sentence for sentence in said(answer.notes))
        assert (finished.washing, finished.lenders) == (Washing.BORROWED, ("S-01",))
        assert finished.change == pytest.approx(-0.05)

    def test_no_reading_along_the_row(self, book: Logbook) -> None:
        save_swatch(book, swatch(yarn=COTTON, pattern=PLAIN, readings=taken("22 rows = 15 cm")))
        with pytest.raises(RefusedError, match="S-01 has no reading of stitches"):
            chain_for_tag(book, "S-01", PiecePlan(width_mm=460))

    def test_repeats_of_a_length_nobody_stated(self, book: Logbook) -> None:
        save_swatch(book, swatch(yarn=COTTON, readings=taken("4 repeats = 15 cm")))
        with pytest.raises(RefusedError, match="give the multiple"):
            chain_for_tag(book, "S-01", PiecePlan(width_mm=460))


class TestSideways:
    def test_rows_make_the_width_and_the_chain_the_length(self) -> None:
        rows = read_readings("20 rows = 10 cm", Direction.ROWS)
        ribs = StitchPattern(multiple=1, extra_chains=1, rows_in_repeat=2)
        plan = PiecePlan(width_mm=403, sideways=True, length_mm=500, side_edging_mm=10, width_choose=Choose.AT_LEAST)
        answer = chain_by_hand(read_readings("20 sts = 10 cm"), ribs, plan, rows)
        (row,) = (option for option in answer.rows if option.recommended)
        assert (row.count, row.mm) == (78, 410)  # edgings lie at the ends of the width
        assert (answer.recommended.chain, answer.target_mm) == (101, 500)

    def test_the_last_row_odd_or_even(self) -> None:
        rows = read_readings("20 rows = 10 cm", Direction.ROWS)
        for parity, wanted in ((Parity.ODD, 81), (Parity.EVEN, 80)):
            plan = PiecePlan(width_mm=402.6, sideways=True, length_mm=500, row_parity=parity)
            answer = chain_by_hand(read_readings("20 sts = 10 cm"), PLAIN, plan, rows)
            assert [option.count for option in answer.rows if option.recommended] == [wanted]


class TestNotes:
    @pytest.mark.parametrize(
        ("plan", "pattern", "words"),
        [
            (PiecePlan(width_mm=460, in_round=True), SHELLS, "Worked in the round, the plus of 1 is not used."),
            (PiecePlan(width_mm=460, in_round=True), SHELLS, "joined into a ring first"),
            (PiecePlan(width_mm=460, foundation_stitches=True), SHELLS, "Foundation stitches make chain and row one"),
            (PiecePlan(width_mm=20), SHELLS, "Even one repeat is wider"),
            (PiecePlan(width_mm=20, width_choose=Choose.AT_MOST), SHELLS, "Even the fewest repeats are wider"),
            (PiecePlan(width_mm=460), PLAIN, "Chains a stitch apart differ by less than the give or take"),
            (
                PiecePlan(width_mm=460, stitch_parity=Parity.EVEN),
                PLAIN,
                "Chains two stitches apart differ by less than the give or take",
            ),
            (PiecePlan(width_mm=460), SHELLS, "A finished garment usually differs from its swatch by up to 5.6 % (assumed"),
        ],
    )
    def test_what_is_said(self, plan: PiecePlan, pattern: StitchPattern, words: str) -> None:
        answer = chain_by_hand(read_readings("24 sts = 15.1 cm"), pattern, plan)
        assert any(words in note for note in said(answer.notes)), answer.notes

    @pytest.mark.parametrize(
        ("reading", "unusual"), [("320 sts = 10 cm", True), ("60 sts = 10 cm", False), ("16 sts = 10 m", True)]
    )
    def test_a_gauge_that_is_hardly_crocheted_is_said_to_be(self, reading: str, unusual: bool) -> None:
        answer = chain_by_hand(read_readings(reading), PLAIN, PiecePlan(width_mm=460))
        assert any("hardly crocheted" in note for note in said(answer.notes)) == unusual

    def test_a_swatch_worked_flat_serves_a_round_piece_badly(self, book: Logbook, tmp_path: Path) -> None:
        save_swatch(book, swatch(yarn=COTTON, pattern=PLAIN, worked="flat", readings=taken("20 sts = 10 cm")))
        assert any(
            "worked flat" in note for note in said(chain_for_tag(book, "S-01", PiecePlan(width_mm=460, in_round=True)).notes)
        )
        assert Plain.SWATCH_FLAT not in chain_for_tag(book, "S-01", PiecePlan(width_mm=460)).notes
