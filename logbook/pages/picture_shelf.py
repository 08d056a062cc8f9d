"""The pictures of the record in hand: what can be done with them, and why one is not shown."""

from pathlib import Path

from logbook.craft.swatches.picture_names import picture_names
from logbook.pages.session import Session
from logbook.tasks.pictures import picture, picture_file, take_in, with_picture, without_picture

NOT_COPIED = "Copy a picture file first, or its path, then paste it here."


def copied_files(copied: str) -> tuple[Path, ...]:
    """The files that were copied, a path or a ``file:`` address a line; none if a line is anything else."""
    lines = [line.strip().strip("\"'") for line in copied.splitlines() if line.strip()]
    paths = [_path(line) for line in lines]
    return tuple(path for path in paths if path is not None) if None not in paths else ()


def _path(line: str) -> Path | None:
    if line.startswith("file:"):
        from urllib.parse import urlsplit
        from urllib.request import url2pathname

        line = url2pathname(urlsplit(line).path)
    return Path(line) if Path(line).is_absolute() else None


class PictureShelf:
    """Pictures by their names, as the text of a record has them."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def names(self, text: str) -> tuple[str, ...]:
        """The pictures that a text names."""
        return picture_names(text)

    def add(self, text: str, source: Path) -> str:
        """Takes a file in; the text with it. Raises RefusedError, in one sentence."""
        return with_picture(text, take_in(self._session.book, source))

    def take_off(self, text: str, name: str) -> str:
        """The text without one."""
        return without_picture(text, name)

    def content(self, name: str) -> bytes:
        """What a picture holds. Raises RefusedError, in one sentence."""
        return picture(self._session.book, name)

    def file(self, name: str) -> Path:
        """Where it lies. Raises RefusedError, in one sentence."""
        return picture_file(self._session.book, name)
