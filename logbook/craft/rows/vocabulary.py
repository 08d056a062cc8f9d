"""Different ways of writing one thing: each word and phrase of the trade that rows are written in, and its common form.

Articles are left out of the phrases, as they are left out of the rows.
"""

Ways = dict[str, list[tuple[list[str], str]]]
"""First word → the ways of writing that begin with it, longest first, each with its common form."""

# What is written → its common form; "" leaves it out. Longer ways of writing come first by their length.
_WAYS = {
    "ch": "ch chs chain chains",
    "sk": "sk skip skipping miss missing",
    "skipped": "skipped missed",
    "st": "st|sts|stitch|stitches|vertical bar|vertical bars|bar|bars",
    "sp": "sp sps space spaces loop loops lp lps arch arches",
    "tch": "tch|t - ch|turning ch|turning chain|turning chains|turning chs",
    "begch": "beg ch|beginning ch|beginning chain|starting ch|starting chain|beg chain|initial ch",
    "slst": "sl st|slst|sl - st|ss|slip stitch|slip st|slip stitches|sl sts|sl",
    "v-st": "v - st|v - sts|v st|v sts|vst|vsts|v - stitch|v - stitches|v stitch|v stitches",
    "shell": "shell shells",
    "fan": "fan fans",
    "block": "block blocks tile tiles",
    "group": "group groups grp grps pair pairs",
    "cl": "cl cls cluster clusters",
    "pc": "pc|pcs|popcorn|popcorns|pop|popcorn st",
    "puff": "puff|puffs|puff st|puff sts|puff stitch|puff stitches",
    "bobble": "bobble bobbles",
    "picot": "picot picots",
    "inc": "inc incs increase",
    "dec": "dec|decs|decrease|inv dec|invdec|invisible dec|invisible decrease",
    "fsc": "fsc|foundation sc|foundation single crochet|foundation single crochets",
    "fhdc": "fhdc|foundation hdc|foundation half double crochet",
    "fdc": "fdc|foundation dc|foundation double crochet",
    "tss": "draw up a loop|pull up a loop|draw up a lp|pull up a lp|draw up loop|pull up loop",
    "nojoin": "do not join|don't join|don’t join|without joining",
    "rep": "rep repeat repeats repeating",
    "toend": "to end|until end|until end of row|until end of round|until end of rnd|whole row|entire row|"
    "whole round|all along|all way across|to end of row|to end of rnd|to end of round|to row end|across|"
    "across row|across to end|all across|along",
    "around": "around|round|rnd|rd|rounds|rnds|rds|all around|all round|all way around|all way round|right round|"
    "around to end|around post of|around posts of|round post of|"
    "round stem of|around stem of",
    "tolast": "to last|across to last|around to last|to within last|within last|until last|to final",
    "to": "to|until|up to|across to|over to|along to|around to",
    "in": "in|into|in to|inside|blo of|flo of|blo in|flo in|in blo of|in flo of|in blo only of|in bl of|in fl of",
    "next": "next following foll",
    "each": "each every ea all",
    "centre": "centre center middle",
    "counts": "counts|count|counting|counted|stands|stand|standing|equals|acts|act|serves|serve|considered|"
    "replaces|replace|reckoned",
    "not": "not|doesn't|don't|does not|do not|never|doesn’t|don’t",
    "throughout": "throughout|here and throughout|here or throughout|now and throughout|throughout pattern|here and thereafter|"
    "in this and all rows|on all rows|on every row",
    "turn": "turn turned turns",
    "noturn": "do not turn|don't turn|don’t turn|without turning|no turn",
    "join": "join joined joining",
    "ring": "ring|amigurumi ring|circle|adjustable loop|magic loop|sliding loop|slip loop|yarn loop|thumb loop|"
    "magic ring|magic circle|centre of ring|center of ring|adjustable ring|mr",
    "fromhook": "from hook|away from hook",
    "topof": "top of|top ch of|top chain of",
    "baseof": "base of|bottom of|foot of",
    "and": "and|&|plus|then|and then|, and|; and|; then|, then",
    "rem": "rem remaining remain remains",
    "unworked": "unworked",
    "same": "same that this",
    "leave": "leave leaving",
    "ending": "ending end ends finishing",
    "omit": "omit omitting",
    "times": "times time x ×",
    "more": "more",
    "made": "made completed",
    "over": "over",
    "row": "row rows",
    "side": "rs|ws|right side|wrong side|right side facing|wrong side facing|rs facing|ws facing",
    "fasten": "fasten off|finish off|end off|break off",
    "drawup": "draw up a loop to|pull up a loop to|draw up loop to|pull up loop to",
    "": "of row below|in back ridge|in back ridges|in back bump|in back bumps|crochet|from left to right|"
    "from right to left|from previous row|on previous row|the|a|an|work|working|make|making|now|only|evenly|also|"
    "please|"
    "blo|flo|in blo|in flo|in blo only|in flo only|tbl|tfl|both loops|"
    "yarn|back loop|back loops|front loop|front loops|"
    "back loop only|back loops only|front loop only|front loops only|third loop|3rd loop|third loops|3rd loops",
}
_WHOLE_NAMES = {
    "sc": "single crochet", "hdc": "half double crochet|half dc|half double", "dc": "double crochet|double crochets", "tr":
    "treble crochet|treble|trebles|triple crochet|treble crochets", "htr": "half treble crochet|half treble|half trebles",
    "dtr": "double treble crochet|double treble|double trebles", "trtr": "triple treble crochet|triple treble|triple trebles",
    "qtr": "quadruple treble crochet|quadruple treble",
}  # fmt: skip


_SIDES = [
    ([*how.split(), *to, side, "side", "of", *which, chain], "otherside")
    for how in ("on", "along", "in", "into", "down", "across", "up", "back along", "back down", "round", "around", "of")
    for to in ((), ("to",))
    for side in ("other", "opposite")
    for which in ((), ("foundation",), ("starting",), ("beginning",), ("base",))
    for chain in ("ch", "chain", "chains")
]
_LOOPS = [
    ([how, *which, loop, *only, *of], "in" if of else "")
    for how in ("in", "into", "through")
    for which in (("back",), ("front",), ("third",), ("3rd",), ("both",), ("back", "bump"), ("back", "horizontal"))
    for loop in ("loop", "loops", "lp", "lps", "bar", "bars")
    for only in ((), ("only",))
    for of in ((), ("of",))
]
_JUST_MADE = [
    ([*where, *what, "just", did], "")
    for where in (("in", "front", "of"), ("in", "back", "of"), ("behind",))
    for what in (("st",), ("sts",), ("stitch",), ("stitches",), ("sc",), ("dc",), ("tr",), ("group",), ("hdc",))
    for did in ("made", "worked")
]
_WHEN = [
    ([how, when, "of", *which, row], "")
    for how in ("at", "from")
    for when in ("beg", "beginning", "start")
    for which in ((), ("previous",), ("prev",), ("last",))
    for row in ("row", "rnd", "round")
] + [(["of", which, row], "") for which in ("previous", "prev", "last") for row in ("row", "rnd", "round")]


def _ways() -> Ways:
    found = [(way.split(), common) for common, written in _WAYS.items() for way in _split(written)]
    found += [*_SIDES, *_LOOPS, *_JUST_MADE, *_WHEN]
    for stitch, written in _WHOLE_NAMES.items():
        for way in (name.split() for name in (stitch, *written.split("|"))):
            found += [(way, stitch)] * (way != [stitch])
            found += [([how, *way], stitch) for how in ("reverse", "rev", "standing", "spike", "extended", "long")]
            found += [([*front, *way], "fp" + stitch) for front in (("front", "post"), ("fp",))]
            found += [([*back, *way], "bp" + stitch) for back in (("back", "post"), ("bp",))]
    by_first: dict[str, list[tuple[list[str], str]]] = {}
    for way, common in sorted(found, key=lambda each: -len(each[0])):
        by_first.setdefault(way[0], []).append((way, common))
    return by_first


def _split(written: str) -> list[str]:
    return written.split("|") if "|" in written else written.split()


WAYS = _ways()
