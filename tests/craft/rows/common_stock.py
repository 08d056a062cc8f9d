"""Patterns of the common stock, all written for these tests, each with a change that spoils it.

``spoil``: (what stands there, what the altered twin has instead); ``caught_in``: the row that the twin's trouble is named in.
"""

from typing import NamedTuple


class Stock(NamedTuple):
    rows: str
    multiple: int | None
    constant: int | None
    smallest: int | None
    back: int | None
    counts: str  # each row's stitches, then "/" and its spaces if it has any
    spoil: tuple[str, str]
    caught_in: int


def stock(rows: str, fits: tuple[int | None, int | None, int | None], back: int | None, counts: str, spoil: tuple[str, str],
          caught_in: int) -> Stock:  # fmt: skip
    return Stock(rows, *fits, back, counts, spoil, caught_in)


NONE = (None, None, None)

COMMON_STOCK = {
    # plain rows
    "sc, rows named": stock(
        "Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 1, sc in each sc across, turn.\n"
        "Rep Row 2.",
        (1, 0, 2), 2, "k − 1, k − 1", ("sc in each sc across, turn.\nRep", "sc in each sc to last 2 sc, turn.\nRep"), 2,
    ),
    "dc with the first stitch skipped": stock(
        "dc in 4th ch from hook and in each ch across / ch 3, sk first dc, dc in next dc and in each dc across",
        (1, 0, 4), 2, "k − 2, k − 2", ("ch 3, sk first", "ch 3, sk 1 ch, sk first"), 2,
    ),
    "dc, the edge worked into the turning chain": stock(
        "Row 1: Dc in 4th ch from hook, dc in each ch across, turn. (32 dc)\n"
        "Row 2: Ch 3 (counts as dc here and throughout), dc in next dc and in each dc across to tch, dc in top of tch, "
        "turn. (32 dc)\n"
        "Rep Row 2.",
        (1, 0, 5), 2, "k − 2, k − 2", ("across to tch, dc in top of tch", "across to tch"), 2,
    ),
    "tr": stock(
        "tr in 5th ch from hook and in each ch across / ch 4 (counts as tr), tr in next st and in each st across",
        (1, 0, 5), 2, "k − 3, k − 3", ("tr in next st and", "2 tr in next st, sk 2 sts, tr in next ch-1 sp and"), 2,
    ),
    "UK htr": stock(
        "Row 1: 1 htr into 3rd ch from hook (2 skipped ch count as 1 htr), 1 htr into each ch to end, turn.\n"
        "Row 2: 2 ch (counts as 1 htr), miss first htr, 1 htr into each htr to end, turn.",
        (1, 0, 3), 2, "k − 1, k − 1", ("into each htr to end", "into each tr to end"), 2,
    ),
    "UK tr in pairs": stock(
        "Row 1: 1 tr into 4th ch from hook, 1 tr into each ch to end, turn.\n"
        "Row 2: 3 ch (counts as 1 tr), miss first tr, *2 tr into next tr, miss next tr; rep from * to last tr, 1 tr into "
        "last tr.\n"
        "Rep Row 2.",
        (2, 0, 4), 2, "2k − 2, 2k − 2", ("*2 tr into next tr", "*1 tr into next tr"), 2,
    ),
    # meshes
    "mesh": stock(
        "dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end / ch 4 (counts as dc and ch 1), sk "
        "first dc and next ch-1 sp, dc in next dc, *ch 1, sk next ch-1 sp, dc in next dc; rep from * to end",
        (2, 0, 6), 2, "k − 1/k − 2, k − 1/k − 2", ("dc in next dc, *ch 1", "dc in next ch-2 sp, *ch 1"), 2,
    ),
    "mesh that says nothing of its ch 4": stock(
        "dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end\n"
        "ch 4, *dc in next dc, ch 1; rep from * to last st, dc in 3rd ch of tch",
        (2, 0, 6), 2, "k − 1/k − 2, k − 1/k − 2", ("dc in 3rd ch of tch", "dc in 2nd ch of tch"), 2,
    ),
    "filet": stock(
        "dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn / ch 5 (counts as dc and ch 2), "
        "sk first dc, *dc in next dc, ch 2; rep from * to last dc, dc in last dc, turn / ch 3 (counts as dc), *2 dc in "
        "next ch-2 sp, dc in next dc; rep from * across, turn",
        (3, 2, 8), None, "k/k − 1, k/k − 1, 3k − 2",
        ("rep from * to last dc, dc in last dc", "rep from * to last 2 dc, dc in last dc"), 2,
    ),
    "UK filet blocks": stock(
        "1 tr into 8th ch from hook, *2 ch, miss 2 ch, 1 tr into next ch; rep from * to end / 3 ch (counts as tr), *2 tr "
        "into next 2-ch sp, 1 tr into next tr; rep from * to end / 5 ch (counts as tr and 2 ch), miss first 3 tr, *1 tr "
        "into next tr, 2 ch, miss 2 tr; rep from * to last tr, 1 tr into last tr",
        (3, 2, 8), 2, "k/k − 1, 3k − 2, k/k − 1", ("*2 tr into next 2-ch sp", "*3 tr into next 2-ch sp"), 3,
    ),
    "arches": stock(
        "sc in 2nd ch from hook, *ch 5, sk 3 ch, sc in next ch; rep from * to end, turn / ch 5 (counts as dc and ch 2), "
        "sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * to end, ch 2, dc in last sc, turn / ch 1, sc in first "
        "dc, sk next ch-2 sp, *ch 5, sc in next ch-5 sp; rep from * to end, ch 5, sc in 3rd ch of tch, turn",
        (4, 2, 10), 2, "k + 1/k, k + 2/k + 1, k + 1/k", ("*ch 5, sk 3 ch", "*ch 4, sk 3 ch"), 2,
    ),
    # shells, fans, V-stitches
    "shells": stock(
        "sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end / ch 3 (counts as "
        "dc), 2 dc in same st, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last 6 sts, sk 2 dc, sc "
        "in next dc, sk 2 dc, 3 dc in last sc / ch 1, sc in first st, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; "
        "rep from * to end",
        (6, 2, 8), 2, "6k + 1, 6k + 1, 6k + 1", ("*sk 2 ch, 5 dc", "*sk 2 ch, 4 dc"), 2,
    ),
    "UK shells": stock(
        "1 dc into 2nd ch from hook, *miss 2 ch, 5 tr into next ch, miss 2 ch, 1 dc into next ch; rep from * to end / 3 "
        "ch (counts as tr), 2 tr into same st, *miss 2 tr, 1 dc into next tr, miss 2 tr, 5 tr into next dc; rep from * to"
        " last 6 sts, miss 2 tr, 1 dc into next tr, miss 2 tr, 3 tr into last dc / 1 ch, 1 dc into first st, *miss 2 tr, "
        "5 tr into next dc, miss 2 tr, 1 dc into next tr; rep from * to end",
        (6, 2, 8), 2, "6k + 1, 6k + 1, 6k + 1", ("2 tr into same st", "1 tr into same st"), 3,
    ),
    "shells by their centre": stock(
        "Shell = 5 dc in same st\n"
        "Row 1: sc in 2nd ch from hook, *sk 2 ch, shell in next ch, sk 2 ch, sc in next ch; rep from * across\n"
        "Row 2: ch 3 (counts as dc), 2 dc in first sc, *sc in centre dc of next shell, shell in next sc; rep from * to "
        "last shell, sc in centre dc of next shell, 3 dc in last sc",
        (6, 2, 8), None, "6k + 1, 6k + 1", ("3 dc in last sc", "3 dc in last dc"), 2,
    ),
    "V-stitches": stock(
        "V-st: (dc, ch 1, dc) in same st\n"
        "Row 1: V-st in 5th ch from hook (4 skipped ch count as dc and 1 skipped ch), *sk 2 ch, V-st in next ch; rep from"
        " * to last 2 ch, sk 1 ch, dc in last ch\n"
        "Row 2: ch 3 (counts as dc), V-st in next ch-1 sp and in each ch-1 sp across, dc in top of tch\n"
        "Rep Row 2.",
        (3, 1, 7), 2, "2k/k − 1, 2k/k − 1", ("sk 1 ch, dc in last ch", "dc in last ch"), 1,
    ),
    "UK V-stitches, not named": stock(
        "(1 tr, 1 ch, 1 tr) into 5th ch from hook (4 skipped ch count as 1 tr and 1 skipped ch), *miss 2 ch, (1 tr, 1 ch,"
        " 1 tr) into next ch; rep from * to last 2 ch, miss 1 ch, 1 tr into last ch\n"
        "3 ch (counts as tr), (1 tr, 1 ch, 1 tr) into each 1-ch sp to end, 1 tr into top of turning ch",
        (3, 1, 7), 2, "2k/k − 1, 2k/k − 1", (", 1 tr into top of turning ch", ""), 2,
    ),
    "fans between V-stitches": stock(
        "Row 1: sc in 2nd ch from hook and in each ch across\n"
        "Row 2: ch 3 (counts as dc), *sk 2 sts, 5 dc in next st, sk 2 sts, (dc, ch 1, dc) in next st; rep from * to last "
        "6 sts, sk 2 sts, 5 dc in next st, sk 2 sts, dc in last st\n"
        "Row 3: ch 3 (counts as dc), *sc in centre dc of next 5-dc group, 5 dc in ch-1 sp of next V-st; rep from * to "
        "last 5-dc group, sc in centre dc of next 5-dc group, dc in tch",
        (6, 2, 8), None, "6k + 1, 7k/k − 1, 6k − 3", ("5 dc in ch-1 sp of next", "5 dc in ch-2 sp of next"), 3,
    ),
    # ripples
    "sc ripple": stock(
        "Row 1: 2 sc in 2nd ch from hook, *sc in next 4 ch, sc3tog, sc in next 4 ch, 3 sc in next ch; rep from * to last "
        "12 ch, sc in next 4 ch, sc3tog, sc in next 4 ch, 2 sc in last ch.\n"
        "Row 2: Ch 1, 2 sc in first st, *sc in next 4 sts, sc3tog, sc in next 4 sts, 3 sc in next st; rep from * to last "
        "12 sts, sc in next 4 sts, sc3tog, sc in next 4 sts, 2 sc in last st.\n"
        "Rep Row 2.",
        (12, 2, 14), 2, "12k + 1, 12k + 1", ("Row 2: Ch 1, 2 sc in first", "Row 2: Ch 1, sc in first"), 2,
    ),
    "dc chevrons": stock(
        "Row 1: Dc in 4th ch from hook, *dc in next 3 ch, dc3tog, dc in next 3 ch, 3 dc in next ch; rep from * to last 10"
        " ch, dc in next 3 ch, dc3tog, dc in next 3 ch, 2 dc in last ch\n"
        "Row 2: ch 3 (counts as dc), dc in same st, *dc in next 3 sts, dc3tog, dc in next 3 sts, 3 dc in next st; rep "
        "from * to last 10 sts, dc in next 3 sts, dc3tog, dc in next 3 sts, 2 dc in last st",
        (10, 4, 14), 2, "10k + 1, 10k + 1", ("*dc in next 3 sts, dc3tog", "*dc in next 3 sts, dc2tog"), 2,
    ),
    "ripple with skipped valleys": stock(
        "Row 1: sc in 2nd ch from hook and in each ch across\n"
        "Row 2: ch 1, 2 sc in first sc, *sc in next 5 sts, sk 2 sts, sc in next 5 sts, 3 sc in next st; rep from * to "
        "last 13 sts, sc in next 5 sts, sk 2 sts, sc in next 5 sts, 2 sc in last st",
        (13, 2, 15), 2, "13k + 1, 13k + 1", ("rep from * to last 13 sts", "rep from * to last 12 sts"), 2,
    ),
    # clusters and other stitches with one top
    "clusters with chains between": stock(
        "Row 1: sc in 2nd ch from hook and in each ch across\n"
        "Row 2: ch 4 (counts as dc and ch 1), sk first 2 sc, 3-dc cl in next sc, *ch 1, sk next sc, 3-dc cl in next sc; "
        "rep from * to last 2 sc, ch 1, sk next sc, dc in last sc\n"
        "Row 3: ch 1, sc in first dc, *sc in next ch-1 sp, sc in next cl; rep from * to last 2 sts, sc in next ch-1 sp, "
        "sc in 3rd ch of tch",
        (2, 0, 6), None, "2k − 1, k/k − 1, 2k − 3",
        ("*sc in next ch-1 sp, sc in next cl", "*sc in next ch-2 sp, sc in next cl"), 3,
    ),
    "popcorns": stock(
        "dc in 4th ch from hook and in each ch across / ch 3 (counts as dc), *popcorn in next dc, dc in next dc; rep from"
        " * to end / ch 3 (counts as dc), *dc in next popcorn, dc in next dc; rep from * to end",
        (2, 1, 5), 2, "2k − 1, 2k − 1, 2k − 1", ("*dc in next popcorn", "*dc in next popcorn, dc in next popcorn"), 3,
    ),
    "bobbles, chains count as stitches": stock(
        "Each ch counts as a st.\n"
        "Row 1: sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across (35 sts)\n"
        "Row 2: ch 1, sc in first st, *ch 1, sk 1 st, bobble in next st; rep from * to last 2 sts, ch 1, sk 1 st, sc in "
        "last st (35 sts)",
        (2, 0, 4), 2, "k/k − 1, k/k − 1", ("to last 2 sts", "to last 3 sts"), 2,
    ),
    "crossed dc": stock(
        "dc in 4th ch from hook and in each ch across / ch 3 (counts as dc), sk first st, *sk next st, dc in next st, dc "
        "in skipped st; rep from * to last st, dc in last st",
        (2, 0, 4), 2, "2k − 2, 2k − 2", ("to last st, dc in last st", "to last 2 sts, dc in last st"), 2,
    ),
    "granny stripes": stock(
        "Row 1: dc in 4th ch from hook and in each ch across\n"
        "Row 2: ch 3 (counts as dc), sk first 2 sts, 3 dc in next st, *sk 2 sts, 3 dc in next st; rep from * to last 2 "
        "sts, sk 1 st, dc in last st\n"
        "Row 3: ch 3 (counts as dc), dc in same st, *sk 3 dc, 3 dc in next sp; rep from * to last 4 sts, sk 3 dc, 2 dc in"
        " tch\n"
        "Row 4: ch 3 (counts as dc), sk next dc, 3 dc in next sp, *sk 3 dc, 3 dc in next sp; rep from * to last 2 sts, sk"
        " 1 dc, dc in tch\n"
        "Rep Rows 3–4.",
        (3, 1, 7), 3, "3k − 1, 3k − 1, 3k − 2, 3k − 1",
        ("*sk 3 dc, 3 dc in next sp; rep from * to last 4", "*sk 2 dc, 3 dc in next sp; rep from * to last 4"), 3,
    ),
    "post stitch rib": stock(
        "dc in 4th ch from hook and in each ch across, turn / ch 2 (counts as hdc), *fpdc around next st, bpdc around "
        "next st; rep from * to last st, hdc in top of tch, turn / ch 2 (counts as hdc), *bpdc around next bpdc, fpdc "
        "around next fpdc; rep from * to last st, hdc in top of tch",
        (2, 0, 4), 2, "2k − 2, 2k − 2, 2k − 2", ("*fpdc around next st, bpdc", "*bpdc around next st, bpdc"), 3,
    ),
    "picot edge": stock(
        "Row 1: sc in 2nd ch from hook and in each ch across, turn\n"
        "Row 2: ch 1, sc in first sc, *ch 3, sl st in 3rd ch from hook, sc in next 3 sc; rep from * across",
        (3, 2, 2), 2, "3k + 1, 3k + 1", ("sc in next 3 sc", "sc in next 3 dc"), 2,
    ),
    "moss": stock(
        "sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * to end / ch 1, sc in first sc, sc in next ch-1"
        " sp, *ch 1, sk 1 sc, sc in next ch-1 sp; rep from * to last sc, sc in last sc / ch 1, sc in first sc, *ch 1, sk "
        "next sc, sc in next ch-1 sp; rep from * to last 2 sc, ch 1, sk 1 sc, sc in last sc",
        (2, 0, 4), 2, "k/k − 1, k + 1/k − 2, k/k − 1", ("to last 2 sc, ch 1, sk 1 sc", "to last 2 sc, ch 1, sk 2 sc"), 3,
    ),
    # shaping
    "decreases at both edges": stock(
        "Row 1: sc in 2nd ch from hook and in each ch across\n"
        "Row 2: ch 1, sc2tog, sc in each st to last 2 sts, sc2tog\n"
        "Row 3: ch 1, sc in each st across",
        (1, 0, 5), 3, "k − 1, k − 3, k − 3", ("to last 2 sts, sc2tog", "to last 2 sts, sc3tog"), 2,
    ),
    "increases in every third": stock(
        "sc in 2nd ch from hook and in each ch across / ch 1, *sc in next 2 sts, inc; rep from * to end",
        (3, 1, 4), None, "3k, 4k", ("*sc in next 2 sts, inc", "*sc in next 2 dc, inc"), 2,
    ),
    # in the round
    "sc worked flat and then joined": stock(
        "Rnd 1: Sc in 2nd ch from hook and in each ch across, join with sl st in first sc.\n"
        "Rnd 2: Ch 1, sc in same st as joining, sc in each sc around, join with sl st in first sc.\n"
        "Rep Rnd 2.",
        (1, 0, 2), 2, "k − 1, k − 1", ("sc in same st as joining, sc in each sc", "sc in each dc"), 2,
    ),
    "tube of sc": stock(
        "Ch 60, join with sl st to form ring.\n"
        "Rnd 1: Ch 1, sc in each ch around, join with sl st in first sc. (60 sc)\n"
        "Rnd 2: Ch 1, sc in same st as joining, sc in each st around, join. (60 sc)",
        (1, 0, 1), 2, "k, k", ("sc in each st around, join. (60 sc)", "2 sc in each st around, join. (60 sc)"), 2,
    ),
    "circle": stock(
        "Rnd 1: 6 sc in magic ring (6)\n"
        "Rnd 2: inc in each st around (12 sts)\n"
        "Rnd 3: (sc in next st, inc) 6 times (18 sts)\n"
        "Rnd 4: [sc 2, inc] x 6 (24 sts)\n"
        "Rnd 5: sc around (24 sts)\n"
        "Rnd 6: (sc 2, dec) 6 times (18 sts)",
        NONE, 4, "6, 12, 18, 24, 24, 18", ("[sc 2, inc] x 6", "[sc 3, inc] x 6"), 4,
    ),
    "granny square": stock(
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join. (12 dc, 4 "
        "ch-2 sps)\n"
        "Rnd 2: Sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc,"
        " ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join. (24 dc, 4 ch-2 sps)",
        NONE, 2, "12/4, 24/8", ("next ch-2 sp; rep from * 2 more", "next ch-2 sp; rep from * 3 more"), 2,
    ),
    "UK V-stitch tube": stock(
        "Rnd 1: 4 ch (counts as 1 tr and 1 ch), 1 tr into same ch, *miss 2 ch, (1 tr, 1 ch, 1 tr) into next ch; rep from "
        "* to last 2 ch, miss 2 ch, join with ss to 3rd of 4 ch\n"
        "Rnd 2: ss into next 1-ch sp, 4 ch (counts as 1 tr and 1 ch), 1 tr into same sp, (1 tr, 1 ch, 1 tr) into each "
        "1-ch sp around, join",
        (3, 0, 3), 2, "2k/k, 2k/k", ("to last 2 ch, miss 2 ch", "to last 2 ch, miss 1 ch"), 1,
    ),
    "mesh tube": stock(
        "Ch 40, join.\n"
        "Rnd 1: Ch 4 (counts as dc and ch 1), sk 1 ch, *dc in next ch, ch 1, sk 1 ch; rep from * around, join.\n"
        "Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around, join.",
        (2, 0, 2), 2, "k/k, k/k", ("Ch 40", "Ch 41"), 1,
    ),
}  # fmt: skip
