"""Numbers as people type them: ``12.5``, ``12,5``, ``18 1/4``, ``18¼``, ``−5``."""

import math
import re
from fractions import Fraction

from logbook.craft.words.notation import POINT, notation
from logbook.errors import UnreadableError

_VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip

NUMBER = r"[+\-−]?\s*(?:\d+[\s-]+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d*\s*[¼½¾⅛⅜⅝⅞⅓⅔]|\d+[.,]\d+|[.,]\d+|\d+[.,]?)"
"""A pattern (without anchors) for one typed number."""

NO_BREAK_SPACE = "\u00a0"
_WHOLE = re.compile(rf"\s*{NUMBER}\s*\Z")
_MIXED = re.compile(r"(?:(\d+)[\s-]+)?(\d+)\s*/\s*(\d+)\Z")
_LONGEST = 30


def read_number(text: str, what: str = "a number") -> Fraction:
    """The exact value of a typed number.

    ``what`` names the field in the error. Decimal comma and point, fractions, mixed numbers and both minus signs are read.
    Raises UnreadableError if ``text`` is not one such number.
    """
    if not _WHOLE.match(text) or len(text.strip()) > _LONGEST:
        raise UnreadableError(f"“{_shortened(text)}” is not {what}: type a number, for example {in_mark('12.5')} or 18 1/4.")
    plain = text.strip().replace("−", "-")
    sign = -1 if plain.startswith("-") else 1
    plain = plain.lstrip("+-").strip()
    for symbol, fraction in _VULGAR.items():
        plain = plain.replace(symbol, " " + fraction).strip()
    mixed = _MIXED.match(plain)
    if mixed is None:
        return sign * Fraction(plain.replace(",", ".").rstrip("."))
    whole, over, under = (int(part or 0) for part in mixed.groups())
    if under == 0:
        raise UnreadableError(f"“{text.strip()}” divides by zero: type a number, for example {in_mark('12.5')} or 18 1/4.")
    return sign * (whole + Fraction(over, under))


def read_whole(text: str, what: str, least: int = 0, most: int = 100_000) -> int:
    """A typed whole number from ``least`` to ``most``; raises UnreadableError, naming ``what``, otherwise."""
    try:
        value = read_number(text)
    except UnreadableError:
        value = Fraction(1, 2)
    if value.denominator != 1 or not least <= value <= most:
        raise UnreadableError(f"“{_shortened(text)}” is not {what}: type a whole number from {least} to {most}.")
    return int(value)


def read_positive(text: str, what: str, most: float = 1_000_000) -> float:
    """A typed number above nought and at most ``most``; raises UnreadableError, naming ``what``, otherwise."""
    value = read_number(text, what)
    if not 0 < value <= most:
        raise UnreadableError(f"“{text.strip()}” is not {what}: type a number above 0 and at most {show_number(most)}.")
    return float(value)


def half_up(value: float) -> int:
    """The nearest whole number, halves up, after rounding to nine decimals (so that 2.4999999999 is a half)."""
    return math.floor(round(value, 9) + 0.5)


def show_number(value: float, decimals: int = 2) -> str:
    """A plain decimal without trailing noughts: 2.5 → ``2.5``, 4.0 → ``4``."""
    shown = _signed(f"{value:.{decimals}f}")
    return in_mark(shown.rstrip("0").rstrip(".") if "." in shown else shown)


def fixed(value: float, decimals: int) -> str:
    """A number that always has so many decimals: ``4.0``, ``−0.5``; what rounds to nought has no sign."""
    return in_mark(_signed(f"{value:.{decimals}f}"))


def grouped(value: float, decimals: int = 0) -> str:
    """The same with its thousands apart: ``12,300``, ``1,234.50``; a comma being the decimal mark, by a no-break space."""
    shown = _signed(f"{value:,.{decimals}f}")
    return shown if notation().mark == POINT else in_mark(shown.replace(",", NO_BREAK_SPACE))


def in_mark(shown: str) -> str:
    """A number that is written with a point, with the reader's decimal mark: ``4.5`` → ``4,5``."""
    return shown.replace(POINT, notation().mark)


def show_percent(share: float) -> str:
    """A share to a tenth of a per cent below 10 %, whole above: ``2.5 %``, ``5 %``, ``13 %``."""
    value = share * 100
    return f"{show_number(value, 0 if abs(value) >= 9.95 else 1)} %"


def show_change(share: float) -> str:
    """A change with its sign: ``+2.5 %``, ``−13 %``, ``0 %``."""
    shown = show_percent(share)
    return shown if shown.startswith("−") or shown == "0 %" else f"+{shown}"


def _signed(shown: str) -> str:
    return shown.replace("-", "−") if shown.strip("-0.") else shown.lstrip("-")


def _shortened(text: str) -> str:
    plain = " ".join(text.split())
    return plain if len(plain) <= _LONGEST else plain[:_LONGEST] + "…"
