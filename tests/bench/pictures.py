"""How soon the window answers with 5,000 pictures beside the logbook: ``python -m tests.bench.pictures``.

2,500 swatches with two photographs each (JPEG, 1,600 by 1,200), and one with as many as a record may have (4,000 by 3,000), with
the section of the form that shows them open. As ``tests.bench.hand``, by keys and clicks through the X server, looked at on the
screen. Printed are the median and the slowest; nothing is asserted. Wants Xvfb, openbox, xdotool and Pillow.
"""

import hashlib
import json
import struct
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from importlib import import_module
from io import BytesIO
from pathlib import Path
from random import Random

from logbook.book.logbook import open_logbook
from logbook.book.pictures import folder_of
from logbook.book.swatches import put_swatch, swatches
from logbook.craft.swatches.picture_names import MOST
from tests.bench import window
from tests.bench.hand import STILL_S, Picture, at_work, form_of, report
from tests.support.hand import Hand
from tests.support.shown import Program

WITH_TWO = 2_500
SMALL, LARGE = (1600, 1200), (4000, 3000)
TYPED = "limewalkcottonshell"


def photographs(size: tuple[int, int], many: int) -> Iterator[bytes]:
    """So many that differ in a remark: what is drawn is the same, a grey that no packing makes small."""
    image = import_module("PIL.Image")
    grain = Random(1).randbytes(size[0] * size[1] // 64)
    drawn = image.frombytes("L", (size[0] // 8, size[1] // 8), grain).resize(size).convert("RGB")
    written = BytesIO()
    drawn.save(written, "JPEG", quality=85)
    content = written.getvalue()
    for number in range(many):
        remark = b"\xff\xfe" + struct.pack(">HI", 6, number)
        yield content[:2] + remark + content[2:]


def make(path: Path) -> None:
    """The logbook of ``tests.bench.window`` with fewer swatches, and the pictures."""
    window.make(path, WITH_TWO + 1)
    folder = folder_of(path)
    folder.mkdir()
    small, large = ([kept(folder, one) for one in photographs(*kind)] for kind in ((SMALL, 2 * WITH_TWO), (LARGE, MOST)))
    with open_logbook(path) as book, book.writing("pictures") as writing:
        newest, *others = swatches(writing.connection)
        put_swatch(writing, replace(newest, date="2026-12-01", tag="many", pictures="; ".join(large)))
        for number, swatch in enumerate(others):
            date = swatch.date if number else "2026-12-02"  # with which the window begins
            put_swatch(writing, replace(swatch, date=date, pictures="; ".join(small[2 * number : 2 * number + 2])))


def kept(folder: Path, content: bytes) -> str:
    """The name by which it lies there."""
    name = f"{hashlib.sha256(content).hexdigest()}.jpg"
    (folder / name).write_bytes(content)
    return name


def main() -> int:
    """Makes the logbook, lets the hand work and prints the table."""
    return at_work(make, measure, json.dumps({"opened": ["swatches.more"]}))


def measure(program: Program, hand: Hand, picture: Picture) -> None:
    start = time.perf_counter()  # of the program's process
    shown = program.at_rest()
    print(f"{WITH_TWO * 2:,} pictures{'':33}{'median':>10}{'slowest':>10}")
    report("from the start to the page at rest", [time.perf_counter() - start])
    form, table, field = form_of(shown), shown.of_kind("Treeview")[0], shown.of_kind("TEntry")[0]
    x, y, width, height = field.box
    inside = (x + 3, y + 3, width - 6, height - 6)
    _, many, *others = table.more["rows"][:16]

    def click(row: dict[str, tuple[int, int]]) -> None:
        hand.click(*row["at"])

    times = [picture.changes(form, lambda row=row: click(row), STILL_S) for row in others]  # type: ignore[misc]
    report("a click on a row to the form’s first change", [first for first, _ in times])
    report("a click on a row to the form filled", [last for _, last in times])
    for words, row in (("two pictures", others[0]), (f"{MOST} large pictures", many)):
        click(others[-1])
        program.at_rest()
        click(row)
        hand.click(x + 12, y + height // 2)
        program.look()
        keys = [picture.changes(inside, lambda k=k: hand.key(k), 0)[0] for k in TYPED]  # type: ignore[misc]
        report(f"a key while {words} are drawn to the letter seen", keys)
        hand.key("Escape")
        program.at_rest()


if __name__ == "__main__":
    sys.exit(main())
