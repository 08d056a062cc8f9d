"""Finding swatches by words at every key: their folded texts, kept in memory and searched in slices."""

from collections.abc import Collection, Iterator, Sequence

from logbook.book.logbook import Logbook
from logbook.book.search import folded_words
from logbook.book.wanted_words import Wanted, has, wanted_words

SLICE = 5_000
"""Swatches that are searched at one go: in a few milliseconds, or in some twenty the first time, when their texts are read."""


class WordSearch:
    """Looks in the swatches of ``uids``, in their order, as the logbook had them when a slice was first looked in."""

    def __init__(self, book: Logbook, uids: Sequence[str]) -> None:
        self._book = book
        self._slices = [uids[start : start + SLICE] for start in range(0, len(uids), SLICE)]
        self._texts: list[list[str] | None] = [None] * len(self._slices)
        self._before: tuple[list[Wanted], dict[int, Collection[int]]] = ([], {})

    @property
    def slices(self) -> int:
        """How many there are."""
        return len(self._slices)

    def found(self, words: str, among: Collection[str] | None = None) -> Iterator[list[str]]:
        """Slice by slice the uids of the swatches in which every one of the words is found, or a part of a word; of all or of
        those ``among`` which it is to be."""
        wanted = sorted(wanted_words(words), key=lambda word: len(word[0][0]), reverse=True)  # long ones are rare
        before, known = self._before
        several = any(len(word) > 1 for word in wanted)  # "4,5" finds what "4," did not
        if several or not all(any(_is_part(part, word) for word in wanted) for part in before):
            known = {}  # else only what was found before can be found now, as while a word is typed
        now: dict[int, Collection[int]] = {}
        self._before = (wanted, now)
        for place, uids in enumerate(self._slices):
            texts = self._texts_of(place)
            left = known.get(place, range(len(uids)))
            for word in wanted:
                (part, *more), *ways = word
                if more or ways:
                    left = [one for one in left if has(texts[one], word)]
                else:
                    left = [one for one in left if part in texts[one]]
            now[place] = left
            yield [uids[one] for one in left if among is None or uids[one] in among]

    def read_on(self) -> bool:
        """Reads the texts of a slice before they are wanted; False if all are there."""
        place = next((place for place, texts in enumerate(self._texts) if texts is None), None)
        if place is not None:
            self._texts_of(place)
        return place is not None

    def _texts_of(self, place: int) -> list[str]:
        texts = self._texts[place]
        if texts is None:
            with self._book.reading() as connection:
                texts = self._texts[place] = folded_words(connection, self._slices[place])
        return texts


def _is_part(before: Wanted, word: Wanted) -> bool:
    """Whether what has the word, which stands in one way, has what was looked for before."""
    return any(all(part in word[0][0] for part in way) for way in before)
