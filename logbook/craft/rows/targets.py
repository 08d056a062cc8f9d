"""Where a stitch goes: ``next 3 dc``, ``each st across``, ``centre dc of next shell``, ``4th ch from hook``."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    First,
    FromHook,
    Last,
    Made,
    Next,
    Ring,
    Same,
    Skipped,
    Target,
    Times,
    ToEnd,
    ToLast,
    ToNext,
    ToTurningChain,
    TurningChain,
    Until,
    Wanted,
)
from logbook.craft.rows.words import NUMBER, ORDINAL, STITCH, TOGETHER

ONE_STITCH_NAMES = ("cl", "pc", "puff", "bobble", "picot")  # many loops, but one top
GROUP_NAMES = ("shell", "fan", "v-st", "group", "block")


@dataclass(frozen=True, slots=True)
class Each:
    """Every place of a kind, as far as ``until``."""

    wanted: Wanted
    until: Until
    said: bool = True


class Targets:
    """Reads places. ``names``: what the pattern itself calls stitches made in one place."""

    def __init__(self, names: Mapping[str, Made]) -> None:
        self.names = names
        self._of_each = False  # the last kind of place was "of each" group

    def target(self, cur: Cursor) -> Target | Each:
        """What follows "in"."""
        if cur.next_is("centre") and cur.next_is("of", ahead=1) and cur.next_is("first", "next", "same", ahead=2):
            cur.at += 2
        fixed = self._fixed(cur)
        if fixed is not None:
            return fixed
        if cur.accept("each"):
            return self._each(cur)
        if cur.accept("any"):
            return First(self.wanted_or_any(cur))
        if cur.accept("first") or self._accept_first(cur):
            if self._part_follows(cur):
                return Next(self._part(cur, "first"))
            count = None if self.names_a_size(cur) else cur.number()
            if count is not None and count > 1:
                return Next(self.wanted_or_any(cur), count)
            return First(self.wanted_or_any(cur))
        if cur.accept("last"):
            return self._last(cur)
        cur.accept("next")
        if cur.next_is("tch") or (cur.next_is("ch") and self._turning_noun(cur)):
            return TurningChain()
        count = None if self.names_a_size(cur) else cur.number()
        self._of_each = False
        wanted = self.wanted_or_any(cur)
        return Each(wanted, self.until(cur) or ToEnd()) if self._of_each else Next(wanted, count or 1)

    def _accept_first(self, cur: Cursor) -> bool:
        if cur.sort_is(ORDINAL) and cur.word().value == 1 and not cur.next_is("ch", ahead=1):
            cur.at += 1
            return True
        return False

    def _fixed(self, cur: Cursor) -> Target | Each | None:
        """Places named by themselves: at the hook, the ring, the turning chain, the same place."""
        if cur.accept("ring"):
            return Ring()
        if cur.next_is("skipped") or (cur.next_is("prev", "previous", "just", "last") and cur.next_is("skipped", ahead=1)):
            cur.at += 1 if cur.next_is("skipped") else 2
            return Skipped(self.wanted_or_any(cur))
        if cur.sort_is(NUMBER) and cur.next_is("skipped", "sk", ahead=1) and not cur.next_is("ch", ahead=2):
            count = cur.number() or 1
            cur.at += 1
            return Skipped(self.wanted_or_any(cur), count)
        if cur.accept("same"):
            wanted = None if cur.accept("place") else self.wanted(cur)
            self._skip_as(cur)
            return Same(wanted)
        if cur.accept("at") or cur.next_is("baseof"):
            if not cur.accept("baseof"):
                raise cur.fail()
            if not (self._turning_noun(cur, take=True) or cur.accept("same")):
                raise cur.fail()
            return Same()
        if (cur.sort_is(ORDINAL) or cur.next_is("first", "next")) and cur.next_is("ch", "of", ahead=1):
            return self._chain(cur)
        if cur.accept("topof"):
            cur.accept("last")
            if self._turning_noun(cur, take=True):
                return TurningChain()
            return self.target(cur)
        return self._turning(cur)

    def _turning(self, cur: Cursor) -> TurningChain | None:
        ahead = 1 if cur.next_is("last") else 0
        if cur.next_is("tch", ahead=ahead):
            cur.at += ahead + 1
            return TurningChain(space=cur.accept("sp"))
        start = cur.at
        cur.accept("last")
        if cur.accept("sp") and cur.accept("of", "under") and self._turning_noun(cur, take=True):
            return TurningChain(space=True)
        cur.at = start
        if cur.next_is("ch") and self._turning_noun(cur):
            self._turning_noun(cur, take=True)
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
        if cur.accept("of", "in") and self._turning_noun(cur, take=True):
            return TurningChain(which)
        cur.at = start
        return None

    def _turning_noun(self, cur: Cursor, take: bool = False) -> bool:
        """Whether a turning chain is named next (``tch``, ``beg ch-3``, ``ch-4 tch``, ``3 skipped chs``); steps over it if
        told.
        """
        start = cur.at
        cur.accept("beg", "last")
        found = cur.accept("tch", "begch")
        if found and cur.accept("-"):
            cur.number()
        if not found:
            numbered = cur.number() is not None
            if cur.accept("skipped", "sk"):
                cur.number()
                found = cur.accept("ch")
            elif numbered and cur.accept("tch"):
                found = True
            elif cur.accept("ch") and (numbered or (cur.accept("-"), cur.number())[1] is not None):
                found = cur.accept("tch") or (take and not cur.next_is("sp"))
        if not (found and take):
            cur.at = start
        return found

    def _skip_as(self, cur: Cursor) -> None:
        """Steps over "as joining", "as last dc": it says nothing new."""
        if cur.accept("as"):
            cur.skip_to((*BREAKS, ")", "]", "and"))

    def _each(self, cur: Cursor) -> Target | Each:
        cur.accept("of", "rem")
        if cur.sort_is(NUMBER) and cur.next_is("skipped", "sk", ahead=1):
            skipped = cur.number() or 1
            cur.at += 1
            return Skipped(self.wanted_or_any(cur), skipped)
        step = next((step for step in ("next", "first", "last") if cur.accept(step)), "")
        count = None if self.names_a_size(cur) else cur.number()
        wanted = self.wanted_or_any(cur)
        if count is not None:
            return Last(wanted, count) if step == "last" else Next(wanted, count)
        others = []
        while cur.next_is("and") and (self._noun(cur, 1) or (cur.next_is("each", "in", ahead=1))):
            start = cur.at
            cur.at += 1
            cur.accept("in")
            cur.accept("each")
            if cur.next_is("next", "last", "first", "same") or (other := self.wanted(cur)) is None:
                cur.at = start
                break
            others.append(other)
        if others:
            wanted = Wanted("either", either=(wanted, *others))
        until = self.until(cur)
        return Each(wanted, until or ToEnd(), until is not None)

    def _last(self, cur: Cursor) -> Target | Each:
        if self._part_follows(cur):
            return Next(self._part(cur, "last"))
        count = None if self.names_a_size(cur) else cur.number()
        return Last(self.wanted_or_any(cur), count or 1)

    def _noun(self, cur: Cursor, ahead: int = 0) -> bool:
        """Whether a kind of place is named that far ahead, and no new stitch begins there."""
        word = cur.word(ahead)
        if word.text == "ch":
            return not cur.sort_is(NUMBER, ahead + 1)
        if word.sort in (STITCH, TOGETHER):
            return not cur.next_is("in", ahead=ahead + 1) and not cur.sort_is(NUMBER, ahead + 1)
        return word.text in ("st", "sp")

    def until(self, cur: Cursor) -> Until | None:
        """How far a repeat goes, None if nothing says so."""
        if cur.accept("toend", "around"):
            if cur.next_is("to", "tolast"):
                return self.until(cur)
            return ToEnd()
        if cur.accept("tolast"):
            if cur.accept("rep"):
                return ToEnd()  # what the last repeat has instead follows
            if cur.accept("tch"):
                return ToTurningChain()
            count = None if self.names_a_size(cur) else cur.number()
            return ToLast(count or 1, replace_whole(self.wanted_or_any(cur)))
        if cur.next_is("to"):
            cur.at += 1
            if self._turning_noun(cur, take=True):
                return ToTurningChain()
            cur.accept("next")
            start = cur.at
            if not self.names_a_size(cur) and (left := cur.number()) is not None:
                wanted = replace_whole(self.wanted_or_any(cur))
                if cur.accept("rem", "left"):
                    return ToLast(left, wanted)
                cur.at = start
            return ToNext(self.wanted_or_any(cur))
        return self.times(cur)

    def times(self, cur: Cursor) -> Times | None:
        """``3 times``, ``twice``, ``x 3``, ``3 more times`` (as said: the caller adds the first one)."""
        if cur.next_is("total") and cur.next_is("of", ahead=1):
            cur.at += 2
        if cur.accept("twice"):
            return Times(2)
        if cur.accept("once"):
            return Times(1)
        if cur.next_is("times") and cur.sort_is(NUMBER, 1):
            cur.at += 1
            return Times(cur.number() or 1)
        if cur.sort_is(NUMBER) and (cur.next_is("times", ahead=1) or cur.next_is("times", ahead=2)):
            count = cur.number()
            cur.accept("more")
            cur.accept("times")
            return Times(count or 1)
        return None

    def wanted_or_any(self, cur: Cursor) -> Wanted:
        wanted = self.wanted(cur) or ANY_STITCH
        if cur.sort_is(NUMBER) and cur.next_is("row", ahead=1) and cur.next_is("below", ahead=2):
            cur.at += 3  # a long stitch still stands in the place of the one above
        elif cur.next_is("row") and cur.next_is("below", ahead=1):
            cur.at += 2
        return wanted

    def wanted(self, cur: Cursor) -> Wanted | None:
        """A kind of place; None (and nothing taken) if none is named."""
        start = cur.at
        found = self._part(cur, "") if self._part_follows(cur) else self._simple(cur)
        if found is None:
            cur.at = start
            return None
        if found.kind == "sp" and self._of_block(cur):
            return found
        if found.kind in ("sp", "st", "ch") and cur.next_is("of", "in") and (of := self._of_group(cur)) is not None:
            part = "sp" if found.kind == "sp" else "centre"
            return replace(of, part=part, size=found.size if part == "sp" else of.size)
        return found

    @staticmethod
    def _of_block(cur: Cursor) -> bool:
        """Steps over ``of next block``: a block has one space."""
        start = cur.at
        if cur.accept("of"):
            cur.accept("next", "previous", "prev", "last", "first", "same")
            if cur.accept("row"):
                cur.number()
            if cur.accept("block"):
                return True
        cur.at = start
        return False

    def _part_follows(self, cur: Cursor) -> bool:
        """``centre dc of shell``, ``2nd dc of shell``: a stitch picked out of a group."""
        ahead = 1 if cur.sort_is(ORDINAL) or cur.next_is("centre") else 0
        sized = cur.next_is("-", ahead=ahead)
        noun = cur.word(ahead).sort in (STITCH, TOGETHER) or cur.next_is("st", "ch", "sp", ahead=ahead)
        if cur.next_is("centre"):
            return noun
        return noun and not sized and cur.next_is("of", ahead=ahead + 1) and not cur.next_is("tch", ahead=ahead + 2)

    def _part(self, cur: Cursor, step: str) -> Wanted:
        part: str | int = "centre" if cur.accept("centre") else {"first": 1, "last": -1}.get(step, 1)
        part = cur.ordinal() or part
        noun = self._simple(cur)
        if noun is None:
            raise cur.fail()
        group = self._of_group(cur) or (Wanted("group", name="group") if part == "centre" else None)
        if group is None:
            raise cur.fail()
        if noun.kind == "sp":
            return replace(group, part="sp", size=noun.size)
        return replace(group, part=part, inner=noun.kind)

    def _of_group(self, cur: Cursor) -> Wanted | None:
        start = cur.at
        if cur.accept("of", "in"):
            self._of_each = cur.accept("each")
            cur.accept("next", "same")
            group = self._simple(cur)
            if group is not None and group.kind == "group":
                return group
        cur.at = start
        return None

    def names_a_size(self, cur: Cursor) -> bool:
        """Whether the number that comes next belongs to a name: ``5-dc group``, ``3-ch sp``."""
        if not cur.sort_is(NUMBER):
            return False
        ahead = 2 if cur.next_is("-", ahead=1) else 1
        if cur.next_is("ch", ahead=ahead):
            return cur.next_is("sp", ahead=ahead + 1) or cur.next_is("-", ahead=ahead + 1)
        ahead_of_name = ahead + (2 if cur.next_is("-", ahead=ahead + 1) else 1)
        return cur.sort_is(STITCH, ahead) and cur.next_is(*GROUP_NAMES, *ONE_STITCH_NAMES, ahead=ahead_of_name)

    def _simple(self, cur: Cursor) -> Wanted | None:
        if self.names_a_size(cur):
            size = cur.number() or 0
            cur.accept("-")
            if cur.accept("ch"):
                cur.accept("-")
                return Wanted("sp", size) if cur.accept("sp") else None
            cur.stitch()
            cur.accept("-")
            name = cur.word().text
            cur.at += 1
            return Wanted(name) if name in ONE_STITCH_NAMES else Wanted("group", size, name=name)
        if cur.accept("ch"):
            return self._chain_or_space(cur)
        if cur.accept("sp"):
            return self._gap(cur) if cur.accept("between") else Wanted("sp")
        if (kind := cur.stitch()) is not None:
            cur.accept("st")
            return Wanted(kind)
        return self._named(cur)

    def _named(self, cur: Cursor) -> Wanted | None:
        text = cur.word().text
        if text == "st" or text in ONE_STITCH_NAMES:
            cur.at += 1
            return Wanted(text)
        if text in GROUP_NAMES or text in self.names:
            cur.at += 1
            made = self.names.get(text)
            return Wanted("group", name=text) if made is None or len(made.items) > 1 else Wanted(made.items[0])
        return None

    def _chain_or_space(self, cur: Cursor) -> Wanted:
        ahead = 1 if cur.next_is("-") else 0
        if cur.sort_is(NUMBER, ahead) and (ahead or cur.next_is("sp", ahead=1)):
            cur.at += ahead
            size = cur.number() or 0
            cur.accept("-")
            cur.accept("sp")
            return Wanted("sp", size)
        if cur.next_is("-") and cur.next_is("sp", ahead=1):
            cur.at += 1
        return Wanted("sp") if cur.accept("sp") else Wanted("ch")

    def _gap(self, cur: Cursor) -> Wanted:
        part: str | int = 1 if cur.accept("first") else ""
        cur.accept("next")
        cur.number()
        noun = self._simple(cur)
        size = noun.size if noun is not None and noun.kind == "group" else 0
        return Wanted("gap", size, name="between", part=part, inner="st" if noun is None else noun.kind)


def replace_whole(wanted: Wanted) -> Wanted:
    """A group counted as one thing, not for a place in it."""
    return replace(wanted, part="whole") if wanted.kind == "group" and wanted.part == "" else wanted
