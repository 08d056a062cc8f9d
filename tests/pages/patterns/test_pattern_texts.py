"""The form of a stitch pattern: words and numbers that follow each other, and contradictions."""

import pytest

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import ordinal
from logbook.pages.patterns.pattern_texts import KEYS, SENTENCE, read_form, texts_of, typed
from logbook.pages.patterns.wording import COVERS, cover_words, read_cover, read_ordinal

EMPTY = texts_of(StitchPattern())


def after(*typing: tuple[str, str], texts: dict[str, str] = EMPTY) -> dict[str, str]:
    for key, text in typing:
        texts = typed(texts, key, text)
    return texts


def numbers(texts: dict[str, str]) -> tuple[str, str, str]:
    return texts["multiple"], texts["plus"], texts["extra_chains"]


FULL = StitchPattern(
    name="Fan ripple", multiple=6, plus=1, extra_chains=2, first_stitch=4, skip_cover=1, half_plus=3, set_up_rows=1,
    rows_in_repeat=4, closing_rows=0, terms="UK", rows_text="Row 1: 1 dc into 2nd ch\nRow 2: turn", notes="Curls a little.",
)  # fmt: skip


@pytest.mark.parametrize("pattern", [StitchPattern(), FULL])
def test_a_pattern_shown_and_read_is_the_same(pattern: StitchPattern) -> None:
    reading = read_form(texts_of(pattern))
    assert reading.pattern == pattern
    assert not reading.problems
    assert set(texts_of(pattern)) == set(KEYS)


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        ("multiple of 6 plus 1, add 1 for the base chain", ("6", "1", "1")),
        ("Multiple of 10 stitches less 1", ("10", "9", "")),
        ("Multiple of 10 less 1", ("10", "", "")),
        ("multiple of 4 stitches", ("4", "0", "")),
        ("multiple of 4", ("4", "", "")),
        ("6 + 1, add 1", ("6", "1", "1")),
        ("chain a multiple of 6 plus 2", ("6", "", "")),
        ("six", ("", "", "")),
    ],
)
def test_a_sentence_fills_the_numbers(sentence: str, expected: tuple[str, str, str]) -> None:
    assert numbers(after((SENTENCE, sentence))) == expected


def test_a_chain_constant_gives_the_plus_once_the_extra_chains_are_known() -> None:
    constant = after((SENTENCE, "chain a multiple of 6 plus 2"))
    assert SENTENCE in read_form(constant).problems
    by_stitch = after(("first_stitch", "2nd"), ("skip_cover", "nothing"), texts=constant)
    assert by_stitch["plus"] == "1"
    assert by_stitch[SENTENCE] == "chain a multiple of 6 plus 2"
    assert not read_form(by_stitch).problems
    assert after(("extra_chains", "2"), texts=constant)["plus"] == "0"
    # The other order, and a constant smaller than the extra chains: it lacks a repeat.
    assert after(("extra_chains", "1"), (SENTENCE, "chain a multiple of 6"))["plus"] == "5"


def test_another_sentence_takes_along_what_only_the_one_before_said() -> None:
    texts = after((SENTENCE, "multiple of 6 + 1, add 1"))
    assert numbers(after((SENTENCE, "10 + 4"), texts=texts)) == ("10", "", "")
    assert numbers(after((SENTENCE, "multiple of 6 + 1, add"), (SENTENCE, "6 + 1"), texts=texts)) == ("6", "", "")
    assert numbers(after((SENTENCE, "multiple of 6 + 1, add 2"), texts=texts)) == ("6", "1", "2")
    by_hand = after(("extra_chains", "2"), (SENTENCE, "10 + 4"), (SENTENCE, "10 + 5"))  # no sentence has said that
    assert numbers(by_hand) == ("10", "3", "2")
    first = after((SENTENCE, "multiple 10, plus 4, first stitch in 4th"), ("skip_cover", "a stitch"))
    assert (first["first_stitch"], numbers(first)) == ("4", ("10", "2", ""))
    assert after((SENTENCE, "10 + 4"), texts=first)["first_stitch"] == ""


def test_numbers_write_the_sentence() -> None:
    texts = after(("multiple", "6"), ("plus", "1"), ("first_stitch", "2"))
    assert texts[SENTENCE] == "multiple of 6 plus 1, add 1 for the base chain"
    assert after(("plus", ""), texts=texts)[SENTENCE] == "multiple of 6, add 1 for the base chain"
    assert after(("multiple", "six"), texts=texts)[SENTENCE] == texts[SENTENCE]
    assert after(("multiple", ""), texts=texts)[SENTENCE] == ""


@pytest.mark.parametrize(
    ("typing", "key", "says"),
    [
        ([("extra_chains", "2"), ("first_stitch", "2nd")], "extra_chains", "that makes 1"),
        ([("skip_cover", "nothing")], "first_stitch", "Give the chain"),
        ([("first_stitch", "2nd"), ("skip_cover", "a stitch and 2 chains")], "skip_cover", "can't count as"),
        ([("multiple", "7"), ("half_plus", "1")], "half_plus", "no half repeat"),
        ([("multiple", "x")], "multiple", "whole number"),
        ([("first_stitch", "second")], "first_stitch", "whole number"),
        ([(SENTENCE, "some of 6")], SENTENCE, "Couldn't read"),
        ([("rows_text", "a\x07b")], "rows_text", "U+0007"),
    ],
)
def test_each_contradiction_is_one_sentence_under_its_field(typing: list[tuple[str, str]], key: str, says: str) -> None:
    problems = read_form(after(*typing)).problems
    assert set(problems) == {key}
    assert says in problems[key]


@pytest.mark.parametrize(("number", "words"), [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (22, "22nd")])
def test_ordinals(number: int, words: str) -> None:
    assert ordinal(number) == words
    assert read_ordinal(words) == read_ordinal(str(number)) == number


@pytest.mark.parametrize("cover", [None, *range(12)])
def test_what_skipped_chains_count_as(cover: int | None) -> None:
    assert read_cover(cover_words(cover)) == cover
    assert (cover_words(cover) in COVERS) == (cover is None or cover < 8)
