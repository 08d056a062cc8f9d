"""Different ways of writing one thing: each word and phrase of the trade that rows are written in, and its common form.

Articles are left out of the phrases, as they are left out of the rows.
"""

Ways = dict[str, list[tuple[list[str], str]]]
"""First word → the ways of writing that begin with it, longest first, each with its common form."""

# What is written → its common form; "" leaves it out. Longer ways of writing come first by their length.
_WAYS = {
    "ch": "ch chs chain chains",
    "sk": "sk skip skipping miss missing",
    "skipped": "skipped missed sk'd sk’d skpd",
    "st": "st|sts|stitch|stitches|vertical bar|vertical bars|bar|bars",
    "sp": "sp sps space spaces loop loops lp lps arch arches",
    "tch": "tch|t - ch|turning ch|turning chain|turning chains|turning chs",
    "begch": "beg ch|beginning ch|beginning chain|starting ch|starting chain|beg chain|initial ch",
    "slst": "sl st|slst|sl - st|ss|slip stitch|slip st|slip stitches|sl sts|sl",
    "v-st": "v - st|v - sts|v st|v sts|vst|vsts|v - stitch|v - stitches|v stitch|v stitches|v|vs",
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
    "toend": "whole row|entire row|whole round|to row end|across|all across|along",
    "around": "around|round|rnd|rd|rounds|rnds|rds|around post of|around posts of|round post of|"
    "round stem of|around stem of|around ring|around circle|around whole rnd|around entire rnd",
    "tolast": "to last|up to last|up until last|till last|to very last|until final|up to final|across to final|"
    "around to final|across to last|around to last|to within last|within last|to within|until last|to final",
    "to": "to|until|up to|across to|over to|along to|around to",
    "in": "in|into|in to|onto|inside|inside of|blo of|flo of|blo in|flo in|in blo of|in flo of|in blo only of|in bl of|in fl of",
    "next": "next following foll",
    "each": "each|every|ea|all|each and every|every single|each single|each of other|each one of|every one of|all other",
    "everyother": "every other|every second|every 2nd|each alternate|every alternate|alternate|each second|each 2nd",
    "centre": "centre center middle",
    "counts": "counts|count|counting|counted|stands|stand|standing|equals|acts|act|serves|serve|serving|considered|"
    "does duty|do duty|doing duty|"
    "replaces|replace|reckoned",
    "not": "not|doesn't|don't|does not|do not|never|doesn’t|don’t",
    "throughout": "throughout|here and throughout|here or throughout|now and throughout|throughout pattern|here and thereafter|"
    "in this and all rows|on all rows|on every row",
    "turn": "turn|turned|turns|turning|turn work|turn your work|turn piece|turn over|turn and|turn chain|"
    "turn your chain|turn work around|"
    "flip work|flip your work",
    "noturn": "do not turn|don't turn|don’t turn|without turning|no turn",
    "join": "join joined joining",
    "ring": "ring|amigurumi ring|circle|adjustable loop|magic loop|sliding loop|slip loop|yarn loop|thumb loop|"
    "magic ring|magic circle|centre of ring|center of ring|adjustable ring|mr",
    "fromhook": "from hook|away from hook|from your hook|from crochet hook",
    "topof": "top of|top ch of|top chain of|topmost ch of|topmost chain of|uppermost ch of|head of",
    "baseof": "base of|bottom of|foot of",
    "and": "and|&|plus|then|and then|, and|; and|; then|, then",
    "rem": "rem|remaining|remain|remains|rest of",
    "unworked": "unworked",
    "same": "same that this",
    "leave": "leave leaving",
    "ending": "ending|end|ends|finishing|stopping|concluding|ended",
    "ending_with": "working only|work only|making only|but working only|but work only|with only",
    "omit": "omit|omitting|leaving out|leaving off|leave out|leave off|minus|but omit|but omitting",
    "times": "times time x ×",
    "more": "more",
    "made": "made completed",
    "over": "over",
    "row": "row rows",
    "side": "rs|ws|right side|wrong side|right side facing|wrong side facing|rs facing|ws facing",
    "fasten": "fasten off|finish off|end off|break off",
    "drawup": "draw up a loop to|pull up a loop to|draw up loop to|pull up loop to",
    "": "of row below|crochet|from left to right|"
    "from right to left|from previous row|on previous row|the|a|an|work|working|make|making|now|only|evenly|also|"
    "please|continue to|continue|continuing|cont|continue working|continuing to|cont to|go on|remembering to|"
    "remember to|don't forget to|"
    "do not forget to|not forgetting to|be sure to|making sure to|make sure to|making sure you|taking care to|your|"
    "as before|as usual|in same way|just|simply|going back|go back and|"
    "after that|after it|after this|after this one|thereafter|in spiral|in a spiral|in spirals|in continuous spiral|"
    "in a continuous spiral|in continuous rounds|in rounds|in continuous rnds|continuous rounds|continuous rnds|"
    "blo st|create|creating|form|forming|"
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


_ALONG = ("row", "rnd", "round", "ch", "chain", "chs", "chains", "base", "sts", "stitches")
_SIDES = [
    ([*how.split(), *to, side, "side", "of", *which, chain], "otherside")
    for how in ("on", "along", "in", "into", "down", "across", "up", "back along", "back down", "round", "around", "of")
    for to in ((), ("to",))
    for side in ("other", "opposite", "second", "bottom")
    for which in ((), ("foundation",), ("starting",), ("beginning",), ("base",))
    for chain in ("ch", "chain", "chains")
] + [
    ([*how, side, "of", *which, chain], "otherside")
    for how in (("along",), ("on",), ("back", "along"), ("in",), ("into",), ("across",))
    for side in ("underside", "bottom")
    for which in ((), ("foundation",), ("starting",), ("beginning",), ("base",))
    for chain in ("ch", "chain", "chains")
]
_LOOPS = [
    ([*how, *which, loop, *only, *of], "in" if of else "")
    for how in (("in",), ("into",), ("through",), ("under",), ("working", "in"), ("working", "into"), ("work", "in"), ("using",))
    for which in (("back",), ("front",), ("third",), ("3rd",), ("both",), ("back", "bump"), ("back", "horizontal"))
    for loop in ("loop", "loops", "lp", "lps", "bar", "bars")
    for only in ((), ("only",))
    for of in ((), ("of",))
]
_TO_END = (
    [
        ([*to, *which, "end", *of], "toend")
        for to in (
            ("to",),
            ("until",),
            ("till",),
            ("along", "to"),
            ("across", "to"),
            ("on", "to"),
            ("right", "to"),
            ("until", "reach"),
            ("until", "you", "reach"),
            ("till", "you", "reach"),
        )
        for which in ((), ("very",), ("other",), ("far",))
        for of in (
            (),
            *(("of", noun) for noun in (*_ALONG, "line")),
            *(("of", each, "ch") for each in ("foundation", "starting", "base")),
        )
    ]
    + [
        ([*until, *noun], "toend")
        for until in (
            *((till, "you", "run", "out") for till in ("until", "till")),
            *(
                (till, *none)
                for till in ("until", "till")
                for none in (("none", "remain"), ("none", "are", "left"), ("no", "more"))
            ),
        )
        for noun in ((), *(("of", noun) for noun in _ALONG))
    ]
    + [
        ([*how, *noun], "around" if how[-1] in ("around", "round") else "toend")
        for how in (
            *(("all", way) for way in ("across", "along", "around", "round")),
            *((all_, "way", way) for all_ in ("all", "right", "whole") for way in ("across", "along", "around", "round")),
            *((way,) for way in ("across", "along")),
            *((way, "to", "end") for way in ("around", "round")),
            ("right", "round"),
            ("right", "around"),
            ("right", "across"),
            ("right", "along"),
        )
        for noun in (
            (),
            *((noun,) for noun in _ALONG),
            *((each, noun) for each in ("whole", "entire", "foundation", "starting") for noun in _ALONG),
        )
        if len(how) + len(noun) > 1
    ]
)
_BACKS = [
    ([*how, "back", what, *of], "in" if of else "")
    for how in (("in",), ("into",), ("along",), ("through",), ("working", "in"), ("working", "into"))
    for what in ("bump", "bumps", "ridge", "ridges", "hump", "humps")
    for of in ((), ("of",))
] + [
    ([*how, "back", what, "of", chain], "")
    for how in (("in",), ("into",), ("along",), ("through",), ("working", "in"), ("working", "into"), ("working", "along"))
    for what in ("bump", "bumps", "ridge", "ridges", "hump", "humps", "loop", "loops")
    for chain in ("ch", "chs", "chain", "chains")
]
_JUST_MADE = [
    ([*where, *what, "just", did], "")
    for where in (("in", "front", "of"), ("in", "back", "of"), ("behind",))
    for what in (("st",), ("sts",), ("stitch",), ("stitches",), ("sc",), ("dc",), ("tr",), ("group",), ("hdc",))
    for did in ("made", "worked")
]
_WHEN = (
    [
        ([how, when, "of", *which, row], "")
        for how in ("at", "from")
        for when in ("beg", "beginning", "start")
        for which in ((), ("previous",), ("prev",), ("last",))
        for row in ("row", "rnd", "round")
    ]
    + [(["at", when], "") for when in ("beg", "beginning", "start")]
    + [(["of", which, row], "") for which in ("previous", "prev", "last") for row in ("row", "rnd", "round")]
)


def _ways() -> Ways:
    found = [(way.split(), common) for common, written in _WAYS.items() for way in _split(written)]
    found += [*_SIDES, *_LOOPS, *_TO_END, *_BACKS, *_JUST_MADE, *_WHEN]
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
