"""How soon the screen shows what a hand does, on 10,000 swatches: ``python -m tests.bench.hand``.

The keys and clicks go through the X server, and what the server then holds is looked at, not asked of the program: from a key in
a field to the letter on the screen, from a click on a row to the form beginning to change, and to its last change. Printed are
the median and the slowest; nothing is asserted. Wants Xvfb, openbox and xdotool.
"""

import mmap
import statistics
import struct
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path

from tests.bench.window import SWATCHES, make
from tests.support.hand import Hand, managed_screen, missing
from tests.support.shown import Program, Shown

TYPED = "limewalkcotton"
STILL_S = 0.3
"""What has not changed for so long has come to its end."""
LATEST_S = 5.0
Box = tuple[int, int, int, int]


class Picture:
    """The screen as the X server holds it in a file: an X window dump, its header of big-endian numbers first."""

    def __init__(self, file: Path) -> None:
        with file.open("rb") as opened:
            self._bytes = mmap.mmap(opened.fileno(), 0, access=mmap.ACCESS_READ)
        header = struct.unpack(">20I", self._bytes[:80])
        self._start, self._line, self._pixel = header[0] + 12 * header[19], header[12], header[11] // 8

    def part(self, box: Box) -> bytes:
        x, y, width, height = box
        starts = (self._start + line * self._line + x * self._pixel for line in range(y, y + height))
        return b"".join(self._bytes[start : start + width * self._pixel] for start in starts)

    def changes(self, box: Box, act: Callable[[], None], still_s: float) -> tuple[float, float]:
        """Seconds from ``act`` to the first change of this part of the screen and to the last, after which it is still."""
        before, start = self.part(box), time.perf_counter()
        act()
        first = last = 0.0
        while (now := time.perf_counter() - start) < (last + still_s if first else LATEST_S):
            if (seen := self.part(box)) != before:
                before, last = seen, now
                first = first or now
        return first, last


def main() -> int:
    """Makes the logbook, lets the hand work and prints the table."""
    return at_work(make, measure)


def at_work(make: Callable[[Path], object], measure: Callable[[Program, Hand, Picture], object], settings: str = "{}") -> int:
    """Starts the program on the logbook that ``make`` writes to a path, with these settings, and lets ``measure`` use it."""
    if lacking := missing():
        print(f"A real hand needs {' and '.join(lacking)}.")
        return 3
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as place:
        folder = Path(place)
        book, kept = folder / "swatches.logbook", folder / "home" / "kept"
        make(book)
        kept.mkdir(parents=True)
        (kept / "settings.json").write_text(settings, "utf-8")
        with managed_screen(folder) as display:
            program, hand = Program(display, folder / "home", "--book", str(book)), Hand(display)
            try:
                measure(program, hand, Picture(folder / "Xvfb_screen0"))
            finally:
                program.end()
                hand.take_away()
    return 0


def measure(program: Program, hand: Hand, picture: Picture) -> None:
    print(f"{SWATCHES:,} swatches{'':32}{'median':>10}{'slowest':>10}")
    shown = program.at_rest()
    for words, kind in (("the find field", "TEntry"), ("the yarn’s field", "TCombobox")):
        x, y, width, height = shown.of_kind(kind)[0].box
        hand.click(x + 12, y + height // 2)
        program.look()
        hand.key("ctrl+a", "x")
        program.look()
        inside = (x + 3, y + 3, width - 6 - height, height - 6)
        report(f"a key in {words} to the letter seen", [picture.changes(inside, lambda k=k: hand.key(k), 0)[0] for k in TYPED])
        hand.key("ctrl+r", "ctrl+f", "Escape")  # back to what was there
        shown = program.at_rest()
    form = form_of(shown)
    table = shown.of_kind("Treeview")[0]
    firsts, lasts = [], []
    for row in table.more["rows"][2:18]:
        first, last = picture.changes(form, lambda row=row: hand.click(*row["at"]), STILL_S)  # type: ignore[misc]
        firsts.append(first)
        lasts.append(last)
    report("a click on a row to the form’s first change", firsts)
    report("a click on a row to the form filled", lasts)


def form_of(shown: Shown) -> Box:
    """The column of the form, from the field of the yarn on."""
    field = shown.of_kind("TCombobox")[0]
    scrolled = next(w for w in shown.of_kind("Canvas") if field.path.startswith(f"{w.path}."))
    return scrolled.box


def report(what: str, seconds: Sequence[float]) -> None:
    print(f"{what:48}{statistics.median(seconds) * 1000:>7.1f} ms{max(seconds) * 1000:>7.1f} ms")


if __name__ == "__main__":
    sys.exit(main())
