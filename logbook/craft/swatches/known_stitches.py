"""The basic stitches by their names, US and UK, and what a fabric of them says of its chain and rows.

The first stitch goes into the j-th chain from the hook, and the chains skipped there stand for nothing or for a stitch. Where
both are in use, the usual form comes first. Source: the trade's common practice, which a written pattern may overrule.
"""

import re
from typing import NamedTuple

from logbook.craft.swatches.stitch_pattern import StitchPattern, extra_chains
from logbook.craft.words.terms import TERMS, Term, Terms
from logbook.errors import UnreadableError


class FirstStitch(NamedTuple):
    """The first stitch goes into chain ``into`` from the hook; the chains skipped there lie over ``cover`` base chains."""

    into: int
    cover: int

    @property
    def extra(self) -> int:
        """t, the chains beside base stitches."""
        return self.into - 1 - self.cover


class KnownStitch(NamedTuple):
    """A basic stitch by its US name: how high its row is against single crochet's, and how it begins, the usual form first."""

    us: str
    height: float
    forms: tuple[FirstStitch, ...]

    @property
    def usual(self) -> FirstStitch:
        """The form to take where nothing else is said."""
        return self.forms[0]

    def short(self, terms: Terms) -> str:
        """``hdc``."""
        return _term(self.us).short(terms)

    def name(self, terms: Terms) -> str:
        """``half double crochet``."""
        return _term(self.us).name(terms)

    def pattern(self, terms: Terms, form: FirstStitch | None = None) -> StitchPattern:
        """The fabric of this stitch alone: any number of stitches, and after the first row any number of rows."""
        begins = form or self.usual
        return StitchPattern(
            name=self.name(terms),
            multiple=1,
            plus=0,
            extra_chains=begins.extra,
            first_stitch=begins.into,
            skip_cover=begins.cover,
            set_up_rows=1,
            rows_in_repeat=1,
            closing_rows=0,
            terms=terms.value,
        )


STITCHES = (
    KnownStitch("single crochet", 1, (FirstStitch(2, 0),)),
    KnownStitch("half double crochet", 1.5, (FirstStitch(3, 0), FirstStitch(3, 1))),
    KnownStitch("double crochet", 2, (FirstStitch(4, 1), FirstStitch(3, 0))),
    KnownStitch("treble crochet", 3, (FirstStitch(5, 1), FirstStitch(4, 0))),
    KnownStitch("double treble crochet", 4, (FirstStitch(6, 1), FirstStitch(5, 0))),
)


_LOOPS = r"""[(,]?\s*\b(?:(?:worked\s+)?(?:in(?:to)?|through|thru)\s+)?(?:the\s+)?
    (?:[bf]lo?|t[bf]l|(?:back|front|third|3rd|both)[\s-]+(?:loops?|lps?)(?:[\s-]+only)?)(?![\w-])\.?\)?"""
"""Words for the loops that a stitch goes into."""


def known_stitch(text: str, terms: Terms) -> KnownStitch | None:
    """The stitch that ``text`` names in ``terms``: ``hdc``, ``half double crochet``, ``hdc blo``; None if it is none.

    Which loops it goes into changes neither its chain nor how a row begins.
    """
    name = _folded(re.sub(_LOOPS, " ", text, flags=re.IGNORECASE | re.VERBOSE))
    return next((stitch for stitch in STITCHES if name in _names(stitch, terms)), None)


def stitch_named(text: str, terms: Terms | None) -> tuple[KnownStitch, Terms]:
    """The stitch named by ``text``, in US terms if nothing is said and it is one there, else in UK terms.

    Raises UnreadableError, naming the text, if it names none.
    """
    for tried in (terms,) if terms else (Terms.US, Terms.UK):
        found = known_stitch(text, tried)
        if found is not None:
            return found, tried
    other = Terms.US if terms is Terms.UK else Terms.UK
    if terms and (found := known_stitch(text, other)):
        raise UnreadableError(f"“{text.strip()[:40]}” is a {other} name: in {terms} terms it is {found.short(terms)}.")
    shorts = ", ".join(stitch.short(terms or Terms.US) for stitch in STITCHES)
    raise UnreadableError(f"“{text.strip()[:40]}” is not a stitch known by name: take one of {shorts}, or say its extra chains.")


def stitch_of(pattern: StitchPattern, terms: Terms) -> KnownStitch | None:
    """The basic stitch that a pattern's name says, in its own terms, or in ``terms`` where it does not say which."""
    return known_stitch(pattern.name, Terms(pattern.terms) if pattern.terms else terms)


def form_with(stitch: KnownStitch, stated: int | None, first: int | None, cover: int | None) -> FirstStitch | None:
    """The stitch's form that agrees with all that is said besides; None if none does. Raises RefusedError as ``extra_chains``."""
    extra = extra_chains(stated, first, cover)
    fitting = (form for form in stitch.forms if (first, cover) in ((None, None), (form.into, cover), (form.into, form.cover)))
    return next((form for form in fitting if extra is None or form.extra == extra), None)


def _names(stitch: KnownStitch, terms: Terms) -> set[str]:
    name = _folded(stitch.name(terms))
    names = {name, stitch.short(terms), name.removesuffix(" crochet")}
    if name == "treble crochet" and terms is Terms.US:
        names |= {"triple crochet", "triple"}
    return names


def _folded(text: str) -> str:
    """Small letters, one space between words, no full stop, hyphen or plural."""
    words = " ".join(re.sub(r"[.\-]", " ", text.casefold()).split())
    return re.sub(r"(?<=[cter])s\Z", "", words)


def _term(us: str) -> Term:
    return next(term for term in TERMS if term.us == us)
