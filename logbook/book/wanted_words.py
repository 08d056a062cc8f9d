"""What is looked for, taken apart into words, each with the ways in which it may stand in a text."""

import re
import unicodedata
from collections.abc import Iterator, Sequence

from logbook.craft.words.notation import notation
from logbook.craft.words.sought_dates import sought_dates

Way = tuple[str, ...]
"""Parts that all stand in a folded text."""
Wanted = tuple[Way, ...]
"""The ways of a word, of which one is enough."""
_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")


def folded(text: str) -> str:
    """``text`` without case and accents, so that ``etoile`` finds ``Étoile``."""
    if text.isascii():
        return text.casefold()
    decomposed = unicodedata.normalize("NFKD", text).casefold()
    return "".join(c for c in decomposed if not unicodedata.combining(c))


def wanted_words(words: str) -> list[Wanted]:
    """The words, folded, each once: ``4,5`` as ``4.5`` too, which is how numbers are kept, and a date (``21 Sep 2024``, ``Sep
    2024``) also as dates are kept.
    """
    text = folded(words)
    return list(dict.fromkeys(_taken_apart(text)))


def _taken_apart(text: str) -> Iterator[Wanted]:
    at = 0
    for start, end, ways in sought_dates(text, notation().month_first):
        yield from map(_spelled, text[at:start].split())
        yield tuple(dict.fromkeys((tuple(text[start:end].split()), *ways)))
        at = end
    yield from map(_spelled, text[at:].split())


def _spelled(word: str) -> Wanted:
    pointed = _DECIMAL_COMMA.sub(".", word)
    return ((word,),) if pointed == word else ((word,), (pointed,))


def has(text: str, wanted: Wanted) -> bool:
    """Whether a word that is looked for stands in the folded text, in one of its ways."""
    return any(all(part in text for part in way) for way in wanted)


def has_all(text: str, words: Sequence[Wanted]) -> bool:
    """Whether every one of the words does."""
    return all(has(text, wanted) for wanted in words)
