"""A swatch taken apart into the fields of the log, and put together from them."""

from collections.abc import Iterator, Mapping
from typing import Any

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.fields import FIELDS, LogField, Owner
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn


def value_of(swatch: Swatch, field: LogField) -> Any:
    """The value of one field; a swatch without a yarn or pattern has their fields empty."""
    if field.condition is not None and field.direction is not None:
        return swatch.readings_of(field.condition, field.direction)
    return _own_value(swatch, field)


def values_of(swatch: Swatch) -> Iterator[Any]:
    """The values of all ``FIELDS``, in their order and in one pass over the readings."""
    taken: dict[tuple[Condition, Direction], tuple[Reading, ...]] = {}
    for one in swatch.readings:
        key = one.condition, one.direction
        taken[key] = (*taken.get(key, ()), one.reading)
    for field, key_of_readings in _READINGS_OF:
        yield _own_value(swatch, field) if key_of_readings is None else taken.get(key_of_readings, ())


_READINGS_OF = tuple(
    (field, (field.condition, field.direction) if field.condition is not None and field.direction is not None else None)
    for field in FIELDS
)


def _own_value(swatch: Swatch, field: LogField) -> Any:
    record = swatch.yarn if field.owner is Owner.YARN else swatch.pattern if field.owner is Owner.PATTERN else swatch
    return field.empty if record is None else getattr(record, field.attribute)


def swatch_of(values: Mapping[LogField, Any], taken: tuple[TakenReading, ...] | None = None) -> Swatch:
    """The swatch of values by field; fields not there stay empty. A yarn or pattern without a name is none.

    ``taken``: the readings in them, where those are made already.
    """
    yarn = _attributes(values, Owner.YARN)
    pattern = _attributes(values, Owner.PATTERN)
    if taken is None:
        taken = tuple(
            TakenReading(field.condition, reading)
            for field, value in values.items()
            if field.condition is not None
            for reading in value
        )
    return Swatch(
        **_attributes(values, Owner.SWATCH),
        yarn=Yarn(**yarn) if yarn.get("name") else None,
        pattern=StitchPattern(**pattern) if pattern.get("name") else None,
        readings=taken,
    )


def _attributes(values: Mapping[LogField, Any], owner: Owner) -> dict[str, Any]:
    return {field.attribute: value for field, value in values.items() if field.owner is owner}
