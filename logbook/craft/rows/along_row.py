"""Where the hand is along the row below: how it begins and moves on there, and where its next stitch goes."""

from dataclasses import replace

from logbook.craft.rows.finding import Finder, Mind, RowTrouble, Spot, TroubleError
from logbook.craft.rows.instructions import (
    NEW_YARN,
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
    TurningChain,
    Wanted,
    Work,
    WrittenRow,
)
from logbook.craft.rows.places import CHAIN, FOUNDATION, Place, Row, starts_space


class AlongRow:
    """Goes along ``below``; ``at`` is the first place it has not passed. ``counts``: what the row's first chains stand for.

    ``made``: the places made on the way. ``passed``: stitches passed over unsaid, by the phrase that did.
    """

    def __init__(self, row: WrittenRow, below: Row, counts: Counts, find: Finder) -> None:
        self.row = row
        self.below = below
        self.counts = counts
        self.find = find
        self.at = 0
        self.last: Spot | None = None
        self.made: list[Place] = []
        self.passed: list[tuple[Span, int]] = []
        self._loose = False  # the last stitch went into a space or a group, not into a counted stitch
        self._skipped = False  # the text has just said which stitches to skip
        self._skipped_spots: tuple[Spot, ...] = ()  # those that the text has skipped last
        self.turned = 0  # a round that begins elsewhere meets the places before its beginning last

    @property
    def _joins_yarn(self) -> bool:
        moves = self.row.begins_with
        return bool(moves) and isinstance(last := moves[-1], Work) and last.made.name == NEW_YARN

    def _move(self) -> None:
        """To where the row begins: over its slip stitches, or to where its yarn is joined or its first stitch goes in a round."""
        row, first = self.row, next((item for item in self.row.body if not isinstance(item, Chain)), None)
        if row.begins_with and row.in_round and row.joined and not self._joins_yarn:
            self.at = 1 if self.below and self.below[0].is_stitch else 0  # the join is in the first stitch
        for move in row.begins_with:
            if isinstance(move, Skip):
                self._skip(move)
                continue
            for spot in self._spots(move):
                self._go(spot)
        if row.begins_with and self.last is not None:
            self.last = self._whole_space(self.last)
            self.at = max(self.at, self.last[1])
            self._turn_round(self.last[0])
            self.at = self.last[0] if self._joins_yarn or self._takes_each(first) else self.at
        elif row.in_round and not self.counts.stitch and isinstance(first, Work) and isinstance(first.into, First):
            self._turn_round(self._first(first.into.wanted, first.span)[0])

    @staticmethod
    def _takes_each(first: Instruction | None) -> bool:
        """Whether the row works into every space, that of its slip stitch too: ``sl st in first sp, ch 1, 3 sc in each sp``."""
        body = first.body if isinstance(first, Repeat) else ()
        return (
            len(body) == 1 and isinstance(body[0], Work) and isinstance(body[0].into, Next) and body[0].into.wanted.kind == "sp"
        )

    def _whole_space(self, spot: Spot) -> Spot:
        """The space that a chain is of; the place itself if it is no chain of a space."""
        run = self.below[spot[0]].run if spot[0] < len(self.below) else None
        if run is None or run == FOUNDATION:
            return spot
        return spot[0] - run[1], spot[0] - run[1] + run[0]

    def _turn_round(self, to: int) -> None:
        """In a round, ``to`` becomes the first place, and those before it come last."""
        if not self.row.in_round or not 0 < to < len(self.below):
            return
        self.turned = to
        self.below = self.below[to:] + self.below[:to]
        self.find = Finder(self.below, self.find.chains_count)
        self.at -= min(to, self.at)
        self.last = None if self.last is None else (self.last[0] - to, self.last[1] - to)

    def _skip(self, skip: Skip) -> None:
        if skip.wanted.kind == "tch":
            if self.at == len(self.below) - 1 and self.below[self.at].turning:
                self.at += 1
            return  # one that counts as nothing is no place that could be skipped
        at = self.at
        if skip.first:
            self.at = 0
        spots = []
        for _ in range(skip.count):
            if skip.if_left and self.at >= len(self.below):
                break
            spots.append(self._found(skip.wanted, skip.span))
            self.at = spots[-1][1]
        self._skipped_spots = tuple(spots)
        if skip.first:
            self.at = max(self.at, at)
        self._skipped = skip.wanted.kind not in ("sp", "group")

    def _go(self, spot: Spot, picked: bool = False) -> None:
        self.last = spot
        if spot[1] < self.at:
            return  # back into a place that was skipped
        self.at = spot[1]
        place = self.below[spot[0]] if spot[0] < len(self.below) else None
        space = place is not None and place.kind == CHAIN and place.run != FOUNDATION
        self._loose = (picked and place is not None and place.group is not None) or space or spot[1] != spot[0] + 1

    def _spots(self, work: Work) -> list[Spot]:
        into = work.into
        if isinstance(into, Next):
            found = []
            at = self.at
            for _ in range(into.count):
                found.append(self._found(into.wanted, work.span))
                self.at = found[-1][1]
                self._skipped, self._loose = False, into.wanted.kind in ("sp", "group")
            self.at = at
            return found
        if isinstance(into, Ring):
            return [(0, 0)]
        if isinstance(into, FromHook):
            if self.at >= len(self.below):
                raise TroubleError(RowTrouble("short", work.span, 1))
            return [(self.at, self.at + 1)]
        if isinstance(into, Same):
            return [self._same(into.wanted, work.span)]
        if isinstance(into, Skipped):
            return self._into_skipped(into, work.span)
        if isinstance(into, First):
            return [self._first(into.wanted, work.span)]
        if isinstance(into, TurningChain) and self._at_round_start(into):
            return [(0, 1)]
        if isinstance(into, Last) and self._last_comes(into):
            return self._spots(replace(work, into=Next(into.wanted, into.count)))
        spots = (
            self.find.last(into, self.at, work.span)
            if isinstance(into, Last)
            else [self.find.turning_chain(into, self.at, work.span)]
        )
        self._pass_over(spots[0][0], work.span, jump=True)
        return spots

    def _at_round_start(self, into: TurningChain) -> bool:
        """Whether a round begins in the top of the chains that the one below began with."""
        begins = self.row.in_round and self.at == 0 and not self.made and not into.space
        return begins and bool(self.below) and self.below[0].turning > 0

    def _last_comes(self, into: Last) -> bool:
        """Whether the last of a kind come next, though others stand behind them: ``sc in last puff, sc in top of ch-3``."""
        kind = into.wanted.kind
        if kind in ("st", "ch", "sp", "gap") or self.find.left(self.at, into.wanted) != into.count:
            return False
        return self.find.comes(self.at, into.wanted)

    def _found(self, wanted: Wanted, span: Span) -> Spot:
        spot = self.find.next(wanted, self.at, span, Mind(self.last, self._loose, self._skipped))
        if wanted.kind in ("sp", "group") or (wanted.kind == "gap" and wanted.inner == "group"):
            self._pass_over(spot[0], span, jump=False, bare=wanted.kind == "sp")
        return spot

    def _pass_over(self, to: int, span: Span, jump: bool, bare: bool = False) -> None:
        """Notes or refuses the stitches passed over on the way to a place, save those of the group just left and of the one
        come to.
        """
        start = self.find.group_end(self.at) if self._loose and not self._skipped else self.at
        end = to if bare and self._skipped else self.find.group_start(to)
        over = sum(self.below[at].like("st") for at in range(start, end))
        if over and (self._skipped or (jump and not self._loose)):
            raise TroubleError(RowTrouble("passed", span, over))
        at_edge = sum(place.kind != CHAIN for place in self.made) < 2  # half an arch, as a rule
        spaces = sum(starts_space(self.below[at]) for at in range(start, to)) if over and not jump and not at_edge else 0
        if spaces:
            self.passed.append((span, spaces))

    def _same(self, wanted: Wanted | None, span: Span) -> Spot:
        spot = self.last or (0, 1)
        if spot[0] >= len(self.below):
            raise TroubleError(RowTrouble("short", span, 1, wanted))
        place = self.below[spot[0]]
        space = place.kind == CHAIN and place.run != FOUNDATION
        if wanted is not None and wanted.kind not in ("group", "ch"):
            right = space or spot[0] == spot[1] if wanted.kind == "sp" else place.like(wanted.kind)
            if not right:
                raise TroubleError(RowTrouble("other", span, 0, wanted, place))
        return spot

    def _into_skipped(self, into: Skipped, span: Span) -> list[Spot]:
        spots = self._skipped_spots
        if len(spots) < into.count:
            raise TroubleError(RowTrouble("unskipped", span, 0, into.wanted))
        taken = spots[-1:] if into.count == 1 else spots[: into.count]
        self._skipped_spots = tuple(spot for spot in spots if spot not in taken)
        return list(taken)

    def _first(self, wanted: Wanted, span: Span) -> Spot:
        if self.at > 1 and not self.row.begins_with:
            raise TroubleError(RowTrouble("behind", span, 0, wanted))
        return self.find.next(wanted, 0, span, Mind())
