"""Where a stitch goes: ``next 3 dc``, ``each st across``, ``centre dc of next shell``, ``4th ch from hook``."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.how_far import HowFar
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    First,
    FromHook,
    Instruction,
    Last,
    Made,
    Next,
    Repeat,
    Ring,
    Same,
    Skipped,
    Target,
    ToEnd,
    TurningChain,
    Until,
    Wanted,
)
from logbook.craft.rows.place_kinds import PlaceKinds
from logbook.craft.rows.turning_noun import turning_noun
from logbook.craft.rows.word import NUMBER, ORDINAL


@dataclass(frozen=True, slots=True)
class Each:
    """Every place of a kind, as far as ``until``."""

    wanted: Wanted
    until: Until
    said: bool = True
    nth: int = 1  # of so many places one


class Targets:
    """Reads where stitches go and how far. ``names``: what the pattern itself calls stitches made in one place."""

    def __init__(self, names: Mapping[str, Made]) -> None:
        self.places = PlaceKinds(names)
        self.how_far = HowFar(self.places)
        self.in_ring = False  # the row has spoken of a ring
        self.items: list[Instruction] = []  # what the row has done so far
        self.at_hook = False  # row 1 has worked nothing yet
        self.in_round = False
        self.loop_is_ring = False  # a round 1 has no other loop to work into than the ring's

    def target(self, cur: Cursor) -> Target | Each:
        """What follows "in"."""
        found = self._centre_of_group(cur) or self._fixed(cur)
        if found is not None:
            return found
        if cur.next_is("rem"):
            return self._rest(cur)
        if cur.accept("everyother") or (cur.next_is("each") and cur.sort_is(ORDINAL, 1)):
            return self._every_nth(cur)
        if cur.accept("each"):
            return self._each(cur)
        if cur.accept("any"):
            return First(self.places.wanted_or_any(cur))
        if cur.accept("first") or self._accept_first(cur):
            return self._first(cur)
        if cur.accept("last"):
            return self._last(cur)
        if cur.sort_is(ORDINAL) and cur.next_is("st", ahead=1) and cur.next_is("from", ahead=2):
            raise cur.fail("it is not clear where on the edge that is")
        return self._next(cur)

    def _centre_of_group(self, cur: Cursor) -> Next | None:
        """``centre of next shell``; of anything else, only the words before its name are stepped over."""
        if not (cur.next_is("centre") and cur.next_is("of", ahead=1)):
            return None
        start = cur.at
        cur.at += 2
        cur.accept("first", "next", "same", "last", "each")
        group = self.places.wanted(cur)
        if group is not None and group.kind == "group" and not cur.next_is("toend", "around"):
            return Next(replace(group, part="centre"))
        cur.at = start + 2 if cur.next_is("first", "next", "same", ahead=start + 2 - cur.at) else start
        return None

    def _every_nth(self, cur: Cursor) -> Each:
        """``every other st``, ``every 3rd st``."""
        cur.at += cur.next_is("each")
        nth = cur.ordinal() or 2
        wanted = self.places.wanted_or_any(cur)
        return Each(wanted, self.how_far.until(cur) or ToEnd(), nth=nth)

    def _first(self, cur: Cursor) -> First | Next:
        """``first 3 dc``, ``first dc of next shell``."""
        if self.places.part_follows(cur):
            return Next(self.places.part(cur, "first"))
        count = None if self.places.names_a_size(cur) else cur.number()
        if count is not None and count > 1:
            return Next(self.places.wanted_or_any(cur), count)
        return First(self.places.wanted_or_any(cur))

    def _next(self, cur: Cursor) -> Target | Each:
        """``next 3 dc``, ``these 2 sts``, ``dc``, ``ch-1 sp just skipped``."""
        if not (cur.sort_is(NUMBER, 1) and cur.accept("these", "those")):
            cur.accept("next")
        if cur.next_is("tch") or (cur.next_is("ch") and turning_noun(cur)):
            return TurningChain()
        count = None if self.places.names_a_size(cur) else cur.number()
        self.places.of_each = False
        wanted = self.places.wanted_or_any(cur)
        if self.places.of_each:
            return Each(wanted, self.how_far.until(cur) or ToEnd())
        if cur.next_is("skipped") or (cur.next_is("just", "you", "previously") and cur.next_is("skipped", ahead=1)):
            cur.at += 1 if cur.next_is("skipped") else 2
            return Skipped(wanted, count or 1)
        return Same() if self.at_base(cur) else Next(wanted, count or 1)

    def _rest(self, cur: Cursor) -> Target | Each:
        """``remaining 4 sts``, ``remaining sts``."""
        cur.accept("rem")
        count = None if self.places.names_a_size(cur) else cur.number()
        wanted = self.places.wanted_or_any(cur)
        return Next(wanted, count) if count else Each(wanted, self.how_far.until(cur) or ToEnd())

    def at_base(self, cur: Cursor) -> bool:
        """Steps over ``at base of tch``, ``at base of ch``."""
        start = cur.at
        if cur.accept("at") and cur.accept("baseof"):
            cur.accept("these", "same", "beg")
            if turning_noun(cur, take=True) or cur.accept("ch"):
                return True
        cur.at = start
        return False

    def _accept_first(self, cur: Cursor) -> bool:
        if cur.sort_is(ORDINAL) and cur.word().value == 1 and not cur.next_is("ch", ahead=1):
            cur.at += 1
            return True
        return False

    def _fixed(self, cur: Cursor) -> Target | Each | None:
        """Places named by themselves: at the hook, the ring, the turning chain, the same place."""
        if cur.accept("ring", "mc"):
            return Ring()
        if (self.in_ring and cur.accept("it")) or (self.loop_is_ring and cur.accept("sp")):
            return Ring()
        if cur.next_is("skipped") or (cur.next_is("prev", "previous", "just", "last") and cur.next_is("skipped", ahead=1)):
            cur.at += 1 if cur.next_is("skipped") else 2
            return Skipped(self.places.wanted_or_any(cur))
        if cur.sort_is(NUMBER) and cur.next_is("skipped", "sk", ahead=1) and not cur.next_is("ch", ahead=2):
            count = cur.number() or 1
            cur.at += 1
            return Skipped(self.places.wanted_or_any(cur), count)
        if cur.accept("same"):
            wanted = None if cur.accept("place") else self.places.wanted(cur)
            if self._where_it_began(cur):
                return Next(ANY_STITCH, 0)
            self._skip_as(cur)
            return Same(wanted)
        if cur.accept("at") or cur.next_is("baseof"):
            if not cur.accept("baseof"):
                raise cur.fail()
            if not (turning_noun(cur, take=True) or cur.accept("same", "ch")):
                raise cur.fail()
            return Same()
        if cur.sort_is(ORDINAL) and cur.next_is("skipped", "sk", ahead=1) and cur.next_is("ch", ahead=2):
            cur.at += 3  # which of them it is counts from the foundation
            return TurningChain()
        if (cur.sort_is(ORDINAL) or cur.next_is("first", "next")) and cur.next_is("ch", "of", "fromhook", ahead=1):
            return self._chain(cur)
        if cur.accept("topof"):
            cur.accept("last")
            if turning_noun(cur, take=True):
                return TurningChain()
            return self.target(cur)
        return self._turning(cur)

    def _turning(self, cur: Cursor) -> TurningChain | None:
        ahead = 1 if cur.next_is("last") else 0
        if cur.next_is("tch", ahead=ahead):
            cur.at += ahead + 1
            return TurningChain(space=cur.accept("sp"))
        start = cur.at
        named = self.places.names_a_size(cur) or cur.next_is("ch")
        if (
            named
            and (space := self.places.wanted(cur))
            and space.kind == "sp"
            and cur.accept("of")
            and turning_noun(cur, take=True)
        ):
            return TurningChain(space=True)
        cur.at = start
        cur.accept("last")
        if cur.accept("sp") and cur.accept("of", "under") and turning_noun(cur, take=True):
            return TurningChain(space=True)
        cur.at = start
        if cur.next_is("ch") and turning_noun(cur):
            turning_noun(cur, take=True)
            return TurningChain(space=cur.accept("sp"))
        return None

    def _chain(self, cur: Cursor) -> Target | Each | None:
        """``4th ch from hook``, ``3rd ch of tch``; None if it is a chain like any other."""
        start = cur.at
        which = cur.ordinal()
        if which is None:
            which = 1 if cur.accept("first") else 0
            cur.accept("next")
        cur.accept("ch")
        if cur.accept("fromhook"):
            return FromHook(which or 1)
        if cur.accept("of", "in") and turning_noun(cur, take=True):
            return TurningChain(which)
        if self.at_hook and which > 1 and not cur.next_is("of", ahead=-1):
            return FromHook(which)  # "sc in 2nd ch"
        cur.at = start
        return None

    def _where_it_began(self, cur: Cursor) -> bool:
        """Steps over ``as first 3 ch`` at a round's end: more of what was made where it began."""
        start = cur.at
        worked = self.in_round and any(isinstance(item, Repeat) for item in self.items)
        if worked and cur.accept("as") and cur.next_is("first", "begch", "tch", "beg", "join", "joining"):
            cur.skip_to((*BREAKS, ")", "]", "and"))
            return True
        cur.at = start
        return False

    def _skip_as(self, cur: Cursor) -> None:
        """Steps over "as joining", "as last dc": it says nothing new."""
        if cur.accept("as"):
            if cur.next_is("begch", "tch", "ch", "beg") and any(isinstance(item, Repeat) for item in self.items):
                raise cur.fail("only the place just worked into can be gone back to")
            cur.skip_to((*BREAKS, ")", "]", "and"))

    def _each(self, cur: Cursor) -> Target | Each:
        while cur.accept("of", "rem", "other"):
            pass
        if cur.sort_is(NUMBER) and cur.next_is("skipped", "sk", ahead=1):
            skipped = cur.number() or 1
            cur.at += 1
            return Skipped(self.places.wanted_or_any(cur), skipped)
        step = next((step for step in ("next", "first", "last") if cur.accept(step)), "")
        count = None if self.places.names_a_size(cur) else cur.number()
        wanted = self.places.wanted_or_any(cur)
        if count is not None:
            cur.accept("toend", "around")
            return Last(wanted, count) if step == "last" else Next(wanted, count)
        others = []
        while cur.next_is("and") and (self.places.is_named(cur, 1) or (cur.next_is("each", "in", ahead=1))):
            start = cur.at
            cur.at += 1
            cur.accept("in")
            cur.accept("each")
            if cur.next_is("next", "last", "first", "same") or (other := self.places.wanted(cur)) is None:
                cur.at = start
                break
            others.append(other)
        if others:
            wanted = Wanted("either", either=(wanted, *others))
        until = self.how_far.until(cur)
        return Each(wanted, until or ToEnd(), until is not None)

    def _last(self, cur: Cursor) -> Target | Each:
        if self.places.part_follows(cur):
            return Next(self.places.part(cur, "last"))
        count = None if self.places.names_a_size(cur) else cur.number()
        return Last(self.places.wanted_or_any(cur), count or 1)
