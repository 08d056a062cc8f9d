"""What a published pattern has around and inside its rows, one thing at a time, with the counts that come of it."""

import pytest

from logbook.craft.rows.proof import prove

READ = {
    "yo insert own": (
        "Shell – 5 dc in same st. V-st: (dc, ch 1, dc) in same st.\n"
        "Ch 20 (multiple of 6 + 2).\n"
        "Row 1: Sc in 2nd ch from hook, *sk 2 ch, shell in next ch, sk 2 ch, sc in next ch; rep from * across, turn.",
        "6k+1/0",
    ),
    "yo as own": (
        "Special Stitches\n"
        "Long bean (lb): yo, insert hook in st, yo and pull up a loop, yo, insert hook in same st, yo and pull up "
        "a loop, yo and pull through all loops.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *lb in next st, sc in next st; rep from * across, turn.",
        "2k/0 2k/0",
    ),
    "uk terms line": (
        "This pattern uses UK terms.\n"
        "Row 1: dc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: 1 ch, dc in each dc across.",
        "k−1/0 k−1/0",
    ),
    "chain line": (
        "Foundation ch: Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)",
        "k−1/0",
    ),
    "tail": (
        "Ch 21.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        "Row 2: Ch 1, sc in each st across. Fasten off, leaving a 20 cm tail. Weave in ends.",
        "k−1/0 k−1/0",
    ),
    "rows 3-10": (
        "Ch 26.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n"
        "Row 2: Ch 1, sc in each sc across, turn. (25 sc)\n"
        "Rows 3–10: Rep Row 2. (25 sc)",
        "k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0",
    ),
    "2nd and 3rd": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each st across, turn.\n"
        "Row 3: Ch 1, hdc in each st across, turn.\n"
        "Rep 2nd and 3rd rows.",
        "k−1/0 k−1/0 k−1/0",
    ),
    "last 2": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each st across, turn.\n"
        "Row 3: Ch 1, hdc in each st across, turn.\n"
        "Rep last 2 rows until piece measures 20 cm.",
        "k−1/0 k−1/0 k−1/0",
    ),
    "rows 2,4,6": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Rows 2, 4 and 6: Ch 1, sc in each st across, turn.\n"
        "Row 3: Ch 1, hdc in each st across, turn.\n"
        "Row 5: Ch 1, hdc in each st across, turn.",
        "k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0",
    ),
    "even": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2 and all even rows: Ch 1, sc in each st across, turn.\n"
        "Row 3: Ch 1, hdc in each st across, turn.\n"
        "Row 5: Ch 1, hdc in each st across, turn.",
        "k−1/0 k−1/0 k−1/0 k−1/0 k−1/0",
    ),
    "dec row": (
        "Ch 21.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        "Dec row: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18 sc)\n"
        "Rep dec row 3 more times. (12 sc)\n"
        "Work even until piece measures 20 cm.",
        "k−1/0 k−3/0 k−5/0 k−7/0 k−9/0",
    ),
    "work even rows": (
        "Ch 21.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
        "Row 2: Ch 1, sc in each st across, turn.\n"
        "Rows 3-6: Work even in sc.\n"
        "Row 7: Ch 1, sc2tog, sc in each st to end. (19 sc)",
        "k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−1/0 k−2/0",
    ),
    "until": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each st across, turn.\n"
        "Repeat Row 2 until piece measures 20 cm (8 in).",
        "k−1/0 k−1/0",
    ),
    "colours": (
        "Row 1: With MC, sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each st across, changing to CC in last st. Turn.\n"
        "Row 3: With CC, ch 1, sc in each st across. Drop CC, pick up MC. Turn.",
        "k−1/0 k−1/0 k−1/0",
    ),
    "several in a line": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. Row 2: Ch 1, sc in each st across, turn. Row "
        "3: Ch 1, hdc in each st across.",
        "k−1/0 k−1/0 k−1/0",
    ),
    "broken": (
        "Row 1: Sc in 2nd ch\nfrom hook and in each\nch across, turn.\nRow 2: Ch 1, sc in each\nst across, turn.",
        "k−1/0 k−1/0",
    ),
    "skipped and": (
        "Row 1: Dc in 4th ch from hook (skipped 3 chs count as dc) and in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as first dc now and throughout), dc in next dc and in each dc across, turn.\n"
        "Row 3: Ch 3, dc in next dc and in each dc across, turn.",
        "k−2/0 k−2/0 k−2/0",
    ),
    "here or": (
        "Row 1: Hdc in 3rd ch from hook (does not count here or throughout) and in each ch across, turn.\n"
        "Row 2: Ch 2 (does not count as st here or throughout), hdc in each st across, turn.\n"
        "Row 3: Ch 2, hdc in each st across.",
        "k−2/0 k−2/0 k−2/0",
    ),
    "this counts": (
        "Row 1: Dc in 4th ch from hook (this counts as your first dc) and in each ch across, turn.\n"
        "Row 2: Ch 3 (this counts as your first dc), dc in next st and in each st across, turn.",
        "k−2/0 k−2/0",
    ),
    "skip tch": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 2 (does not count), hdc in each st across, turn.\n"
        "Row 3: Ch 2 (does not count), hdc in each st across, skip tch, turn.",
        "k−1/0 k−1/0 k−1/0",
    ),
    "standing": (
        "Ch 20, join.\n"
        "Rnd 1: Ch 1, sc in each ch around, join with sl st in first sc. Fasten off.\n"
        "Rnd 2: With B, standing dc in any st, dc in each st around, join with sl st in first dc.",
        "k/0 k/0",
    ),
    "corner": (
        "Rnd 1: [3 dc in ring, ch 2] 4 times, join with sl st in first dc.\n"
        "Rnd 2: Ch 1, *sc in next 3 dc, (sc, ch 2, sc) in corner ch-2 sp; rep from * around, join.",
        "12/4 20/4",
    ),
    "3rd loop": (
        "Row 1: Hdc in 3rd ch from hook (skipped chs do not count) and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in 3rd loop of each hdc across.",
        "k−2/0 k−2/0",
    ),
    "around post": (
        "Row 1: Dc in 4th ch from hook (counts as dc) and in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as dc), sk first st, *dc around post of next dc; rep from * to last st, dc in top of "
        "tch.",
        "k−2/0 k−2/0",
    ),
    "2 rows below": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each st across, turn.\n"
        "Row 3: Ch 1, *sc in next st, dc in next st 2 rows below; rep from * across.",
        "2k/0 2k/0 2k/0",
    ),
    "2 skipped": (
        "Row 1: Dc in 4th ch from hook (counts as dc) and in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as dc), sk first st, *sk 2 sts, tr in next 2 sts, working in front of tr just made, "
        "tr in 2 skipped sts; rep from * to last st, dc in last st.",
        "4k−2/0 4k−2/0",
    ),
    "opposite": (
        "Ch 6.\n"
        "Rnd 1: 2 sc in 2nd ch from hook, sc in next 3 ch, 4 sc in last ch, working along opposite side of "
        "foundation ch, sc in next 3 ch, 2 sc in last ch. (14 sc)",
        "14/0",
    ),
    "centre dc": (
        "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
        "Row 2: Ch 1, sc in first sc, *ch 2, sc in center dc of next shell, ch 2, sc in next sc; rep from * across.",
        "6k+1/0 2k+1/2k",
    ),
    "magic ring work": (
        "Rnd 1: In a magic ring, work 8 sc, join.\nRnd 2: Ch 1, 2 sc in each st around, join.",
        "8/0 16/0",
    ),
    "*..* to": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, dc in next st*, rep from * to * across, turn.",
        "2k/0 2k/0",
    ),
    "between *s": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, dc in next st*; rep between *s to end, turn.",
        "2k/0 2k/0",
    ),
    "across*": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, *sc in next st, dc in next st* across, turn.",
        "2k/0 2k/0",
    ),
    "to last rep": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in first st, *ch 2, sk 2 sts, sc in next st; rep from * to last repeat, ch 2, sk 2 sts, "
        "sc in last st, turn.",
        "3k+1/0 k+1/k",
    ),
    "1 st remains": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, dc in next st; rep from * until 1 st remains, sc in last st.",
        "2k−1/0 2k−1/0",
    ),
    "within last": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, dc in next st; rep from * to within last 3 sts, sc in last 3 sts.",
        "2k−1/0 2k−1/0",
    ),
    "total": (
        "Ch 13.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, [sc in next st, dc in next st] a total of 6 times. (12 sts)",
        "12/0 12/0",
    ),
    "5 more": (
        "Ch 13.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, dc in next st; rep from * 5 more times. (12 sts)",
        "12/0 12/0",
    ),
    "omitting": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, *sc in next st, ch 2, sk 2 sts, sc in next st; rep from * across, omitting last sc, turn.",
        "4k−1/0 2k−1/k",
    ),
    "ending last rep": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in first st, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * across, "
        "ending last rep with sc in last st, turn.",
        "6k+1/0 6k+1/0",
    ),
    "nested": (
        "Ch 17.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, [[sc in next st, dc in next st] 3 times, hdc in next 2 sts] twice. (16 sts)",
        "16/0 16/0",
    ),
    "invdec": (
        "Rnd 1: 6 sc in magic ring.\nRnd 2: inc in each st.\nRnd 3: (invdec) 6 times.",
        "6/0 12/0 6/0",
    ),
    "sc 2 in": (
        "Rnd 1: 6 sc in magic ring.\nRnd 2: sc 2 in next st, sc in next 5 sts.",
        "6/0 7/0",
    ),
    "work 2 tog": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, work 2 sc together, sc in each st across.",
        "k−1/0 k−2/0",
    ),
    "dc3tog ring": (
        "Rnd 1: Ch 2 (does not count), *dc3tog in ring, ch 3; rep from * 5 more times, join with sl st in first dc3tog.",
        "6/6",
    ),
    "in first": (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, in first st work 2 sc, sc in each st across.",
        "k−1/0 k/0",
    ),
    "foundation": (
        "Row 1: 25 fsc, turn.\nRow 2: Ch 1, sc in each st across.",
        "25/0 25/0",
    ),
    "foundation words": (
        "Row 1: Work 25 foundation double crochet, turn.\n"
        "Row 2: Ch 3 (counts as dc), dc in next st and in each st across. (25 dc)",
        "25/0 25/0",
    ),
    "reverse": (
        "Row 1: Sc in 2nd ch from hook and in each ch across. Do not turn.\nRow 2: Ch 1, rev sc in each st across.",
        "k−1/0 k−1/0",
    ),
    "cable": (
        "Ch 10.\n"
        "Row 1: Dc in 4th ch from hook (counts as dc) and in each ch across, turn. (8 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in next st, sk 2 sts, fptr around each of next 2 sts, fptr around each of "
        "2 skipped sts, dc in last 2 sts. (8 sts)",
        "8/0 8/0",
    ),
    "c2c": (
        "Row 1: Ch 6, dc in 4th ch from hook, dc in next 2 ch. (1 block)\n"
        "Row 2: Ch 6, dc in 4th ch from hook, dc in next 2 ch, (sl st, ch 3, 3 dc) in ch-3 sp of previous block. "
        "(2 blocks)\n"
        "Row 3: Ch 6, dc in 4th ch from hook, dc in next 2 ch, *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep "
        "from * across. (3 blocks)",
        "3/1 6/2 9/3",
    ),
    "two-pass": (
        "Row 1: Forward: Sk first ch, *pull up a loop in next ch; rep from * across. Return: Ch 1, *yo, pull "
        "through 2 loops; rep from * across.\n"
        "Row 2: Forward: Sk first vertical bar, *pull up a loop in next vertical bar; rep from * across. Return: "
        "Ch 1, *yo, pull through 2 loops; rep from * across.",
        "k/0 k/0",
    ),
    "two-pass lines": (
        "Ch 20.\n"
        "Row 1 Forward: Insert hook in 2nd ch from hook, pull up a loop, pull up a loop in each ch across. (20 "
        "loops)\n"
        "Row 1 Return: Ch 1, *yo, pull through 2 loops; rep from * to end.\n"
        "Row 2 Forward: Sk first vertical bar, tss in each vertical bar across. (20 loops)\n"
        "Row 2 Return: as Row 1 Return.",
        "k/0 k/0",
    ),
    "sizes": (
        "Ch 73 (79, 85).\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (72 [78, 84] sc)\n"
        "Row 2: Ch 1, sc in next 10 (12, 14) sts, *dc in next st, sc in next st; rep from * 25 (26, 27) more "
        "times, sc in next 10 (12, 14) sts, turn. (72 [78, 84] sts)",
        "72/0 72/0",
    ),
    "c2c that shrinks": (
        "Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn. (1 block)\n"
        "Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of next block, ch 3, 3 dc in same "
        "sp, turn. (2 blocks)\n"
        "Row 3: Sl st in next 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, sl st in last ch-3 sp. (1 block)",
        "3/1 6/2 3/1",
    ),
}


@pytest.mark.parametrize("name", READ)
def test_it_is_read(name: str) -> None:
    text, counts = READ[name]
    proof = prove(text)
    assert [problem.says for problem in proof.problems] == []
    assert " ".join(f"{row.stitches}/{row.spaces}".replace(" ", "") for row in proof.rows) == counts


WONDER = (
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    "Row 2: Ch 1, work the wonder stitch as you like. (20 sts)\nRow 3: Ch 1, sc in each st across, turn. (20 sc)\n"
)


def test_rows_above_one_not_understood_are_laid_on_the_count_that_it_prints() -> None:
    proof = prove(WONDER + "Row 4: Ch 1, sc2tog, sc in each st to end. (18 sc)\nRow 5: Ch 1, sc in next 30 sts.")
    assert [row.stitches.constant for row in proof.beyond] == [20, 19]
    assert [(problem.row, problem.kind) for problem in proof.problems] == [
        (2, "not understood"),
        (4, "claim"),
        (5, "does not fit"),
    ]


def test_what_may_come_from_the_row_not_understood_is_no_trouble() -> None:
    proof = prove(WONDER.replace("(20 sts)", "(20 sts, 4 ch-2 sps)") + "Row 4: Ch 1, sc in next 30 sts.")
    assert [problem.row for problem in proof.problems] == [2]
    proof = prove(WONDER.replace("sc in each st", "sc in each hdc"))
    assert [problem.row for problem in proof.problems] == [2]


def test_none_in_a_size_is_left_out() -> None:
    proof = prove(
        "Ch 25 (27, 33).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in next 0 (1, 2) sts, *dc in next st, sc in next 3 sts; rep from * 5 (5, 6) more times, sc in last 0 (1, 2) sts."
    )
    assert proof.problems == ()
    assert [[row.stitches.constant for row in size.rows] for size in proof.sizes] == [[24, 24], [26, 26], [32, 32]]


def test_a_round_in_a_group_led_to_by_a_slip_stitch_begins_with_its_chains() -> None:
    proof = prove(
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, join with sl st in top of ch-3.\n"
        "Rnd 2: Sl st in next 2 dc, (sl st, ch 3, 2 dc, ch 2, 3 dc) in next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * "
        "around, join with sl st in top of ch-3. (24 dc)"
    )
    assert [problem.says for problem in proof.problems] == []


def test_blocks_are_counted_in_their_own_rows_alone() -> None:
    grown = READ["c2c"][0]
    assert [(problem.row, problem.kind) for problem in prove(grown.replace("(3 blocks)", "(4 blocks)")).problems] == [
        (3, "claim")
    ]
    filet = (
        "Row 1: Dc in 4th ch from hook (counts as dc) and in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as dc), dc in next dc and in each dc across. (9 blocks)"
    )
    assert prove(filet).problems == ()


def test_a_row_that_goes_on_from_chains_of_its_own_is_not_guessed() -> None:
    text = (
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 6, dc in 4th ch from hook, sc in each sc across."
    )
    assert [(problem.row, problem.kind) for problem in prove(text).problems] == [(2, "not understood")]
