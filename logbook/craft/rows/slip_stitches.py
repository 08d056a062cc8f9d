"""Slip stitches: those that are made, those that move along, and the one that joins a round."""

from logbook.craft.rows.beside import joined_to
from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.instructions import ANY_STITCH, Chain, Instruction, Made, Next, Repeat, Work
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER


def _texts(cur: Cursor) -> list[str]:
    """What comes next, up to a count in brackets."""
    rest = [word.text for word in cur.words[cur.at :]]
    return rest[: next((at for at, text in enumerate(rest) if text in ("(", "[", "-", "=")), len(rest))]


class SlipStitches:
    """Reads them; what joins the round is noted in ``row``."""

    def __init__(self, row: RowWords, targets: Targets, stitches: Stitches, in_round: bool) -> None:
        self.row = row
        self.targets = targets
        self.stitches = stitches
        self.in_round = in_round

    def slip_stitch(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """A slip stitch that joins the round makes nothing; one before the row's first chains only moves along."""
        worked = any(isinstance(item, Work | Repeat) for item in items)
        inside = len(items) == 1 and any(isinstance(item, Work | Repeat) for item in self.targets.items)
        if (len(items) > 1 or inside) and isinstance(items[-1], Chain) and self.stitches.groups.closes_picot(cur):
            items.pop()
            return [Work(Made(("picot",)), Next(ANY_STITCH, 0), cur.span_from(start))]
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_clause("turn", "noturn")
        clause = [word.text for word in cur.words[cur.at : cur.at + rest.at]]
        closes = self.in_round and (self._closes(clause) or (not clause and not rest.next_is(",", "and")))
        ends = (
            clause[:2] == ["in", "next"] and len(clause) == 3 and not set(_texts(rest)) - {".", ",", "and", "fasten", "cut", ""}
        )
        closes = closes or (self.in_round and ends)  # "sl st in next st. Fasten off."
        if worked and ("join" in clause or closes or clause[:1] == ["to"]):
            self.row.joined_at = len(items)
            self.row.joins_to = joined_to(cur.words[cur.at : cur.at + rest.at])
            cur.at += rest.at
            return []
        if cur.next_is("toend", "over") and (cur.next_is("first", "next", "last", ahead=1) or cur.sort_is(NUMBER, 1)):
            cur.at += 1  # "across next 4 sts"
        cur.accept("to", "around")
        made = Made(("sl st",))
        if cur.next_is("in") or cur.next_is(*BREAKS, "and", ""):
            return self.stitches.work(cur, made, start)
        return self.stitches.works(cur, made, start, self.targets.target(cur))

    @staticmethod
    def _closes(clause: list[str]) -> bool:
        """Whether a slip stitch into such a place closes a round: ``in first dc``, ``in 3rd of 5 ch``, ``to top of ch-3``."""
        if any(text in ("first", "begch", "topof", "tch", "1st") for text in clause[:5]):
            return not any(text == "sp" for text in clause)
        of_chain = any(text == "of" and clause[at + 1 : at + 2] == ["ch"] for at, text in enumerate(clause[:5]))
        of_count = any(text == "of" and clause[at + 2 : at + 3] == ["ch"] for at, text in enumerate(clause[:5]))
        return clause[:1] in (["in"], ["to"]) and (of_chain or of_count)
