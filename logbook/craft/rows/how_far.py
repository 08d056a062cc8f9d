"""How far a repeat goes, and how often: ``to last 2 sts``, ``until 2 sc are left``, ``3 times``."""

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import Times, ToEnd, ToLast, ToNext, ToTurningChain, Until
from logbook.craft.rows.place_kinds import PlaceKinds, replace_whole
from logbook.craft.rows.turning_noun import turning_noun
from logbook.craft.rows.word import NUMBER


class HowFar:
    """Reads it. ``places``: the kinds of places that are known."""

    def __init__(self, places: PlaceKinds) -> None:
        self.places = places

    def until(self, cur: Cursor) -> Until | None:
        """How far a repeat goes, None if nothing says so."""
        if cur.accept("toend", "around"):
            return self._to_end(cur)
        if cur.accept("tolast"):
            return self._to_last(cur)
        if cur.next_is("except", "but") and cur.next_is("last", ahead=1):
            cur.at += 2
            count = 1 if cur.accept("one") else cur.number() or 1
            return ToLast(count, self.places.wanted_or_any(cur))
        if cur.next_is("to") and cur.next_is("beg", "beginning", "start", "first", "join", ahead=1):
            cur.at += 2
            self.places.wanted(cur)
            return ToEnd()
        return self._to(cur) if cur.accept("to") else self.times(cur)

    def _to_end(self, cur: Cursor) -> Until | None:
        """``across``, ``across side to last 2 sts``."""
        if cur.next_is("side") and cur.next_is("to", "tolast", ahead=1):
            cur.at += 1
        return self.until(cur) if cur.next_is("to", "tolast") else ToEnd()

    def _to_last(self, cur: Cursor) -> Until:
        """``to last 2 sts``, ``to last rep``, ``to last st from end``."""
        if cur.accept("rep"):
            return ToEnd()  # what the last repeat has instead follows
        if cur.accept("tch"):
            return ToTurningChain()
        count = None if self.places.names_a_size(cur) else cur.number()
        wanted = replace_whole(self.places.wanted_or_any(cur))
        if cur.next_is("of", "from") and cur.next_is("ending", ahead=1):
            cur.at += 2
        return ToLast(count or 1, wanted)

    def _to(self, cur: Cursor) -> Until:
        """``to and including last st``, ``until 2 sc are left``, ``to tch``, ``to next ch-2 sp``."""
        if self._including_last(cur):
            return ToEnd()
        if cur.accept("there"):
            cur.accept("is", "are")
        if (until := self._until_left(cur)) is not None:
            return until
        if turning_noun(cur, take=True):
            return ToTurningChain()
        cur.accept("next")
        start = cur.at
        if not self.places.names_a_size(cur) and (left := cur.number()) is not None:
            wanted = replace_whole(self.places.wanted_or_any(cur))
            if cur.accept("rem", "left"):
                return ToLast(left, wanted)
            cur.at = start
        return ToNext(self.places.wanted_or_any(cur))

    def _including_last(self, cur: Cursor) -> bool:
        """Steps over ``(up to) and including the last st``."""
        start = cur.at
        if cur.accept("and") and cur.accept("including", "incl") and cur.accept("last") and not cur.sort_is(NUMBER):
            self.places.wanted_or_any(cur)
            return True
        cur.at = start
        return False

    def _until_left(self, cur: Cursor) -> Until | None:
        """``until 2 sc are left``, ``until no ch remain``; None (and nothing taken) if it is something else."""
        start = cur.at
        none = cur.accept("no")
        count = None if self.places.names_a_size(cur) else cur.number()
        if none or count is not None:
            wanted = replace_whole(self.places.wanted_or_any(cur))
            cur.accept("is", "are")
            if cur.accept("rem", "left"):
                cur.accept("unworked")
                return ToEnd() if none else ToLast(count or 1, wanted)
            if cur.accept("before") and cur.accept("ending"):
                return ToLast(count or 1, wanted)
        cur.at = start
        return None

    @staticmethod
    def times(cur: Cursor) -> Times | None:
        """``3 times``, ``twice``, ``x 3``, ``3 more times`` (as said: the caller adds the first one)."""
        if cur.next_is("total") and cur.next_is("of", ahead=1):
            cur.at += 2
        found = _so_many_times(cur)
        if found is not None and cur.next_is("in") and cur.next_is("total", "all", ahead=1):
            cur.at += 2
        elif found is not None:
            cur.accept("total", "altogether")
        return found


def _so_many_times(cur: Cursor) -> Times | None:
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
