"""One row's words into instructions. What is not understood is named with its place; nothing is guessed."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import SaidToCount, is_remark, name_made, printed_counts, said_to_count
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    Either,
    Instruction,
    Last,
    Made,
    Next,
    OtherSide,
    PrintedCount,
    Repeat,
    Ring,
    Skip,
    Span,
    Times,
    ToEnd,
    Until,
    Wanted,
    Work,
)
from logbook.craft.rows.kinds import with_kind
from logbook.craft.rows.own_stitches import OwnStitches
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import ONE_STITCH_NAMES, Targets, replace_whole
from logbook.craft.rows.words import NUMBER, ORDINAL, STITCH, TOGETHER, Word

STARS = ("*", "**", "***", "†")
LONGEST_SAYING = 30  # words in "beg ch-3 counts as dc and ch 1 throughout"
DEEPEST = 40  # brackets in brackets
BESIDE = {
    *(
        "fasten",
        "cut",
        "change",
        "changing",
        "place",
        "mark",
        "move",
        "stuff",
        "weave",
        "being",
        "taking",
        "take",
        "care",
        "careful",
    ),
    *(
        "pull",
        "rotate",
        "rotating",
        "switch",
        "switching",
        "carry",
        "carrying",
        "drop",
        "dropping",
        "pick",
        "insert",
        "tie",
        "secure",
    ),
    *("sew", "remove", "begin", "continue", "finish", "tighten", "close", "closing", "use", "using", "rejoin", "slip", "adjust"),
}
"""Words that a phrase begins with that is no work."""


@dataclass(slots=True)
class RowWords:
    """What one row's words say, as far as they were understood."""

    items: list[Instruction] = field(default_factory=list)
    said: dict[int, SaidToCount] = field(default_factory=dict)  # start of the chains it stands beside → what they count as
    counts: tuple[PrintedCount, ...] = ()
    turn_before: bool = False
    turn_after: bool | None = None
    joined_at: int | None = None  # how many instructions come before it joins
    joins_to: str = ""  # "chain" or "stitch": what the round is joined to, if said
    in_ring: bool = False  # the row makes its own foundation
    notes: list[Span] = field(default_factory=list)
    leaves_rest: bool = False
    leaves: int = 0  # so many stitches, if said
    faults: list[tuple[str, Span]] = field(default_factory=list)


class Phrases:
    """Reads the phrases of one row. ``own``: the stitches that the pattern itself describes."""

    def __init__(self, own: OwnStitches, in_round: bool) -> None:
        self.own = own
        self.row = RowWords()
        self.targets = Targets(own.made)
        self.in_round = in_round
        self.stitches = Stitches(own.made, self.targets)
        self._into_ring = False  # what says no place goes into the ring
        self._closed: set[str] = set()

    def read(self, cur: Cursor, kind_below: str) -> RowWords:
        """All of it. ``kind_below``: the stitch that an increase is of, if this row names none."""
        if _depth(cur) > DEEPEST:
            self.row.faults.append(("brackets stand in brackets too deep", cur.span_from(0) if cur.words else Span(0, 0)))
            return self.row
        self.row.items = with_kind(self.sequence(cur, self.row.items), kind_below)
        if self._into_ring:
            self.row.items = [self._in_the_ring(item) for item in self.row.items]
        return self.row

    def _in_the_ring(self, item: Instruction) -> Instruction:
        if isinstance(item, Repeat):
            return replace(item, body=tuple(map(self._in_the_ring, item.body)))
        if isinstance(item, Work) and isinstance(item.into, Next) and item.span.start in self.stitches.unplaced:
            return replace(item, made=Made(item.made.items * item.into.count, item.made.name), into=Ring())
        return item

    def sequence(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """Phrase after phrase up to the last word, onto ``items``."""
        stars: dict[str, int] = {}
        opened: dict[str, Span] = {}
        while cur.more():
            if cur.accept(*BREAKS, "and", "-"):
                continue
            start = cur.at
            try:
                if cur.word().text in STARS and cur.word().text != "**" and cur.word().text in stars:
                    self._close_star(cur, items, stars)
                elif cur.word().text in STARS:
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

    def _close_star(self, cur: Cursor, items: list[Instruction], stars: dict[str, int]) -> None:
        """``*…* across``, ``*…* 6 times``; alone the second star only ends what is repeated later."""
        start, star = cur.at, cur.word().text
        cur.at += 1
        until = self.targets.until(cur)
        if until is None:
            if star in self._closed:
                raise cur.fail()
            self._closed.add(star)
            return
        begin = stars.pop(star)
        body = tuple(items[begin:])
        if not body:
            raise NotUnderstoodError(cur.span_from(start), f"nothing stands between the two {star}")
        last = self._ending(cur, body, begin, stars)
        items[begin:] = [Repeat(body, until, cur.span_from(start)), *last]

    def _repeat_from_star(self, cur: Cursor, items: list[Instruction], stars: dict[str, int]) -> None:
        start = cur.at
        cur.at += 1
        cur.accept("from", "between")
        star = cur.word().text
        if star not in STARS:
            raise cur.fail("“repeat” needs the * it goes back to")
        cur.at += 1
        cur.accept("s")
        self._closed.discard(star)
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
        if cur.next_is("last") and cur.sort_is(STITCH, 1) and cur.next_is("in", ahead=2) and isinstance(body[-1], Work):
            cur.at += 1  # "working last dc in top of tch"
            instead = self._phrase(cur, [])
            same = bool(instead) and isinstance(instead[0], Work) and body[-1].made.items[-1:] == instead[0].made.items
            if not same:
                raise NotUnderstoodError(cur.span_from(start))
            return [*body[:-1], *instead]
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
        alike = isinstance(ends, Work) and bool(instead) and isinstance(instead[0], Work) and _takes_its_place(ends, instead[0])
        return [*body[:-1], *instead] if last or alike else list(instead)

    def _omitting(self, cur: Cursor, body: tuple[Instruction, ...]) -> list[Instruction]:
        start = cur.at
        cur.accept("last")
        close = cur.closing() if cur.word().text in CLOSING else None
        if close is not None:
            left_out = self.sequence(cur.inside(cur.at + 1, close), [])
            cur.at = close + 1
        else:
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
        if cur.sort_is(NUMBER) and cur.next_is("more", ahead=1):
            cur.skip_to(BREAKS)
            raise NotUnderstoodError(cur.span_from(start), "say how often in all")
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
        if is_remark(inside):
            self.row.notes.append(inside.span_from(inside.at) if not inside.more() else _all_of(inside))
            return True
        return False

    def _note(self, said: SaidToCount, items: list[Instruction]) -> None:
        beside = items[-1].span.start if items else -1
        self.row.said[beside] = said

    def _name(self, name: str, items: list[Instruction]) -> None:
        work = items[-1]
        if isinstance(work, Work):
            self.own.made.setdefault(name, Made(work.made.items, name))
            items[-1] = replace(work, made=Made(work.made.items, name))

    def _phrase(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        start = cur.at
        if cur.word().text in CLOSING:
            return self._bracket(cur, items)
        if self._turns_or_joins(cur, items) or self._says_what_counts(cur, items) or self._counts_at_end(cur):
            return []
        if self._stands_beside(cur):
            return []
        if cur.accept("otherside"):
            return [OtherSide(cur.span_from(start))]
        if cur.word().text in self.own.steps:
            return self._steps(cur)
        if cur.next_is("fsc", "fhdc", "fdc") or (cur.sort_is(NUMBER) and cur.next_is("fsc", "fhdc", "fdc", ahead=1)):
            return self._foundation(cur)
        if cur.accept("sk"):
            return self._skip(cur, start)
        chain = self.stitches.chain(cur)
        if chain is not None:
            return [chain]
        if cur.next_is("in", "next", "each") and (placed := self._place_first(cur, items, start)) is not None:
            return placed
        cur.at = start
        if cur.accept("slst"):
            return self._slip_stitch(cur, items, start)
        return self.stitches.phrase(cur, start)

    def _steps(self, cur: Cursor) -> list[Instruction]:
        """A stitch of several steps, as the pattern has described it."""
        start = cur.at
        cur.at += 1
        if cur.accept("over"):
            cur.accept("next")
            cur.number()
            cur.accept("st")
        span = cur.span_from(start)
        return [_with_span(item, span) for item in self.own.steps[cur.words[start].text]]

    def _foundation(self, cur: Cursor) -> list[Instruction]:
        """``25 fsc``: chain and row 1 in one."""
        start = cur.at
        count = cur.number()
        kind = cur.word().text[1:]
        cur.at += 1
        count = count or cur.number() or 1
        self.row.in_ring = True
        span = cur.span_from(start)
        return [Repeat((Work(Made((kind,)), Ring(), span),), Times(count), span)]

    def _place_first(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction] | None:
        """``in first st work 2 sc``; ``… and in each ch across``, which goes on as before it; None if it is neither."""
        before = items[-1] if items else None
        goes_on = cur.next_is("and", ahead=-1) and isinstance(before, Work)
        if not cur.accept("in"):
            if not (goes_on and cur.next_is("next", "each")):
                return None
        elif cur.next_is(*BREAKS, "toend"):
            return []  # "in back loops only," alone: which loop is worked changes no place
        where = self.targets.target(cur)
        if goes_on and isinstance(before, Work):
            return self.stitches.works(cur, before.made, start, where)
        cur.accept(",")
        if isinstance(where, Ring) and not items:
            self._into_ring = True
            return []
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            made = self.stitches.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
        else:
            made = self.stitches.made_once(cur)
        if made is None or cur.next_is("in", "next", "each", "times") or cur.sort_is(NUMBER):
            raise NotUnderstoodError(cur.span_from(start))
        return self.stitches.works(cur, made, start, where)

    def _stands_beside(self, cur: Cursor) -> bool:
        """Takes what is no work: ends, tails, colours, markers; kept as a note."""
        start = cur.at
        if cur.next_is("return"):
            cur.at = len(cur.words)  # the way back of a two-pass row makes no stitch
        elif cur.word().text in BESIDE or (cur.next_is("leave") and _has(cur, "tail")) or cur.next_is("nojoin"):
            cur.skip_to((*BREAKS, "otherside"))
            if cur.next_is(",") and cur.words[start].text in ("change", "changing"):
                pass
        else:
            return False
        if cur.at == start:
            cur.at += 1
        self.row.notes.append(cur.span_from(start))
        return True

    def _turns_or_joins(self, cur: Cursor, items: list[Instruction]) -> bool:
        worked = any(not isinstance(item, Chain) for item in items)
        if cur.accept("turn"):
            self.row.turn_after = True if worked else self.row.turn_after
            self.row.turn_before = self.row.turn_before or not worked
        elif cur.accept("noturn"):
            self.row.turn_after = False
        elif cur.accept("join"):
            start = cur.at
            self.row.joined_at = len(items) if worked else self.row.joined_at
            cur.skip_to((*BREAKS, "turn", "noturn", "(", "["))
            clause = cur.words[start : cur.at]
            if worked:
                self.row.joins_to = _joined_to(clause)
            elif any(word.sort == STITCH for word in clause) and not any(word.text == "slst" for word in clause):
                cur.at = start + next(index for index, word in enumerate(clause) if word.sort == STITCH)
        elif cur.next_is("leave") and (cur.next_is("rem", "last", "tch", "unworked", "st", ahead=1) or cur.sort_is(NUMBER, 1)):
            start = cur.at
            cur.skip_to((*BREAKS, "turn", "noturn"))
            self.row.leaves_rest = True
            self.row.leaves = next((word.value for word in cur.words[start : cur.at] if word.sort == NUMBER), 0)
        elif cur.next_is("fasten", "change") or (cur.next_is("with", "using") and _names_yarn(cur)):
            cur.skip_to(BREAKS)
        else:
            return cur.accept("side")
        return True

    def _says_what_counts(self, cur: Cursor, items: list[Instruction]) -> bool:
        end = cur.at
        while end < min(len(cur.words), cur.at + LONGEST_SAYING) and cur.words[end].text not in (";", ".", "(", ")"):
            end += 1
        said = said_to_count(cur.inside(cur.at, end))
        if said is None:
            return False
        self._note(said, items)
        cur.at = end
        return True

    def _counts_at_end(self, cur: Cursor) -> bool:
        """``34 sts``, ``= 20 sts`` or ``73 sc`` behind the work, at the row's end or before it turns."""
        start = cur.at
        cur.accept("=")
        before = cur.word(-1).text if start else ""
        signed = before in ("-", "=", ":")
        ended = before in (".", ";", "turn", "noturn", ")", "]", "toend", "around") or cur.word(-2).text in (
            "toend",
            "around",
            "st",
            ")",
        )
        if not (cur.sort_is(NUMBER) and (signed or ended or cur.next_is("st", ahead=1)) and start):
            cur.at = start
            return False
        end = cur.at
        while end < len(cur.words) and cur.words[end].text not in (".", "turn", "join", "noturn"):
            end += 1
        counts = printed_counts(cur.inside(cur.at, end), self.targets)
        rest = {word.text for word in cur.words[end:]} - {".", "turn", "join", "noturn", ",", "with", "slst", "first", "in", "st"}
        if not counts or (not signed and rest and before not in (".", ";") and not cur.next_is("st", ahead=1)):
            cur.at = start
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
            if count is None and cur.accept("tch", "begch"):
                return [*found, Skip(Wanted("tch"), 1, cur.span_from(start))]
            wanted = replace_whole(self.targets.wanted_or_any(cur))
            if cur.next_is("fromhook"):
                cur.at += 1
            found.append(Skip(wanted, count or 1, cur.span_from(start), first))
            start = cur.at + 1
            if not (cur.next_is("and") and (cur.next_is("next", "ch", ahead=1) or self._skips_on(cur))):
                return found
            cur.at += 1
            cur.accept("sk")

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
        """Whether ``and dc`` names one more that is skipped, and no stitch that is made."""
        ahead = 2 if cur.sort_is(NUMBER, 1) else 1
        if cur.next_is("sk", ahead=1):
            return False
        named = cur.word(ahead).sort in (STITCH, TOGETHER) or cur.next_is("st", "ch", "sp", *ONE_STITCH_NAMES, ahead=ahead)
        after = cur.word(ahead + 1)
        return named and after.text in ("", ",", ";", ".", ")", "]", "and")

    def _slip_stitch(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """A slip stitch that joins the round makes nothing; one before the row's first chains only moves along."""
        worked = any(isinstance(item, Work | Repeat) for item in items)
        if len(items) > 1 and isinstance(items[-1], Chain) and self.stitches.closes_picot(cur):
            items.pop()
            return [Work(Made(("picot",)), Next(ANY_STITCH, 0), cur.span_from(start))]
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_to(BREAKS)
        clause = [word.text for word in cur.words[cur.at : cur.at + rest.at]]
        closes = self.in_round and clause[:2] and any(text in ("first", "begch", "topof", "tch") for text in clause[:5])
        if worked and ("join" in clause or closes or clause[:1] == ["to"]):
            self.row.joined_at = len(items)
            self.row.joins_to = _joined_to(cur.words[cur.at : cur.at + rest.at])
            cur.at += rest.at
            return []
        cur.accept("to")
        if not worked and cur.accept("next"):
            cur.at -= 1
        made = Made(("sl st",))
        if cur.next_is("in") or cur.next_is(*BREAKS, "and", ""):
            return self.stitches.work(cur, made, start)
        return self.stitches.works(cur, made, start, self.targets.target(cur))


def _takes_its_place(ends: Work, instead: Work) -> bool:
    """Whether a row's end is the repeat's own last stitch made elsewhere, or less of it in the last such place."""
    if ends.made == instead.made:
        return True
    own, last = ends.into, instead.into
    same_place = isinstance(own, Next) and isinstance(last, Last) and own.wanted == last.wanted and own.wanted.kind != "st"
    return same_place and set(ends.made.items) == set(instead.made.items)


def _depth(cur: Cursor) -> int:
    """How deep brackets stand in brackets."""
    deepest = depth = 0
    for word in cur.words:
        depth += (word.text in CLOSING) - (word.text in CLOSING.values())
        deepest = max(deepest, depth)
    return deepest


def _joined_to(words: Sequence[Word]) -> str:
    """Whether a round is joined to its first chains ("chain") or to its first stitch ("stitch"); "" if that is not said."""
    texts = [word.text for word in words]
    if any(text in ("topof", "begch", "tch") for text in texts) or any(
        texts[index] == "ch" and (index + 1 < len(texts) or words[index - 1].sort == ORDINAL or words[index - 1].sort == NUMBER)
        for index in range(1, len(texts))
    ):
        return "chain"
    return "stitch" if "first" in texts and any(word.sort == STITCH for word in words) else ""


def _has(cur: Cursor, text: str) -> bool:
    """Whether the word comes before the phrase ends."""
    rest = cur.inside(cur.at, len(cur.words))
    rest.skip_to(BREAKS)
    return any(word.text == text for word in cur.words[cur.at : cur.at + rest.at])


def _with_span(item: Instruction, span: Span) -> Instruction:
    if isinstance(item, Repeat):
        return replace(item, body=tuple(_with_span(inner, span) for inner in item.body), span=span)
    if isinstance(item, Either):
        return replace(item, works=tuple(replace(work, span=span) for work in item.works), span=span)
    return replace(item, span=span)


def _all_of(cur: Cursor) -> Span:
    return Span(cur.words[0].start, cur.words[-1].end) if cur.words else Span(0, 0)


def _names_yarn(cur: Cursor) -> bool:
    """Whether "with" names a colour: its letter, or nothing that is left of it ("with A" reads like an article), no stitch."""
    text = cur.word(1).text
    if text in ("color", "colour", "cc", "mc", "", *BREAKS) or (len(text) == 1 and text.isalpha()):
        return True
    rest = cur.inside(cur.at, len(cur.words))
    rest.skip_to(BREAKS)
    clause = cur.words[cur.at : cur.at + rest.at]
    return not any(word.sort in (STITCH, TOGETHER) or word.text in ("slst", "ch", "st") for word in clause)
