"""Where a stitch goes on the row below, place by place."""

import pytest

from logbook.craft.rows.laying import lay
from logbook.craft.rows.places import CHAIN, Place, Row, chains, mirrored, settled, spaces, stitches
from logbook.craft.rows.reader import read
from logbook.craft.words.terms import Terms


def laid(row: str, below: Row, shell: str = "") -> Row | str:
    """What ``row`` makes on ``below`` (kinds only matter), or the sort of its trouble."""
    pattern = read(f"{shell}Row 1: sc in 2nd ch from hook\nRow 2: {row}", Terms.US)
    assert pattern.faults == ()
    result = lay(pattern.rows[1], below, {})
    return result.row if result.trouble is None else result.trouble.sort


def below(text: str) -> Row:
    """``dc 2 sc`` → a dc, a space of two chains, an sc; ``(dc 1 dc)`` was made in one place, ``tch`` is a dc's turning chain."""
    made: list[Place] = []
    groups = text.replace("(", " ( ").replace(")", " ) ").split()
    start: int | None = None
    for word in groups:
        if word == "(":
            start = len(made)
        elif word == ")":
            assert start is not None
            size = len(made) - start
            made[start:] = [Place(place.kind, None, ("", size, which)) for which, place in enumerate(made[start:])]
        elif word.isdigit():
            made += [Place(CHAIN)] * int(word)
        else:
            made.append(Place("dc", turning=3) if word == "tch" else Place(word))
    return settled(made)


def kinds(row: Row | str) -> str:
    """The kinds in a line, or the trouble."""
    return row if isinstance(row, str) else " ".join(place.kind for place in row)


@pytest.mark.parametrize(
    ("row", "onto", "made"),
    [
        ("ch 1, sc in next 2 dc", "dc dc", "sc sc"),
        ("ch 1, sc in next 2 dc", "dc 3 dc", "sc sc"),
        ("ch 1, sc in next dc", "sc", "other"),
        ("ch 1, sc in next 3 dc", "dc dc", "short"),
        ("ch 1, sc in next dc", "dc dc", "over"),
        ("ch 1, sc in each dc to end", "dc dc dc", "sc sc sc"),
        ("ch 1, 2 dc in each of next 2 sts", "sc sc", "dc dc dc dc"),
        ("ch 1, sk first st, dc in next st", "sc sc", "dc"),
        ("ch 3, sk first st, dc in next st", "sc sc", "dc dc"),
        ("ch 3 (counts as dc), dc in same st, dc in next st", "sc sc", "dc dc dc"),
        ("ch 1, sc in first st, sk next sp, sc in next st", "dc 2 dc", "sc sc"),
        ("ch 1, sc in first st, 3 dc in next ch-2 sp, sc in last st", "dc 2 dc", "sc dc dc dc sc"),
        ("ch 1, sc in first st, 3 dc in next ch-2 sp, sc in last st", "dc 3 dc", "short"),
        ("ch 1, sc in first st, sc in next ch-2 sp, sc in last st", "dc 1 sc 2 dc", "sc sc sc"),
        ("ch 1, sk 1 st, sc in next ch-2 sp, sc in last st", "dc sc 2 dc", "passed"),
        ("ch 1, sc in first dc, sk 1 ch, sc in next dc", "dc 2 dc", "part"),
        ("ch 1, sc in first dc, sk 2 ch, sc in next dc", "dc 2 dc", "sc sc"),
        ("ch 1, sc in first dc, sc in last dc", "dc dc dc", "passed"),
        ("ch 1, sc in first dc, sc in last 2 dc", "dc dc dc", "sc sc sc"),
        ("ch 1, sc2tog, sc in next st", "dc 1 dc dc", "sc2tog sc"),
        ("ch 1, dc3tog over next 3 sts", "dc dc dc", "dc3tog"),
        ("ch 1, sc in next dc", "dc2tog", "sc"),
        ("ch 1, sc in next dc, sc in top of tch", "dc tch", "sc sc"),
        ("ch 1, sc in next dc, sc in 3rd ch of tch", "dc tch", "sc sc"),
        ("ch 1, sc in next dc, sc in 2nd ch of tch", "dc tch", "turning"),
        ("ch 1, sc in next dc, sc in top of tch", "dc dc", "turning"),
        ("ch 1, sc in next dc, 2 sc in tch sp", "dc 2 tch", "over"),
        ("ch 1, sc in next dc, sc in 4th ch of tch, sc in 3rd ch of tch", "dc 2 tch", "sc sc sc"),
        ("ch 1, *sc in next st; rep from * to tch, sc in top of tch", "dc dc tch", "sc sc sc"),
        ("ch 1, *sc in next 2 sts; rep from * to last 2 sts, 2 sc in last 2 sts", "dc dc dc dc", "sc sc sc sc sc sc"),
        ("ch 1, *sc in next 2 sts; rep from * to last 2 sts, sc in last 2 sts", "dc dc dc dc dc", "last"),
        ("ch 1, *sc in next 2 sts; rep from * to end", "dc dc dc", "over"),
        ("ch 1, *sc in next 2 sts; rep from * to end, sc in last st", "dc dc dc", "sc sc sc"),
        ("ch 1, *sc in next st, ch 1, sk 1 st; rep from * to end, sc in last st", "dc dc dc", "sc ch sc"),
        ("ch 1, *sc in next st, ** ch 1, sk 1 st; rep from * to end, ending last rep at **", "dc dc dc", "sc ch sc"),
        ("ch 1, *ch 1, sk 1 st, sc in next st; rep from * across, ending last rep with 2 sc in last st", "dc dc dc dc",
         "ch sc ch sc sc"),
        ("ch 1, *sc in next st, ch 2; rep from * to end, omitting last ch 2", "dc dc", "sc ch ch sc"),
        ("ch 1, *sc in next st; rep from * 2 more times", "dc dc dc", "sc sc sc"),
        ("ch 1, [sc in next st, 2 sc in next st] twice", "dc dc dc dc", "sc sc sc sc sc sc"),
        ("ch 1, sc in each st to next ch-2 sp, (sc, ch 2, sc) in sp, sc in each st to end", "dc 2 dc dc", "sc sc ch ch sc sc sc"),
        ("ch 1, sc in each dc and in each ch-1 sp across", "dc 1 dc 1 dc", "sc sc sc sc sc"),
        ("ch 1, sc in each sp across", "dc 1 dc 2 dc", "over"),
        ("ch 3 (counts as dc), (dc, ch 1, dc) in each ch-1 sp across, dc in top of tch", "dc (dc 1 dc) (dc 1 dc) tch",
         "dc dc ch dc dc ch dc dc"),
        ("ch 1, sc in first sc, sc in centre dc of next 5-dc group, sc in next sc", "sc (dc dc dc dc dc) sc", "sc sc sc"),
        ("ch 1, sc in first sc, sc in 2nd dc of next 5-dc group, sk 3 dc, sc in next sc", "sc (dc dc dc dc dc) sc", "sc sc sc"),
        ("ch 1, sc in first sc, sc in centre dc of next 5-dc group, sc in next sc", "sc (dc dc dc dc) sc", "short"),
        ("ch 1, 3 dc in next sp between groups, sk 3 dc", "(dc dc dc) (dc dc dc)", "dc dc dc"),
        ("ch 1, hdc in sp between first 2 sts, *hdc in sp between next 2 sts; rep from * across", "dc dc dc", "hdc hdc"),
        ("ch 1, *sk next st, dc in next st, dc in skipped st; rep from * to end", "sc sc sc sc", "dc dc dc dc"),
        ("ch 1, dc in next st, dc in skipped st", "sc", "unskipped"),
        ("ch 1, sc in next st, picot, sc in next st", "dc dc", "sc picot sc"),
        ("ch 1, sc in next st, ch 3, sl st in 3rd ch from hook, sc in next st", "dc dc", "sc picot sc"),
        ("ch 1, sc in next 2 dc", "dc picot dc", "sc sc"),
        ("ch 1, sc in next st, leave rem sts unworked", "dc dc", "sc"),
        ("sl st in next 2 sts, ch 1, sc in same st, sc in next st", "dc dc dc", "sc sc"),
        ("ch 1, sc in next st, sl st in next st", "dc dc", "sc sl st"),
    ],
)  # fmt: skip
def test_a_row_on_a_row(row: str, onto: str, made: str) -> None:
    assert kinds(laid(row, below(onto))) == made


def test_an_increase_is_of_the_rows_own_stitch() -> None:
    assert kinds(laid("ch 1, hdc in next st, inc, dec", below("sc sc sc sc"))) == "hdc hdc hdc hdc2tog"


def test_a_shell_described_in_the_pattern() -> None:
    shell = "Shell = (2 dc, ch 2, 2 dc) in same sp\n"
    row = "ch 1, shell in ch-2 sp of next shell, sc in last st"
    assert kinds(laid(row, below("(dc dc 2 dc dc) sc"), shell)) == "dc dc ch ch dc dc sc"


def test_the_foundation_chain_is_no_space_but_may_be_called_stitches() -> None:
    row = read("sc in 2nd ch from hook, sk 1 st, sc in next st", Terms.US).rows[0]
    assert kinds(lay(row, chains(4), {}).row) == "sc sc"
    assert spaces(chains(4)) == 0


def test_chains_side_by_side_are_one_space() -> None:
    row = below("dc 2 dc 3 dc")
    assert (stitches(row), spaces(row)) == (3, 2)
    made = laid("ch 1, sc in first st, ch 2, sk 1 st, ch 3, sc in last st", below("dc dc dc"))
    assert isinstance(made, tuple)
    assert spaces(made) == 1


def test_after_turning_groups_and_spaces_are_met_from_their_other_end() -> None:
    row = below("(dc 2 sc) hdc")
    assert kinds(mirrored(row)) == "hdc sc ch ch dc"
    assert mirrored(mirrored(row)) == row


def test_rounds_are_not_turned_and_rows_are() -> None:
    rows = "1: sc in 2nd ch from hook, dc in next ch\n{0} 2: ch 1, sc in next {1}, sc in next {2}"
    for name, first, second in (("Row", "dc", "sc"), ("Rnd", "sc", "dc")):
        pattern = read(f"{name} {rows.format(name, first, second)}", Terms.US)
        assert [row.turn_after for row in pattern.rows] == [name == "Row"] * 2
    assert not read("sc in 2nd ch from hook, do not turn", Terms.US).rows[0].turn_after
    assert read("Rnd 1: sc in 2nd ch from hook, join, turn", Terms.US).rows[0].turn_after


@pytest.mark.parametrize(
    ("row", "made"),
    [
        ("ch 1, *sc in next st, dc in next st; rep from *, ending with dc in last st", "sc dc sc dc"),
        ("ch 1, *sc in next 3 sts; rep from *, ending with dc in last st", "sc sc sc dc"),
        ("ch 1, *sc in next st, ch 1, dc in next st; rep from * to end, ending last rep with tr in last st", "sc ch dc sc ch tr"),
    ],
)
def test_ending_with_takes_the_place_of_the_like_at_the_repeats_end_or_comes_after_it(row: str, made: str) -> None:
    assert kinds(laid(row, below("sc sc sc sc"))) == made
