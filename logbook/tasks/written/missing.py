"""What a pattern lacks before it can be published."""

from collections.abc import Iterator

from logbook.craft.garments.cloth import Cloth
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import listed
from logbook.tasks.written.making_up import does_not_fit
from logbook.tasks.written.practice import proven_rows
from logbook.tasks.written.row_repeat import repeat_unknown
from logbook.tasks.written.written_garment import WrittenGarment


def missing(written: WrittenGarment) -> tuple[str, ...]:
    """What is missing before it could be published."""
    lacking: dict[str, list[str]] = {}
    for name, swatch in written.swatches.items():
        for said in (*_lacking_of_yarn(written.cloths[name], swatch), *_lacking(written.cloths[name], swatch.pattern)):
            lacking.setdefault(said, []).append(name)
    found = [*does_not_fit(written.sizes), *(_of_pieces(said, names, written) for said, names in lacking.items())]
    if not written.plan.says.strip():
        found.append("The pattern has no introduction yet.")
    return tuple(dict.fromkeys(found))


def _of_pieces(said: str, names: list[str], written: WrittenGarment) -> str:
    """The sentence about these pieces, which have one swatch or several."""
    swatches: list[Swatch] = []
    swatches += (swatch for name in names if (swatch := written.swatches[name]) not in swatches)
    one = len(swatches) == 1
    return said.format(
        listed([f"“{name}”" for name in names]),
        take="takes" if len(names) == 1 else "take",
        swatch="its swatch" if len(names) == 1 else "their swatch" if one else "their swatches",
        its="its" if one else "their",
    )


def _lacking_of_yarn(cloth: Cloth, swatch: Swatch) -> Iterator[str]:
    """What is missing to tell grams, balls and metres; {swatch} is that of the pieces."""
    yarn = cloth.gauges.yarn
    asked = ["weigh {swatch}"] if swatch.swatch_grams is None else []
    if swatch.swatch_stitches is None or swatch.swatch_rows is None:
        asked.append("count {its} stitches and rows" if asked else "count the stitches and rows of {swatch}")
    found = "How many metres {} {take}" if yarn.ball_grams is not None else "How many balls {} {take}"
    if asked:
        found = "The yarn for {}"
    ball = ["what a ball weighs"] if yarn.ball_grams is None else []
    ball += ["how long it is" if ball else "how long a ball is"] if yarn.ball_metres is None else []
    if ball:
        asked.append(f"type {listed(ball)}")
    if asked:
        yield f"{found} can't be worked out: {_in_turn(asked)}."


def _in_turn(asked: list[str]) -> str:
    *first, last = asked
    return f"{', '.join(first)}, and {last}" if first else last


def _lacking(cloth: Cloth, pattern: StitchPattern | None) -> Iterator[str]:
    """What is missing of one swatch; {} are the pieces that are worked by it."""
    if cloth.gauges.rows is None:
        yield "The rows of the swatch of {} were not measured."
    if pattern is None or not pattern.rows_text.strip():
        yield "The stitch pattern of {} has no written rows."
        return
    if proven_rows(pattern.rows_text, pattern.terms) is None:
        yield "The written rows of {} have not passed the check: the Stitch patterns page says why."
    if repeat_unknown(pattern):
        said = "type “Rows in a repeat” with its swatch, or end its rows with “Repeat rows …”"
        yield f"Which rows of {{}} are repeated is not known: {said}."
