"""Pictures as a record names them: each file is called by what it holds, so that one name is one picture for ever."""

import re

from logbook.errors import UnreadableError

NAME = re.compile(r"[0-9a-f]{64}\.(?:png|gif|jpg)\Z")
MOST = 100
"""Pictures of one record."""


def picture_names(text: str) -> tuple[str, ...]:
    """The files that a record names, parted by ``;``."""
    return tuple(name for part in text.split(";") if (name := part.strip()))


def names_text(names: tuple[str, ...]) -> str:
    """The text that names them, each once."""
    return "; ".join(dict.fromkeys(names))


def read_pictures(text: str) -> str:
    """Names of pictures as an export writes them. Raises UnreadableError for anything else."""
    names = picture_names(text)
    for name in names:
        if not NAME.match(name):
            raise UnreadableError(
                f"“{name[:40]}” is not a picture of a logbook: leave the cell empty, and add the picture with “Add a picture”."
            )
    if len(names) > MOST:
        raise UnreadableError(f"There are {len(names)} pictures: the most is {MOST}.")
    return names_text(names)
