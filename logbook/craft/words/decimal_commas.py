"""Decimal commas in a running text, told from the commas that part numbers: ``20,5 (21,5; 23) cm`` and ``62 (68,74) sts``."""

import re

_N = r"\d+(?:,\d{1,2})?(?!\d|,\d)"
_LENGTH = r"(?:cm|mm|inch(?:es)?|”|″|\"|in\b(?=\.?\s*(?:[.,;:/)\]]|\Z|\n)))"
_UNIT = rf"(?:{_LENGTH}|(?:g|grams?|kg|m|met(?:re|er)s?|yds?|yards?|balls?|skeins?|hanks?|repeats?|reps?|%|hours?)\b)"
_TO = r"\s*(?:[;/x×–—-]|,\s|\b(?:to|by|and|or)\b)\s*"
_MEASURES = re.compile(rf"(?<![\w.,]){_N}(?:(?:\s?{_LENGTH})?{_TO}{_N}){{0,9}}\s*{_UNIT}", re.IGNORECASE)
_ENTRY = rf"(?:{_N}|[–—])(?:\s?(?:cm|mm|in|”|″|\"|g|m|yds?))?"
_GROUP = rf"\s*[(\[]\s*{_ENTRY}(?:\s*[,;:/–—-]\s*{_ENTRY})*\s*[)\]]"
_LIST = re.compile(rf"(?<![\w.,/]){_ENTRY}(?:{_GROUP})+")
_COMMA = re.compile(r"(?<=\d),(?=\d)")


def with_points(text: str, sizes: int = 0) -> str:
    """``text`` with a point in place of every decimal comma; all else stands where it stood. ``sizes``: how many it is written
    for, where that is known.

    A comma between two figures is decimal in a measure (``20,5 cm``), and in a list of sizes that has an entry for each only
    when it is read so, or that is parted by semicolons. Elsewhere it parts: ``62,68,80 sts``.

    >>> with_points("20,5 (21,5; 23) cm and 62 (68,74) sts", 3)
    '20.5 (21.5; 23) cm and 62 (68,74) sts'
    """
    if not _COMMA.search(text):
        return text

    def of_list(found: re.Match[str]) -> str:
        return _pointed(found) if _is_decimal(found[0], sizes) else found[0]

    return _MEASURES.sub(_pointed, _LIST.sub(of_list, text))


def _pointed(found: re.Match[str]) -> str:
    return _COMMA.sub(".", found[0])


def _is_decimal(written: str, sizes: int) -> bool:
    """Whether the commas between figures in a list of sizes stand before decimals."""
    entries = len(re.findall(_N, written))
    parted = len(re.findall(r"\d+", written))
    if ";" in written:
        return True
    return entries == sizes and parted != sizes
