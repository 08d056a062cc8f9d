"""Text in a cell of a workbook: what can stand there, as a string and nothing else, and how many lines it takes."""

import re
from functools import lru_cache

from logbook.craft.swatches.fields import clean_text
from logbook.craft.words.numbers import grouped
from logbook.errors import UnreadableError
from logbook.sheets.limits import MOST_CELL_CHARACTERS

_PLAIN = re.compile("[^\\x00-\\x08\\x0b-\\x1f\\x7f_\\ud800-\\uffff]{,8000}\\Z")
"""Texts that are held as they are, which are nearly all: found quickly."""
_ESCAPE_LIKE = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")


def holdable(text: str) -> str:
    """``text`` as it goes into a string cell. Raises UnreadableError for what no cell can hold."""
    if _PLAIN.match(text):
        return text
    plain = clean_text(text)
    length = len(plain.encode("utf-16-le")) // 2
    if length > MOST_CELL_CHARACTERS:
        raise UnreadableError(
            f"The text is {grouped(length)} characters long, and a cell holds {grouped(MOST_CELL_CHARACTERS)}: shorten it, "
            "or export CSV."
        )
    return _ESCAPE_LIKE.sub("_x005F_", plain)


@lru_cache(maxsize=2_000)
def lines_of(text: str, width: float) -> int:
    """How many lines a text takes, wrapped between words into so many characters."""
    lines = 0
    for paragraph in text.split("\n"):
        lines, left = lines + 1, width
        for word in paragraph.split(" "):
            if len(word) > left and left < width:
                lines, left = lines + 1, width
            lines += int(max(len(word) - 1, 0) // max(width, 1))
            left -= len(word) + 1
    return lines
