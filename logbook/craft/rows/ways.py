"""Tries all ways in which the rows can be read where they do not say what their turning chains count as."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from logbook.craft.rows.courses import Courses, lay_all, lay_one, on_chain, settled
from logbook.craft.rows.every_width import Misfit
from logbook.craft.rows.finding import RowTrouble
from logbook.craft.rows.instructions import Counts, Repeat, Times, WrittenPattern, WrittenRow
from logbook.craft.rows.laying import CHAINS_COUNT, TIMES_IN_ALL, Ways, opening_counts
from logbook.craft.rows.places import spaces, stitches
from logbook.craft.rows.printed_counts import wrong_counts
from logbook.craft.rows.sentences import Speaker

MOST_WAYS = 64
WIDEST = 1_000  # the multiple of rows that fit now and then; what is worked onto them would be wider still, and is not decided
MOST_PLACES = 60_000  # laid in all rows, at their least widths; what more rows come to is not decided


@dataclass(frozen=True, slots=True)
class Tried:
    """``best``: the way in which the rows fit, or get furthest. ``also``: others that fit as well, with other numbers.

    ``decided``: the unsaid turning chains of which only one reading fits. ``with_chains``: no way fits, but one would if chains
    counted as stitches, which the text does not say.
    """

    best: Courses
    also: tuple[Courses, ...]
    decided: tuple[str, ...]
    with_chains: bool = False


def try_ways(pattern: WrittenPattern, rows: Sequence[WrittenRow], speaker: Speaker) -> Tried:
    """Lays the rows in every way; "rep from * N times" as N in all only if N more do not fit."""
    always: dict[str, int] = {CHAINS_COUNT: 1} if pattern.chains_count else {}
    tried = _laid(rows, always)
    chain = pattern.chain_sizes
    if chain is not None and len(chain.numbers) == 1 and all(each.misfit and each.misfit.unproven for each in tried):
        tried = _laid(rows, always, chain.numbers[0])
    fitting = [each for each in tried if _holds(pattern, each, speaker)]
    if not fitting and any(_two_ways_to_repeat(row.body) for row in rows):
        fitting = _fitting(pattern, rows, {**always, TIMES_IN_ALL: 1}, speaker)
    if not fitting:
        unsaid = pattern.chains_count is None and any(each.met_chains for each in tried)
        with_chains = unsaid and bool(_fitting(pattern, rows, {CHAINS_COUNT: 1}, speaker))
        return Tried(max(tried, key=lambda each: (len(each.rows), each.fits, -_unlikely(rows, each))), (), (), with_chains)
    best = min(fitting, key=lambda each: _unlikely(rows, each))
    fitting = [best, *(each for each in fitting if each is not best and _settled(rows, each) == _settled(rows, best))]
    seen = {_numbers(best)}
    also = []
    for each in fitting[1:]:
        if _numbers(each) not in seen:
            seen.add(_numbers(each))
            also.append(each)
    single = {key for key in best.ways if len({each.ways.get(key) for each in fitting}) == 1}
    keys = {row.opening.key: row.opening for row in rows if row.opening and len(row.opening.options) > 1}
    decided = tuple(sorted(key for key in single if key in keys and not (keys[key].settled and best.ways[key] == 0)))
    return Tried(best, tuple(also), decided)


def _fitting(pattern: WrittenPattern, rows: Sequence[WrittenRow], always: dict[str, int], speaker: Speaker) -> list[Courses]:
    return [each for each in _laid(rows, always) if _holds(pattern, each, speaker)]


def _holds(pattern: WrittenPattern, courses: Courses, speaker: Speaker) -> bool:
    return courses.fits and next(wrong_counts(pattern, courses, speaker), None) is None


def _laid(rows: Sequence[WrittenRow], always: dict[str, int], chain: int = 0) -> list[Courses]:
    """The rows laid in every way that goes on fitting; if none does, in those that get furthest. ``chain``: on that one only."""
    states = [on_chain((), always, chain) if chain else lay_all((), always)]
    places = 0
    for row in rows:
        if places > MOST_PLACES or all(map(_too_wide, states)):
            late = Misfit(RowTrouble("still", row.span), False, unproven=True)
            return [settled(replace(state, stopped=row, misfit=late)) for state in states]
        tried = [lay_one(row, ways, replace(state, ways=ways)) for state in states for ways in _ways(row, state.ways)]
        states = [each for each in tried if each.fits][:MOST_WAYS]
        if not states:
            return list(map(settled, tried))
        places += sum(_size(state) for state in states)
    return list(map(settled, states))


def _too_wide(courses: Courses) -> bool:
    return courses.multiple > WIDEST and courses.rows[-1].now_and_then > 1


def _size(courses: Courses) -> int:
    made = courses.rows[-1].made
    return len(made.head) + len(made.unit) + len(made.tail)


def _ways(row: WrittenRow, ways: Ways) -> Iterator[Ways]:
    """``ways``, and where the row's first chains can be read in several and no row before it has decided, each of these."""
    opening = row.opening
    if opening is None or len(opening.options) == 1 or opening.key in ways:
        yield ways
        return
    for index in range(len(opening.options)):
        yield {**ways, opening.key: index}


def _settled(rows: Sequence[WrittenRow], courses: Courses) -> tuple[tuple[str, int], ...]:
    keys = {row.opening.key for row in rows if row.opening and row.opening.settled}
    return tuple(sorted((key, way) for key, way in courses.ways.items() if key in keys))


def _unlikely(rows: Sequence[WrittenRow], courses: Courses) -> int:
    """How often the chains are read against what is shown."""
    return sum(way for _, way in _settled(rows, courses))


def _two_ways_to_repeat(body: Sequence[object]) -> bool:
    return any(
        isinstance(item, Repeat)
        and ((isinstance(item.until, Times) and item.until.or_else > 0) or _two_ways_to_repeat(item.body))
        for item in body
    )


def _numbers(courses: Courses) -> tuple[object, ...]:
    """All that the maker would see differ."""
    counts = []
    for course in courses.rows:
        for step in (0, 1):
            row = course.made.at(step)
            counts.append((stitches(row), spaces(row)))
    first = opening_counts(courses.rows[0].row, courses.ways) if courses.rows and courses.rows[0].row.opening else Counts()
    hook = bool(courses.rows and courses.rows[0].row.opening and courses.rows[0].row.opening.at_hook)
    return courses.multiple, courses.smallest, tuple(counts), (bool(first.stitch), first.over) if hook else ()
