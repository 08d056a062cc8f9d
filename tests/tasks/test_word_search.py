"""What is found in memory, slice by slice, is what the logbook finds."""

import pytest

from logbook.book.logbook import Logbook
from logbook.tasks import word_search
from logbook.tasks.browsing import Filters, matching_in_any_order, swatches_newest_first
from logbook.tasks.word_search import WordSearch
from tests.support.wardrobe import book

__all__ = ["book"]


@pytest.mark.parametrize(
    "words", ["", "merida", " SHELL harb ", "%", "é", "4.5 mm", "4,5 mm", "harbour nothing", "O", "Sep 2024", "21 Sep"]
)
@pytest.mark.parametrize("slice_", [1, 3, 5_000])
def test_it_finds_what_the_logbook_finds(book: Logbook, words: str, slice_: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(word_search, "SLICE", slice_)
    uids = swatches_newest_first(book)
    search = WordSearch(book, uids)
    wanted = set(matching_in_any_order(book, Filters(words=words)))
    for _ in range(2):  # the second time with the texts at hand
        found = list(search.found(words))
        assert len(found) == search.slices
        assert [uid for some in found for uid in some] == [uid for uid in uids if uid in wanted]


def test_it_looks_among_those_it_is_to(book: Logbook) -> None:
    uids = swatches_newest_first(book)
    assert list(WordSearch(book, uids).found("", set(uids[1:3]))) == [uids[1:3]]


def test_word_by_word_as_it_is_typed(book: Logbook) -> None:
    uids = swatches_newest_first(book)
    search = WordSearch(book, uids)
    typed = ["m", "me", "merida", "merida 0", "merida 04", "0 merida", "arbour", "r", "", "har sh", "sh"]
    dates = ["0", "01", "01 ", "01 M", "01 Ma", "01 May", "01 May 2", "01 May 2026", "01 May 2026 h", "May 2026", "May 2026a"]
    for words in [*typed, "4", "4,", "4,5", "4,5 har", "4.5", *dates]:
        wanted = set(matching_in_any_order(book, Filters(words=words)))
        assert {uid for some in search.found(words) for uid in some} == wanted, words


def test_a_look_that_was_broken_off_leaves_nothing_out(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(word_search, "SLICE", 1)
    search = WordSearch(book, swatches_newest_first(book))
    next(search.found("harbour"))
    assert len([uid for some in search.found("harbour co") for uid in some]) == 2
