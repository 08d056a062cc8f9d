"""Two to six logged swatches side by side."""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.swatches import swatch_of_tag
from logbook.craft.gauges.comparison import ComparedField, Difference, compared_fields, gauge_differences
from logbook.craft.swatches.swatch import gauges_of
from logbook.craft.words.numbers import show_percent
from logbook.tasks.find import FoundSwatch


@dataclass(frozen=True, slots=True)
class Comparison:
    """The swatches, every pair of gauges that can be compared, and every field any of them fills in."""

    swatches: tuple[FoundSwatch, ...]
    differences: tuple[Difference, ...]
    fields: tuple[ComparedField, ...]


def compare(book: Logbook, tags: Sequence[str]) -> Comparison:
    """Compares the swatches of these tags. Raises RefusedError for an unknown tag, one twice, or not two to six."""
    with book.reading() as connection:
        found = list({swatch.uid: swatch for swatch in (swatch_of_tag(connection, tag) for tag in tags)}.values())
        assumed = kept_assumptions(connection)
    return Comparison(
        tuple(FoundSwatch(swatch, gauges_of(swatch, assumed)) for swatch in found),
        gauge_differences(found, assumed),
        compared_fields(found),
    )


def difference_sentence(one: Difference) -> str:
    """What to say of two swatches."""
    first, second = one.tags
    what = f"the {one.direction.one} ({one.condition.words})"
    if one.differ is None:
        return f"{first} and {second}: {what} was counted too coarsely in one of them to tell whether they differ."
    if not one.differ:
        return f"{first} and {second}: {what} may be the same."
    size = f"{show_percent(abs(one.ratio - 1))} {one.direction.than(one.ratio)}"
    return f"{first} and {second} differ: {what} is {size} in {first}."
