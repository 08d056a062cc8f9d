"""Proofreading of the pattern the logbook itself writes: one number changed is named, the same numbers otherwise are not."""

import random
import re
from pathlib import Path

import pytest

from logbook.craft.garments.published import published_of, published_text
from logbook.craft.proofreading.judging import Verdict
from logbook.craft.sizes.published_run import PublishedRun
from logbook.craft.sizes.run_numbers import SizeFigures
from logbook.craft.words.notation import Notation, written_in
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.garment_publishing import publish
from logbook.tasks.garments import garments, work_out
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.proofreading import expected_words, held_called, of_garment, of_published, of_set_run, proofread, read_text
from logbook.tasks.sampling import new_sample
from tests.tasks.changed_text import APART, DIGIT, ROW, SHORT, SWAPPED, alarms, answer, measure


def test_changed_numbers_are_found_and_right_texts_are_left_alone() -> None:
    chance, right = random.Random(3), answer()
    made, found, missed = measure(right, 25, chance)
    assert missed == []
    assert sum(found.values()) == sum(made.values()) == 25
    assert set(made) == {DIGIT, SWAPPED, SHORT, APART, ROW}
    assert alarms(right, chance) == []


def test_it_says_which_entry_and_what_the_logbook_has() -> None:
    right = answer(("S", "M", "L"))
    text = pattern_text(right, Terms.US).replace("Ch 72 (80, 88).", "Ch 72 (81, 88).", 1)
    read = proofread(text, of_garment(right))
    (one,) = [one for one in read.found if one.verdict is Verdict.DIFFERS]
    assert (one.quantity.text, one.entries, expected_words(one)) == ("72 (81, 88)", (1,), "72 (80, 88)")
    assert not read.faultless


def test_chains_never_agree_with_stitches() -> None:
    right = answer(("S", "M", "L"))
    read = proofread("Back, worked up\n\nCh 71 (79, 87).\n", of_garment(right))
    assert [one.verdict for one in read.found] == [Verdict.DIFFERS]


def test_an_unrelated_list_is_unknown() -> None:
    right = answer(("S", "M", "L"))
    read = proofread("I walked 5 (9, 14) times round the lake.\n", of_garment(right))
    assert [one.verdict for one in read.found] == [Verdict.UNKNOWN]


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "is empty"),
        (b"  \n", "is empty"),
        (b"\xff\xfe\x00\x01", "not text"),
        (b"a\x00b", "not text"),
        (b"x" * 2_000_000, "too long"),
    ],
)
def test_bad_files_get_a_sentence(tmp_path: Path, content: bytes, says: str) -> None:
    file = tmp_path / "t.txt"
    file.write_bytes(content)
    with pytest.raises(RefusedError, match=says):
        read_text(file)


@pytest.mark.parametrize("sizes", [("M",), ("S", "M"), ("S", "M", "L")])
@pytest.mark.parametrize(("written", "held"), [(",", "."), (".", ","), (",", ",")])
def test_a_text_with_the_other_decimal_mark_is_as_right(sizes: tuple[str, ...], written: str, held: str) -> None:
    right = answer(sizes)
    alike = proofread(pattern_text(right, Terms.US), of_garment(right))
    with written_in(Notation(written)):
        text = pattern_text(right, Terms.US)
    with written_in(Notation(held)):
        read = proofread(text, of_garment(right))
    assert read.faultless
    assert [(one.verdict, one.quantity.values) for one in read.found] == [
        (one.verdict, one.quantity.values) for one in alike.found
    ]


def test_what_the_logbook_has_is_said_with_the_readers_mark() -> None:
    right = answer(("S", "M", "L"))
    with written_in(Notation(",")):
        text = pattern_text(right, Terms.US)
        found = re.search(r"(\d+),5 \(\d+,5; \d+,5\) cm", text)
        assert found is not None
        wrong = f"{int(found[1]) + 3},5{found[0][len(found[1]) + 2 :]}"  # of the width; unrounded it is 444 mm
        (one,) = [one for one in proofread(text.replace(found[0], wrong, 1), of_garment(right)).found if one.entries]
        assert (one.quantity.text, expected_words(one)) == ("47,5 (49,5; 54,5) cm", "44,4 (49,4; 54,4) cm")


def test_a_published_garment_is_held_against_what_was_published() -> None:
    right = answer(("S", "M", "L"))
    text = pattern_text(right, Terms.US)
    before = published_of(published_text("2026-11-01", {"US": text}, right.numbers))
    assert proofread(text, of_published(before)).faultless
    (one,) = [
        one
        for one in proofread(text.replace("Ch 72 (80, 88).", "Ch 72 (81, 88).", 1), of_published(before)).found
        if one.verdict is Verdict.DIFFERS
    ]
    assert one.entries == (1,)


def test_a_set_run_is_held_against_its_own_lines() -> None:
    run = PublishedRun(
        date="2026-11-01",
        tag="A1",
        readings=(),
        sizes=tuple(SizeFigures(size=name) for name in ("S", "M", "L", "XL")),
        lines="Sizes S (M, L, XL)\nCh 62 (68, 80, 86).\nWork 71 (73, 75, 77) rows.",
    )
    held = of_set_run(run)
    assert proofread(run.lines, held).faultless
    assert not proofread(run.lines.replace("80", "81"), held).faultless


def test_rows_in_the_text_are_proven() -> None:
    right = answer(("S", "M", "L"))
    text = (
        "Back\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sts)\nRow 2: Ch 1, sc in each st. (9 sts)\n"
    )
    assert [problem.line for problem in proofread(text, of_garment(right)).problems if "holds" in problem.says] == [4]


def test_a_garment_or_a_set_run_is_called_by_its_name(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        garment = garments(book)[0]
        assert held_called(book, garment.plan.name) == of_garment(work_out(garment.plan, book))
        published = publish(book, garment, work_out(garment.plan, book))
        assert held_called(book, garment.plan.name).pattern == published_of(published.published or "").texts["US"]
        run = next(piece for piece in planned_pieces(book) if piece.published is not None)
        held = held_called(book, run.name)
        assert proofread(held.pattern, held).faultless
        assert held.names == tuple(size.name for size in run.sizes)
        with pytest.raises(RefusedError):
            held_called(book, "no such thing")


def test_a_text_with_more_numbers_than_any_pattern_gets_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("logbook.tasks.proofreading.MOST_NUMBERS", 1_000)
    held = of_garment(answer(("S", "M", "L")))
    assert len(proofread("ch 3, " * 1_000, held).found) == 1_000
    with pytest.raises(RefusedError, match="has 1,001 numbers, the most is 1,000: proofread it in several parts"):
        proofread("ch 3, " * 1_001, held)
