"""Every field of the log, once: its name, which record it belongs to, how it is read from text and shown as text.

Sheets and forms both go by this table, so that a cell and a form field take and say the same.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Any

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.picture_names import read_pictures
from logbook.craft.swatches.readings import read_readings
from logbook.craft.words.dates import date_words
from logbook.craft.words.hooks import read_hook
from logbook.craft.words.lengths import Units, read_size
from logbook.craft.words.numbers import in_mark, read_positive, read_whole
from logbook.craft.words.terms import Terms
from logbook.craft.words.typed_dates import is_day, iso_date
from logbook.errors import UnreadableError


class Owner(StrEnum):
    """The record a field belongs to."""

    SWATCH = "swatch"
    YARN = "yarn"
    PATTERN = "pattern"
    READINGS = "readings"
    MADE = "made piece"
    TESTER = "tester"


class FieldKind(StrEnum):
    """Text stays text; numbers may be number cells of a workbook."""

    TEXT = "text"
    NUMBER = "number"


@dataclass(frozen=True, slots=True)
class LogField:
    """One field of the log. ``read`` takes stripped, non-empty text and raises UnreadableError; empty text is ``empty``.

    ``expected`` says in a few words what belongs there.
    """

    name: str
    owner: Owner
    attribute: str
    kind: FieldKind
    read: Callable[[str], Any]
    expected: str
    condition: Condition | None = None
    direction: Direction | None = None

    @property
    def empty(self) -> Any:
        """The value of an empty field."""
        if self.owner is Owner.READINGS:
            return ()
        return "" if self.kind is FieldKind.TEXT else None

    def value(self, text: str) -> Any:
        """The value of typed ``text``. Raises UnreadableError."""
        stripped = text.strip()
        return self.read(stripped) if stripped else self.empty

    def shown(self, value: Any) -> str:
        """The text that ``value`` gives back when read again: exact, with the shortest decimals."""
        if self.owner is Owner.READINGS:
            return "; ".join(reading.text for reading in value)
        if value is None:
            return ""
        if self.kind is FieldKind.TEXT:
            return str(value)
        return exact(round(value / 10, 9) if self.in_cm else value)

    def in_form(self, value: Any) -> str:
        """The same as a form has it: a number with the reader's decimal mark, a date as they write it."""
        if self.read is read_date:
            return date_words(self.shown(value))
        return in_mark(self.shown(value)) if self.kind is FieldKind.NUMBER else self.shown(value)

    def typed(self, text: str, units: Units) -> Any:
        """The value of ``text`` in a form, where a length without a unit is in ``units``. Raises UnreadableError."""
        stripped = text.strip()
        if self.read is read_date:
            return self.value(iso_date(stripped, None))
        return (
            read_size(stripped, units, self.expected.removesuffix(" in cm")) if self.in_cm and stripped else self.value(stripped)
        )

    @property
    def in_cm(self) -> bool:
        """Whether the field is written in cm though it is kept in mm."""
        return self.name.endswith(" cm")


def exact(value: float) -> str:
    """The shortest decimal that reads back as ``value``, never with an exponent: ``4.5``, ``50``, ``0.00001``."""
    return str(int(value)) if float(value).is_integer() else format(Decimal(repr(float(value))), "f")


_NOT_KEPT = re.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f\\ud800-\\udfff\\ufffe\\uffff]")


def clean_text(text: str) -> str:
    """``text`` with LF line ends. Raises UnreadableError for characters no record, sheet or file can hold, naming them."""
    unified = text.replace("\r\n", "\n").replace("\r", "\n")
    if found := _NOT_KEPT.search(unified):
        raise UnreadableError(f"The text holds the character U+{ord(found.group()):04X}, which can't be kept: delete it.")
    return unified


_LONGEST_TEXT = 32_767


def read_text(text: str) -> str:
    """Any text, with LF line ends. Raises UnreadableError for what no record, sheet or file can hold, naming it."""
    if len(text) > _LONGEST_TEXT:
        raise UnreadableError(f"The text is {len(text)} characters long: the most is {_LONGEST_TEXT}.")
    return clean_text(text)


def one_of(*words: str) -> Callable[[str], str]:
    """A reader of one of these words, capitals or not."""

    def read(text: str) -> str:
        found = next((word for word in words if word.casefold() == text.casefold()), None)
        if found is None:
            raise UnreadableError(f"“{text[:40]}” is neither {' nor '.join(words)}: type one of them.")
        return found

    return read


_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})\Z", re.ASCII)


def read_date(text: str) -> str:
    """An ISO date of the calendar, ``2026-05-31``. Raises UnreadableError otherwise."""
    found = _DATE.match(text)
    if found and is_day(*(int(part) for part in found.groups())):
        return text
    raise UnreadableError(f"“{text[:40]}” is not a date: type year, month and day, like 2026-05-31.")


def positive(what: str, most: float) -> Callable[[str], float]:
    """A reader of numbers above 0."""
    return lambda text: read_positive(text, what, most)


_YARD_M = 0.9144


def _ball_metres(text: str) -> float:
    """``190``, ``190 m`` or ``208 yd`` in metres."""
    found = re.fullmatch(r"(.*?)\s*(m|met(?:re|er)s?|yds?\.?|yards?)", text, re.IGNORECASE)
    number = read_positive(found[1] if found else text, "the metres of a ball", 1_000_000)
    return round(number * _YARD_M, 3) if found and found[2].lower().startswith("y") else number


def whole(what: str, least: int, most: int) -> Callable[[str], int]:
    """A reader of whole numbers."""
    return lambda text: read_whole(text, what, least, most)


def cm_in_mm(text: str) -> float:
    """A number of cm, in mm."""
    return read_positive(text, "a width in cm", 1000) * 10


def size_in_cm(text: str) -> float:
    """A length in mm, which is in cm where it has no unit."""
    return read_size(text, Units.CM, "a length")


_COLUMN_WORDS = {
    Condition.WORKED: "as worked",
    Condition.WASHED: "washed",
    Condition.PINNED: "pinned",
    Condition.SIDEWAYS: "pulled sideways",
    Condition.LENGTHWISE: "pulled lengthwise",
    Condition.HUNG: "hung",
}


def _readings_field(condition: Condition, direction: Direction) -> LogField:
    example = "4 repeats = 15.1 cm" if direction is Direction.STITCHES else "22 rows = 15 cm"
    return LogField(
        f"{direction} {_COLUMN_WORDS[condition]}",
        Owner.READINGS,
        "readings",
        FieldKind.TEXT,
        lambda text: read_readings(clean_text(text), direction),
        f"readings of {direction}, like “{example}”",
        condition,
        direction,
    )


_S, _Y, _P = Owner.SWATCH, Owner.YARN, Owner.PATTERN
_T, _N = FieldKind.TEXT, FieldKind.NUMBER

FIELDS: tuple[LogField, ...] = (
    LogField("uid", _S, "uid", _T, read_text, "the swatch's own id"),
    LogField("tag", _S, "tag", _T, read_text, "a short label"),
    LogField("date", _S, "date", _T, read_date, "a date like 2026-05-31"),
    LogField("yarn", _Y, "name", _T, read_text, "the yarn's name"),
    LogField("fibre", _Y, "fibre", _T, read_text, "what it is spun of"),
    LogField("yarn class", _Y, "yarn_class", _N, whole("a yarn class", 0, 7), "a whole number from 0 to 7"),
    LogField("ball grams", _Y, "ball_grams", _N, positive("the grams of a ball", 100_000), "a number above 0"),
    LogField("ball metres", _Y, "ball_metres", _N, _ball_metres, "metres, or yards like 208 yd"),
    LogField("colour", _S, "colour", _T, read_text, "text"),
    LogField("dye lot", _S, "dye_lot", _T, read_text, "text"),
    LogField("strands", _S, "strands", _N, whole("a number of strands", 1, 99), "a whole number from 1"),
    LogField("hook mm", _S, "hook_mm", _N, read_hook, "a hook in mm, like 4.5"),
    LogField("hook note", _S, "hook_note", _T, read_text, "text"),
    LogField("foundation hook mm", _S, "foundation_hook_mm", _N, read_hook, "a hook in mm, like 5"),
    LogField("stitch pattern", _P, "name", _T, read_text, "the stitch pattern's name"),
    LogField("multiple", _P, "multiple", _N, whole("a multiple", 1, 10_000), "a whole number from 1"),
    LogField("plus", _P, "plus", _N, whole("a plus", 0, 10_000), "a whole number from 0"),
    LogField("extra chains", _P, "extra_chains", _N, whole("a number of extra chains", 0, 1000), "a whole number from 0"),
    LogField("first stitch in chain", _P, "first_stitch", _N, whole("a chain", 1, 1000), "a whole number from 1"),
    LogField("skipped chains cover", _P, "skip_cover", _N, whole("a count", 0, 1000), "0 (nothing), 1 (a stitch) or more"),
    LogField("set-up rows", _P, "set_up_rows", _N, whole("a number of rows", 0, 10_000), "a whole number from 0"),
    LogField("rows in repeat", _P, "rows_in_repeat", _N, whole("a number of rows", 1, 10_000), "a whole number from 1"),
    LogField("closing rows", _P, "closing_rows", _N, whole("a number of rows", 0, 10_000), "a whole number from 0"),
    LogField("terms", _P, "terms", _T, one_of(Terms.US, Terms.UK), "US or UK"),
    LogField("worked", _S, "worked", _T, one_of("flat", "round"), "flat or round"),
    LogField("worked by", _S, "worked_by", _T, read_text, "text"),
    LogField("way of washing", _S, "way_of_washing", _T, read_text, "text"),
    LogField("swatch grams", _S, "swatch_grams", _N, positive("a weight in grams", 100_000), "a number above 0"),
    LogField("swatch stitches", _S, "swatch_stitches", _N, positive("a number of stitches", 100_000), "a number above 0"),
    LogField("swatch rows", _S, "swatch_rows", _N, positive("a number of rows", 100_000), "a number above 0"),
    LogField("notes", _S, "notes", _T, read_text, "text"),
    *(_readings_field(condition, direction) for condition in Condition for direction in Direction),
    LogField("hung grams", _S, "hung_grams", _N, positive("a weight in grams", 100_000), "a number above 0"),
    LogField("hung clip cm", _S, "hung_clip_mm", _N, cm_in_mm, "a width in cm"),
    LogField("half-repeat plus", _P, "half_plus", _N, whole("a plus", 0, 10_000), "a whole number from 0"),
    LogField("written rows", _P, "rows_text", _T, read_text, "the rows as they are written"),
    LogField("minutes", _S, "minutes", _N, positive("a time in minutes", 100_000), "a number above 0"),
    LogField("ball price", _Y, "ball_price", _N, positive("the price of a ball", 1_000_000), "a number above 0"),
    LogField("currency", _Y, "currency", _T, read_text, "what the price is in, like EUR"),
    LogField("pictures", _S, "pictures", _T, read_pictures, "names of pictures, as an export writes them"),
)  # fmt: skip
