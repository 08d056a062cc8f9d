"""A text into rows: their names, what refers to other rows, and what is not understood, with its place."""

import pytest

from logbook.craft.rows.reader import read
from logbook.craft.words.terms import Terms


def names(text: str) -> list[tuple[int, str]]:
    pattern = read(text, Terms.US)
    assert pattern.faults == ()
    return [(row.number, row.name) for row in pattern.rows]


def faults(text: str, terms: Terms = Terms.US) -> list[tuple[int, str]]:
    return [(fault.row, text[fault.span.start : fault.span.end]) for fault in read(text, terms).faults]


PLAIN = "sc in each st across"
FIRST = "sc in 2nd ch from hook and in each ch across"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (f"{FIRST} / ch 1, {PLAIN}", [(1, "Row 1"), (2, "Row 2")]),
        (f"{FIRST}\n\nch 1, {PLAIN}\n", [(1, "Row 1"), (2, "Row 2")]),
        (f"Row 1 (RS): {FIRST}.\nRow 2 (WS): Ch 1, {PLAIN}.", [(1, "Row 1"), (2, "Row 2")]),
        (f"Row 1: {FIRST}. Row 2: Ch 1,\n{PLAIN}.", [(1, "Row 1"), (2, "Row 2")]),
        (f"Rnd 1: {FIRST}, join / Round 2: ch 1, {PLAIN}, join", [(1, "Rnd 1"), (2, "Round 2")]),
        (f"Set-up row: {FIRST}\nRow 1: ch 1, {PLAIN}", [(0, "Set-up row"), (1, "Row 1")]),
        (f"Foundation row (WS): {FIRST}\nRow 1: ch 1, {PLAIN}", [(0, "Foundation row"), (1, "Row 1")]),
        (f"Row 1: {FIRST}\nRows 2-4: ch 1, {PLAIN}", [(1, "Row 1"), (2, "Row 2"), (3, "Row 3"), (4, "Row 4")]),
        (f"Row 1: {FIRST}\nRow 2: ch 1, {PLAIN}\nRow 3: as row 2", [(1, "Row 1"), (2, "Row 2"), (3, "Row 3")]),
        (f"Row 1: {FIRST}\nRow 2: ch 1, {PLAIN}\nRows 3–5: Rep Row 2.", [(n, f"Row {n}") for n in range(1, 6)]),
        (f"1st row: {FIRST}\n2nd row: ch 1, {PLAIN}", [(1, "Row 1"), (2, "Row 2")]),
        (f"R1: {FIRST}\nR2: ch 1, {PLAIN}", [(1, "Row 1"), (2, "Row 2")]),
        (f"Row 1 – {FIRST}\nRow 2 – ch 1, {PLAIN}", [(1, "Row 1"), (2, "Row 2")]),
        (f"Bobble (bo): dc5tog in same st\nRow 1: {FIRST}\nRow 2: ch 1, bo in each st across", [(1, "Row 1"), (2, "Row 2")]),
        (f"Ch 38 (44, 50).\nRow 1: {FIRST}", [(1, "Row 1")]),
        (f"Foundation chain: multiple of 6 plus 2.\nRow 1: {FIRST}", [(1, "Row 1")]),
        (f"Note: beg ch-3 counts as dc throughout.\nRow 1: {FIRST}", [(1, "Row 1")]),
    ],
)
def test_rows_and_their_names(text: str, found: list[tuple[int, str]]) -> None:
    assert [(number, name.split(" (")[0]) for number, name in names(text)] == found


def test_rows_that_are_as_others_take_turns() -> None:
    text = f"Row 1: {FIRST}\nRow 2: ch 1, {PLAIN}\nRow 3: ch 1, dc in each st across\nRows 4-6: rep Rows 2 and 3"
    rows = read(text, Terms.US).rows
    assert [row.body for row in rows[3:]] == [rows[1].body, rows[2].body, rows[1].body]


@pytest.mark.parametrize("words", ["Rep Rows 2–3.", "Repeat rows 2 and 3 for pattern", "Rep Rows 2-3 until it measures 20 cm."])
def test_the_rows_to_repeat(words: str) -> None:
    pattern = read(f"Row 1: {FIRST}\nRow 2: ch 1, {PLAIN}\nRow 3: ch 1, {PLAIN}\n{words}", Terms.US)
    assert (pattern.faults, pattern.repeat_from, pattern.repeat_to) == ((), 2, 3)


def test_starting_chains_one_a_size() -> None:
    sizes = read(f"Ch 68 (74, 86, 92).\nRow 1: {FIRST}", Terms.US).chain_sizes
    assert sizes is not None
    assert sizes.numbers == (68, 74, 86, 92)
    own = read("Row 1: Ch 20, sc in 2nd ch from hook and in each ch across", Terms.US).chain_sizes
    assert own is not None
    assert own.numbers == (20,)


@pytest.mark.parametrize(
    ("words", "unknown"),
    [
        ("ch 1, frobnicate twice, sc in next st", "frobnicate twice"),
        ("ch 1, sc in next st, rep from * to end", "rep from *"),
        ("ch 1, (sc, ch 3, sc), sc in next st", "(sc, ch 3, sc)"),
        ("ch 1, (sc in next st", "(sc in next st"),
        ("ch 1, *sc in next st, ch 1", "*"),
        ("ch 1, shell in next st", "shell"),
        ("ch 1, dc, ch 1, dc in next st", "dc, ch 1, dc in next st"),
        ("ch 1, sc in next 100000 sts", "100000"),
        ("ch 1, sc3tog over next 2 sts", "sc3tog over next 2 sts"),
        ("ch 1, htr in next st", "htr"),
        ("ch 1, sc in next st, [] 3 times", "[] 3 times"),
    ],
)
def test_what_is_not_understood_is_named_with_its_place(words: str, unknown: str) -> None:
    assert faults(f"Row 1: {FIRST}\nRow 2: {words}") == [(2, unknown)]


def test_each_thing_not_understood_is_named() -> None:
    assert faults(f"Row 1: {FIRST}, bla\nRow 2: ch 1, blu, sc in next st, hey ho") == [(1, "bla"), (2, "blu"), (2, "hey ho")]


@pytest.mark.parametrize(
    ("text", "row"),
    [
        (f"Row 1: {FIRST}\nRow 3: ch 1, {PLAIN}", 3),
        (f"Row 2: ch 1, {PLAIN}", 2),
        (f"Row 1: {FIRST}\nRow 1: ch 1, {PLAIN}", 1),
        (f"Row 1: {FIRST}\nRow 2: as row 7", 2),
        (f"Row 1: {FIRST}, ch 1, turn\nRow 2: ch 1, {PLAIN}", 2),
    ],
)
def test_a_row_that_is_missing_or_out_of_order_is_named(text: str, row: int) -> None:
    assert [number for number, _ in faults(text)] == [row]


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        ("sc in next st", "dc in next st"),
        ("hdc in next st", "1 htr into next st"),
        ("2 dc in next st, sk 2 sts", "2 tr into next st, miss 2 sts"),
        ("tr in next st, dtr in next dc", "dtr in next st, trtr in next tr"),
        ("fpdc around next dc, bpdc around next dc", "rtrf around next tr, rtrb around next tr"),
        ("single crochet in next stitch", "double crochet in next stitch"),
        ("half double crochet in next stitch", "half treble in next stitch"),
        ("sc2tog, dc3tog", "dc2tog, tr3tog"),
        ("ch 2, sk 2 ch, sl st in next ch", "2 ch, miss 2 ch, ss into next ch"),
        ("2 dc in next ch-3 sp, dc in each of next 4 dc", "2 tr into next 3ch sp, 1 tr into each of next 4 tr"),
    ],
)
def test_US_and_UK_say_the_same(us: str, uk: str) -> None:
    def bare(words: str, terms: Terms) -> str:
        pattern = read(words, terms)
        assert pattern.faults == ()
        return str([_without_spans(repr(item)) for item in pattern.rows[0].body])

    assert bare(us, Terms.US) == bare(uk, Terms.UK)


def _without_spans(text: str) -> str:
    import re

    return re.sub(r"Span\(start=\d+, end=\d+\)", "", text)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("sc in BLO of each st across", "working in back loops only, sc in each st across"),
        ("sc in each st across", "single crochet in every stitch to end of row"),
        ("sc in next 3 sts", "sc 3"),
        ("sc in each of next 3 sts", "3 sc"),
        ("(sc, ch 1, sc) in next st", "(sc, ch 1, sc) all in next st"),
        ("dc in next st, popcorn in next st", "dc in next st, pc in next st"),
        ("3-dc cl in next st", "cluster in next st"),
        ("sk next 2 sts, sc in next st", "skip 2 stitches, sc in next"),
        ("*sc in next st; rep from * across", "[sc in next st] to end"),
        ("[sc in next st] 3 times", "[sc in next st] x 3"),
        ("sc in next st, [ch 3, sl st in 3rd ch from hook] for picot", "sc in next st, ch 3, sl st in first ch (picot made)"),
        ("V-st in next st", "(dc, ch 1, dc) in next st (V-st made)"),
        ("sk next dc, sk next ch, sk next dc, sc in next st", "sk (dc, ch 1, dc), sc in next st"),
        ("sc in each st across", "sc in each remaining st"),
        ("sc in each st across", "with A, sc in each st across"),
        ("sc in each st across", "with colour B, sc in each st across"),
        ("sc in 3rd ch of tch", "sc in 3rd of 4 ch at beg of previous row"),
        ("sc in 3rd ch of tch", "sc in 3rd ch of turning ch-4"),
        ("sc in top of tch", "sc in top of 3 turning ch"),
        ("sc in next dc", "sc in next dc of previous row"),
        ("*sc in next st; rep from * to end, ending with dc in last st", "*sc in next st; rep from * to end, end dc in last st"),
    ],
)
def test_other_words_for_the_same(one: str, other: str) -> None:
    v = "V-st = (dc, ch 1, dc) in same st\n"
    first, second = (read(v + words, Terms.US) for words in (one, other))
    assert (first.faults, second.faults) == ((), ())
    assert _without_spans(repr(first.rows[0].body)) == _without_spans(repr(second.rows[0].body))
