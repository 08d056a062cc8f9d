"""US and UK terms of crochet, and what in a text proves which of them it uses."""

import re
from enum import StrEnum
from typing import NamedTuple


class Terms(StrEnum):
    """The two ways the trade names its stitches."""

    US = "US"
    UK = "UK"


class Term(NamedTuple):
    """One stitch or doing in both languages, each as (full name, abbreviation; "" if none)."""

    us: str
    us_short: str
    uk: str
    uk_short: str

    def short(self, terms: Terms) -> str:
        """The abbreviation in those terms."""
        return self.us_short if terms is Terms.US else self.uk_short

    def name(self, terms: Terms) -> str:
        """The full name in those terms."""
        return self.us if terms is Terms.US else self.uk


TERMS = (
    Term("chain", "ch", "chain", "ch"),
    Term("slip stitch", "sl st", "slip stitch", "ss"),
    Term("single crochet", "sc", "double crochet", "dc"),
    Term("half double crochet", "hdc", "half treble crochet", "htr"),
    Term("double crochet", "dc", "treble crochet", "tr"),
    Term("treble crochet", "tr", "double treble crochet", "dtr"),
    Term("double treble crochet", "dtr", "triple treble crochet", "trtr"),
    Term("triple treble crochet", "trtr", "quadruple treble crochet", "qtr"),
    Term("skip", "sk", "miss", "miss"),
    Term("gauge", "", "tension", ""),
    Term("yarn over", "yo", "yarn round hook", "yrh"),
    Term("front post double crochet", "fpdc", "raised treble front", "rtrf"),
    Term("back post double crochet", "bpdc", "raised treble back", "rtrb"),
    Term("work even", "", "work straight", ""),
)

_PROOF_US = re.compile(r"\b(?:f?sc|hdc|sc\d+tog|single crochet|half double|fpdc|bpdc|yo|sk|skip)\b", re.IGNORECASE)
_PROOF_UK = re.compile(r"\b(?:htr|trtr|qtr|miss|yrh|rtrf|rtrb|half treble)\b", re.IGNORECASE)


def terms_proved_by(text: str) -> Terms | None:
    """The terms that the words of ``text`` prove, None if they prove none or both (``dc`` alone can be read both ways)."""
    us, uk = bool(_PROOF_US.search(text)), bool(_PROOF_UK.search(text))
    return None if us == uk else Terms.US if us else Terms.UK


def translated(name: str, source: Terms, target: Terms) -> str:
    """A stitch's full name or abbreviation in the other terms; unchanged if it is none of the table's."""
    if source is target:
        return name
    for term in TERMS:
        if name.lower() == term.name(source):
            return term.name(target)
        if name.lower() == term.short(source) != "":
            return term.short(target)
    return name


def gauge_word(terms: Terms) -> str:
    """``gauge``, or ``tension``."""
    return translated("gauge", Terms.US, terms)
