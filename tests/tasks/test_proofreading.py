"""Proofreading of the pattern the logbook itself writes: one number changed is named, the same numbers otherwise are not."""

from pathlib import Path

import pytest

from logbook.craft.proofreading.judging import Verdict
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.proofreading import expected_words, proofread, read_text
from tests.tasks.changed_text import answer, measure


def test_changed_numbers_are_found_and_right_texts_are_left_alone() -> None:
    made, found, alarms = measure(count=25, seed=3)
    assert alarms == []
    assert sum(found.values()) == sum(made.values()) == 25


def test_it_says_which_entry_and_what_the_logbook_has() -> None:
    right = answer(("S", "M", "L"))
    text = pattern_text(right, Terms.US).replace("Ch 72 (80, 88).", "Ch 72 (81, 88).", 1)
    read = proofread(text, right)
    (one,) = [one for one in read.found if one.verdict is Verdict.DIFFERS]
    assert (one.quantity.text, one.entries, expected_words(one)) == ("72 (81, 88)", (1,), "72 (80, 88)")
    assert not read.faultless


def test_chains_never_agree_with_stitches() -> None:
    right = answer(("S", "M", "L"))
    read = proofread("Back, worked up\n\nCh 71 (79, 87).\n", right)
    assert [one.verdict for one in read.found] == [Verdict.DIFFERS]


def test_an_unrelated_list_is_unknown() -> None:
    right = answer(("S", "M", "L"))
    read = proofread("I walked 5 (9, 14) times round the lake.\n", right)
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
