"""One word of a row, and the sorts of words."""

from dataclasses import dataclass

NUMBER, ORDINAL, STITCH, TOGETHER, MANY, OTHER = "number", "ordinal", "stitch", "together", "many", "word"


@dataclass(frozen=True, slots=True)
class Word:
    """One word: ``text`` is its common form, ``start`` and ``end`` where it stands. ``value``: of a number, an ordinal, or
    ``sc2tog``. ``sizes``: of a number that stands in all sizes (``10 (12, 14)``), what it is in each; ``value`` then is that of
    the size that is read.
    """

    text: str
    start: int
    end: int
    sort: str = OTHER
    value: int = 0
    sizes: tuple[int, ...] = ()
