"""Two to six swatches side by side: every field, what differs, and whether their gauges really do."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from logbook.craft.gauges.comparison import Difference
from logbook.craft.gauges.over_length import number_over, over_length
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.words.lengths import Units, show_small
from logbook.craft.words.numbers import show_percent
from logbook.tasks.compare import Comparison, difference_sentence
from logbook.tasks.find import FoundSwatch

DIFFERS, SAME, OPEN, NOTHING = "≠", "≈", "?", "–"
LEGEND = f"{DIFFERS} differs   {SAME} may be the same   {OPEN} can't tell   {NOTHING} nothing logged"


@dataclass(frozen=True, slots=True)
class ComparedLine:
    """One line of the table: the mark, what is compared, and each swatch's value, ``NOTHING`` where it has none."""

    mark: str
    name: str
    values: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ComparedSwatches:
    """The tags as headings, the lines, gauges first, and what to say of the gauges."""

    tags: tuple[str, ...]
    lines: tuple[ComparedLine, ...]
    sentences: tuple[str, ...]


def side_by_side(comparison: Comparison, units: Units) -> ComparedSwatches:
    """The comparison as it is shown."""
    tags = tuple(one.swatch.tag for one in comparison.swatches)
    fields = (
        ComparedLine(DIFFERS if field.differs else "", field.name, _shown(_one_line(value) for value in field.values))
        for field in comparison.fields
        if field.name != "tag"
    )
    sentences = tuple(_sentences(comparison.differences)) or (
        "No two of these were measured in the same state and direction, so their gauges can't be compared.",
    )
    return ComparedSwatches(tags, (*_gauge_lines(comparison, units), *fields), sentences)


def _gauge_lines(comparison: Comparison, units: Units) -> Iterator[ComparedLine]:
    for condition in Condition:
        for direction in Direction:
            values = tuple(_gauge(one, condition, direction, units) for one in comparison.swatches)
            if any(values):
                said = [d.differ for d in comparison.differences if (d.condition, d.direction) == (condition, direction)]
                name = f"{direction.short} in {over_length(units)[1]}, {condition.words}"
                yield ComparedLine(_mark(said), name, _shown(values))
        repeats = tuple(_repeat(one, condition, units) for one in comparison.swatches)
        if any(repeats):
            yield ComparedLine("", f"repeat, {condition.words}", _shown(repeats))


def _gauge(found: FoundSwatch, condition: Condition, direction: Direction, units: Units) -> str:
    gauge = found.gauges.get((condition, direction))
    if gauge is None:
        return ""
    sure = f" ± {show_percent(gauge.give_or_take)}" if gauge.give_or_take is not None else ", too coarse to be sure"
    return f"{number_over(gauge.pitch_mm, units)}{sure}"


def _repeat(found: FoundSwatch, condition: Condition, units: Units) -> str:
    gauge, multiple = found.gauges.get((condition, Direction.STITCHES)), found.swatch.per_repeat(Direction.STITCHES)
    return show_small(gauge.pitch_mm * multiple, units) if gauge and multiple is not None and multiple > 1 else ""


def _mark(differ: Sequence[bool | None]) -> str:
    if True in differ:
        return DIFFERS
    return "" if not differ else OPEN if None in differ else SAME


def _sentences(differences: Sequence[Difference]) -> Iterator[str]:
    """Each pair that really differs, then in one sentence the rest of that state and direction."""
    for (condition, direction), group in groupby(differences, key=lambda one: (one.condition, one.direction)):
        pairs = list(group)
        if len(pairs) == 1:
            yield difference_sentence(pairs[0])
            continue
        yield from (difference_sentence(pair) for pair in pairs if pair.differ)
        yield from (difference_sentence(pair) for pair in pairs if pair.differ is None)
        what = f"the {direction.one} ({condition.words})"
        same = [" and ".join(pair.tags) for pair in pairs if pair.differ is False]
        if len(same) == len(pairs):
            yield f"{what[0].upper()}{what[1:]}: no two differ for sure; all may be the same."
        elif same:
            yield f"{what[0].upper()}{what[1:]} may be the same in {'; '.join(same)}."


def _shown(values: Iterable[str]) -> tuple[str, ...]:
    return tuple(value or NOTHING for value in values)


def _one_line(value: str) -> str:
    return " / ".join(value.splitlines())
