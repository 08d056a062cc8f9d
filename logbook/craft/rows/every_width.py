"""Lays a row onto the row below at every width at once, and so earns "for every number of repeats".

A row over all widths is written ``head + unit·(j − J) + tail`` for j ≥ J, and place by place for the few smaller j ("small"):
each step of width puts one more ``unit`` in at the same spot. The foundation chain is of that form: no head, unit one chain.

*Claim.* If a row laid on such a row below fits at one j ≥ J with the hand at a mark (the beginning of a pass of its repeat) at
place x inside the units, and at j + q has marks at x and at x + q·|unit| with the same in mind, then it fits at every j + t·q,
and what it makes is of that form again: its unit is what the hand made between the two marks.

*Why.* The row below at j + t·q is that at j with t blocks of q units put in at x (moving the spot inside the units only turns
the unit round). The hand reads places one after another, and what it does next depends on the instruction, on what it has in
mind and on the places it passes, and in a repeat "to last N" or "to end" on whether enough is left for one more pass. It comes
to x as before: what lies before x is the same, and with more behind x a repeat that went on goes on. Over each block it does
what it did over the first: the same places, the same mind, at the end the same mark. After the last block it stands before what
it stood before at j, and does the same. So the made row gains one block each time. A pass that would end the repeat later than
at j cannot fit either: leaving the blocks out again would have given a later way out at j, and the last way out was taken
there. By induction on t, for every t.

Both layings, at j and j + q, are done and compared place by place; the smaller widths are each laid by themselves. So counts
are linear in the repeats from the least width on, and nothing is sampled.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from logbook.craft.rows.finding import RowTrouble
from logbook.craft.rows.instructions import Either, Instruction, Last, Next, Repeat, Skip, Times, Work, WrittenRow, works_of
from logbook.craft.rows.laying import Laid, RepeatBegun, Ways, lay
from logbook.craft.rows.places import Place, Row, chains, from_other_side, mirrored, spaces, stitches

PASSES_SEEN = 4  # a row so many passes long shows its cycle, unless its repeat turns the unit round more often
MANY_STEPS = 12
ROOM_BEHIND = 200  # places that may follow a repeat
MOST_PLACES = 600_000  # laid in search of the widths that fit
MOST_REACH = 30_000  # places in one pass
LONGEST = 80_000  # places laid in search of a cycle; what does not show itself by then is not decided


@dataclass(frozen=True, slots=True)
class Widths:
    """A row at every width: ``small[j]`` for j < J = len(small), then ``head + unit·(j − J) + tail``. An empty unit: one width
    only.
    """

    head: Row
    unit: Row
    tail: Row
    small: tuple[Row, ...] = ()

    def at(self, step: int) -> Row:
        """The row at the ``step``-th width, from 0."""
        if step < len(self.small):
            return self.small[step]
        return self.head + self.unit * (step - len(self.small)) + self.tail

    def met_from_other_side(self, joined: bool) -> "Widths":
        """All of it as it is met after turning."""
        keep = 1 if joined else 0
        widths = self if len(self.head) >= keep else self.one_up()
        small = tuple(from_other_side(row, joined) for row in widths.small)
        head, tail = widths.head[:keep] + mirrored(widths.tail), mirrored(widths.head[keep:])
        return Widths(head, mirrored(widths.unit), tail, small).settled()

    def one_up(self) -> "Widths":
        """The same rows, the first unit counted in the head."""
        return Widths(self.head + self.unit, self.unit, self.tail, (*self.small, self.head + self.tail))

    def every(self, first: int, by: int) -> "Widths":
        """Only the widths first, first + by, first + 2·by …"""
        begin = first
        small = []
        while begin < len(self.small):
            small.append(self.small[begin])
            begin += by
        head = self.head + self.unit * (begin - len(self.small))
        return Widths(head, self.unit * by, self.tail, tuple(small)).settled()

    def settled(self) -> "Widths":
        """The one way to write these rows: the units as far to the front as they go, and no width among the small that fits the
        form.
        """
        head, unit, tail, small = self.head, self.unit, self.tail, self.small
        if not unit:
            return self
        turns = 0
        while turns < len(head) and head[-1 - turns] == unit[-1 - turns % len(unit)]:
            turns += 1
        if turns:
            moved = head[len(head) - turns :]
            turn = turns % len(unit)
            head, unit, tail = head[:-turns], unit[len(unit) - turn :] + unit[: len(unit) - turn], moved + tail
        while small and tail[: len(unit)] == unit and head + tail[len(unit) :] == small[-1]:
            tail, small = tail[len(unit) :], small[:-1]
        return Widths(head, unit, tail, small)


FOUNDATION_CHAIN = Widths(chains(1), chains(1), ())  # step j: j + 1 chains


@dataclass(frozen=True, slots=True)
class FittingSteps:
    """A row that fits at the steps first, first + by, … of the row below. ``by`` 0: at that one step only.

    ``passes``: how often the repeat is worked over ``by`` steps. ``laid``: one laying that fits.
    """

    widths: Widths
    first: int
    by: int
    passes: int
    laid: Laid


@dataclass(frozen=True, slots=True)
class Misfit:
    """A row that fits at no width, or only at odd ones. ``everywhere``: the trouble is the same at every width looked at."""

    trouble: RowTrouble
    everywhere: bool
    unproven: bool = False
    laid: Laid | None = None


def lay_at_every_width(row: WrittenRow, below: Widths, ways: Ways) -> FittingSteps | Misfit:
    """Lays ``row`` onto ``below`` for every width from the least that fits, or tells why it cannot."""
    if not below.unit:
        laid = lay(row, below.at(0), ways)
        return Misfit(laid.trouble, True, laid=laid) if laid.trouble else FittingSteps(Widths(laid.row, (), ()), 0, 0, 0, laid)
    if reach_of(row.body, 1) >= MOST_REACH:
        return Misfit(RowTrouble("still", row.span), False, unproven=True)
    long = _cycle(row, below, ways)
    if long is None:
        return Misfit(RowTrouble("still", row.span), False, unproven=True)
    if isinstance(long, Laid):
        return _one_width(row, below, ways, long)
    return _Layings(row, below, ways).fit(*long)


def _cycle(row: WrittenRow, below: Widths, ways: Ways) -> tuple[RepeatBegun, int, int] | Laid | None:
    """A mark inside the units, after how many units the hand stands so again, and in how many passes.

    Or a laying without one, if no repeat goes on with the width; None if none was seen to come round in good time.
    """
    unit = len(below.unit)
    grows = goes_on(row.body)
    reach = reach_of(row.body, max(map(_run, below.unit), default=1)) + (row.opening.chains if row.opening else 0)
    enough = (PASSES_SEEN if grows else 1) * reach // unit + 1
    more = max(5, 20 // unit) if grows else enough + 2
    worked = -1
    while True:
        laid = lay(row, below.at(len(below.small) + more), ways)
        for marks in laid.marks:
            found = _again(marks, len(below.head), unit * more, unit)
            if found:
                return found
        passes = sum(map(len, laid.marks))
        short = not grows and laid.trouble is not None and laid.trouble.sort == "short" and unit * more * 2 < LONGEST
        if (passes == worked and more >= enough) or (not grows and not short):
            return laid  # a wider row below lets no repeat go on
        if short:
            more *= 2  # what it passes over is not in its reach
            continue
        worked = passes
        more = enough if more < enough else more * 3
        if unit * more > LONGEST:
            return None


def _run(place: Place) -> int:
    return place.run[0] if place.run else 1


def reach_of(body: Sequence[Instruction], widest: int) -> int:
    """How many places the instructions take at most, repeats to the end once: a bound that is easy to reckon."""
    return min(sum(_takes(item, widest) for item in body), MOST_REACH)


def _takes(item: Instruction, widest: int) -> int:
    if isinstance(item, Repeat):
        return reach_of(item.body, widest) * (item.until.count if isinstance(item.until, Times) else 1)
    if isinstance(item, Skip):
        return item.count + widest
    if isinstance(item, Either):
        return widest
    if not isinstance(item, Work):
        return 0
    return (item.into.count if isinstance(item.into, Next | Last) else 1) + widest


def _again(marks: Sequence[RepeatBegun], head: int, units: int, unit: int) -> tuple[RepeatBegun, int, int] | None:
    inside = [mark for mark in marks[1:-1] if head <= mark.at <= head + units]
    for at, mark in enumerate(inside[: unit + 1]):
        for passes, later in enumerate(islice(inside, at + 1, None), 1):
            if (later.at - mark.at) % unit == 0 and later.mind == mark.mind:
                return mark, (later.at - mark.at) // unit, passes
    return None


def _one_width(row: WrittenRow, below: Widths, ways: Ways, laid: Laid) -> FittingSteps | Misfit:
    """A row without a repeat that grows: it takes a fixed number of places, and fits at one width if at any."""
    fixed = not goes_on(row.body)
    if laid.trouble is None:
        return _from_some_width_on(row, below, ways, laid) if fixed else _undecided(row, laid)
    if fixed:
        at_end = sum(work.into.count for work in works_of(row.body) if isinstance(work.into, Last))
        last = len(below.small) + (max(0, laid.at - len(below.head)) + row.leaves + at_end) // len(below.unit) + 3
        for step in range(max(0, last - 6 - len(below.tail) // len(below.unit)) if last > 40 else 0, last):
            fitting = lay(row, below.at(step), ways)
            if fitting.trouble is None:
                return FittingSteps(Widths(fitting.row, (), ()), step, 0, 0, fitting)
    wider = lay(row, below.at(len(below.small) + 20), ways), lay(row, below.at(len(below.small) + 21), ways)
    return Misfit(laid.trouble, wider[0].trouble == wider[1].trouble == laid.trouble, laid=laid)


def _growing(body: Sequence[Instruction]) -> int:
    """How many repeats of a row, inner ones too, go on as long as there are stitches."""
    repeats = [item for item in body if isinstance(item, Repeat)]
    return sum(_growing(item.body) + (not isinstance(item.until, Times)) for item in repeats)


def _undecided(row: WrittenRow, laid: Laid) -> Misfit:
    return Misfit(RowTrouble("still", row.span), False, unproven=True, laid=laid)


def _from_some_width_on(row: WrittenRow, below: Widths, ways: Ways, laid: Laid) -> FittingSteps | Misfit:
    """A row that takes a fixed number of places and leaves the rest: it comes out the same on every wider row.

    It reads no further than ``laid.at``; so it is the same at every width that has these places before its last unit.
    """
    if not row.leaves_rest or row.leaves:
        return _undecided(row, laid)
    step = len(below.small) + max(0, laid.at - len(below.head)) // len(below.unit) + 1
    while step and lay(row, below.at(step - 1), ways).row == laid.row and lay(row, below.at(step - 1), ways).trouble is None:
        step -= 1
    return FittingSteps(Widths(laid.row, (), ()), step, 1, 0, laid)


def goes_on(body: Sequence[Instruction]) -> bool:
    """Whether a row repeats as long as there are stitches, not a fixed number of times."""
    return any(isinstance(item, Repeat) and (not isinstance(item.until, Times) or goes_on(item.body)) for item in body)


def _spaces_per(widths: Widths) -> int:
    return spaces(widths.head + widths.unit * 2 + widths.tail) - spaces(widths.head + widths.unit + widths.tail)


class _Layings:
    """The layings of one row at single widths, each done once."""

    def __init__(self, row: WrittenRow, below: Widths, ways: Ways) -> None:
        self.row = row
        self.below = below
        self.ways = ways
        self._done: dict[int, Laid] = {}

    def at(self, step: int) -> Laid:
        if step not in self._done:
            self._done[step] = lay(self.row, self.below.at(step), self.ways)
        return self._done[step]

    def fit(self, mark: RepeatBegun, by: int, passes: int) -> FittingSteps | Misfit:
        """Tries one step of each residue modulo ``by`` where the hand comes to ``mark`` with room behind it."""
        start = len(self.below.small) + max(0, -(-(mark.at - len(self.below.head)) // len(self.below.unit)))
        start += by if by >= MANY_STEPS else 0
        last = start + by + ROOM_BEHIND
        stride = 1 if by < MANY_STEPS else max(1, by // 8)
        while not self._comes_to(start, mark) and start < last:
            start += stride
        only = self._only_step(start, by, passes)
        steps = range(start, start + by) if only is None else (only,)
        if len(steps) * len(self.below.at(start)) > MOST_PLACES:
            return _undecided(self.row, self.at(start))
        fitting = [step for step in steps if self.at(step).trouble is None]
        for step in fitting:
            widths = self._grown(step, mark, by)
            if widths is not None:
                return self._from_the_least(step, by, passes, widths)
        if fitting:
            return Misfit(RowTrouble("over", self.row.span), False, unproven=True, laid=self.at(start))
        return self._misfit(start, by)

    def _only_step(self, start: int, by: int, passes: int) -> int | None:
        """The one step of ``by`` that can fit, where all places below are alike; None if it can't be told so.

        Every pass then takes just ``by`` places, and the rest of the row a number that never changes: if it fits at one width,
        then at those alone that are whole passes away.
        """
        below = self.below
        places = {*below.head, *below.unit, *below.tail}
        if by < MANY_STEPS or passes != 1 or len(below.unit) != 1 or len(places) != 1 or _growing(self.row.body) != 1:
            return None
        trouble = self.at(start).trouble
        if trouble is None:
            return start
        left = trouble.left if trouble.left >= 0 else max(trouble.count, trouble.chains)
        if (trouble.left < 0 and trouble.sort not in ("over", "last", "passed")) or self.row.leaves_rest:
            return None
        step = start + (-left) % by
        return step if self.at(step).trouble is None else None

    def _comes_to(self, step: int, mark: RepeatBegun) -> bool:
        """Whether the hand comes to the mark at this width, and does not end its repeat there."""
        return any(mark in marks[:-1] for marks in self.at(step).marks)

    def _grown(self, step: int, mark: RepeatBegun, by: int) -> Widths | None:
        """What the row makes at step, step + by, …: the claim's two layings compared. None if they do not bear it out."""
        one, two = self.at(step), self.at(step + by)
        if two.trouble is not None or not self._comes_to(step, mark) or not self._comes_to(step + by, mark):
            return None
        again = mark.at + by * len(self.below.unit)
        later = [each for marks in two.marks for each in marks if each.at == again and each.mind == mark.mind]
        if not later:
            return None
        head, tail = one.row[: mark.made], one.row[mark.made :]
        unit = two.row[mark.made : later[0].made]
        return Widths(head, unit, tail) if two.row == head + unit + tail else None

    def _from_the_least(self, step: int, by: int, passes: int, widths: Widths) -> FittingSteps | Misfit:
        """Goes down to the least width from which on all fit and the counts stay in line."""
        small: list[Row] = []
        per, spaces_per = stitches(widths.unit), _spaces_per(widths)
        count, space_count = stitches(widths.head + widths.tail), spaces(widths.head + widths.tail)
        while step - by >= 0:
            laid = self.at(step - by)
            count -= per
            space_count -= spaces_per
            if laid.trouble is not None or (stitches(laid.row), spaces(laid.row)) != (count, space_count):
                break
            step -= by
            small.insert(0, laid.row)
        if not widths.unit:
            return Misfit(RowTrouble("still", self.row.span), False, unproven=True, laid=self.at(step))
        made = Widths(widths.head, widths.unit, widths.tail, tuple(small)).settled()
        return FittingSteps(made, step, by, passes, self.at(step + by * len(small)))

    def _misfit(self, start: int, by: int) -> Misfit:
        """The trouble to tell: of the residues the one that gets furthest, seen at two widths."""
        steps = range(start, start + min(by, MANY_STEPS))
        best = min(steps, key=lambda step: (len(self.below.at(step)) - self.at(step).at, step))
        here, there = self.at(best), self.at(best + by)
        assert here.trouble is not None
        return Misfit(here.trouble, by == 1 and here.trouble == there.trouble, laid=here)
