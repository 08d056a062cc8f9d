"""A logbook with stitch patterns and swatches that use them."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.browsing import pattern_list
from logbook.tasks.keeping import new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.stitch_patterns import save_pattern

SHELLS = StitchPattern(name="Shells", multiple=6, plus=1, extra_chains=1, rows_in_repeat=2, notes="For the hem.")
MESH = StitchPattern(name="Voilé mesh", multiple=2, plus=1, first_stitch=6, skip_cover=2)


def swatch_with(tag: str, pattern: StitchPattern, *readings: str) -> Swatch:
    taken = tuple(TakenReading(Condition.WASHED, reading) for text in readings for reading in read_readings(text))
    return Swatch(tag=tag, yarn=Yarn(name="Bracken DK"), pattern=pattern, hook_mm=4.5, readings=taken)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    """Shells with a swatch read in repeats and one read in stitches; a mesh that no swatch uses."""
    book = new_book(tmp_path / "patterns.logbook")
    save_pattern(book, SHELLS)
    save_pattern(book, MESH)
    shells = next(p for p in pattern_list(book) if p.name == "Shells")
    save_swatch(book, swatch_with("AB-01", shells, "4 repeats = 15.1 cm"))
    save_swatch(book, swatch_with("AB-02", shells, "20 sts = 12 cm"))
    yield Session(book, Settings().with_opened("patterns.numbers", True))
    book.close()
