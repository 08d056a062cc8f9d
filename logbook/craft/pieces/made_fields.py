"""Every field of a made piece, once: sheets and form go by this table, as those of the log do by theirs."""

import re
from collections.abc import Callable
from typing import Any

from logbook.craft.pieces.wear import read_worn, worn_text
from logbook.craft.swatches.fields import (
    FieldKind,
    LogField,
    Owner,
    clean_text,
    exact,
    positive,
    read_date,
    read_text,
    size_in_cm,
    whole,
)
from logbook.craft.swatches.picture_names import read_pictures
from logbook.craft.swatches.readings import Reading, read_readings
from logbook.craft.words.hooks import read_hook, show_hook
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import NUMBER, in_mark, read_number
from logbook.errors import UnreadableError

_HOURS = re.compile(
    rf"(?P<h>{NUMBER})\s*(?:hours?|hrs?|h)?\.?\s*(?:(?<=[a-z.\s])(?P<m>{NUMBER})\s*(?:min(?:ute)?s?|m)?\.?)?\Z", re.IGNORECASE
)
_CLOCK = re.compile(r"(\d{1,5}):([0-5]\d)(?:\s*h)?\Z")
_MINUTES = re.compile(rf"({NUMBER})\s*(?:min|minutes?)\.?\Z", re.IGNORECASE)
_LONGEST_MINUTES = 6_000_000.0


def read_hours(text: str) -> float:
    """Minutes of a time as typed: ``12.5``, ``12:30``, ``12 h 30 min`` are hours, ``90 min`` minutes.

    Raises UnreadableError otherwise.
    """
    plain, minutes = text.strip(), 0.0
    if clock := _CLOCK.match(plain):
        minutes = int(clock[1]) * 60.0 + int(clock[2])
    elif alone := _MINUTES.match(plain):
        minutes = float(read_number(alone[1], "a time"))
    elif hours := _HOURS.match(plain):
        minutes = float(read_number(hours["h"], "a time") * 60 + (read_number(hours["m"], "a time") if hours["m"] else 0))
    if not 0 < minutes <= _LONGEST_MINUTES:
        like = f"hours like {in_mark('12.5')} or 12:30, or minutes like 90 min"
        raise UnreadableError(f"“{plain[:40]}” is not a time: type {like}.")
    return minutes


def show_hours(minutes: float) -> str:
    """The text that reads back as the same minutes: ``12:30``, or ``90.5 min``."""
    if float(minutes).is_integer():
        return f"{int(minutes) // 60}:{int(minutes) % 60:02d}"
    return f"{in_mark(exact(minutes))} min"


def readings_text(readings: tuple[Reading, ...]) -> str:
    """As a cell of the log has readings."""
    return "; ".join(reading.text for reading in readings)


def kept_readings(text: str, units: Units = Units.CM) -> str:
    """Readings of stitches and rows as a made piece or a tester keeps them. Raises UnreadableError as ``read_readings``."""
    return readings_text(read_readings(clean_text(text).replace("\n", "; "), units=units))


def _grams(text: str) -> float:
    return positive("a weight in grams", 1_000_000)(re.sub(r"\s*g(rams?)?\.?\Z", "", text.strip(), flags=re.IGNORECASE))


_T, _N, _LENGTH = FieldKind.TEXT, FieldKind.NUMBER, "a length in cm"


def _field(name: str, attribute: str, kind: FieldKind, read: Callable[[str], Any], expected: str = "text") -> LogField:
    return LogField(name, Owner.MADE, attribute, kind, read, expected)


def _lengths(state: str, attribute: str) -> tuple[LogField, ...]:
    return tuple(_field(f"{state} {what} cm", f"{attribute}_{what}_mm", _N, size_in_cm, _LENGTH) for what in ("width", "length"))


MADE_FIELDS: tuple[LogField, ...] = (
    _field("name", "name", _T, read_text, "a name"),
    _field("size", "size", _T, read_text),
    _field("date", "date", _T, read_date, "a date like 2026-05-31"),
    _field("worked by", "worked_by", _T, read_text),
    _field("yarn used", "yarn_used", _T, read_text),
    _field("lot used", "lot_used", _T, read_text),
    _field("chain", "chain", _N, whole("a count", 1, 100_000), "a whole number from 1"),
    _field("rows", "rows", _N, whole("a count", 1, 100_000), "a whole number from 1"),
    _field("hook", "hook_mm", _N, read_hook, "a hook in mm, like 4.5"),
    *_lengths("predicted", "predicted"),
    _field("predicted grams", "predicted_grams", _N, _grams, "a weight in grams"),
    _field("predicted hours", "predicted_minutes", _N, read_hours, "hours like 12:30"),
    _field("predicted growth cm", "predicted_growth_mm", _N, size_in_cm, _LENGTH),
    *_lengths("worked", "worked"),
    *_lengths("washed", "washed"),
    _field("grams used", "grams_used", _N, _grams, "a weight in grams"),
    _field("hours", "minutes", _N, read_hours, "hours like 12:30"),
    _field("gauge as worked", "worked_readings", _T, kept_readings, "readings, like “4 repeats = 15.1 cm; 22 rows = 15 cm”"),
    _field("gauge washed", "washed_readings", _T, kept_readings, "readings, like “4 repeats = 15.1 cm; 22 rows = 15 cm”"),
    _field("changed", "changed", _T, read_text),
    _field("fits", "fits", _T, read_text),
    _field("wear", "wear", _T, lambda text: worn_text(read_worn(text)), "days with what it measured"),
    _field("notes", "notes", _T, read_text),
    _field("pictures", "pictures", _T, read_pictures, "names of pictures"),
)  # fmt: skip


def typed_value(field: LogField, text: str, units: Units) -> Any:
    """What a form's text of a field comes to, where lengths without a unit are in ``units``. Raises UnreadableError."""
    stripped = text.strip()
    if stripped and field.attribute == "wear":
        return worn_text(read_worn(stripped, units))
    if stripped and field.attribute.endswith("readings"):
        return kept_readings(stripped, units)
    return field.typed(text, units)


def shown_text(field: LogField, value: Any) -> str:
    """A value as a form shows it, but for lengths; the text reads back as the value."""
    if value is None or value == "":
        return ""
    if field.attribute.endswith("minutes"):
        return show_hours(value)
    return show_hook(value) if field.attribute == "hook_mm" else field.in_form(value)
