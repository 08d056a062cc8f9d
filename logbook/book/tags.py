"""Tags of swatches that are free, following on from those there are."""

import itertools
import sqlite3
from collections.abc import Collection, Iterator

_LONGEST_NUMBER = 9  # of digits in a tag; what is longer, as a barcode, is not counted on from


def next_tag(connection: sqlite3.Connection, like: str = "") -> str:
    """A free tag to offer: the first part of ``like`` (or S) with the next number, as ``AB-04`` after ``AB-03``."""
    stem = _stem(like)
    (last,) = connection.execute(
        """SELECT max(CAST(substr(tag, :from) AS INTEGER)) FROM swatch WHERE substr(tag, 1, :from - 1) = :stem || '-'
        AND substr(tag, :from) GLOB '[0-9]*' AND substr(tag, :from) NOT GLOB '*[^0-9]*' AND length(tag) < :from + :longest""",
        {"stem": stem, "from": len(stem) + 2, "longest": _LONGEST_NUMBER},
    ).fetchone()
    return f"{stem}-{(last or 0) + 1:02d}"


def free_tags(taken: Collection[str], like: str = "") -> Iterator[str]:
    """Tags that are not among ``taken``, one after another, following on from ``like``."""
    stem = _stem(like)
    numbers = [tag[len(stem) + 1 :] for tag in taken if tag.startswith(f"{stem}-")]
    last = max((int(number) for number in numbers if number.isdecimal() and len(number) <= _LONGEST_NUMBER), default=0)
    return (f"{stem}-{number:02d}" for number in itertools.count(last + 1))


def _stem(tag: str) -> str:
    """``AB`` of ``AB-03``."""
    return tag.rstrip("0123456789").rstrip("- ") or "S"
