"""A written pattern as parts: what text, HTML and the window show alike."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Units
from logbook.craft.words.printed_sizes import alike, printed_length, sized


@dataclass(frozen=True, slots=True)
class PatternTable:
    """A table: what its columns are called, and its rows."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Part:
    """One part: its heading and what stands under it. ``drawing``: the piece that is drawn there ("": none); ``rows``: the stitch
    pattern whose rows stand there, and are charted below.
    """

    heading: str
    blocks: tuple[str | PatternTable, ...]
    drawing: str = ""
    rows: StitchPattern | None = None


def lengths(mm: Iterable[float], *, exact: bool = False) -> str:
    """``42.5 (46.5, 50.5) cm / 16 3/4 (18 1/4, 20) in``; ``exact``: to 0.01 of a unit, for proofreading."""
    every = tuple(mm)
    if exact:
        return " / ".join(f"{sized(f'{one / per:.3f}' for one in every)} {unit}" for unit, per in (("cm", 10.0), ("in", 25.4)))
    return " / ".join(f"{alike(printed_length(one, units) for one in every)} {units.value}" for units in Units)


def plain_text(title: str, parts: Sequence[Part]) -> str:
    """All parts as plain text, each under its heading."""
    said = ["\n".join([part.heading, *part_lines(part)] if part.heading else part_lines(part)) for part in parts]
    return "\n\n".join([title, *said] if title else said) + "\n"


def part_lines(part: Part) -> list[str]:
    """The lines of a part without its heading, its tables in columns."""
    return [line for block in part.blocks for line in ([block] if isinstance(block, str) else _table_lines(block))]


def _table_lines(table: PatternTable) -> list[str]:
    every = [table.headings, *table.rows]
    widths = [max(len(row[column]) for row in every) for column in range(len(table.headings))]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in every]
