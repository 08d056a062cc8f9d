"""A swatch as the texts of its form, and the swatch that typed texts say.

Every field of the log is a text by its name, the readings are one text for each condition, a reading a line.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, NamedTuple

from logbook.craft.gauges.over_length import over_length
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.fields import FIELDS, LogField, Owner, clean_text
from logbook.craft.swatches.readings import Counted, Reading, read_readings
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.swatch_fields import swatch_of, value_of
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import fixed
from logbook.errors import LogbookError, UnreadableError
from logbook.pages.swatches.chain_text import CHAIN, chain_text_of, problem
from logbook.pages.text_reader import TextReader

Texts = Mapping[str, str]
_ELSEWHERE = ("uid", "half-repeat plus", "written rows")
"""The page of stitch patterns has the last two."""
PLAIN = {field.name: field for field in FIELDS if field.owner is not Owner.READINGS and field.name not in _ELSEWHERE}
"""The fields of the form that hold one value, by name."""


def readings_key(condition: Condition) -> str:
    """The name of the text that holds the readings of a condition."""
    return f"readings {condition.value}"


READINGS = {readings_key(condition): condition for condition in Condition}
EMPTY: Texts = dict.fromkeys((*PLAIN, CHAIN, *READINGS), "")


class ReadingLine(NamedTuple):
    """One line of readings: what could be read of it, or the sentence that says why it could not.

    ``over`` is how many stitches or rows it gives in 10 cm (4 in), ``15.9``, of two readings both, stitches first,
    ``14.0×11.0``; how many repeats, ``2.65``, where it is not known what makes one.
    """

    readings: tuple[Reading, ...] = ()
    error: str = ""
    over: str = ""

    @property
    def direction(self) -> Direction | None:
        """Which way it was measured, if one way alone."""
        ways = {reading.counted.direction for reading in self.readings}
        return ways.pop() if len(ways) == 1 else None


@dataclass(frozen=True, slots=True)
class Typed:
    """The swatch that texts say, without what could not be read; ``errors`` has a sentence for that, by the text's name."""

    swatch: Swatch
    errors: Mapping[str, str]
    lines: Mapping[str, tuple[ReadingLine, ...]]


def texts_of(swatch: Swatch) -> dict[str, str]:
    """The texts that say ``swatch``: read again they give the same."""
    texts = {name: _shown(field, value_of(swatch, field)) for name, field in PLAIN.items()}
    texts[CHAIN] = chain_text_of(swatch.pattern)
    for key, condition in READINGS.items():
        readings = [taken.reading for taken in swatch.readings if taken.condition is condition]
        texts[key] = "\n".join(_line_of(reading) for reading in readings)
    return texts


def read_texts(texts: Texts, uid: str, units: Units) -> Typed:
    """What the texts say; lengths without a unit are in ``units``."""
    reader = TextReader(texts)
    values = {field: reader.value(name, partial(field.typed, units=units), field.empty) for name, field in PLAIN.items()}
    errors = reader.errors
    lines = {key: tuple(_read_line(line, units) for line in texts[key].split("\n")) for key in READINGS}
    first_errors = {key: next((line.error for line in found if line.error), "") for key, found in lines.items()}
    errors |= {key: error for key, error in first_errors.items() if error}
    taken = tuple(
        TakenReading(READINGS[key], reading) for key, found in lines.items() for line in found for reading in line.readings
    )
    swatch = replace(swatch_of(values), uid=uid, readings=taken)
    lines = {key: tuple(_said(line, swatch, units) for line in found) for key, found in lines.items()}
    if swatch.pattern is not None:
        try:
            swatch.pattern.extra()
        except LogbookError as error:
            errors["extra chains"] = str(error)
    if chain_problem := problem(texts):
        errors[CHAIN] = chain_problem
    if swatch.pattern is None and any(texts[name].strip() for name in (CHAIN, "multiple", "plus")):
        errors.setdefault("stitch pattern", "Give the stitch a name, so that its chain is kept with it.")
    return Typed(swatch, errors, lines)


def _shown(field: LogField, value: Any) -> str:
    shown = field.in_form(value)
    return f"{shown} cm" if shown and field.in_cm else shown


def _read_line(text: str, units: Units) -> ReadingLine:
    try:
        return ReadingLine(read_readings(clean_text(text), units=units))
    except UnreadableError as error:
        return ReadingLine(error=str(error))


def _said(line: ReadingLine, swatch: Swatch, units: Units) -> ReadingLine:
    """The line with what it gives."""
    over = []
    for reading in sorted(line.readings, key=lambda one: one.counted.direction is Direction.ROWS):
        per_repeat = swatch.per_repeat(reading.counted.direction) if reading.counted.whole_repeats else 1
        count = over_length(units)[0] / reading.unit_mm * (per_repeat or 1)
        over.append(fixed(count, 1 if per_repeat else 2))
    return line._replace(over="×".join(over))


def _line_of(reading: Reading) -> str:
    """A reading's text. One of row repeats may say "repeats" alone, since it was typed among rows: here it must say which."""
    if reading.counted is Counted.ROW_REPEATS and read_readings(reading.text)[0].counted is Counted.REPEATS:
        return re.sub(r"(?i)(?:(?:pattern|stitch)\s+)?(rep)", r"row \1", reading.text, count=1)
    return reading.text
