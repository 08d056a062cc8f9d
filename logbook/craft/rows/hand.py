"""The hand that works a row: what it makes of each instruction, and what may be left at the end."""

from collections.abc import Sequence
from dataclasses import replace

from logbook.craft.rows.along_row import AlongRow
from logbook.craft.rows.finding import Finder, Mind, RowTrouble, Spot, TroubleError
from logbook.craft.rows.instructions import (
    Chain,
    Counts,
    Either,
    First,
    Instruction,
    Last,
    Next,
    OtherSide,
    Repeat,
    Same,
    Skip,
    Skipped,
    Work,
    WrittenRow,
    works_of,
)
from logbook.craft.rows.places import CHAIN, FOUNDATION, Place, Row, new_place, starts_space

FEW = 4  # stitches that are worked one by one
Saved = tuple[int, Spot | None, bool, bool, tuple[Spot, ...], int, int]


def _into_stitch(work: Work) -> bool:
    """Whether stitches are taken one after another, so that none of them may be left over."""
    return isinstance(work.into, Next) and work.into.count > 0 and work.into.wanted.kind not in ("sp", "group", "gap")


def _goes_back(body: Sequence[Instruction]) -> bool:
    """Whether the row works into what it skipped."""
    return any(
        _goes_back(item.body) if isinstance(item, Repeat) else isinstance(item, Work) and isinstance(item.into, Skipped)
        for item in body
    )


class Hand(AlongRow):
    """Works ``row`` along ``below``. ``under``: beside each place made, what lies under it."""

    def __init__(self, row: WrittenRow, below: Row, counts: Counts, find: Finder) -> None:
        super().__init__(row, below, counts, find)
        self.under: list[tuple[Spot, ...]] = []
        self._goes_back = _goes_back(row.body)
        self._other_side = False
        self._only_spaces = all(
            isinstance(work.into, Next | Last | First)
            and work.into.wanted.kind == "sp"
            and len(work.made.items) > (2 if counts.stitch and not row.begins_with else 1)
            for work in works_of(row.body)
            if not isinstance(work.into, Same)
        )
        self._counts_stitches = any(_into_stitch(work) for work in works_of(row.body))

    def begin(self) -> None:
        """The row's first moves and chains."""
        self._move()
        opening = self.row.opening
        if opening is None:
            return
        if opening.at_hook:
            if opening.chains > len(self.below):
                raise TroubleError(RowTrouble("short", opening.span, opening.chains - len(self.below)))
            self.at = opening.chains
        elif self.counts.stitch and self.below and not self.counts.at_base and (not self.row.begins_with or self._joins_yarn):
            self._go(self.last or (0, 1))
        self._loose = self._skipped = False
        if self.counts.stitch:
            over = opening.chains - 1 - self.counts.over if opening.at_hook else 0
            under = self.last or (over, over + 1)
            self._add([new_place(self.counts.stitch, turning=self.counts.height)], (under,))
        if self.counts.chains:
            self._add([new_place(CHAIN)] * self.counts.chains, ())

    def end(self) -> None:
        """Nothing may be left. Raises TroubleError."""
        rest = self.below[self.at :]
        if self.row.leaves_rest:
            left = sum(place.like("st") for place in rest)
            if self.row.leaves and left != self.row.leaves:
                raise TroubleError(RowTrouble("rest", self.row.span, left))
            return
        if not self._counts_stitches:
            met = self.find.group_end(self.at) if self._loose else self.at
            if (
                self.row.in_round
                and self._loose
                and not any(map(starts_space, self.below[self.at : len(self.below) - self.turned]))
            ):
                return  # between the last space and the first, as between others
            if not any(place.like("st") for place in self.below[met : len(self.below) - self.turned]) and (
                self._loose or self.turned
            ):
                return
        stitches = sum(place.like("st") for place in rest)
        if stitches == 1 and len(rest) == 1 and self._only_spaces:
            return  # behind the last space one stitch is left, as between them
        if stitches == 1 and self.last is not None and self.last[0] == self.last[1]:
            return  # worked between stitches: the last one stands behind the last gap
        if self._other_side and len(rest) <= 1 + bool(self.counts.stitch):
            return  # the chain at the hook is worked into from both sides or from one
        chains = sum(place.kind == CHAIN for place in rest)
        if stitches or (chains and not self.row.in_round):
            raise TroubleError(RowTrouble("over", self.row.span, stitches, chains=chains))

    def do(self, item: Chain | Skip | Work | Either | OtherSide) -> None:
        """One instruction. Raises TroubleError if it does not work here."""
        if isinstance(item, Chain):
            self._add([new_place(CHAIN)] * item.count, ())
        elif isinstance(item, Skip):
            self._skip(item)
        elif isinstance(item, Either):
            self._either(item)
        elif isinstance(item, OtherSide):
            self._turn_to_other_side(item)
        else:
            self._work(item)

    def _turn_to_other_side(self, item: OtherSide) -> None:
        """On along the foundation chain's other side: all chains once more from the last but one back, the end one shared."""
        opening = self.row.opening
        if opening is None or not opening.at_hook or self.at < len(self.below):
            rest = len(self.below) - self.at
            raise TroubleError(RowTrouble("over", item.span, rest, chains=rest))
        from_hook = opening.chains - bool(self.counts.stitch)
        self.below = (*self.below, *reversed(self.below[from_hook:-1]))
        self.find = Finder(self.below, self.find.chains_count)
        self._other_side = True

    def _either(self, item: Either) -> None:
        spot = self.find.next(item.wanted, self.at, item.span, Mind(self.last, self._loose, self._skipped))
        for work in item.works:
            if isinstance(work.into, Next) and self.find.is_one(spot[0], work.into.wanted):
                self._go(spot)
                self._make(work, (spot,))
                self._skipped = False
                return

    @property
    def mind(self) -> tuple[object, ...]:
        """All that decides, beside the places to come, what the hand will do next; places counted from where it is."""
        behind = None if self.last is None else (self.at - self.last[0], self.at - self.last[1])
        spots = self._skipped_spots if self._goes_back else ()
        return behind, self._loose, self._skipped, tuple(self.at - spot[0] for spot in spots)

    def saved(self) -> Saved:
        """To come back to with ``restore``."""
        return self.at, self.last, self._loose, self._skipped, self._skipped_spots, len(self.made), len(self.passed)

    def restore(self, saved: Saved) -> None:
        self.at, self.last, self._loose, self._skipped, self._skipped_spots, made, passed = saved
        del self.made[made:], self.under[made:], self.passed[passed:]

    def _work(self, work: Work) -> None:
        if isinstance(work.into, Next) and work.into.count == 0:
            self._make(work, ())
            return
        if self._all_alike(work):
            return
        picked = isinstance(work.into, First) or (isinstance(work.into, Next | Last) and work.into.wanted.kind == "group")
        spots = self._spots(work)
        for spot in spots:
            self._go(spot, picked)
            if not work.together:
                self._make(work, (spot,))
        if work.together:
            self._make(work, tuple(spots))
        self._skipped = False

    def _all_alike(self, work: Work) -> bool:
        """Works many stitches at once where the places for them are all the same; False if they are not."""
        into = work.into
        if (
            not isinstance(into, Next)
            or into.count < FEW
            or work.together
            or into.wanted.kind in ("sp", "group", "gap", "either")
        ):
            return False
        start, end = self.at, self.at + into.count
        place = self.below[start] if start < len(self.below) else None
        if (
            place is None
            or not (place.run is None or place.run == FOUNDATION)
            or not place.like(into.wanted.kind)
            or self._tch_alone
        ):
            return False
        alike = self.below[start:end].count(place)
        if end > len(self.below) and alike == len(self.below) - start:
            self.at = len(self.below)
            raise TroubleError(RowTrouble("short", work.span, 1, into.wanted))
        if alike != into.count:
            return False
        items, name = work.made.items, work.made.name
        size = len(items)
        once = [new_place(kind, (name, size, which) if size > 1 else None) for which, kind in enumerate(items)]
        self.made += once * into.count
        spots = list(zip(zip(range(start, end), range(start + 1, end + 1), strict=True), strict=True))
        self.under += spots if size == 1 else [spot for spot in spots for _ in once]
        self.last, self.at = (end - 1, end), end
        self._loose = self._skipped = False
        return True

    def _make(self, work: Work, under: tuple[Spot, ...]) -> None:
        items, name = work.made.items, work.made.name
        if self._tch_alone and under and under == self.under[0]:
            first = len(self.made)
            size = len(items) + first  # made where the turning chain stands, they and it are one group
            self.made = [replace(place, group=(name, size, which)) for which, place in enumerate(self.made)]
            self._add([new_place(kind, (name, size, which)) for which, kind in enumerate(items, first)], under)
        elif len(items) == 1:
            self._add([new_place(items[0])], under)
        else:
            self._add([new_place(kind, (name, len(items), which)) for which, kind in enumerate(items)], under)

    @property
    def _tch_alone(self) -> bool:
        return len(self.made) == 1 + self.counts.chains and self.made[0].turning > 0

    def _add(self, places: list[Place], under: tuple[Spot, ...]) -> None:
        self.made += places
        self.under += [under] * len(places)
