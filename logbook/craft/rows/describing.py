"""Reads what a pattern says of its own stitches: ``Shell – 5 dc in same st``, ``Puff: [Yo, insert hook …``, a cable in steps."""

import re
from dataclasses import dataclass, field
from itertools import pairwise

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import Instruction, Made, Next
from logbook.craft.rows.lines import LEADS_TO_ROW
from logbook.craft.rows.own_stitches import NO_PLACE, OwnStitches
from logbook.craft.rows.phrases import Phrases
from logbook.craft.rows.place_kinds import ONE_STITCH_NAMES, PlaceKinds
from logbook.craft.rows.sayings import saying
from logbook.craft.rows.word import STITCH, TOGETHER, Word
from logbook.craft.rows.words import HowRead, cut, raw_words
from logbook.craft.words.terms import Terms

_CALLED = re.compile(
    r"\s*(?:(?:\d[.)]|[~*•·–-])\s+)?(?:special\s+(?:stitch(?:es)?|abbreviations?)\s*[:–—-]?\s*)?"
    r"(?P<name>(?:\d+-)?[A-Z][\w'’-]*(?:[ -][A-Za-z\d][\w'’-]*){0,3}?)"
    r"\s*(?:[(\[](?P<short>[\w .'’-]{1,40})[)\]])?\s*"
    r"(?:[=:]|\s[–—-]\s)\s*(?=\S)",
    re.IGNORECASE,
)
_NEXT = re.compile(
    r"(?<=[.;])\s+(?=(?:\d+-)?[A-Z][\w'’-]*(?:[ -][A-Za-z\d][\w'’-]*){0,3}?\s*(?:[(\[][\w .'’-]{1,20}[)\]])?\s*"
    r"(?:[=:]|\s[–—-]\s))"
)
_IN_LOOPS = re.compile(
    r"\b(?:yo|yrh|yarn\s+over|yarn\s+round|insert\s+(?:the\s+)?hook|draw\s+(?:up|through)|pull\s+(?:up|through))\b", re.IGNORECASE
)
_TAKES_NO_PLACE = re.compile(
    r"\b(?:gap|space|between)\b[^.]{0,150}\b(?:of|in)\s+(?:rnd|round|row)\s*\d|\bnot\s+(?:use|take)\s+up\b", re.IGNORECASE
)
"""A spike between what lies rows below: no stitch of the row below is worked or passed."""
LEAST_FOUNDATION = 12  # fewer chains may be a picot
_MADE_IN = re.compile(r"\b(?:sc|hdc|dc|tr|htr|dtr|insert|yo|yrh)\b", re.IGNORECASE)
_SEVERAL_PLACES = re.compile(
    r"\b(?:next|following|each\s+of)\b.{0,300}\b(?:next|following|each\s+of)\b|\b(?:next|first)\s+[2-9]\b|\bof\s+last\b",
    re.IGNORECASE | re.DOTALL,
)
"""One stitch drawn up in several places: how many it takes is not told by its loops."""
_NO_STITCH = re.compile(
    r"\s*(?:(?:all|every|each)\s+(?:rows?|rnds?|rounds?)|notes?|beg(?:inning)?\s+ch|tch|turning|pattern|stitch\s+guide|gauge|tension|materials?|yarn|hook|sizes?|rows?|rnds?|rounds?|ch|multiple|"
    r"next|last|each|second|third|swatch|sample|begin|start|to\s+start|abbreviations?|us|uk|foundation|base|finished|special\s+abb\w*)\b[^=]*[:=–—-]",
    re.IGNORECASE,
)


@dataclass(slots=True)
class Describing:
    """Takes in what the lines of a text say of its own stitches."""

    text: str
    terms: Terms
    own: OwnStitches = field(default_factory=OwnStitches)
    _starts: set[int] = field(default_factory=set)

    def described(self, start: int) -> bool:
        """Whether the line that begins there describes a stitch."""
        return start in self._starts

    def describe(self, start: int, end: int) -> bool:
        """Takes in the stitches that that stretch describes; False if it describes none."""
        cuts = [start, *(found.end() for found in _NEXT.finditer(self.text, start, end)), end]
        found = [self._one(*stretch) for stretch in pairwise(cuts)]
        if any(found):
            self._starts.add(start)
        return any(found)

    def _one(self, start: int, end: int) -> bool:
        text, terms = self.text, self.terms
        found = _CALLED.match(text, start, end)
        if found is None or (
            _NO_STITCH.match(text, found.start("name"), end)
            and not re.match(r"\s*beg\w*\s+(?:cl|pop|puff)", text[start:end], re.I)
        ):
            return False
        names = [name for name in (found["name"], found["short"]) if name]
        known = [cut(name, HowRead(terms, self.own.ways)) for name in names]
        body = text[found.end() : end]
        if LEADS_TO_ROW.search(body):
            return False  # "Right front: skip 10 sts, rejoin yarn in next st"
        chain = saying(body, 0, len(body)).chain
        if chain is not None and min(chain.numbers) >= LEAST_FOUNDATION and not _MADE_IN.search(body):
            return False  # "Cowl: make 96 ch"
        if _TAKES_NO_PLACE.search(body):
            name = " ".join(raw_words(names[0], terms))
            self.own.made[name] = Made((name,), NO_PLACE)
            self.own.ways[raw_words(names[0], terms)] = name
            return True
        for words in known:
            if len(words) == 1 and words[0].sort in (STITCH, TOGETHER):
                return _IN_LOOPS.search(body) is not None or not re.search(r"\d", body)  # "sc: single crochet": known anyhow
        name = next((words[0].text for words in known if len(words) == 1), "") or " ".join(raw_words(names[-1], terms))
        one = next((words[-1].text for words in known if words and words[-1].text in ONE_STITCH_NAMES), "")
        cur = Cursor(cut(text, HowRead(terms, self.own.ways), found.end(), end), end)
        if one:
            self._name(names, known, one)
            self.own.made[one] = Made((one,))
            return True
        if len(cur.words) <= 3 and cur.words and cur.words[0].text in ("dec", "inc"):
            return True
        return self._takes(cur, body, names, known, name)

    def _takes(self, cur: Cursor, body: str, names: list[str], known: list[tuple[Word, ...]], name: str) -> bool:
        made = self._in_one_place(cur)
        if made is not None:
            self.own.made[name] = Made(made.items, name)
            if (place := self._space_said(cur)) is not None:
                self.own.placed[name] = place
        elif _IN_LOOPS.search(body):
            if _SEVERAL_PLACES.search(body):
                return False
            self.own.made[name] = Made((name,))
        elif (steps := self._in_steps(cur)) is not None:
            self.own.steps[name] = steps
        else:
            return False
        self._name(names, known, name)
        return True

    def _name(self, names: list[str], known: list[tuple[Word, ...]], name: str) -> None:
        for written, words in zip(names, known, strict=True):
            if not (len(words) == 1 and words[0].text == name):
                raw = raw_words(written, self.terms)
                if raw and not (len(raw) == 1 and raw[0].isdigit()) and not any(word.text in ("(", ")") for word in words):
                    self.own.ways[raw] = name
                    plural = (*raw[:-1], raw[-1] + "s")
                    self.own.ways[plural] = name

    def _in_one_place(self, cur: Cursor) -> Made | None:
        """What is made in one place, up to where it goes."""
        places = ("in", ".", "leave", "drop", ";")
        stop = next((index for index, word in enumerate(cur.words) if word.text in places), len(cur.words))
        while stop and cur.words[stop - 1].text in ("worked", "each", ","):
            stop -= 1
        groups = Phrases(self.own, in_round=False).stitches.groups
        after = cur.words[stop + 1 :]
        if any(word.sort == STITCH and following.text == "in" for word, following in pairwise(after)) or any(
            word.text == "fromhook" for word in after
        ):
            return None  # more than one place
        made = groups.made(cur.inside(0, stop))
        if made is None and stop and cur.next_is("(", "["):
            made = groups.made(cur.inside(1, stop - 1))
        return made

    def _space_said(self, cur: Cursor) -> Next | None:
        """``in ch-2 sp`` at the end of a description; None if it says no space."""
        at = next((at for at, word in enumerate(cur.words) if word.text == "in"), len(cur.words))
        rest = cur.inside(at + 1, len(cur.words))
        rest.accept("next", "same", "corner")
        wanted = PlaceKinds(self.own.made).wanted(rest) if rest.more() else None
        return Next(wanted) if wanted is not None and wanted.kind == "sp" else None

    def _in_steps(self, cur: Cursor) -> tuple[Instruction, ...] | None:
        phrases = Phrases(self.own, in_round=False)
        row = phrases.read(cur.inside(0, len(cur.words)), "sc")
        return tuple(row.items) if row.items and not row.faults else None
