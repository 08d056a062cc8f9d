"""Increases and decreases spread evenly, written as rows are written; and the stitches an edging picks up.

d increases over S stitches leave S − d plain ones, d decreases (two stitches worked together) leave S − 2d. The plain ones are
dealt out into parts that differ by one at most: a part before each shaping and, so that no shaping lies on the very edge, one
after the last. On the edge (or in the round, which has none) there is a part after each shaping and none before the first.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from logbook.craft.pieces.spread import spread
from logbook.craft.words.counting import counted, ordinal
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class Run:
    """``times`` × (the shaping, then ``plain`` plain stitches)."""

    times: int
    plain: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapedRow:
    """A row of ``before`` stitches that becomes ``after``: ``first`` plain stitches, then the runs in order.

    ``shaping`` is what one shaping is called (inc, dec), ``stitch`` the plain stitch's abbreviation.
    """

    before: int
    after: int
    first: int
    runs: tuple[Run, ...]
    shaping: str
    stitch: str

    @property
    def text(self) -> str:
        """``(inc, sc in next 5) 3 times, (inc, sc in next 6) twice``."""
        parts = [_plain(self.first, self.stitch)] if self.first else []
        for run in self.runs:
            body = ", ".join(part for part in (self.shaping, _plain(run.plain, self.stitch)) if part)
            parts.append(_times(body, run.times, bracket=run.plain > 0))
        return ", ".join(parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapedEdges:
    """Pairs of shapings, one at each edge, from ``start`` to ``end`` stitches over ``rows`` rows, in the rows ``at`` (from 1)."""

    start: int
    end: int
    rows: int
    at: tuple[int, ...]

    @property
    def text(self) -> str:
        """``increase at both edges in row 4, in every 8th row twice, in every 9th row 7 times, then 4 rows even``."""
        if not self.at:
            return "work even"
        return f"{'increase' if self.end > self.start else 'decrease'} at both edges {rows_text(self.at, self.rows)}"


def rows_text(at: Sequence[int], rows: int) -> str:
    """The rows of spread shapings, in words: ``in row 4, in every 8th row twice, in every 9th row 7 times, then 4 rows even``."""
    shaped = sorted(Counter(at).items())
    if all(times > 1 for _, times in shaped) and len(shaped) == rows:
        every = min(times for _, times in shaped)
        once_more = [row for row, times in shaped if times > every]
        return f"{every} in every row" + (f", and one more {rows_text(once_more, rows)}" if once_more else "")
    if any(times > 1 for _, times in shaped):
        twice = [row for row, times in shaped if times > 1]
        return f"in every row, and once more {rows_text(twice, rows)}" if len(shaped) == rows else _each_row(shaped)
    parts, row = [], 0
    for run in _runs([shaped[0][0], *(later - row for (row, _), (later, _) in pairwise(shaped))]):
        row += run.times * run.plain
        parts.append(f"in row {row}" if run.times == 1 else f"in {_every(run)}")
    even = rows - shaped[-1][0]
    return ", ".join(parts) + (f", then {counted(even, 'row')} even" if even else "")


def _every(run: Run) -> str:
    return f"{'every row' if run.plain == 1 else f'every {ordinal(run.plain)} row'} {_how_often(run.times)}"


def _each_row(shaped: Sequence[tuple[int, int]]) -> str:
    return ", ".join(f"in row {row}" + ("" if times == 1 else f" {_how_often(times)}") for row, times in shaped)


def spread_row(stitches: int, change: int, stitch: str = "sc", *, on_edge: bool = False) -> ShapedRow:
    """A row of ``stitches`` with ``change`` increases (negative: decreases), spread evenly.

    Raises RefusedError if there is no room for so many.
    """
    count = abs(change)
    plain = stitches - (count if change > 0 else 2 * count)
    if stitches < 1 or plain < (0 if on_edge or not count else 2):
        word = "increases" if change > 0 else "decreases"
        raise RefusedError(
            f"{stitches} stitches have no room for {count} {word} off the edges: spread them over more rows, or allow the edges."
            if not on_edge
            else f"{stitches} stitches have no room for {count} {word}: spread them over more rows."
        )
    shaping = "inc" if change > 0 else "dec"
    if not count:
        return ShapedRow(before=stitches, after=stitches, first=stitches, runs=(), shaping=shaping, stitch=stitch)
    if on_edge:
        first, parts = 0, _dealt(plain, count)
    else:
        first, *parts = _dealt_off_edges(plain, count + 1)
    return ShapedRow(before=stitches, after=stitches + change, first=first, runs=_runs(parts), shaping=shaping, stitch=stitch)


def shape_edges(start: int, end: int, rows: int) -> ShapedEdges:
    """Pairs of shapings from ``start`` to ``end`` stitches spread over ``rows`` rows.

    Raises RefusedError if the difference is odd, a count is not above 0, or there are fewer rows than pairs.
    """
    pairs, odd = divmod(abs(end - start), 2)
    if start < 1 or end < 1:
        raise RefusedError("Shaping goes from at least 1 stitch to at least 1 stitch.")
    if odd:
        raise RefusedError(
            f"From {start} to {end} is an odd difference, and pairs need an even one: make it one more or one less."
        )
    if pairs > rows:
        raise RefusedError(f"{pairs} pairs need at least {pairs} rows, not {rows}: take more rows, or shape along a row as well.")
    return ShapedEdges(start=start, end=end, rows=rows, at=spread(pairs, rows))


@dataclass(frozen=True, slots=True, kw_only=True)
class PickUp:
    """``stitches`` picked up along ``ends`` row ends: ``fewer`` in some of them, one more in the others.

    ``first`` row ends with ``fewer``, then the runs: one row end with one more, then ``plain`` row ends with ``fewer``.
    """

    stitches: int
    ends: int
    fewer: int
    first: int
    runs: tuple[Run, ...]

    @property
    def text(self) -> str:
        """``(2 sts in next row end, 1 st in next row end) 30 times``."""
        parts = [self._plain(self.first)] if self.first else []
        more = f"{counted(self.fewer + 1, 'st')} in next row end"
        for run in self.runs:
            body = ", ".join(part for part in (more, self._plain(run.plain)) if part)
            parts.append(_times(body, run.times, bracket=True))
        return ", ".join(parts)

    def _plain(self, ends: int) -> str:
        if not ends:
            return ""
        where = "next row end" if ends == 1 else f"next {ends} row ends"
        if self.fewer == 0:
            return f"pass over {where}"
        return f"{counted(self.fewer, 'st')} in {where}" if ends == 1 else f"{counted(self.fewer, 'st')} in each of {where}"


def pick_up(ends: int, end_mm: float, stitch_mm: float) -> PickUp:
    """How an edging of pitch ``stitch_mm`` picks up along ``ends`` row ends of ``end_mm`` each: the ratio of the two gauges.

    Raises RefusedError if there is nothing to pick up along.
    """
    if ends < 1 or not (end_mm > 0 and stitch_mm > 0):
        raise RefusedError("Picking up needs at least one row end, and both gauges.")
    stitches = max(round(ends * end_mm / stitch_mm), 1)
    fewer, more = divmod(stitches, ends)
    if more == 0:
        return PickUp(stitches=stitches, ends=ends, fewer=fewer, first=ends, runs=())
    first, *parts = _dealt(ends - more, more + 1)
    return PickUp(stitches=stitches, ends=ends, fewer=fewer, first=first, runs=_runs(parts))


def _dealt(total: int, parts: int) -> list[int]:
    """``total`` in ``parts`` parts that differ by one at most, the smaller first."""
    size, larger = divmod(total, parts)
    return [size] * (parts - larger) + [size + 1] * larger


def _dealt_off_edges(total: int, parts: int) -> list[int]:
    """As ``_dealt``, but of at least 2 neither the first nor the last part is 0."""
    dealt = _dealt(total, parts)
    if dealt[0] == 0:  # fewer plain stitches than parts: one of the ones at the end goes to the beginning
        dealt[0], dealt[-2] = 1, 0
    return dealt


def _runs(parts: Sequence[int]) -> tuple[Run, ...]:
    runs: list[Run] = []
    for part in parts:
        if runs and runs[-1].plain == part:
            runs[-1] = Run(runs[-1].times + 1, part)
        else:
            runs.append(Run(1, part))
    return tuple(runs)


def _plain(stitches: int, stitch: str) -> str:
    if not stitches:
        return ""
    return f"{stitch} in next {'st' if stitches == 1 else stitches}"


def _times(body: str, times: int, *, bracket: bool) -> str:
    if times == 1:
        return body
    return f"({body}) {_how_often(times)}" if bracket else f"{body} {_how_often(times)}"


def _how_often(times: int) -> str:
    return {1: "once", 2: "twice"}.get(times, f"{times} times")
