"""Pictures with a swatch or a made piece: taken in, brought along, shown."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

from logbook.book import pictures as kept
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.picture_bytes import NoPictureError, picture_of
from logbook.book.swatches import swatch_of_tag
from logbook.craft.swatches.picture_names import MOST, names_text, picture_names
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.logging_swatches import save_swatch


def how_many_beside(path: Path) -> int:
    """How many pictures lie beside the logbook at ``path``."""
    try:
        return sum(1 for _ in kept.folder_of(path).iterdir())
    except OSError:
        return 0


def take_in(book: Logbook, source: Path) -> str:
    """Copies a picture file beside the logbook and returns the name a record calls it by. Raises RefusedError."""
    book.require_writable()
    return kept.take_in(book.path, source)


def with_picture(names: str, name: str) -> str:
    """The text of a record's pictures with one more. Raises RefusedError where there are too many."""
    known = picture_names(names)
    if len(known) >= MOST and name not in known:
        raise RefusedError(f"There are {len(known)} pictures here already, which is the most there can be: remove one first.")
    return names_text((*known, name))


def without_picture(names: str, name: str) -> str:
    """The text of a record's pictures without one; its file stays, for undo."""
    return names_text(tuple(known for known in picture_names(names) if known != name))


def picture(book: Logbook, name: str) -> bytes:
    """What a picture holds. Raises RefusedError, in one sentence, if it is missing or broken."""
    return kept.content_of(book.path, name)


def picture_file(book: Logbook, name: str) -> Path:
    """Where it lies, for the system's viewer. Raises RefusedError as ``picture``."""
    kept.content_of(book.path, name)
    return kept.folder_of(book.path) / name


def measured(content: bytes) -> tuple[str, int, int]:
    """The kind of a picture (png, gif, jpg), its width and its height. Raises RefusedError if it is no whole one."""
    try:
        found = picture_of(content)
    except NoPictureError as error:
        raise RefusedError(f"The picture {error}.") from error
    return found.kind, found.width, found.height


def add_to_swatch(book: Logbook, tag: str, source: Path) -> str:
    """Takes a picture in with the swatch of that tag, and returns its name. Raises RefusedError, in one sentence."""
    with book.reading() as connection:
        swatch = swatch_of_tag(connection, tag)
    name = take_in(book, source)
    save_swatch(book, replace(swatch, pictures=with_picture(swatch.pictures, name)))
    return name


def add_to_made_piece(book: Logbook, name: str, source: Path) -> str:
    """Takes a picture in with the made piece of that name, and returns the picture's. Raises RefusedError, in one sentence."""
    from logbook.tasks.made_pieces import made_piece_called, save_made_piece  # not for the pictures of a form, at the start

    made = made_piece_called(book, name)
    picture_name = take_in(book, source)
    save_made_piece(book, replace(made, pictures=with_picture(made.pictures, picture_name)))
    return picture_name


def along_with(source: Path, target: Path, progress: Callable[[int, int], None] | None = None) -> str:
    """Brings the pictures along that the logbook ``target``, which came of that at ``source``, names; a sentence about those that
    could not be, or "".
    """
    try:
        with open_logbook(target) as copy, copy.reading() as connection:
            names = kept.names_in(connection)
    except RefusedError as error:
        return str(error)
    return along(names, source, target, progress)


def names_of(book: Logbook) -> list[str]:
    """Every picture that a record of the logbook names."""
    with book.reading() as connection:
        return kept.names_in(connection)


def along(names: Iterable[str], source: Path, target: Path, progress: Callable[[int, int], None] | None = None) -> str:
    """Copies pictures from beside one file to beside another; a sentence about those that could not be, or ""."""
    left = kept.bring_along(tuple(names), source, target, progress)
    if not left:
        return ""
    are = "is" if len(left) == 1 else "are"
    return f"{counted(len(left), 'picture')} {are} not in {kept.folder_of(target).name}: missing, or there is no room for it."
