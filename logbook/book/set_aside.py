"""A damaged logbook set aside, so that a restored one can have its name."""

import os
from contextlib import ExitStack, suppress
from pathlib import Path

from logbook.book.copying import beside_too
from logbook.disk import sync_folder
from logbook.errors import RefusedError


def set_aside(damaged: Path, aside: Path, instead: Path) -> None:
    """Gives the file ``damaged``, with its journal, the name ``aside``, and its own name to the logbook ``instead``.

    All three lie in one folder, and no program may have ``instead`` open. Nothing is deleted or overwritten, and at no moment is
    there no file of the name ``damaged``. Raises RefusedError if it can't be done; then each has the name it had.
    """
    for name in (*beside_too(aside), *beside_too(instead)[1:]):
        if os.path.lexists(name):
            raise RefusedError(f"{name} is there already: look at what it is, and move it away.")
    try:
        with ExitStack() as taken_back:
            os.link(damaged, aside)  # a second name: the first is never without a file
            taken_back.callback(aside.unlink)
            for left, moved in zip(beside_too(damaged)[1:], beside_too(aside)[1:], strict=True):
                if left.exists():  # left where it is, it would be rolled back into the restored one
                    os.rename(left, moved)
                    taken_back.callback(os.rename, moved, left)
            sync_folder(damaged.parent)  # before the first name goes, the second must be there to stay
            os.replace(instead, damaged)
            taken_back.pop_all()
        with suppress(OSError):  # each has its name; only a power cut at this moment could still take them back
            sync_folder(damaged.parent)
    except OSError as error:
        raise RefusedError(f"{damaged.name} could not be set aside ({error.strerror}): {instead.name} keeps its name.") from error
