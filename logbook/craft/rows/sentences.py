"""Troubles as a maker would say them, in the terms of the text."""

from dataclasses import dataclass

from logbook.craft.rows.every_width import Misfit
from logbook.craft.rows.finding import RowTrouble
from logbook.craft.rows.instructions import Span, Wanted, WrittenRow
from logbook.craft.rows.places import CHAIN, Place, plain
from logbook.craft.words.counting import counted
from logbook.craft.words.terms import Terms, translated


@dataclass(frozen=True, slots=True)
class Speaker:
    """Says things of the rows in ``text``, whose stitches are named in ``terms``."""

    text: str
    terms: Terms

    def quoted(self, span: Span) -> str:
        """The phrase as it is written, shortened if it is long."""
        phrase = " ".join(self.text[span.start : span.end].split())
        return f"“{phrase}”" if len(phrase) < 70 else f"“{phrase[:60]} …”"

    def stitch(self, kind: str) -> str:
        """A stitch's abbreviation in the terms of the text."""
        bare = plain(kind)
        return kind.replace(bare, translated(bare, Terms.US, self.terms)) if bare else kind

    def place(self, place: Place) -> str:
        if place.kind == CHAIN:
            return f"a ch-{place.run[0]} sp" if place.run and place.run[0] else "a ch"
        return f"a {self.stitch(place.kind)}"

    def wanted(self, wanted: Wanted | None) -> str:
        if wanted is None:
            return "stitch"
        if wanted.kind == "sp":
            return f"ch-{wanted.size} sp" if wanted.size else "space"
        if wanted.kind == "group":
            return wanted.name
        return {"st": "stitch", "ch": "chain", "gap": "gap between stitches"}.get(wanted.kind, self.stitch(wanted.kind))

    def misfit(self, row: WrittenRow, misfit: Misfit) -> str:
        """Why the row does not work."""
        if misfit.unproven:
            return f"{row.name} is not decided: checking it at every width took too long."
        return self.trouble(row.name, misfit.trouble, " at every width" if misfit.everywhere else "")

    def trouble(self, name: str, trouble: RowTrouble, always: str) -> str:
        phrase, wanted = self.quoted(trouble.span), self.wanted(trouble.wanted)
        many = counted(trouble.count, "stitch") if always or trouble.count < 20 else "many stitches"
        if trouble.sort == "over":
            return f"{name} ends with {many if trouble.count else counted(trouble.chains, 'chain')} over{always}."
        if trouble.sort == "last" and trouble.count < 0:
            return f"{name} has {counted(-trouble.count, 'stitch')} too few for {phrase}."
        if trouble.sort == "last":
            verb = "is" if trouble.count == 1 else "are"
            return f"{name}: after its last whole repeat {many} too many {verb} left for {phrase}{always}."
        if trouble.sort == "other" and trouble.found is not None:
            return f"{name}: {phrase} lands on {self.place(trouble.found)}, not a {wanted}."
        if trouble.sort == "passed":
            return f"{name}: {phrase} would pass over {many} that nothing says to skip{always}."
        if trouble.sort == "short":
            missing = f"{trouble.count} {wanted}s more are" if trouble.count > 1 else f"one {wanted} more is"
            return f"{name} runs out at {phrase}{always}: {missing} needed."
        return self._rarer(name, trouble, phrase)

    def _rarer(self, name: str, trouble: RowTrouble, phrase: str) -> str:
        if trouble.sort == "part" and trouble.found is not None:
            return f"{name}: what is skipped before {phrase} leaves part of {self.place(trouble.found)}."
        if trouble.sort == "edge":
            return f"{name}: {phrase} does not say whether the gap between a lone stitch and a group is one of them."
        if trouble.sort == "rest":
            return f"{name} leaves {counted(trouble.count, 'stitch')} unworked, not as many as it says."
        if trouble.sort == "unskipped":
            return f"{name}: nothing was skipped that {phrase} could go back to."
        if trouble.sort == "behind":
            return f"{name}: {phrase} comes when the first stitch has been passed."
        if trouble.sort == "still":
            return f"{name}: {phrase} takes no stitch of the row below and would never end."
        if trouble.sort == "which":
            return f"{name}: {phrase} does not say which place of the {self.wanted(trouble.wanted)} is meant."
        if trouble.sort == "turning" and trouble.count:
            return f"{name}: {phrase} is not a chain of the turning chain below, whose stitch is {trouble.count} chains high."
        return f"{name}: {phrase} finds no turning chain that counts as a stitch at the end of the row below."
