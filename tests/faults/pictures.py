"""Pictures that can't be kept, can't be read or are too many: ``python -m tests.faults.pictures``.

As another user, for root writes everywhere: the folder of pictures missing, a file, not to be written to, on a disk that is
full (a limit on the size of files), pictures of 20,000 by 20,000, cut, a text named .jpg, the same twice. Each must end in one
sentence, or in the picture kept whole; the logbook must hold what it held, and no part of a picture may lie about. With 5,000
pictures the times of what a window does are printed.
"""

import os
import resource
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from logbook.book.pictures import folder_of
from logbook.craft.swatches.picture_names import MOST
from logbook.errors import RefusedError
from logbook.tasks.keeping import Logbook, check_book, open_book
from logbook.tasks.pictures import add_to_swatch, along_with, names_of, picture, take_in
from tests.support.garments import garment_book
from tests.support.pictures import huge_png, jpeg, png

MANY = 5_000
NOBODY = 65534
NOT_WRITABLE = "folder not to be written to"


@contextmanager
def _limited(size: int) -> Iterator[None]:
    """Files may grow to so many bytes only, as on a full disk."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def _full(book: Logbook, source: Path) -> None:
    with _limited(max(source.stat().st_size // 2, 1)):
        add_to_swatch(book, "H1", source)


def _read_only(book: Logbook, source: Path) -> None:
    folder = folder_of(book.path)
    folder.mkdir(mode=0o500)
    try:
        add_to_swatch(book, "H1", source)
    finally:
        folder.chmod(0o700)
        shutil.rmtree(folder)


def _a_file(book: Logbook, source: Path) -> None:
    folder_of(book.path).write_text("a list")
    try:
        add_to_swatch(book, "H1", source)
    finally:
        assert folder_of(book.path).read_text() == "a list"


def _missing(book: Logbook, source: Path) -> None:
    name = add_to_swatch(book, "H1", source)
    (folder_of(book.path) / name).unlink()
    folder_of(book.path).rmdir()
    picture(book, name)


def _cut_afterwards(book: Logbook, source: Path) -> None:
    name = add_to_swatch(book, "H1", source)
    file = folder_of(book.path) / name
    os.truncate(file, file.stat().st_size // 2)
    picture(book, name)


def _twice(book: Logbook, source: Path) -> None:
    first, second = (add_to_swatch(book, "H1", source) for _ in range(2))
    assert first == second
    assert len(list(folder_of(book.path).iterdir())) == 1


Trial = tuple[str, bytes, str, Callable[[Logbook, Path], object], bool]
TRIALS: tuple[Trial, ...] = (
    ("disk full while it is taken in", png(200, 200), "cat.png", _full, True),
    (NOT_WRITABLE, png(), "cat.png", _read_only, True),
    ("a file where the folder should be", png(), "cat.png", _a_file, True),
    ("folder missing", png(), "cat.png", _missing, True),
    ("cut after it was taken in", png(40, 40), "cat.png", _cut_afterwards, True),
    ("20,000 by 20,000", huge_png(), "huge.png", lambda book, source: add_to_swatch(book, "H1", source), True),
    ("cut", jpeg()[:-5], "cut.jpg", lambda book, source: add_to_swatch(book, "H1", source), True),
    ("a text named .jpg", b"Dear Ida,\n", "letter.jpg", lambda book, source: add_to_swatch(book, "H1", source), True),
    ("the same twice", png(), "cat.png", _twice, False),
)


def tried(folder: Path) -> Iterator[tuple[str, str]]:
    """What was tried, and what came of it: a sentence, ``kept``, or beginning with ``WRONG``."""
    garment_book(folder / "new.logbook").close()
    for number, (what, content, name, act, refuses) in enumerate(TRIALS):
        place = folder / str(number)
        place.mkdir()
        (place / name).write_bytes(content)
        shutil.copyfile(folder / "new.logbook", place / "a.logbook")
        with open_book(place / "a.logbook") as book:
            said = "kept"
            try:
                act(book, place / name)
            except RefusedError as error:
                said = str(error)
            except Exception as error:  # whatever else comes is the finding
                said = f"WRONG: {type(error).__name__}: {error}"
            if refuses != (said != "kept") or not check_book(book).ok or list(place.rglob("*.new")):
                said = f"WRONG: {said}"
        yield what, said


def many(folder: Path, count: int) -> Iterator[tuple[str, float]]:
    """Seconds of what is done with a logbook of so many pictures."""
    with garment_book(folder / "many.logbook") as book:
        start = time.perf_counter()
        for number in range(count):
            source = folder / "next.png"
            source.write_bytes(png(8, 8, (number % 256, number // 256 % 256, 7)))
            if number < 2 * MOST:
                add_to_swatch(book, ("H1", "L1")[number % 2], source)
            else:
                take_in(book, source)
        yield f"{count} taken in, each", (time.perf_counter() - start) / count
    start = time.perf_counter()
    with open_book(folder / "many.logbook") as book:
        yield "the logbook opened", time.perf_counter() - start
        names = names_of(book)
        start = time.perf_counter()
        for name in names[:3]:
            picture(book, name)
        yield "three of one swatch read", time.perf_counter() - start
        start = time.perf_counter()
        book.save_copy(folder / "copy.logbook")
        along_with(book.path, folder / "copy.logbook")
        yield f"a copy saved with the {len(names)} that records name", time.perf_counter() - start


def main() -> int:
    """Prints what came of each; exit 1 if something was wrong."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        if os.getuid() == 0:
            os.chown(folder, NOBODY, NOBODY)
            os.setuid(NOBODY)
            os.environ["HOME"] = os.environ["XDG_DATA_HOME"] = str(folder)
        wrong = 0
        for what, said in tried(folder):
            wrong += said.startswith("WRONG")
            print(f"| {what} | {said.replace(str(folder), '…')} |")
        for what, seconds in many(folder, MANY):
            print(f"| {what} | {seconds * 1000:.1f} ms |")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
