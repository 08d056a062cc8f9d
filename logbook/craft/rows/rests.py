"""What a row says of the rests that earlier rows left unworked: which of them it is worked onto."""

from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.word import NUMBER, STITCH, Word


def onto_rest(cur: Cursor, row: RowWords, in_round: bool) -> Cursor:
    """Notes ``next unworked st of Row 2``, and leaves out what only says so."""
    texts = [word.text for word in cur.words]
    if not ({"join", "rejoin", "attach", "return"} & set(texts)):
        return _and_onto_rests(cur, row)
    joins = min(texts.index(word) for word in ("join", "rejoin", "attach", "return") if word in texts)
    if "sk" in texts[:joins] and not in_round:
        row.onto = -1  # "skip center 10 sts, rejoin yarn in next st"
    kept: list[Word] = []
    at = 0
    while at < len(texts):
        named = (
            texts[at] in ("of", "on", "in", "from", "after")
            and texts[max(at - 1, 0)] not in ("and", "here")
            and texts[at + 1 : at + 2] in (["row"], ["around"])
        )
        if named and at + 2 < len(texts) and cur.words[at + 2].sort == NUMBER and texts[at + 3 : at + 4] != ["below"]:
            row.onto = cur.words[at + 2].value
            at += 3
        elif texts[at] in ("unworked", "unused") and "leave" not in texts[:at]:
            row.onto = row.onto or -1
            at += 1
        elif texts[at] == "centre" and at + 1 < len(texts) and cur.words[at + 1].sort == NUMBER:
            at += 1
        elif texts[at] == "for" and at + 1 < len(texts) and cur.words[at + 1].sort not in (NUMBER, STITCH):
            while at < len(texts) and texts[at] not in BREAKS:
                at += 1
        else:
            kept.append(cur.words[at])
            at += 1
    return Cursor(tuple(kept), cur.words[-1].end) if row.onto else cur


def _and_onto_rests(cur: Cursor, row: RowWords) -> Cursor:
    """Notes ``the 5 unworked sts of Row 3``, ``each of 4 sts left unworked in Row 1``, and leaves out what only says so."""
    texts = [word.text for word in cur.words]
    if "unworked" not in texts or "leave" in texts:
        return cur
    kept: list[Word] = []
    at = 0
    while at < len(texts):
        named = texts[at] in ("of", "on", "in", "from") and texts[at + 1 : at + 2] in (["row"], ["around"])
        if named and at + 2 < len(texts) and cur.words[at + 2].sort == NUMBER and "unworked" in texts[max(at - 4, 0) : at]:
            row.and_onto += (cur.words[at + 2].value,)
            at += 3
        elif texts[at] == "unworked" or (texts[at] in ("left", "rem") and texts[at + 1 : at + 2] == ["unworked"]):
            at += 1
        else:
            kept.append(cur.words[at])
            at += 1
    return Cursor(tuple(kept), cur.words[-1].end) if row.and_onto else cur
