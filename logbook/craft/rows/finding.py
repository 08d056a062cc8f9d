"""Finds places in the row below: the next dc, the next space, the centre of a shell, the last stitch, the turning chain."""

from dataclasses import dataclass

from logbook.craft.rows.instructions import NOWHERE, Last, Span, TurningChain, Wanted
from logbook.craft.rows.places import CHAIN, FOUNDATION, HEIGHTS, PICOT, Place, Row, counts_in_block, starts_space

Spot = tuple[int, int]  # from this place up to that one: one stitch, or a whole space


@dataclass(frozen=True, slots=True)
class RowTrouble:
    """Why a row does not work at one width.

    ``sort``: ``over`` places are left; ``short`` none is left to work into; ``other`` another kind lies there; ``last`` the
    repeat does not come out at the last N, so many are over; ``passed`` so many stitches would be passed over unsaid; ``part``
    a space is skipped in part; ``behind`` the first place was passed already; ``still`` the repeat takes no place; ``turning``
    there is no turning chain that counts, or (``count``) its top is another chain; ``which`` it is not said which stitch of a
    group; ``edge`` it is not said whether a lone stitch counts as a group; ``rest`` other than so many stitches are left as the
    text says. ``left``: so many places were left at the row's end when its repeat had stopped, −1 if that was not seen.
    """

    sort: str
    span: Span
    count: int = 0
    wanted: Wanted | None = None
    found: Place | None = None
    chains: int = 0
    left: int = -1


@dataclass(frozen=True, slots=True)
class Mind:
    """What the hand has in mind when it looks for a place.

    ``last``: where it last worked. ``loose``: that was a space or a picked stitch of a group, so the rest of that group may be
    passed over. ``skipped``: the text has just said which stitches to skip, so nothing more may be.
    """

    last: Spot | None = None
    loose: bool = False
    skipped: bool = False


class TroubleError(Exception):
    """Carries a trouble out of the row; caught where rows are laid."""

    def __init__(self, trouble: RowTrouble) -> None:
        super().__init__(trouble.sort)
        self.trouble = trouble


class Finder:
    """Looks along ``below``. ``chains_count``: "stitches" that are skipped or left over include chains."""

    def __init__(self, below: Row, chains_count: bool) -> None:
        self.below = below
        self.chains_count = chains_count
        self.met_chains = False
        self._has_spaces = any(map(starts_space, below))
        self._left: dict[Wanted, list[int]] = {}

    def next(self, wanted: Wanted, at: int, span: Span, mind: Mind) -> Spot:
        """The next place of a kind from ``at`` on. Raises TroubleError if there is none, or another stitch lies before it."""
        if wanted.kind == "sp":
            if not wanted.size and not self._has_spaces:
                return self._next_gap(Wanted("gap", inner="group"), at, span, mind.last)
            return self._next_space(wanted, at, span)
        if wanted.kind == "group":
            return self._next_group(wanted, at, span)
        if wanted.kind == "gap":
            return self._next_gap(wanted, at, span, mind.last)
        return self._next_single(wanted, at, span, mind)

    def _next_single(self, wanted: Wanted, at: int, span: Span, mind: Mind) -> Spot:
        found = at
        while found < len(self.below) and self._passes(self.below[found], wanted):
            found += 1
        if found == len(self.below):
            raise TroubleError(RowTrouble("short", span, 1, wanted))
        if mind.skipped and found > at and self._inside_space(at):
            raise TroubleError(RowTrouble("part", span, found - at, wanted, self.below[at]))
        place = self.below[found]
        if wanted.kind == "either":
            return self._either(wanted, found, span)
        if not (place.like(wanted.kind) or (wanted.kind == "st" and place.kind == CHAIN)):
            beyond = self.group_end(found)
            if mind.loose and not mind.skipped and self.group_start(found) < at:
                return self._next_single(wanted, beyond, span, Mind(mind.last))
            raise TroubleError(RowTrouble("other", span, 0, wanted, place))
        return found, found + 1

    def _passes(self, place: Place, wanted: Wanted) -> bool:
        """Whether a look for a stitch goes on over this place."""
        if wanted.kind == "either":
            if place.kind == CHAIN and place.run != FOUNDATION and any(each.kind == "sp" for each in wanted.either):
                return False
            return place.kind == PICOT or (place.kind == CHAIN and not any(self._is(place, each) for each in wanted.either))
        if place.kind != CHAIN or place.run == FOUNDATION or wanted.kind == "ch":
            return place.kind == PICOT and wanted.kind != PICOT
        if wanted.kind == "st":
            self.met_chains = True
            return not self.chains_count
        return True

    def is_one(self, at: int, wanted: Wanted) -> bool:
        """Whether the place there is one of that kind."""
        return self._is(self.below[at], wanted)

    def _is(self, place: Place, wanted: Wanted) -> bool:
        if wanted.kind == "sp":
            return starts_space(place) and wanted.size in (0, place.run[0] if place.run else 0)
        return place.like(wanted.kind)

    def _either(self, wanted: Wanted, at: int, span: Span) -> Spot:
        place = self.below[at]
        for each in wanted.either:
            if self._is(place, each):
                return (at, at + place.run[0]) if each.kind == "sp" and place.run else (at, at + 1)
        raise TroubleError(RowTrouble("other", span, 0, wanted.either[0], place))

    def _inside_space(self, at: int) -> bool:
        run = self.below[at].run
        return run is not None and run[1] > 0

    def _next_space(self, wanted: Wanted, at: int, span: Span) -> Spot:
        found = at
        while found < len(self.below) and not self._is(self.below[found], wanted):
            found += 1
        if found == len(self.below):
            unsaid = wanted.name == "corner" and not self._has_spaces
            raise TroubleError(RowTrouble("which" if unsaid else "short", span, 1, wanted))
        run = self.below[found].run or FOUNDATION
        return found, found + run[0]

    def _next_gap(self, wanted: Wanted, at: int, span: Span, last: Spot | None) -> Spot:
        first = at + 1 if wanted.inner != "group" or last == (at, at) else max(at, 1)
        first = 1 if wanted.part == 1 else first
        first = max(at, len(self.below) - 1) if wanted.part == -1 else first
        for found in range(max(first, 1), len(self.below)):
            if self._is_gap(wanted, found, span):
                return found, found
        raise TroubleError(RowTrouble("short", span, 1, wanted))

    def _is_gap(self, wanted: Wanted, at: int, span: Span) -> bool:
        """Whether a gap of that kind lies before the place there."""
        before, after = self.below[at - 1], self.below[at]
        if at == 0 or not (before.is_stitch and after.is_stitch):
            return False
        return wanted.inner != "group" or (self._parts(before, after) and self._are_groups(wanted, at, span))

    def _are_groups(self, wanted: Wanted, at: int, span: Span) -> bool:
        """Whether a gap lies between two groups as the text names them; a lone stitch beside one leaves that open."""
        sizes = [self._side_by_side(at - 1, -1), self._side_by_side(at, 1)]
        if wanted.name != "between":
            return True
        if wanted.size:
            return sizes == [wanted.size, wanted.size]
        if 1 in sizes:
            raise TroubleError(RowTrouble("edge", span, 0, wanted))
        return True

    def _side_by_side(self, at: int, step: int) -> int:
        """How many stitches of no group stand side by side from there, or are in its group: those at an edge are one group."""
        place = self.below[at]
        if place.group is not None:
            return place.group[1]
        count = 0
        while 0 <= at < len(self.below) and self.below[at].is_stitch and self.below[at].group is None:
            count, at = count + 1, at + step
        return count

    @staticmethod
    def _parts(before: Place, after: Place) -> bool:
        """Whether two neighbours belong to different groups."""
        if before.group is None and after.group is None:
            return False
        return before.group is None or after.group is None or after.group[2] == 0

    def _next_group(self, wanted: Wanted, at: int, span: Span) -> Spot:
        first = self.group_start(at) if at < len(self.below) and (wanted.part == "centre" or isinstance(wanted.part, int)) else at
        for found in range(first, len(self.below)):
            if self._begins_group(found, wanted):
                group = self.below[found].group
                if found < at and self._in_group(found, found + (group[1] if group else 0), wanted, span)[0] < at:
                    continue
                return self._in_group(found, found + (group[1] if group else 0), wanted, span)
        raise TroubleError(RowTrouble("short", span, 1, wanted))

    def _begins_group(self, at: int, wanted: Wanted) -> bool:
        group = self.below[at].group
        if group is None or group[2] != 0 or at + group[1] > len(self.below):
            return False
        places = self.below[at : at + group[1]]
        stitches = sum(place.is_stitch for place in places)
        size = wanted.size if wanted.part != "sp" else 0
        if size and stitches != size:
            return False
        if group[0] or wanted.name == "group":
            return wanted.name in ("group", group[0].partition(",")[0])
        if wanted.name == "v-st":
            return stitches == 2 and len(places) > 2
        return wanted.name in ("shell", "fan") and stitches > 2

    def _in_group(self, start: int, end: int, wanted: Wanted, span: Span) -> Spot:
        """The place in the group from ``start`` up to ``end`` that is meant."""
        if wanted.part == "whole":
            return start, end
        if wanted.part in ("", "sp"):
            return self._space_in_group(start, end, wanted, span)
        stitches = [at for at in range(start, end) if self.below[at].like(wanted.inner) or self.below[at].kind == wanted.inner]
        if wanted.part == "centre":
            if len(stitches) % 2:
                middle = stitches[len(stitches) // 2]
                return middle, middle + 1
        elif isinstance(wanted.part, int) and abs(wanted.part) <= len(stitches):
            chosen = stitches[wanted.part - 1 if wanted.part > 0 else wanted.part]
            return chosen, chosen + 1
        raise TroubleError(RowTrouble("which", span, len(stitches), wanted))

    def _space_in_group(self, start: int, end: int, wanted: Wanted, span: Span) -> Spot:
        found = [at for at in range(start, end) if starts_space(self.below[at])]
        sizes = [(self.below[at].run or FOUNDATION)[0] for at in found]
        if wanted.part == "sp" and wanted.size:
            found = [at for at, size in zip(found, sizes, strict=True) if size == wanted.size]
        if len(found) % 2 == 0:
            raise TroubleError(RowTrouble("which", span, len(found), wanted))
        at = found[len(found) // 2]
        return at, at + (self.below[at].run or FOUNDATION)[0]

    def group_end(self, at: int) -> int:
        """Where the group ends that began before ``at``; ``at`` itself if none did."""
        group = self.below[at].group if at < len(self.below) else None
        return at if group is None or group[2] == 0 else at + group[1] - group[2]

    def group_start(self, at: int) -> int:
        """Where the group begins that the place at ``at`` is of; ``at`` itself if it is of none."""
        group = self.below[at].group if at < len(self.below) else None
        return at if group is None else at - group[2]

    def last(self, into: Last, at: int, span: Span) -> list[Spot]:
        """The last ``into.count`` places of a kind, none of them before ``at``."""
        spots: list[Spot] = []
        found = len(self.below)
        while len(spots) < into.count:
            found -= 1
            if found < at:
                raise TroubleError(RowTrouble("short", span, into.count - len(spots), into.wanted))
            spot = self._last_here(into.wanted, found, span)
            if spot is not None:
                spots.insert(0, spot)
        return spots

    def _last_here(self, wanted: Wanted, at: int, span: Span) -> Spot | None:
        """The place of that kind that begins here; None if the look goes on backwards."""
        place = self.below[at]
        if wanted.kind == "gap":
            return (at, at) if self._is_gap(wanted, at, span) else None
        if wanted.kind == "sp":
            size = place.run[0] if place.run else 0
            return (at, at + size) if starts_space(place) and wanted.size in (0, size) else None
        if wanted.kind == "group":
            if not self._begins_group(at, wanted):
                return None
            return self._in_group(at, at + (place.group[1] if place.group else 0), wanted, span)
        if self._passes(place, wanted):
            return None
        if not (place.like(wanted.kind) or (wanted.kind == "st" and place.kind == CHAIN)):
            raise TroubleError(RowTrouble("other", span, 0, wanted, place))
        return at, at + 1

    def turning_chain(self, into: TurningChain, at: int, span: Span) -> Spot:
        """The turning chain's stitch, its space or one of its chains. Raises TroubleError if it does not count as a stitch."""
        end = len(self.below) - 1
        if end < at or not self.below[end].turning:
            raise TroubleError(RowTrouble("turning", span))
        height = self.below[end].turning
        run = self.below[end - 1].run if end else None
        size = run[0] if run and run != FOUNDATION else 0
        if into.space:
            if not size:
                raise TroubleError(RowTrouble("turning", span))
            found = (end - size, end)
        elif into.chain > height and size:
            found = (end - (into.chain - height), end - (into.chain - height) + 1)
        else:
            found = (end, end + 1)
        if 0 < into.chain < height or into.chain > height + size or found[0] < at:
            raise TroubleError(RowTrouble("turning", span, height))
        return found

    def left(self, at: int, wanted: Wanted) -> int:
        """How many places of a kind lie from ``at`` on."""
        if wanted not in self._left:
            counts = [0]
            for index in range(len(self.below) - 1, -1, -1):
                counts.append(counts[-1] + self._counts_as(index, wanted))
            self._left[wanted] = counts[::-1]
        return self._left[wanted][min(at, len(self.below))]

    def _counts_as(self, index: int, wanted: Wanted) -> bool:
        place = self.below[index]
        if counts_in_block(place) and wanted.kind in ("sp", "st", *HEIGHTS):
            return wanted.kind != "sp"
        if wanted.kind == "sp":
            return self._is(place, wanted)
        if wanted.kind == "group":
            return self._begins_group(index, wanted)
        if wanted.kind == "st" and place.kind == CHAIN and place.run != FOUNDATION:
            self.met_chains = True
            return self.chains_count
        return place.like(wanted.kind)

    def left_to_turning_chain(self, at: int) -> int:
        """How many stitches lie between ``at`` and the turning chain at the end."""
        if not self.below or not self.below[-1].turning:
            return -1
        return self.left(at, Wanted("st")) - 1

    def space_comes(self, at: int, wanted: Wanted) -> bool:
        """Whether the next space is of a kind."""
        found = next((index for index in range(at, len(self.below)) if starts_space(self.below[index])), -1)
        return found >= 0 and self._is(self.below[found], wanted)

    def comes(self, at: int, wanted: Wanted) -> bool:
        """Whether the next place is of a kind."""
        if at >= len(self.below):
            return False
        if wanted.kind == "group" and (wanted.part == "centre" or isinstance(wanted.part, int)):
            start = self.group_start(at)
            group = self.below[start].group
            begins = group is not None and self._begins_group(start, wanted)
            return begins and group is not None and self._in_group(start, start + group[1], wanted, NOWHERE)[0] == at
        if wanted.kind == "group":
            return self._begins_group(at, wanted)
        return self._is(self.below[at], wanted)
