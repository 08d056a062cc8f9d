"""Lays one written row onto the row below, place by place, for one width.

A hand goes along the row below from where it begins; ``at`` is the first place it has not passed. Where a stitch goes:

- *next stitch* passes over spaces, but over no other stitch: if another kind lies there, the row does not work;
- *next space*, *next shell* pass over what lies before them; "last" and "turning chain" jump to the end. What was passed over
  is kept, and is a trouble if the text had just counted what to skip, or jumps to the end after counting stitch by stitch;
- *to last N* is binding: the repeat must come out exactly there;
- a repeat *to end* goes on as long as it fits and then leaves what comes after it its places.

At the end nothing may be left: no stitch unless the text says so, save the rest of a shell or V-stitch in which the row just
worked.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.rows.finding import Finder, Mind, Spot, Trouble, TroubleError
from logbook.craft.rows.instructions import (
    NOTHING,
    Chain,
    Counts,
    First,
    FromHook,
    Instruction,
    Last,
    Next,
    Repeat,
    Ring,
    Same,
    Skip,
    Skipped,
    Span,
    Times,
    ToEnd,
    ToLast,
    ToNext,
    Wanted,
    Work,
    WrittenRow,
)
from logbook.craft.rows.places import CHAIN, FOUNDATION, Place, Row, new_place, settled

Ways = Mapping[str, int]  # what can be read in several ways → which way is tried
Saved = tuple[int, Spot | None, bool, bool, Spot | None, int, int]
CHAINS_COUNT, TIMES_IN_ALL = "chains count", "times in all"


@dataclass(frozen=True, slots=True)
class Mark:
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
    marks: tuple[tuple[Mark, ...], ...]
    passed: tuple[tuple[Span, int], ...] = ()
    trouble: Trouble | None = None
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
    hand = _Hand(row, below, ways)
    trouble = None
    try:
        hand.begin()
        hand.along(row.body, 0)
    except TroubleError as error:
        trouble = error.trouble
    marks = tuple(tuple(marks) for marks in hand.marks.values())
    return Laid(settled(hand.made), marks, tuple(hand.passed), trouble, hand.at, tuple(hand.under), hand.find.met_chains)


def _goes_back(body: Sequence[Instruction]) -> bool:
    """Whether the row works into what it skipped."""
    return any(
        _goes_back(item.body) if isinstance(item, Repeat) else isinstance(item, Work) and isinstance(item.into, Skipped)
        for item in body
    )


class _Hand:
    """Where the hand is in the row below and what it has made."""

    def __init__(self, row: WrittenRow, below: Row, ways: Ways) -> None:
        self.row = row
        self.counts = opening_counts(row, ways)
        self.times_in_all = bool(ways.get(TIMES_IN_ALL))
        self.find = Finder(below, bool(ways.get(CHAINS_COUNT)))
        self.below = below
        self.at = 0
        self.last: Spot | None = None
        self.loose = False  # the last stitch went into a space or a group, not into a counted stitch
        self.skipped = False  # the text has just said which stitches to skip
        self.skipped_spot: Spot | None = None
        self.goes_back = _goes_back(row.body)
        self.made: list[Place] = []
        self.under: list[tuple[Spot, ...]] = []  # beside each place made, what lies under it
        self.marks: dict[int, list[Mark]] = {}
        self.passed: list[tuple[Span, int]] = []

    def begin(self) -> None:
        for move in self.row.begins_with:
            for spot in self._spots(move):
                self._go(spot)
        opening = self.row.opening
        if opening is None:
            return
        if opening.at_hook:
            if opening.chains > len(self.below):
                raise TroubleError(Trouble("short", opening.span, opening.chains - len(self.below)))
            self.at = opening.chains
        elif self.counts.stitch and self.below and not self.row.begins_with:
            self._go((0, 1))
        self.loose = self.skipped = False
        if self.counts.stitch:
            over = opening.chains - 1 - self.counts.over if opening.at_hook else 0
            under = self.last or (over, over + 1)
            self._add([new_place(self.counts.stitch, turning=self.counts.height)], (under,))
            self._add([new_place(CHAIN)] * self.counts.chains, ())

    def _end(self) -> None:
        if self.row.leaves_rest:
            return
        rest = self.below[self.at :]
        if self.loose and self.find.rest_of_group(self.at):
            return
        stitches = sum(place.like("st") for place in rest)
        chains = sum(place.kind == CHAIN for place in rest)
        if stitches or (chains and not self.row.in_round):
            raise TroubleError(Trouble("over", self.row.span, stitches, chains=chains))

    def along(self, items: Sequence[Instruction], start: int) -> None:
        """The instructions from ``start`` on, to the row's end."""
        for index in range(start, len(items)):
            item = items[index]
            if isinstance(item, Repeat) and isinstance(item.until, ToEnd):
                self._to_end(item, items, index + 1)
                return
            self._do(item)
        self._end()

    def _do(self, item: Instruction) -> None:
        if isinstance(item, Chain):
            self._add([new_place(CHAIN)] * item.count, ())
        elif isinstance(item, Skip):
            self._skip(item)
        elif isinstance(item, Work):
            self._work(item)
        else:
            self._repeat(item)

    def _skip(self, skip: Skip) -> None:
        if skip.first:
            at, self.at = self.at, 0
        for _ in range(skip.count):
            self.skipped_spot = self._found(skip.wanted, skip.span)
            self.at = self.skipped_spot[1]
        if skip.first:
            self.at = max(self.at, at)
        self.skipped = skip.wanted.kind not in ("sp", "group")

    def _work(self, work: Work) -> None:
        if isinstance(work.into, Next) and work.into.count == 0:
            self._make(work, ())
            return
        picked = isinstance(work.into, Next | Last) and work.into.wanted.kind == "group"
        spots = self._spots(work)
        for spot in spots:
            self._go(spot, picked)
            if not work.together:
                self._make(work, (spot,))
        if work.together:
            self._make(work, tuple(spots))
        self.skipped = False

    def _make(self, work: Work, under: tuple[Spot, ...]) -> None:
        items, name = work.made.items, work.made.name
        if len(items) == 1:
            self._add([new_place(items[0])], under)
        else:
            self._add([new_place(kind, (name, len(items), which)) for which, kind in enumerate(items)], under)

    def _add(self, places: list[Place], under: tuple[Spot, ...]) -> None:
        self.made += places
        self.under += [under] * len(places)

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
        before = self.at, self.last
        self._all(repeat.body)
        if (self.at, self.last) == before:
            raise TroubleError(Trouble("still", repeat.span, 0))

    def _mark(self, repeat: Repeat) -> None:
        behind = None if self.last is None else (self.at - self.last[0], self.at - self.last[1])
        goes_back = self.goes_back and self.skipped_spot is not None
        skipped = self.at - self.skipped_spot[0] if goes_back and self.skipped_spot else None
        mark = Mark(self.at, len(self.made), (behind, self.loose, self.skipped, skipped))
        self.marks.setdefault(repeat.span.start, []).append(mark)

    def _greedily(self, repeat: Repeat) -> None:
        while True:
            saved = self._saved()
            try:
                self._pass(repeat)
            except TroubleError:
                self._restore(saved)
                return

    def _until(self, repeat: Repeat) -> None:
        until = repeat.until
        before = None
        while True:
            left = self._left_until(until)
            if left == 0:
                self._mark(repeat)
                return
            if left < 0:
                raise TroubleError(Trouble("last", repeat.span, before if before is not None else left))
            before = left
            self._pass(repeat)

    def _left_until(self, until: object) -> int:
        """How many places are still to go until the repeat ends; less than none if it is past them."""
        if isinstance(until, ToLast):
            return self.find.left(self.at, until.wanted) - until.count
        if isinstance(until, ToNext):
            return 0 if self.find.comes(self.at, until.wanted) else 1
        return self.find.left_to_turning_chain(self.at)

    def _to_end(self, repeat: Repeat, items: Sequence[Instruction], after: int) -> None:
        """As many times as it goes, so that what comes after it still works; the last way out that does is the right one."""
        saved = [self._saved()]
        while True:
            try:
                self._pass(repeat)
            except TroubleError as error:
                stuck = error.trouble
                break
            saved.append(self._saved())
        marks = self.marks[repeat.span.start]
        first_try: Trouble | None = None
        for count in range(len(saved) - 1, -1, -1):
            self._restore(saved[count])
            try:
                self.along(items, after)
            except TroubleError as error:
                first_try = first_try or error.trouble
                if error.trouble.sort in ("over", "passed"):
                    break
            else:
                del marks[count + 1 :]
                return
        self._restore(saved[-1])
        raise TroubleError(self._why(stuck, first_try, saved))

    def _why(self, stuck: Trouble, leaving: Trouble | None, saved: Sequence[Saved]) -> Trouble:
        """The trouble to tell: why the repeat stuck in mid-row, or else what was wrong at the row's end."""
        once = saved[1][0] - saved[0][0] if len(saved) > 1 else 0
        mid_row = len(saved) == 1 or len(self.below) - self.at > once
        if leaving is None or (stuck.sort != "short" and mid_row):
            return stuck
        return leaving

    def _saved(self) -> Saved:
        return self.at, self.last, self.loose, self.skipped, self.skipped_spot, len(self.made), len(self.passed)

    def _restore(self, saved: Saved) -> None:
        self.at, self.last, self.loose, self.skipped, self.skipped_spot, made, passed = saved
        del self.made[made:], self.under[made:], self.passed[passed:]

    def _go(self, spot: Spot, picked: bool = False) -> None:
        self.last = spot
        if spot[1] < self.at:
            return  # back into a place that was skipped
        self.at = spot[1]
        place = self.below[spot[0]] if spot[0] < len(self.below) else None
        space = place is not None and place.kind == CHAIN and place.run != FOUNDATION
        self.loose = picked or space or spot[1] != spot[0] + 1

    def _spots(self, work: Work) -> list[Spot]:
        into = work.into
        if isinstance(into, Next):
            found = []
            at = self.at
            for _ in range(into.count):
                found.append(self._found(into.wanted, work.span))
                self.at = found[-1][1]
            self.at = at
            return found
        if isinstance(into, Ring):
            return [(0, 0)]
        if isinstance(into, FromHook):
            if self.at >= len(self.below):
                raise TroubleError(Trouble("short", work.span, 1))
            return [(self.at, self.at + 1)]
        if isinstance(into, Same):
            return [self._same(into.wanted, work.span)]
        if isinstance(into, Skipped):
            return [self._skipped(into.wanted, work.span)]
        if isinstance(into, First):
            return [self._first(into.wanted, work.span)]
        spots = (
            self.find.last(into, self.at, work.span)
            if isinstance(into, Last)
            else [self.find.turning_chain(into, self.at, work.span)]
        )
        self._pass_over(spots[0][0], work.span, jump=True)
        return spots

    def _found(self, wanted: Wanted, span: Span) -> Spot:
        spot = self.find.next(wanted, self.at, span, Mind(self.last, self.loose, self.skipped))
        if wanted.kind in ("sp", "group", "gap"):
            self._pass_over(spot[0], span, jump=False)
        return spot

    def _pass_over(self, to: int, span: Span, jump: bool) -> None:
        """Notes or refuses the stitches passed over on the way to a place, save those of the group just left and of the one
        come to.
        """
        start = self.find.group_end(self.at) if self.loose and not self.skipped else self.at
        over = sum(self.below[at].like("st") for at in range(start, self.find.group_start(to)))
        if over and (self.skipped or (jump and not self.loose)):
            raise TroubleError(Trouble("passed", span, over))
        if over:
            self.passed.append((span, over))

    def _same(self, wanted: Wanted | None, span: Span) -> Spot:
        spot = self.last or (0, 1)
        if spot[0] >= len(self.below):
            raise TroubleError(Trouble("short", span, 1, wanted))
        place = self.below[spot[0]]
        space = place.kind == CHAIN and place.run != FOUNDATION
        if (
            wanted is not None
            and wanted.kind != "group"
            and (wanted.kind == "sp") != space
            and not (space and wanted.kind == "ch")
        ):
            raise TroubleError(Trouble("other", span, 0, wanted, place))
        return spot

    def _skipped(self, wanted: Wanted, span: Span) -> Spot:
        spot, self.skipped_spot = self.skipped_spot, None
        if spot is None:
            raise TroubleError(Trouble("unskipped", span, 0, wanted))
        return spot

    def _first(self, wanted: Wanted, span: Span) -> Spot:
        if self.at > 1 and not self.row.begins_with:
            raise TroubleError(Trouble("behind", span, 0, wanted))
        return self.find.next(wanted, 0, span, Mind())
