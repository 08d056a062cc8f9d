"""A small logbook as the tests of the page of swatches find it, and a session on it."""

import shutil
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.logging_swatches import save_swatch

HARBOUR = Yarn(name="Harbour cotton", fibre="cotton", yarn_class=3, ball_grams=50.0, ball_metres=125.0)
MERIDA = Yarn(name="Mérida wool", fibre="wool", yarn_class=4)
SHELLS = StitchPattern(name="Shells", multiple=6, plus=1, extra_chains=1, set_up_rows=1, rows_in_repeat=2)
PLAIN = StitchPattern(name="Single crochet", multiple=1, extra_chains=1, rows_in_repeat=1)
RIPPLE = StitchPattern(name="Ripple", multiple=12, plus=1, extra_chains=1, half_plus=1)


def taken(condition: Condition, text: str) -> tuple[TakenReading, ...]:
    """Typed readings, taken in one condition."""
    return tuple(TakenReading(condition, reading) for reading in read_readings(text))


def log(book: Logbook, tag: str, yarn: Yarn | None, pattern: StitchPattern | None, worked: str, washed: str, hook: float) -> str:
    """Logs a swatch and returns its uid."""
    readings = taken(Condition.WORKED, worked) + taken(Condition.WASHED, washed)
    number = int(tag[-2:])
    return save_swatch(
        book, Swatch(tag=tag, date=f"2026-05-{number:02d}", yarn=yarn, pattern=pattern, hook_mm=hook, readings=readings)
    )


@cache
def wardrobe(folder: Path) -> Path:
    """Made once in a process, in the session's folder; not to be changed."""
    path = folder / "wardrobe" / "wardrobe.logbook"
    path.parent.mkdir()
    with new_logbook(path) as made:
        washed = "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm"
        log(made, "HC-01", HARBOUR, SHELLS, "4 repeats = 15.5 cm", washed, 4.5)
        log(made, "HC-02", HARBOUR, PLAIN, "18 sts = 11.5 cm; 20 rows = 11 cm", "18 sts = 11.2 cm; 20 rows = 10.5 cm", 4.0)
        log(made, "MW-03", MERIDA, PLAIN, "16 sts = 11.5 cm", "", 5.0)
        log(made, "MW-04", MERIDA, RIPPLE, "", "2 repeats = 15.5 cm", 5.0)
    return path


@pytest.fixture
def book(tmp_path: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Logbook]:
    """Four swatches; HC-01 is the shells of 38.18 mm a repeat, measured washed."""
    with open_logbook(Path(shutil.copy(wardrobe(tmp_path_factory.getbasetemp()), tmp_path))) as made:
        yield made


@pytest.fixture
def session(book: Logbook) -> Session:
    """A session on ``book``."""
    return Session(book, Settings())
