"""Reads the texts of a form, one after another, and keeps a sentence for each that can't be read."""

from collections.abc import Callable, Mapping
from typing import Any

from logbook.errors import LogbookError


class TextReader:
    """``errors`` has the sentences by the names of the texts."""

    def __init__(self, texts: Mapping[str, str]) -> None:
        self.texts = texts
        self.errors: dict[str, str] = {}

    def value(self, key: str, reader: Callable[[str], Any], empty: Any = None) -> Any:
        """What ``reader`` makes of a text, of an empty one too; ``empty`` where it can't be read."""
        try:
            return reader(self.texts[key])
        except LogbookError as error:
            self.errors[key] = str(error)
            return empty

    def read(self, key: str, reader: Callable[[str], Any], empty: Any = None) -> Any:
        """The same of what is typed, without the blanks around it; ``empty`` where nothing is."""
        return self.value(key, lambda text: reader(text.strip()), empty) if self.texts[key].strip() else empty
