"""Which stitch the rows begin with: what there is to choose from, and what each choice types into the form of a swatch."""

from collections.abc import Mapping
from typing import NamedTuple

from logbook.craft.swatches.fields import Owner
from logbook.craft.swatches.known_stitches import STITCHES, KnownStitch, stitch_of
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.terms import Terms
from logbook.pages.swatches.form_texts import PLAIN, texts_of

QUESTION = "which stitch do the rows begin with?"
_FIRST = ("extra chains", "first stitch in chain", "skipped chains cover")
_OF_PATTERN = [name for name, field in PLAIN.items() if field.owner is Owner.PATTERN]


class FirstStitchChoice(NamedTuple):
    """A stitch by its short name, and the texts of the form that choosing it types in."""

    label: str
    texts: Mapping[str, str]


def first_stitches(pattern: StitchPattern | None, terms: Terms) -> tuple[FirstStitchChoice, ...]:
    """The basic stitches, that of the pattern's own name first; a swatch without a stitch pattern becomes one of that stitch."""
    spoken = Terms(pattern.terms) if pattern and pattern.terms else terms
    own = stitch_of(pattern, spoken) if pattern else None
    return tuple(_choice(stitch, pattern, spoken) for stitch in sorted(STITCHES, key=lambda stitch: stitch is not own))


def _choice(stitch: KnownStitch, pattern: StitchPattern | None, terms: Terms) -> FirstStitchChoice:
    said = texts_of(Swatch(pattern=stitch.pattern(terms)))
    names = _OF_PATTERN if pattern is None else _FIRST
    return FirstStitchChoice(stitch.short(terms), {name: said[name] for name in names})
