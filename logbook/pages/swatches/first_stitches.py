"""Which stitch the rows begin with: what there is to choose from, and what each choice types into the form of a swatch."""

from collections.abc import Mapping
from typing import NamedTuple

from logbook.craft.swatches.fields import Owner
from logbook.craft.swatches.known_stitches import STITCHES, FirstStitch, KnownStitch, stitch_of
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import counted, ordinal
from logbook.craft.words.terms import Terms
from logbook.pages.swatches.form_texts import PLAIN, texts_of

QUESTION = "which stitch do the rows begin with?"
_FIRST = ("extra chains", "first stitch in chain", "skipped chains cover")
_OF_PATTERN = [name for name, field in PLAIN.items() if field.owner is Owner.PATTERN]


class FirstStitchChoice(NamedTuple):
    """A stitch by its short name, and the texts of the form that choosing it types in."""

    label: str
    texts: Mapping[str, str]
    chosen: bool = False


def first_stitches(pattern: StitchPattern | None, terms: Terms) -> tuple[FirstStitchChoice, ...]:
    """The basic stitches, that of the pattern's own name first; a swatch without a stitch pattern becomes one of that stitch.

    Where the chain of the first stitch is said, and not what the skipped ones count as, just that is asked.
    """
    if pattern is not None and pattern.first_stitch is not None and pattern.extra() is None:
        skipped = counted(pattern.first_stitch - 1, "skipped chain")
        return tuple(
            FirstStitchChoice(f"{skipped} {words}", {"skipped chains cover": cover})
            for words, cover in (("count as a stitch", "1"), ("don’t count", "0"))
        )
    spoken = Terms(pattern.terms) if pattern and pattern.terms else terms
    own = stitch_of(pattern, spoken) if pattern else None
    return tuple(_choice(stitch, pattern, spoken) for stitch in sorted(STITCHES, key=lambda stitch: stitch is not own))


def usual_forms(pattern: StitchPattern | None, terms: Terms) -> tuple[FirstStitchChoice, ...]:
    """The two usual ways to begin rows of a basic stitch, where it has two and begins in one of them; that one is ``chosen``."""
    stitch = stitch_of(pattern, Terms(pattern.terms) if pattern.terms else terms) if pattern else None
    said = (pattern.first_stitch, pattern.skip_cover) if pattern else (None, None)
    if stitch is None or len(stitch.forms) < 2 or said not in stitch.forms:
        return ()
    return tuple(_form_choice(form, chosen=said == form) for form in stitch.forms)


def _form_choice(form: FirstStitch, *, chosen: bool) -> FirstStitchChoice:
    words = "the skipped chs count" if form.cover else "the skipped chs don’t count"
    texts = {"extra chains": str(form.extra), "first stitch in chain": str(form.into), "skipped chains cover": str(form.cover)}
    return FirstStitchChoice(f"First stitch in {ordinal(form.into)} ch, {words}", texts, chosen)


def _choice(stitch: KnownStitch, pattern: StitchPattern | None, terms: Terms) -> FirstStitchChoice:
    said = texts_of(Swatch(pattern=stitch.pattern(terms)))
    names = _OF_PATTERN if pattern is None else _FIRST
    return FirstStitchChoice(stitch.short(terms), {name: said[name] for name in names})
