"""Kinds of places that a stitch goes into: ``dc``, ``ch-3 sp``, ``5-dc group``, ``centre dc of next shell``, a gap."""

from collections.abc import Mapping
from dataclasses import replace

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import ANY_STITCH, Made, Wanted
from logbook.craft.rows.word import NUMBER, ORDINAL, STITCH, TOGETHER

ONE_STITCH_NAMES = ("cl", "pc", "puff", "bobble", "picot")  # many loops, but one top
GROUP_NAMES = ("shell", "fan", "v-st", "group", "block")


class PlaceKinds:
    """Reads them. ``names``: what the pattern itself calls stitches made in one place."""

    def __init__(self, names: Mapping[str, Made]) -> None:
        self.names = names
        self.of_each = False  # the last kind of place was "of each" group

    def is_named(self, cur: Cursor, ahead: int = 0) -> bool:
        """Whether a kind of place is named that far ahead, and no new stitch begins there."""
        word = cur.word(ahead)
        if word.text == "ch":
            return not cur.sort_is(NUMBER, ahead + 1)
        if word.sort in (STITCH, TOGETHER):
            return not cur.next_is("in", ahead=ahead + 1) and not cur.sort_is(NUMBER, ahead + 1)
        return word.text in ("st", "sp")

    def wanted_or_any(self, cur: Cursor) -> Wanted:
        """A kind of place; any stitch if none is named."""
        wanted = self.wanted(cur) or ANY_STITCH
        if cur.sort_is(NUMBER) and cur.next_is("row", ahead=1) and cur.next_is("below", ahead=2):
            cur.at += 3  # a long stitch still stands in the place of the one above, whatever that is
            wanted = ANY_STITCH
        elif cur.next_is("row") and cur.next_is("below", ahead=1):
            cur.at += 2
        return wanted

    def wanted(self, cur: Cursor) -> Wanted | None:
        """A kind of place; None (and nothing taken) if none is named."""
        start = cur.at
        found = self.part(cur, "") if self.part_follows(cur) else self._simple(cur)
        if found is not None and found.kind == "sp" and cur.accept("corner"):
            found = replace(found, name="corner")
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
                if not cur.accept("below") and cur.next_is("of") and cur.next_is("row", ahead=1) and cur.sort_is(NUMBER, 2):
                    cur.at += 3
                return True
        cur.at = start
        return False

    def part_follows(self, cur: Cursor) -> bool:
        """``centre dc of shell``, ``2nd dc of shell``: a stitch picked out of a group."""
        ahead = 1 if cur.sort_is(ORDINAL) or cur.next_is("centre") else 0
        sized = cur.next_is("-", ahead=ahead)
        noun = cur.word(ahead).sort in (STITCH, TOGETHER) or cur.next_is("st", "ch", "sp", ahead=ahead)
        if cur.next_is("centre"):
            return noun
        return noun and not sized and cur.next_is("of", ahead=ahead + 1) and not cur.next_is("tch", ahead=ahead + 2)

    def part(self, cur: Cursor, step: str) -> Wanted:
        """That stitch; ``step``: which one where nothing says it ("first", "last")."""
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
            self.of_each = cur.accept("each")
            cur.accept("next", "same", "last", "first", "each")
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
            dashed = cur.next_is("-", ahead=ahead + 1) and not cur.sort_is(NUMBER, ahead + 2)
            return cur.next_is("sp", ahead=ahead + 1) or dashed
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
        if cur.accept("corner"):
            if cur.accept("ch"):
                return replace(self._chain_or_space(cur), name="corner")
            cur.accept("sp")
            return Wanted("sp", name="corner")
        if cur.accept("ch"):
            return self._chain_or_space(cur)
        if cur.accept("sp"):
            if cur.next_is("before", "after") and cur.next_is("first", "last", ahead=1):
                return self._beside(cur)
            if cur.next_is("before") and cur.next_is("next", ahead=1):
                cur.at += 2
                return Wanted("gap", inner="group") if self._simple(cur) is not None else None
            if cur.next_is("between") and cur.next_is("them", ahead=1):
                cur.at += 2
                return Wanted("sp")
            return self._gap(cur) if cur.accept("between") else Wanted("sp")
        if (kind := cur.stitch()) is not None:
            cur.accept("st")
            return Wanted(kind)
        return self._named(cur)

    def _named(self, cur: Cursor) -> Wanted | None:
        text = cur.word().text
        if text in ("fsc", "fhdc", "fdc"):
            cur.at += 1
            return Wanted(text[1:])
        if text == "st" or text in ONE_STITCH_NAMES:
            cur.at += 1
            return Wanted(text)
        if text in GROUP_NAMES or text in self.names:
            cur.at += 1
            made = self.names.get(text)
            if text in GROUP_NAMES and cur.accept("sp"):
                return Wanted("group", name=text, part="sp")
            return Wanted("group", name=text) if made is None or len(made.items) > 1 else Wanted(made.items[0])
        return None

    def _chain_or_space(self, cur: Cursor) -> Wanted:
        ahead = 1 if cur.next_is("-") and cur.word().start == cur.word(-1).end else 0
        if cur.sort_is(NUMBER, ahead) and (ahead or cur.next_is("sp", ahead=1)):
            cur.at += ahead
            size = cur.number() or 0
            cur.accept("-")
            if not cur.accept("sp"):
                cur.accept("corner", "point", "points", "eye", "eyes", "arc", "arcs")
            return Wanted("sp", size)
        if cur.next_is("-") and cur.next_is("sp", ahead=1):
            cur.at += 1
        return Wanted("sp") if cur.accept("sp") else Wanted("ch")

    def _gap(self, cur: Cursor) -> Wanted:
        part: str | int = 1 if cur.accept("first") else -1 if cur.accept("last") else ""
        cur.accept("next")
        if not self.names_a_size(cur):
            cur.number()
        noun = self._simple(cur)
        if noun is not None and cur.next_is("-") and cur.next_is("group", ahead=1):
            cur.at += 2
            noun = Wanted("group", name="group")
        if noun is not None and cur.accept("and"):
            return self._between_two(cur, part)
        if noun is None and cur.accept("group", "st"):
            noun = Wanted("group", name="group") if cur.next_is("group", ahead=-1) else ANY_STITCH
        size = noun.size if noun is not None and noun.kind == "group" else 0
        return Wanted("gap", size, name="between", part=part, inner="st" if noun is None else noun.kind)

    def _beside(self, cur: Cursor) -> Wanted:
        """``sp before first 3-dc group``, ``sp after last group``: the gap at the beginning or at the end."""
        part = 1 if cur.next_is("before") else -1
        cur.at += 2
        if self._simple(cur) is None:
            raise cur.fail()
        return Wanted("gap", 0, name="between", part=part, inner="st")

    def _between_two(self, cur: Cursor, part: str | int) -> Wanted:
        """``first dc and first 3-dc group``, ``last group and ch-3``: one gap, at the beginning or at the end."""
        cur.accept("first", "next", "last")
        if cur.accept("begch", "tch"):
            if cur.accept("-"):
                cur.number()
        elif cur.sort_is(NUMBER) and cur.next_is("ch", ahead=1):
            cur.at += 2
        elif self._simple(cur) is None:
            raise cur.fail()
        return Wanted("gap", 0, name="between", part=part or 1, inner="st")


def replace_whole(wanted: Wanted) -> Wanted:
    """A group counted as one thing, not for a place in it."""
    return replace(wanted, part="whole") if wanted.kind == "group" and wanted.part == "" else wanted
