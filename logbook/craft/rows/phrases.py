"""One row's words into instructions. What is not understood is named with its place; nothing is guessed."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import SaidToCount, is_remark, name_made, printed_counts, said_to_count
from logbook.craft.rows.cursor import BREAKS, CLOSING, LARGEST, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    First,
    Instruction,
    Last,
    Made,
    Next,
    PrintedCount,
    Repeat,
    Skip,
    Span,
    Target,
    Times,
    ToEnd,
    Until,
    Wanted,
    Work,
)
from logbook.craft.rows.places import plain
from logbook.craft.rows.targets import ONE_STITCH_NAMES, Each, Targets, replace_whole
from logbook.craft.rows.words import NUMBER, STITCH, TOGETHER

WHOLE_STITCH = "stitch?"  # an increase or decrease before the row says of which stitch
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
    joined: bool = False
    leaves_rest: bool = False
    faults: list[tuple[str, Span]] = field(default_factory=list)


class Phrases:
    """Reads the phrases of one row. ``names``: stitches made in one place that the pattern has given a name."""

    def __init__(self, names: Mapping[str, Made], in_round: bool) -> None:
        self.row = RowWords(names=dict(names))
        self.targets = Targets(self.row.names)
        self.in_round = in_round
        self._unplaced: set[int] = set()  # where stitches start whose place is not said

    def read(self, cur: Cursor, kind_below: str) -> RowWords:
        """All of it. ``kind_below``: the stitch that an increase is of, if this row names none."""
        self.row.items = with_kind(self.sequence(cur, self.row.items), kind_below)
        return self.row

    def sequence(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """Phrase after phrase up to the last word, onto ``items``."""
        stars: dict[str, int] = {}
        while cur.more():
            if cur.accept(*BREAKS, "and", "-"):
                continue
            start = cur.at
            try:
                if cur.word().text in STARS:
                    stars[cur.word().text] = len(items)
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
        return items

    def _placed(self, new: list[Instruction], items: list[Instruction]) -> list[Instruction]:
        """Refuses ``dc, ch 1, dc in next st``, which could mean one place or two."""
        if len(items) > 1 and new and isinstance(new[0], Work) and new[0].span.start not in self._unplaced:
            before = items[-2]
            if isinstance(items[-1], Chain) and isinstance(before, Work) and before.span.start in self._unplaced:
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
        """``ending last rep at **``, ``ending last rep with sc in last st``, ``omitting last ch 1``: what the last repeat does instead."""
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
        if not cur.accept("with"):
            raise cur.fail()
        instead = self._phrase(cur, [])
        return [*body[:-1], *instead] if last else list(instead)

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
        made = self.made(cur.inside(start + 1, close))
        times = self.targets.times(cur)
        if made is not None and cur.next_is("in"):
            repeated = Made(made.items * (times.count if times else 1), made.name)
            return self._work(cur, repeated, start)
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
        chain = self._chain(cur)
        if chain is not None:
            return [chain]
        if cur.accept("in") and cur.next_is(*BREAKS, "toend"):
            return []  # "in back loops only," alone: which loop is worked changes no place
        cur.at = start
        if cur.accept("slst"):
            return self._slip_stitch(cur, items, start)
        return self._stitch(cur, start)

    def _turns_or_joins(self, cur: Cursor, items: list[Instruction]) -> bool:
        worked = any(not isinstance(item, Chain) for item in items)
        if cur.accept("turn"):
            self.row.turn_after = True if worked else self.row.turn_after
            self.row.turn_before = self.row.turn_before or not worked
        elif cur.accept("noturn"):
            self.row.turn_after = False
        elif cur.accept("join"):
            self.row.joined = worked
            cur.skip_to((*BREAKS, "turn", "noturn", "(", "["))
        elif cur.accept("leave", "with") and cur.next_is("rem", "last", "tch", "unworked", "st"):
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
            count = None if self.targets.names_a_size(cur) else cur.number()
            wanted = replace_whole(self.targets.wanted_or_any(cur))
            if cur.next_is("fromhook"):
                cur.at += 1
            found.append(Skip(wanted, count or 1, cur.span_from(start), first))
            start = cur.at + 1
            if not (cur.next_is("and") and (cur.next_is("next", "ch", ahead=1) or self._skips_on(cur))):
                return found
            cur.at += 1

    def _skips_on(self, cur: Cursor) -> bool:
        return cur.sort_is(NUMBER, 1) and cur.word(2).text in ("st", "ch") and not cur.next_is("in", ahead=3)

    def _chain(self, cur: Cursor) -> Chain | None:
        start = cur.at
        if cur.accept("ch"):
            cur.accept("-")
            count = cur.number(9999)
            if count is not None and not cur.next_is("sp"):
                return Chain(count, cur.span_from(start))
        elif cur.sort_is(NUMBER) and cur.next_is("ch", ahead=1) and not cur.next_is("sp", "-", ahead=2):
            count = cur.number(9999) or 1
            cur.at += 1
            return Chain(count, cur.span_from(start))
        cur.at = start
        return None

    def _slip_stitch(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """A slip stitch that joins the round makes nothing; one before the row's first chains only moves along."""
        worked = any(isinstance(item, Work | Repeat) for item in items)
        if items and isinstance(items[-1], Chain) and self._closes_picot(cur):
            items.pop()
            return [Work(Made(("picot",)), Next(ANY_STITCH, 0), cur.span_from(start))]
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_to(BREAKS)
        clause = [word.text for word in cur.words[cur.at : cur.at + rest.at]]
        closes = self.in_round and clause[:2] and any(text in ("first", "begch", "topof", "tch") for text in clause[:5])
        if worked and ("join" in clause or closes or clause[:1] == ["to"]):
            self.row.joined = True
            cur.at += rest.at
            return []
        cur.accept("to")
        if not worked and cur.accept("next"):
            cur.at -= 1
        made = Made(("sl st",))
        if cur.next_is("in") or cur.next_is(*BREAKS, "and", ""):
            return self._work(cur, made, start)
        return self._works(cur, made, start, self.targets.target(cur))

    @staticmethod
    def _closes_picot(cur: Cursor) -> bool:
        """Steps over ``in 3rd ch from hook``, ``in first ch``, ``in last st made`` behind a slip stitch that closes a picot."""
        ways = (("ch", "fromhook"), ("first", "ch"), ("last", "st", "made"), ("topof", "last", "st", "made"))
        start = cur.at
        if cur.accept("in"):
            cur.ordinal()
            for way in ways:
                if all(cur.next_is(text, ahead=ahead) for ahead, text in enumerate(way)):
                    cur.at += len(way)
                    return True
        cur.at = start
        return False

    def _stitch(self, cur: Cursor, start: int) -> list[Instruction]:
        sized = self.targets.names_a_size(cur)
        count = cur.number()
        if cur.accept("-") and not sized:
            raise NotUnderstoodError(cur.span_from(start))
        count = None if sized else count
        word = cur.word()
        if word.sort == TOGETHER:
            made = Made((cur.stitch() or "",))
            return self._together(cur, made, word.value, count or 1, start)
        if cur.accept("dec"):
            return self._together(cur, Made((WHOLE_STITCH + "2tog",)), 2, count or 1, start)
        if cur.accept("inc"):
            return self._work(cur, Made((WHOLE_STITCH,) * 2), start, count or 1)
        made_one = self._one(cur, count)
        if made_one is None:
            cur.at = start
            raise cur.fail()
        return self._work(cur, made_one, start, 0 if word.sort == STITCH and count is None else count or 1)

    def _one(self, cur: Cursor, count: int | None) -> Made | None:
        """One stitch or named group of stitches, not yet so many times."""
        kind = cur.stitch()
        if kind is not None:
            if cur.accept("-"):
                pass
            name = next((name for name in ONE_STITCH_NAMES if cur.accept(name)), None)
            return Made((name or kind,))
        text = cur.word().text
        if text in self.row.names:
            cur.at += 1
            return self.row.names[text]
        if text in ONE_STITCH_NAMES:
            cur.at += 1
            return Made((text,))
        if text in ("shell", "fan", "v-st", "group"):
            raise cur.fail(f"“{text}” is not described in these rows; write, for example, “{text} = 5 dc in same st”")
        return None

    def _work(self, cur: Cursor, made: Made, start: int, count: int = 0) -> list[Instruction]:
        """``made`` with what says where it goes. ``count``: so many of it (0: one, and not said)."""
        if cur.next_is("each") and cur.next_is("in", ahead=1):
            cur.at += 1  # "all in"
        if cur.accept("in") or (cur.next_is("around") and cur.next_is("next", "each", "same", "first", "last", ahead=1)):
            cur.accept("around")
            cur.accept("of")
            if cur.next_is("toend", "around", "tolast"):
                return self._works(cur, made, start, Each(ANY_STITCH, self.targets.until(cur) or ToEnd()))
            return self._works(cur, Made(made.items * (count or 1), made.name), start, self.targets.target(cur))
        if cur.next_is("next", "each"):
            return self._works(cur, Made(made.items * (count or 1), made.name), start, self.targets.target(cur))
        if cur.next_is("toend", "around", "tolast", "to"):
            return self._works(cur, made, start, Each(ANY_STITCH, self.targets.until(cur) or ToEnd()))
        said = WHOLE_STITCH in made.items
        if not count and cur.sort_is(NUMBER) and not cur.next_is("times", "more", ahead=1) and not cur.sort_is(STITCH, 1):
            said = True
            count = cur.number() or 1
            cur.accept("st")
        times = self.targets.times(cur)
        count = (count or 1) * (times.count if times else 1)
        if made.items == ("picot",):
            return [Work(made, Next(ANY_STITCH, 0), cur.span_from(start))]
        if not said:
            self._unplaced.add(cur.words[start].start)
        return self._works(cur, made, start, Next(ANY_STITCH, count))

    def _works(self, cur: Cursor, made: Made, start: int, where: Target | Each) -> list[Instruction]:
        """One instruction a target: ``dc in 4th ch from hook and in each ch across`` has two."""
        found: list[Instruction] = []
        while True:
            span = cur.span_from(start)
            if isinstance(where, Each):
                found.append(Repeat((Work(made, Next(where.wanted), span),), where.until, span))
            else:
                found.append(Work(made, where, span))
            steps = ("next", "each", "same", "last", "first")
            if not (cur.next_is("and") and cur.next_is("in", *steps, ahead=1)):
                return found
            start = cur.at + 1
            cur.at += 1
            cur.accept("in")
            where = self.targets.target(cur)

    def _together(self, cur: Cursor, made: Made, over: int, count: int, start: int) -> list[Instruction]:
        """``sc2tog``, ``dc3tog over next 3 sts``, ``sc2tog across``."""
        where: Target | Each = Next(ANY_STITCH, over)
        if cur.next_is("toend", "around") and not cur.next_is("next", ahead=1):
            where = Each(ANY_STITCH, self.targets.until(cur) or ToEnd())
        elif cur.accept("over", "in", "toend", "around") or cur.next_is("next", "last", "first"):
            where = self.targets.target(cur)
        if isinstance(where, Each):
            span = cur.span_from(start)
            body = Work(made, Next(where.wanted, over), span, together=True)
            return [Repeat((body,), where.until, span)]
        if isinstance(where, First):
            where = Next(where.wanted, over)
        if isinstance(where, Next | Last) and where.count == 1 and over > 1:
            where = replace(where, count=over)
        if not isinstance(where, Next | Last) or where.count != over:
            raise NotUnderstoodError(cur.span_from(start), f"{over} stitches together need {over} places")
        times = self.targets.times(cur)
        work = Work(made, where, cur.span_from(start), together=True)
        return [work] * (count * (times.count if times else 1))

    def made(self, cur: Cursor) -> Made | None:
        """``2 dc, ch 2, 2 dc`` or ``[dc, ch 1] 3 times, dc`` to the last word; None if it is something else."""
        items: list[str] = []
        try:
            while cur.more():
                if cur.accept(",", "and", "+"):
                    continue
                one = self._made_part(cur)
                if one is None:
                    return None
                items += one
        except NotUnderstoodError:
            return None
        return Made(tuple(items)) if 0 < len(items) <= LARGEST else None

    def _made_part(self, cur: Cursor) -> list[str] | None:
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            inner = self.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
            times = self.targets.times(cur)
            return list(inner.items) * times.count if inner and times else None
        chain = self._chain(cur)
        if chain is not None:
            start = cur.at
            cur.accept(",")
            if cur.accept("slst") and self._closes_picot(cur):
                return ["picot"]
            cur.at = start
            return ["ch"] * chain.count
        sized = self.targets.names_a_size(cur)
        count = cur.number()
        if sized:
            cur.accept("-")
            count = 1
        one = self._one(cur, count)
        return None if one is None else list(one.items) * (count or 1)


def _names_yarn(text: str) -> bool:
    return text in ("color", "colour", "cc", "mc") or (len(text) == 1 and text.isalpha())


def with_kind(items: list[Instruction], kind_below: str) -> list[Instruction]:
    """Increases and decreases told which stitch they are of: the one named before them in the row, else the one after."""
    named = [kind for item in items for kind in _kinds(item) if WHOLE_STITCH not in kind]
    return _told(items, named[0] if named else kind_below)[0]


def prevailing_kind(items: list[Instruction]) -> str:
    """The first stitch that the row makes, "sc" if none."""
    return next((plain(kind) for item in items for kind in _kinds(item)), "sc")


def _kinds(item: Instruction) -> list[str]:
    if isinstance(item, Repeat):
        return [kind for inner in item.body for kind in _kinds(inner)]
    return [kind for kind in item.made.items if kind not in ("ch", "sl st", "picot")] if isinstance(item, Work) else []


def _told(items: list[Instruction], kind: str) -> tuple[list[Instruction], str]:
    told: list[Instruction] = []
    for item in items:
        if isinstance(item, Repeat):
            body, kind = _told(list(item.body), kind)
            told.append(replace(item, body=tuple(body)))
        elif isinstance(item, Work):
            made = replace(item.made, items=tuple(each.replace(WHOLE_STITCH, kind) for each in item.made.items))
            told.append(replace(item, made=made))
            kind = next((each for each in _kinds(told[-1]) if "tog" not in each), kind)
        else:
            told.append(item)
    return told, kind


def wanted_text(wanted: Wanted) -> str:
    """How the pattern would name the place."""
    if wanted.kind == "sp":
        return f"ch-{wanted.size} sp" if wanted.size else "sp"
    if wanted.kind == "group":
        return wanted.name
    return wanted.kind
