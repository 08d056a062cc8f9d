"""A damaged logbook: the newest good backup is offered under a new name; the damaged file stays as it is."""

import tkinter as tk
from pathlib import Path

from logbook.errors import RefusedError
from logbook.tasks.keeping import Logbook, newest_good_backup, open_book, restore, restored_name
from logbook.window.look import Look
from logbook.window.message import Answer, ask, tell


def offer_rescue(parent: tk.Misc, look: Look, path: Path, damage: RefusedError) -> Logbook | None:
    """The restored logbook, opened; None if there is no good backup or the user would rather leave it."""
    backup = newest_good_backup(path)
    if backup is None:
        tell(parent, look, str(damage), "No good backup of it was found on this computer.")
        return None
    target = restored_name(path)
    answer = ask(
        parent,
        look,
        f"{damage} The newest good backup is of {backup.made:%Y-%m-%d %H:%M} UTC and holds {backup.swatches} swatches.",
        [Answer("restore", "&Restore it under a new name"), Answer("leave", "&Leave everything as it is")],
        default="restore",
        escape="leave",
        details=f"It would be written to {target}. The damaged file is not touched.",
    )
    if answer == "leave":
        return None
    try:
        restore(backup.path, target)
        return open_book(target)
    except RefusedError as error:
        tell(parent, look, str(error))
        return None
