"""What a pattern lacks before it can be published."""

from collections.abc import Iterator

from logbook.craft.garments.cloth import Cloth
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import listed
from logbook.tasks.written.making_up import does_not_fit
from logbook.tasks.written.practice import proven_rows
from logbook.tasks.written.row_repeat import repeat_unknown
from logbook.tasks.written.written_garment import WrittenGarment


def missing(written: WrittenGarment) -> tuple[str, ...]:
    """What is missing before it could be published."""
    lacking: dict[str, list[str]] = {}
    for name, swatch in written.swatches.items():
        for said in _lacking(written.cloths[name], swatch.pattern):
            lacking.setdefault(said, []).append(f"“{name}”")
    found = [*does_not_fit(written.sizes), *(said.format(listed(names)) for said, names in lacking.items())]
    if not written.plan.says.strip():
        found.append("The pattern has no introduction yet.")
    return tuple(dict.fromkeys(found))


def _lacking(cloth: Cloth, pattern: StitchPattern | None) -> Iterator[str]:
    """What is missing of one swatch; {} are the pieces that are worked by it."""
    if cloth.gauges.rows is None:
        yield "The rows of the swatch of {} were not measured."
    if cloth.gauges.yarn.ball_metres is None or cloth.gauges.weight is None:
        yield "The yarn for {} can't be worked out: weigh its swatch, and type what a ball weighs and how long it is."
    if pattern is None or not pattern.rows_text.strip():
        yield "The stitch pattern of {} has no written rows."
        return
    if proven_rows(pattern.rows_text, pattern.terms) is None:
        yield "The written rows of {} have not passed the check: the Stitch patterns page says why."
    if repeat_unknown(pattern):
        said = "type “Rows in a repeat” with its swatch, or end its rows with “Repeat rows …”"
        yield f"Which rows of {{}} are repeated is not known: {said}."
