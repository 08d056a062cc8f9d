"""Written rows of the stitch patterns in the sample wardrobe. All worked out and written for it; US terms.

The figures: multiple, plus (base stitches), extra chains, chain of the first stitch, base chains that the skipped ones cover.
"""

from typing import NamedTuple


class SampleRows(NamedTuple):
    multiple: int
    plus: int
    extra_chains: int
    first_stitch: int | None
    skip_cover: int | None
    leads_back_to: int
    rows: str


SAMPLE_ROWS = {
    "single crochet": SampleRows(
        1, 0, 1, 2, 0, 2,
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in first sc and in each sc across, turn.\n"
        "Rep Row 2.",
    ),
    "single crochet in the round": SampleRows(
        1, 0, 1, 2, 0, 2,
        "Rnd 1: Sc in 2nd ch from hook and in each ch across, join with sl st in first sc.\n"
        "Rnd 2: Ch 1, sc in same st as joining, sc in each sc around, join with sl st in first sc.\n"
        "Rep Rnd 2.",
    ),
    "ribbing, sc in back loops": SampleRows(
        1, 0, 1, 2, 0, 2,
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in BLO of first sc, sc in BLO of each sc across, turn.\n"
        "Rep Row 2.",
    ),
    "half double crochet": SampleRows(
        1, 0, 2, 3, 0, 2,
        "Row 1: Hdc in 3rd ch from hook (skipped chs do not count as a st), hdc in each ch across, turn.\n"
        "Row 2: Ch 2 (does not count as a st), hdc in first hdc and in each hdc across, turn.\n"
        "Rep Row 2.",
    ),
    "double crochet": SampleRows(
        1, 0, 2, 4, 1, 2,
        "Row 1: Dc in 4th ch from hook (3 skipped chs count as dc), dc in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as dc), sk first dc, dc in each dc across to tch, dc in top of tch, turn.\n"
        "Rep Row 2.",
    ),
    "V-stitch": SampleRows(
        3, 2, 2, 5, 2, 2,
        "V-st = (dc, ch 1, dc) in same st or sp.\n"
        "Row 1: V-st in 5th ch from hook (4 skipped chs count as dc and 1 skipped ch), *sk 2 ch, V-st in next ch; rep from * "
        "to last 2 ch, sk 1 ch, dc in last ch, turn.\n"
        "Row 2: Ch 3 (counts as dc), V-st in ch-1 sp of each V-st across, dc in top of tch, turn.\n"
        "Rep Row 2.",
    ),
    "shell stitch": SampleRows(
        6, 1, 1, 2, 0, 2,
        "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
        "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last "
        "6 sts, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.\n"
        "Row 3: Ch 1, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across, turn.\n"
        "Rep Rows 2 and 3.",
    ),
    "ripple": SampleRows(
        12, 1, 1, 2, 0, 2,
        "Row 1: 2 sc in 2nd ch from hook, *sc in next 4 ch, sc3tog, sc in next 4 ch, 3 sc in next ch; rep from * to last 12 ch, "
        "sc in next 4 ch, sc3tog, sc in next 4 ch, 2 sc in last ch, turn.\n"
        "Row 2: Ch 1, 2 sc in first st, *sc in next 4 sts, sc3tog, sc in next 4 sts, 3 sc in next st; rep from * to last 12 "
        "sts, sc in next 4 sts, sc3tog, sc in next 4 sts, 2 sc in last st, turn.\n"
        "Rep Row 2.",
    ),
    "mesh": SampleRows(
        2, 1, 3, 6, 2, 2,
        "Row 1: Dc in 6th ch from hook (5 skipped chs count as dc and ch 1), *ch 1, sk 1 ch, dc in next ch; rep from * across, "
        "turn.\n"
        "Row 2: Ch 4 (counts as dc and ch 1), sk first dc and next ch-1 sp, *dc in next dc, ch 1, sk next ch-1 sp; rep from * to "
        "tch, dc in 3rd ch of tch, turn.\n"
        "Rep Row 2.",
    ),
    "moss stitch": SampleRows(
        2, 1, 1, 2, 0, 2,
        "Row 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn.\n"
        "Row 2: Ch 1, sc in first sc, sc in next ch-1 sp, *ch 1, sk 1 sc, sc in next ch-1 sp; rep from * to last sc, sc in last "
        "sc, turn.\n"
        "Row 3: Ch 1, sc in first sc, *ch 1, sk 1 sc, sc in next ch-1 sp; rep from * to last 2 sc, ch 1, sk 1 sc, sc in last "
        "sc, turn.\n"
        "Rep Rows 2 and 3.",
    ),
}  # fmt: skip
