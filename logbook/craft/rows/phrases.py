"""One row's words into instructions. What is not understood is named with its place; nothing is guessed."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import SaidToCount, is_remark, name_made, printed_counts, said_to_count
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    Instruction,
    Made,
    Next,
    PrintedCount,
    Repeat,
    Skip,
    Span,
    Times,
    ToEnd,
    Until,
    Wanted,
    Work,
)
from logbook.craft.rows.kinds import with_kind
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import ONE_STITCH_NAMES, Targets, replace_whole
from logbook.craft.rows.words import NUMBER

STARS = ("*", "**", "***", "†")


@dataclass(slots=True)
class RowWords:
    """What one row's words say, as far as they were understood."""

    items: list[Instruction] = field(default_factory=list)
    said: dict[int, SaidToCount] = field(default_factory=dict)  # start of the chains it stands beside → what they count as
    names: dict[str, Made] = field(default_factory=dict)
    counts: tuple[PrintedCount, ...] = ()
    turn_before: bool = False
    turn_after: bool | None = None
    joined_at: int | None = None  # how many instructions come before it joins
    leaves_rest: bool = False
    leaves: int = 0  # so many stitches, if said
    faults: list[tuple[str, Span]] = field(default_factory=list)


class Phrases:
    """Reads the phrases of one row. ``names``: stitches made in one place that the pattern has given a name."""

    def __init__(self, names: Mapping[str, Made], in_round: bool) -> None:
        self.row = RowWords(names=dict(names))
        self.targets = Targets(self.row.names)
        self.in_round = in_round
        self.stitches = Stitches(self.row.names, self.targets)

    def read(self, cur: Cursor, kind_below: str) -> RowWords:
        """All of it. ``kind_below``: the stitch that an increase is of, if this row names none."""
        self.row.items = with_kind(self.sequence(cur, self.row.items), kind_below)
        return self.row

    def sequence(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """Phrase after phrase up to the last word, onto ``items``."""
        stars: dict[str, int] = {}
        opened: dict[str, Span] = {}
        while cur.more():
            if cur.accept(*BREAKS, "and", "-"):
                continue
            start = cur.at
            try:
                if cur.word().text in STARS:
                    stars[cur.word().text] = len(items)
                    opened[cur.word().text] = Span(cur.word().start, cur.word().end)
                    cur.at += 1
                elif cur.next_is("rep"):
                    self._repeat_from_star(cur, items, stars)
                else:
                    items.extend(self._placed(self._phrase(cur, items), items))
            except NotUnderstoodError as error:
                cur.at = max(cur.at, start + 1)
                cur.skip_to(BREAKS)
                whole = cur.span_from(start)
                self.row.faults.append((error.says, error.span if error.says else whole))
        unused = [opened[star] for star in stars if star != "**"]
        self.row.faults += [("no “rep from” goes back to it", span) for span in unused]
        return items

    def _placed(self, new: list[Instruction], items: list[Instruction]) -> list[Instruction]:
        """Refuses ``dc, ch 1, dc in next st``, which could mean one place or two."""
        if len(items) > 1 and new and isinstance(new[0], Work) and new[0].span.start not in self.stitches.unplaced:
            before = items[-2]
            if isinstance(items[-1], Chain) and isinstance(before, Work) and before.span.start in self.stitches.unplaced:
                span = Span(before.span.start, new[0].span.end)
                raise NotUnderstoodError(span, "put what goes into one place in brackets, or say where each stitch goes")
        return new

    def _repeat_from_star(self, cur: Cursor, items: list[Instruction], stars: dict[str, int]) -> None:
        start = cur.at
        cur.at += 1
        cur.accept("from")
        star = cur.word().text
        if star not in STARS:
            raise cur.fail("“repeat” needs the * it goes back to")
        cur.at += 1
        if star not in stars:
            raise NotUnderstoodError(cur.span_from(start), f"there is no {star} to repeat from")
        if cur.accept("to") and not cur.accept(*STARS):
            cur.at -= 1
        begin = stars.pop(star)
        until = self._until_of_star(cur)
        body = tuple(items[begin:])
        if not body:
            raise NotUnderstoodError(cur.span_from(start), f"nothing stands between the {star} and its repeat")
        last = self._ending(cur, body, begin, stars)
        items[begin:] = [Repeat(body, until, cur.span_from(start)), *last]

    def _until_of_star(self, cur: Cursor) -> Until:
        more = cur.sort_is(NUMBER) and cur.next_is("more", ahead=1)
        more = more or (cur.next_is("once", "twice") and cur.next_is("more", ahead=1))
        until = self.targets.until(cur)
        if isinstance(until, Times):
            more = cur.accept("more") or more
            return Times(until.count + 1, 0 if more else until.count)
        return until or ToEnd()

    def _ending(self, cur: Cursor, body: tuple[Instruction, ...], begin: int, stars: dict[str, int]) -> list[Instruction]:
        """``ending last rep at **``, ``ending last rep with sc in last st``, ``omitting last ch 1``: what the last repeat does
        instead.
        """
        start = cur.at
        cur.accept(",", ";")
        cur.accept("and")
        if cur.accept("omit"):
            return self._omitting(cur, body)
        if not cur.accept("ending"):
            cur.at = start
            return []
        last = cur.accept("last")
        if last:
            cur.accept("rep")
        if cur.accept("at", "in") or cur.word().text in STARS:
            star = cur.word().text
            if star not in stars:
                raise cur.fail("the place where the last repeat ends is not marked")
            cur.at += 1
            return list(body[: stars.pop(star) - begin])
        cur.accept("with")
        instead = self._phrase(cur, [])
        ends = body[-1]
        alike = isinstance(ends, Work) and bool(instead) and isinstance(instead[0], Work) and ends.made == instead[0].made
        return [*body[:-1], *instead] if last or alike else list(instead)

    def _omitting(self, cur: Cursor, body: tuple[Instruction, ...]) -> list[Instruction]:
        start = cur.at
        cur.accept("last")
        left_out = self._phrase(cur, [])
        cur.skip_to((",", ";", "."))
        count = len(left_out)
        same = [replace(item, span=Span(0, 0)) for item in left_out] == [replace(i, span=Span(0, 0)) for i in body[-count:]]
        if not same or count >= len(body):
            raise NotUnderstoodError(cur.span_from(start), "what is left out is not the end of the repeat")
        return list(body[:-count])

    def _bracket(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        start, close = cur.at, cur.closing()
        if close is None:
            raise NotUnderstoodError(Span(cur.word().start, cur.words[-1].end), "this bracket is never closed")
        inside = cur.inside(cur.at + 1, close)
        cur.at = close + 1
        made = self.stitches.made(cur.inside(start + 1, close))
        times = self.targets.times(cur)
        if made is not None and (cur.next_is("in") or (cur.next_is("each") and cur.next_is("in", ahead=1))):
            repeated = Made(made.items * (times.count if times else 1), made.name)
            return self.stitches.work(cur, repeated, start)
        if made == Made(("picot",)):
            cur.accept("for")
            cur.accept("picot")
            return [Work(made, Next(ANY_STITCH, 0), cur.span_from(start))]
        if times is None and self._aside(inside, items, start):
            return []
        ahead = cur.at
        cur.accept(",", ";")
        until = times or (self.targets.until(cur) if not cur.accept("rep") else self.targets.until(cur) or ToEnd())
        if until is None:
            cur.at = ahead
            raise NotUnderstoodError(cur.span_from(start), "it is not said where this goes, or how often")
        body = self.sequence(inside, [])
        if not body:
            raise NotUnderstoodError(cur.span_from(start))
        return [Repeat(tuple(body), until, cur.span_from(start))]

    def _aside(self, inside: Cursor, items: list[Instruction], start: int) -> bool:
        """Takes what stands in brackets beside the work; False if it is work."""
        said = said_to_count(inside)
        if said is not None:
            self._note(said, items)
            return True
        counts = printed_counts(inside, self.targets)
        if counts:
            self.row.counts = counts
            return True
        name = name_made(inside, lambda text: not text.isdigit() and text not in ONE_STITCH_NAMES)
        if name and items and isinstance(items[-1], Work):
            self._name(name, items)
            return True
        return is_remark(inside)

    def _note(self, said: SaidToCount, items: list[Instruction]) -> None:
        beside = items[-1].span.start if items else -1
        self.row.said[beside] = said

    def _name(self, name: str, items: list[Instruction]) -> None:
        work = items[-1]
        if isinstance(work, Work):
            self.row.names.setdefault(name, Made(work.made.items, name))
            items[-1] = replace(work, made=Made(work.made.items, name))

    def _phrase(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        start = cur.at
        if cur.word().text in CLOSING:
            return self._bracket(cur, items)
        if self._turns_or_joins(cur, items) or self._says_what_counts(cur, items) or self._counts_at_end(cur):
            return []
        if cur.accept("sk"):
            return self._skip(cur, start)
        chain = self.stitches.chain(cur)
        if chain is not None:
            return [chain]
        if cur.accept("in") and cur.next_is(*BREAKS, "toend"):
            return []  # "in back loops only," alone: which loop is worked changes no place
        cur.at = start
        if cur.accept("slst"):
            return self._slip_stitch(cur, items, start)
        return self.stitches.phrase(cur, start)

    def _turns_or_joins(self, cur: Cursor, items: list[Instruction]) -> bool:
        worked = any(not isinstance(item, Chain) for item in items)
        if cur.accept("turn"):
            self.row.turn_after = True if worked else self.row.turn_after
            self.row.turn_before = self.row.turn_before or not worked
        elif cur.accept("noturn"):
            self.row.turn_after = False
        elif cur.accept("join"):
            self.row.joined_at = len(items) if worked else self.row.joined_at
            cur.skip_to((*BREAKS, "turn", "noturn", "(", "["))
        elif cur.next_is("leave") and cur.next_is("rem", "last", "tch", "unworked", "st", ahead=1):
            cur.skip_to((*BREAKS, "turn", "noturn"))
            self.row.leaves_rest = True
        elif cur.next_is("fasten", "change") or (cur.next_is("with", "using") and _names_yarn(cur.word(1).text)):
            cur.skip_to(BREAKS)
        else:
            return cur.accept("side")
        return True

    def _says_what_counts(self, cur: Cursor, items: list[Instruction]) -> bool:
        end = cur.at
        while end < len(cur.words) and cur.words[end].text not in (";", ".", "(", ")"):
            end += 1
        said = said_to_count(cur.inside(cur.at, end))
        if said is None:
            return False
        self._note(said, items)
        cur.at = end
        return True

    def _counts_at_end(self, cur: Cursor) -> bool:
        """``34 sts`` as the row's last words."""
        if not (cur.sort_is(NUMBER) and (cur.next_is("-", "=", ":", ahead=-1) or cur.next_is("st", ahead=1))):
            return False
        end = cur.at
        while end < len(cur.words) and cur.words[end].text not in (".", "turn", "join", "noturn"):
            end += 1
        counts = printed_counts(cur.inside(cur.at, end), self.targets)
        if not counts:
            return False
        self.row.counts = counts
        cur.at = end
        return True

    def _skip(self, cur: Cursor, start: int) -> list[Instruction]:
        found: list[Instruction] = []
        while True:
            first = cur.accept("first")
            cur.accept("next", "last")
            if cur.next_is("(", "[") and (close := cur.closing()) is not None:
                found += self._skip_all(cur, close, first)
                return found
            count = None if self.targets.names_a_size(cur) else cur.number()
            wanted = replace_whole(self.targets.wanted_or_any(cur))
            if cur.next_is("fromhook"):
                cur.at += 1
            found.append(Skip(wanted, count or 1, cur.span_from(start), first))
            start = cur.at + 1
            if not (cur.next_is("and") and (cur.next_is("next", "ch", ahead=1) or self._skips_on(cur))):
                return found
            cur.at += 1

    def _skip_all(self, cur: Cursor, close: int, first: bool) -> list[Instruction]:
        """``sk (dc, ch 1, dc)``: each of them."""
        start = cur.at
        made = self.stitches.made(cur.inside(cur.at + 1, close))
        if made is None:
            raise cur.fail()
        cur.at = close + 1
        span = cur.span_from(start)
        return [Skip(Wanted(kind), 1, span, first and index == 0) for index, kind in enumerate(made.items)]

    def _skips_on(self, cur: Cursor) -> bool:
        return cur.sort_is(NUMBER, 1) and cur.word(2).text in ("st", "ch") and not cur.next_is("in", ahead=3)

    def _slip_stitch(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """A slip stitch that joins the round makes nothing; one before the row's first chains only moves along."""
        worked = any(isinstance(item, Work | Repeat) for item in items)
        if items and isinstance(items[-1], Chain) and self.stitches.closes_picot(cur):
            items.pop()
            return [Work(Made(("picot",)), Next(ANY_STITCH, 0), cur.span_from(start))]
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_to(BREAKS)
        clause = [word.text for word in cur.words[cur.at : cur.at + rest.at]]
        closes = self.in_round and clause[:2] and any(text in ("first", "begch", "topof", "tch") for text in clause[:5])
        if worked and ("join" in clause or closes or clause[:1] == ["to"]):
            self.row.joined_at = len(items)
            cur.at += rest.at
            return []
        cur.accept("to")
        if not worked and cur.accept("next"):
            cur.at -= 1
        made = Made(("sl st",))
        if cur.next_is("in") or cur.next_is(*BREAKS, "and", ""):
            return self.stitches.work(cur, made, start)
        return self.stitches.works(cur, made, start, self.targets.target(cur))


def _names_yarn(text: str) -> bool:
    """Whether this follows "with": a colour's letter, or nothing that is left of it ("with A" reads like an article)."""
    return text in ("color", "colour", "cc", "mc", "", *BREAKS) or (len(text) == 1 and text.isalpha())
