"""Rows that are to be proven: at once where that takes no time to speak of, else beside the window."""

import re
from dataclasses import dataclass

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof
from logbook.craft.words.terms import Terms
from logbook.pages.patterns.wording import NOT_SAID

QUICK_LETTERS, QUICK_STITCHES = 2000, 1500
"""Rows of some 60 phrases; so many letters and the sum of their numbers are proven in well under 50 ms."""


@dataclass(frozen=True, slots=True)
class ToProve:
    """Rows as typed, the terms as chosen, and whether what would mend them is looked for."""

    text: str
    terms: str
    suggests: bool

    @property
    def is_quick(self) -> bool:
        """Whether the proof may be waited for at every key."""
        numbers = re.findall(r"\d+", self.text) if len(self.text) <= QUICK_LETTERS else ()
        return (
            not self.suggests and len(self.text) <= QUICK_LETTERS and sum(int(number[:6]) for number in numbers) <= QUICK_STITCHES
        )

    def proof(self) -> Proof:
        """Touches nothing of the page: it may run in a thread of its own."""
        return prove(self.text, None if self.terms == NOT_SAID else Terms(self.terms), suggest=self.suggests)
