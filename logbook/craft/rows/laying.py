"""Lays one written row onto the row below, place by place, for one width.

A hand goes along the row below from where it begins. Where a stitch goes:

- *next stitch* passes over spaces, but over no other stitch: if another kind lies there, the row does not work;
- *next space*, *next shell* pass over what lies before them; "last" and "turning chain" jump to the end. What was passed over
  is kept, and is a trouble if the text had just counted what to skip, or jumps to the end after counting stitch by stitch;
- *to last N* is binding: the repeat must come out exactly there;
- a repeat *to end* goes on as long as it fits and then leaves what comes after it its places.

At the end nothing may be left: no stitch unless the text says so, save the rest of a shell or V-stitch in which the row just
worked.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from logbook.craft.rows.finding import Finder, RowTrouble, Spot, TroubleError
from logbook.craft.rows.hand import Hand, Saved
from logbook.craft.rows.instructions import (
    NOTHING,
    Counts,
    Instruction,
    Repeat,
    Span,
    Times,
    ToEnd,
    ToLast,
    ToNext,
    ToTurningChain,
    Until,
    Work,
    WrittenRow,
    works_of,
)
from logbook.craft.rows.places import Row, settled

Ways = Mapping[str, int]  # what can be read in several ways → which way is tried
OPEN = ("edge",)  # what the text leaves open ends no repeat
CHAINS_COUNT, TIMES_IN_ALL = "chains count", "times in all"


@dataclass(frozen=True, slots=True)
class RepeatBegun:
    """Where the hand was when a repeat began again: places passed below, places made, and what else it had in mind."""

    at: int
    made: int
    mind: tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """A row laid. ``marks``: by repeat, each time it began. ``passed``: stitches passed over unsaid, by the phrase that did.

    ``under``: for each place made, those below that it was worked into (several for stitches together; none for a chain).
    """

    row: Row
    marks: tuple[tuple[RepeatBegun, ...], ...]
    passed: tuple[tuple[Span, int], ...] = ()
    trouble: RowTrouble | None = None
    at: int = 0
    under: tuple[tuple[Spot, ...], ...] = ()
    met_chains: bool = False


def opening_counts(row: WrittenRow, ways: Ways) -> Counts:
    """What the row's first chains stand for when read in these ways."""
    if row.opening is None:
        return NOTHING
    return row.opening.options[min(ways.get(row.opening.key, 0), len(row.opening.options) - 1)]


def lay(row: WrittenRow, below: Row, ways: Ways) -> Laid:
    """The places that ``row`` makes on ``below`` (in the order they are met), or its trouble."""
    hand = Hand(row, below, opening_counts(row, ways), Finder(below, bool(ways.get(CHAINS_COUNT))))
    laying = _Laying(hand, bool(ways.get(TIMES_IN_ALL)))
    trouble = None
    try:
        hand.begin()
        laying.along(row.body, 0)
    except TroubleError as error:
        trouble = error.trouble
    return Laid(
        settled(hand.made),
        laying.marks_by_repeat(),
        tuple(hand.passed),
        trouble,
        hand.at + hand.turned,
        _unturned(hand, len(below)),
        hand.find.met_chains,
    )


def _unturned(hand: Hand, count: int) -> tuple[tuple[Spot, ...], ...]:
    """What lies under each place made, counted as the row below is."""
    by = hand.turned
    if not by:
        return tuple(hand.under)
    return tuple(
        tuple(((start + by) % count, (start + by) % count + end - start) for start, end in spots) for spots in hand.under
    )


def _into_gap(items: Sequence[Instruction]) -> bool:
    """Whether the next stitch goes into a gap that is named, and so is none of the others."""
    return any(isinstance(item, Work) and item.place_kind == "gap" for item in items)


class _Laying:
    """Leads the hand through the row's instructions and repeats."""

    def __init__(self, hand: Hand, times_in_all: bool) -> None:
        self.hand = hand
        self.times_in_all = times_in_all
        self._marks: list[tuple[int, RepeatBegun]] = []  # on the way that the hand took: ways given up leave none

    def marks_by_repeat(self) -> tuple[tuple[RepeatBegun, ...], ...]:
        by_repeat: dict[int, list[RepeatBegun]] = {}
        for repeat, mark in self._marks:
            by_repeat.setdefault(repeat, []).append(mark)
        return tuple(map(tuple, by_repeat.values()))

    def along(self, items: Sequence[Instruction], start: int) -> None:
        """The instructions from ``start`` on, to the row's end."""
        for index in range(start, len(items)):
            item = items[index]
            if isinstance(item, Repeat) and isinstance(item.until, ToEnd):
                self._to_end(item, items, index + 1)
                return
            self._do(item)
        self.hand.end()

    def _do(self, item: Instruction) -> None:
        if isinstance(item, Repeat):
            self._repeat(item)
        else:
            self.hand.do(item)

    def _repeat(self, repeat: Repeat) -> None:
        until = repeat.until
        if isinstance(until, Times):
            for _ in range(until.or_else if self.times_in_all and until.or_else else until.count):
                self._all(repeat.body)
        elif isinstance(until, ToEnd):
            self._greedily(repeat)
        else:
            self._until(repeat)

    def _all(self, body: Sequence[Instruction]) -> None:
        for item in body:
            self._do(item)

    def _pass(self, repeat: Repeat) -> None:
        """The repeat's body once more; it must get on, or it would never come to an end."""
        self._mark(repeat)
        before = self.hand.at, self.hand.last
        self._all(repeat.body)
        if (self.hand.at, self.hand.last) == before:
            raise TroubleError(RowTrouble("still", repeat.span, 0))

    def _mark(self, repeat: Repeat) -> None:
        self._marks.append((repeat.span.start, RepeatBegun(self.hand.at + self.hand.turned, len(self.hand.made), self.hand.mind)))

    def _greedily(self, repeat: Repeat) -> None:
        while True:
            saved = self._saved()
            try:
                self._pass(repeat)
            except TroubleError:
                self._restore(saved)
                self._mark(repeat)
                return

    def _until(self, repeat: Repeat) -> None:
        before = None
        spaces = all(work.place_kind == "sp" for work in works_of(repeat.body))
        while True:
            left = self._left_until(repeat.until, spaces)
            if left == 0 and not self._once_more(repeat):
                self._mark(repeat)
                return
            left = left or self._left_until(repeat.until, spaces)
            if left == 0:
                continue
            if left < 0:
                raise TroubleError(RowTrouble("last", repeat.span, before if before is not None else left))
            before = left
            saved = self._saved()
            try:
                self._pass(repeat)
            except TroubleError as error:
                if not (isinstance(repeat.until, ToTurningChain) and left == 1 and saved[0][2]):
                    raise TroubleError(replace(error.trouble, left=left)) from error
                self._restore(saved)  # loops: behind the last one its end is left before the turning chain
                self._mark(repeat)
                return

    def _once_more(self, repeat: Repeat) -> bool:
        """Whether the repeat goes on before the last place of a kind that it does not take itself: ``…to last ch-2 sp``."""
        until = repeat.until
        if not isinstance(until, ToLast) or until.wanted.kind in ("st", "ch"):
            return False
        saved = self._saved()
        try:
            self._pass(repeat)
        except TroubleError:
            self._restore(saved)
            return False
        if self._left_until(until) < 0:
            self._restore(saved)
            return False
        return True

    def _left_until(self, until: Until, spaces: bool = False) -> int:
        """How many places are still to go until the repeat ends; less than none if it is past them. ``spaces``: it works into
        nothing else, and passes over what lies between them.
        """
        find, at = self.hand.find, self.hand.at
        if isinstance(until, ToLast):
            return find.left(at, until.wanted) - until.count
        if isinstance(until, ToNext):
            if until.wanted.kind == "sp" and spaces:
                return 0 if find.space_comes(at, until.wanted) else 1
            return 0 if find.comes(at, until.wanted) else 1
        return find.left_to_turning_chain(at)

    def _to_end(self, repeat: Repeat, items: Sequence[Instruction], after: int) -> None:
        """As many times as it goes, so that what comes after it still works; the last way out that does is the right one."""
        saved = [self._saved()]
        while True:
            try:
                self._pass(repeat)
            except TroubleError as error:
                stuck = error.trouble
                if stuck.sort in OPEN and not _into_gap(items[after : after + 1]):
                    raise
                break
            saved.append(self._saved())
        first_try: RowTrouble | None = None
        left = -1
        for way_out in reversed(saved):
            self._restore(way_out)
            self._mark(repeat)
            try:
                self.along(items, after)
                return
            except TroubleError as error:
                first_try = first_try or error.trouble
                if error.trouble.sort == "over":
                    left = max(error.trouble.count, error.trouble.chains)
                if error.trouble.sort in ("over", "passed"):
                    break
        self._restore(saved[-1])
        raise TroubleError(replace(self._why(stuck, first_try, [hand for hand, _ in saved]), left=left))

    def _why(self, stuck: RowTrouble, leaving: RowTrouble | None, saved: Sequence[Saved]) -> RowTrouble:
        """The trouble to tell: why the repeat stuck in mid-row, or else what was wrong at the row's end."""
        once = saved[1][0] - saved[0][0] if len(saved) > 1 else 0
        mid_row = len(saved) == 1 or len(self.hand.below) - self.hand.at > once
        return stuck if leaving is None or (stuck.sort != "short" and mid_row) else leaving

    def _saved(self) -> tuple[Saved, int]:
        return self.hand.saved(), len(self._marks)

    def _restore(self, saved: tuple[Saved, int]) -> None:
        self.hand.restore(saved[0])
        del self._marks[saved[1] :]
