"""Swatches for tests about sheets."""

from dataclasses import replace

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn

AWKWARD = (
    "=1+1",
    "007",
    "'tis",
    "''x",
    "'=x",
    "''=x",
    "+5",
    "-5",
    "−5",
    "@home",
    "#N/A",
    "TRUE",
    "1e5",
    "3-4",
    '½ of it; 18¼"',
    'two\nlines, and a “quote"',
    "Zoë’s čaj, größer",
    "צמר רך",
    "🧶👩🏽‍🎨",
    "_x0041_ and _x005F_",
    "a\tb",
    "semi;colon, comma|bar",
)


def plain_swatch(number: int = 1) -> Swatch:
    """The least a swatch must say."""
    return Swatch(uid=f"u{number}", tag=f"T-{number}", yarn=Yarn(name="Harbour"), hook_mm=4.5, readings=taken(1))


def taken(number: int) -> tuple[TakenReading, ...]:
    """One reading, of washed stitches."""
    texts = f"{number + 3} repeats = {15 + number / 10} cm"
    return tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(texts, Direction.STITCHES))


def full_swatch(number: int, text: str) -> Swatch:
    """A swatch with every field filled; ``text`` stands in all that take free text."""
    return Swatch(
        uid=f"uid {number} {text}",
        tag=f"{text} {number}",
        date="2026-05-31",
        yarn=Yarn(name=text, fibre=text, yarn_class=0, ball_grams=50.0, ball_metres=112.5, ball_price=4.95, currency=text),
        pattern=StitchPattern(
            name=text, multiple=6, plus=0, extra_chains=3, first_stitch=6, skip_cover=2,
            set_up_rows=2, rows_in_repeat=4, closing_rows=0, terms="UK",
            half_plus=3, rows_text=text,
        ),
        colour=text, dye_lot=text, strands=2, hook_mm=4.5, hook_note=text, foundation_hook_mm=5.0, worked="round",
        worked_by=text, way_of_washing=text, swatch_grams=21.3, swatch_stitches=73.0, swatch_rows=44.5, notes=text,
        hung_grams=101.7, hung_clip_mm=75.0, minutes=42.5, pictures=32 * "0a" + ".jpg", readings=readings_everywhere(),
    )  # fmt: skip


def readings_everywhere() -> tuple[TakenReading, ...]:
    """Two readings of every condition and direction, spans and counts, cm and inches."""
    texts = {
        Direction.STITCHES: '4 repeats = 15.1 cm; 18¼ sc in 4"',
        Direction.ROWS: "22 rows = 15 cm; 2.75 row repeats in 10 cm",
    }
    return tuple(
        TakenReading(condition, reading)
        for condition in Condition
        for direction, text in texts.items()
        for reading in read_readings(text, direction)
    )


def awkward_swatches() -> list[Swatch]:
    """One full swatch for each awkward text, and one with hardly anything."""
    full = [full_swatch(number, text) for number, text in enumerate(AWKWARD, start=1)]
    return [*full, replace(plain_swatch(99), yarn=None, pattern=StitchPattern(name="Mesh"))]
