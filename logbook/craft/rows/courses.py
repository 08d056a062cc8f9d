"""All rows of a pattern, one laid onto the other at every width: the multiple, each row's form, and where it stops.

Each row narrows the widths on which the rows below it fit: a plain row 1 fits on every chain, and a row 2 whose repeat takes
six of its stitches leaves every sixth. Where a row's repeat and the growth of the row below do not divide each other (a repeat
of 4 on a row that grows by 6), the row fits only now and then, and that is trouble, though a wider multiple would do.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from logbook.craft.rows.every_width import FOUNDATION_CHAIN, FittingSteps, Misfit, Widths, goes_on, lay_at_every_width
from logbook.craft.rows.finding import RowTrouble
from logbook.craft.rows.instructions import Ring, WrittenRow, works_of
from logbook.craft.rows.laying import Laid, Ways, lay
from logbook.craft.rows.places import chains, from_other_side


@dataclass(frozen=True, slots=True)
class Course:
    """A row that fits. ``made``: its places at every width. ``now_and_then``: it fits only at every so many repeats of the rows
    below.
    """

    row: WrittenRow
    made: Widths
    laid: Laid
    now_and_then: int = 1


@dataclass(frozen=True, slots=True)
class Courses:
    """The rows laid in one way of reading them: all that fit, and the first that does not. ``wrong_side_first``: row 1 is said to
    be worked on the wrong side.

    They fit on ``smallest`` + ``multiple``·j chains, j = 0, 1, …; ``multiple`` 0: on the smallest only (or on no chain, in a
    ring). ``narrowed``: (the first so many rows, first, by) where a later row left them only some widths, to be done by
    ``settled``.
    """

    ways: Ways
    rows: tuple[Course, ...]
    smallest: int
    multiple: int
    stopped: WrittenRow | None = None
    misfit: Misfit | None = None
    wrong_side_first: bool = False
    narrowed: tuple[tuple[int, int, int], ...] = ()

    @property
    def fits(self) -> bool:
        return self.stopped is None

    @property
    def in_ring(self) -> bool:
        return bool(self.rows) and uses_ring(self.rows[0].row)

    @property
    def met_chains(self) -> bool:
        return any(course.laid.met_chains for course in self.rows) or bool(
            self.misfit and self.misfit.laid and self.misfit.laid.met_chains
        )


def lay_all(rows: Sequence[WrittenRow], ways: Ways, done: Courses | None = None) -> Courses:
    """Lays the rows one onto the other, as far as they fit; onto those of ``done`` if given."""
    for row in rows:
        done = lay_one(row, ways, done)
        if not done.fits:
            break
    return settled(done) if done else Courses(ways, (), 1, 1)


def lay_one(row: WrittenRow, ways: Ways, done: Courses | None = None) -> Courses:
    """One row laid onto the last of ``done``, whose rows are not settled yet."""
    return _lay_next(done if done and (done.rows or done.smallest > 1) else _nothing_yet(row, ways), row)


def settled(courses: Courses) -> Courses:
    """Every row at the widths that all rows above it leave it, reckoned from the last row down."""
    if not courses.narrowed:
        return courses
    todo, rows = list(courses.narrowed), list(courses.rows)
    first, by = 0, 1
    for index in range(len(rows) - 1, -1, -1):
        while todo and todo[-1][0] > index:
            _, inner, step = todo.pop()
            first, by = inner + step * first, step * by
        if (first, by) != (0, 1):
            made = rows[index].made
            rows[index] = replace(rows[index], made=made.every(first, by) if by else Widths(made.at(first), (), ()))
    return replace(courses, rows=tuple(rows), narrowed=())


def on_chain(rows: Sequence[WrittenRow], ways: Ways, chain: int) -> Courses:
    """The rows laid on just so many chains."""
    return lay_all(rows, ways, Courses(ways, (), max(chain, 2), 0))


def _nothing_yet(row: WrittenRow, ways: Ways) -> Courses:
    return Courses(ways, (), 0, 0) if uses_ring(row) else Courses(ways, (), 1, 1)


def _lay_next(done: Courses, row: WrittenRow) -> Courses:
    start = FOUNDATION_CHAIN if done.multiple else Widths(chains(done.smallest), (), ())
    below = meets(done.rows[-1], row) if done.rows else start
    if row.onto:
        rest = _left_by(done, row.onto)
        if rest is None:
            return replace(done, stopped=row, misfit=Misfit(RowTrouble("still", row.span), False, unproven=True))
        below = rest
    for number in row.and_onto:
        rest = _left_by(done, number)
        if rest is None or (below.unit and rest.unit):
            return replace(done, stopped=row, misfit=Misfit(RowTrouble("still", row.span), False, unproven=True))
        below = _behind(below, rest)
    fit = lay_at_every_width(row, below, done.ways)
    if isinstance(fit, Misfit):
        return replace(done, stopped=row, misfit=fit)
    if done.multiple and done.rows and not below.unit:
        fit = replace(fit, by=1)  # the row below is the same at every width, and so is this one
    return _narrowed(done, row, fit)


def _left_by(done: Courses, number: int) -> Widths | None:
    """What the row after row ``number`` left of it unworked, as that one met it; None where that is not to be told."""
    rows = settled(done).rows
    index = next((at for at, course in enumerate(rows) if course.row.number == number), len(rows))
    if index + 1 >= len(rows) or not (following := rows[index + 1]).row.leaves_rest or following.row.onto:
        return None
    met, worked = meets(rows[index], following.row), following.laid.at
    if met.unit and goes_on(following.row.body):
        return None
    if not met.unit:
        return Widths(met.at(0)[worked:], (), ())
    while len(met.head) < worked:
        met = met.one_up()
    return Widths(met.head[worked:], met.unit, met.tail, tuple(row[worked:] for row in met.small))


def _behind(below: Widths, rest: Widths) -> Widths:
    """One row and behind it what another has left, of which one at least is the same at every width."""
    if not rest.unit:
        more = rest.at(0)
        small = tuple(row + more for row in below.small)
        return Widths(below.head, below.unit, below.tail + more, small)
    first = below.at(0)
    return Widths(first + rest.head, rest.unit, rest.tail, tuple(first + row for row in rest.small))


def fit_at_one_width(done: Courses | None, rows: Sequence[WrittenRow], like: Courses) -> bool:
    """Whether the rows fit onto those done at a width at which ``like`` fits: a quick look before they are laid at every one."""
    if any(row.onto or row.and_onto for row in rows):
        return True
    chain = like.smallest + like.multiple * 2
    if done is None or not done.rows:
        places = FOUNDATION_CHAIN.at(chain - 1)
    else:
        step, rest = divmod(chain - done.smallest, done.multiple) if done.multiple else (0, 0)
        if rest or step < 0:
            return False
        places = meets(done.rows[-1], rows[0]).at(step)
    for row, following in zip(rows, [*rows[1:], None], strict=True):
        laid = lay(row, places, like.ways)
        if laid.trouble is not None:
            return False
        turns = row.turn_after or (following is not None and following.turn_before)
        places = from_other_side(laid.row, row.joined) if turns else laid.row
    return True


def _narrowed(done: Courses, row: WrittenRow, fit: FittingSteps) -> Courses:
    """One row more, and of the rows below only the widths that it fits."""
    odd = fit.by if fit.by > 1 and fit.passes > 1 else 1
    made = (*done.rows, Course(row, fit.widths, fit.laid, odd))
    smallest = done.smallest + fit.first * done.multiple
    narrowed = done.narrowed if (fit.first, fit.by) == (0, 1) else (*done.narrowed, (len(done.rows), fit.first, fit.by))
    return Courses(done.ways, made, smallest, done.multiple * fit.by, narrowed=narrowed)


def meets(below: Course, row: WrittenRow) -> Widths:
    """The row below as ``row`` meets it: from its other end after turning."""
    if below.row.turn_after or row.turn_before:
        return below.made.met_from_other_side(below.row.joined)
    return below.made


def uses_ring(row: WrittenRow) -> bool:
    """Whether the row is worked into a ring, or makes its own foundation."""
    return row.in_ring or any(isinstance(work.into, Ring) for work in works_of(row.body))


def leads_back(courses: Courses, last: int, to: int) -> FittingSteps | Misfit:
    """Row index ``to`` laid onto row index ``last``."""
    row = replace(courses.rows[to].row, onto=0, and_onto=())
    return lay_at_every_width(row, meets(courses.rows[last], row), courses.ways)


def closes(courses: Courses, last: int, to: int) -> bool:
    """Whether after row index ``last`` row index ``to`` comes out just as it did."""
    fit = leads_back(courses, last, to)
    if courses.rows[to].row.onto or courses.rows[to].row.and_onto:
        return False
    return isinstance(fit, FittingSteps) and fit.first == 0 and fit.by in (0, 1) and fit.widths == courses.rows[to].made
