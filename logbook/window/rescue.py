"""A damaged logbook: the newest good backup is offered under a new name; the damaged file stays as it is."""

import tkinter as tk
from pathlib import Path
from tkinter import filedialog

from logbook.errors import RefusedError
from logbook.tasks.keeping import SUFFIX, Logbook, newest_good_backup, open_book, restore, restored_name
from logbook.window.look import Look
from logbook.window.message import Answer, ask, tell

KINDS = [("Logbooks", f"*{SUFFIX}")]


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
    return None if answer == "leave" else _restored(parent, look, backup.path, target)


def _restored(parent: tk.Misc, look: Look, backup: Path, target: Path) -> Logbook | None:
    """The restored logbook, opened; where it can't be written another place is asked for."""
    while True:
        try:
            restore(backup, target)
            return open_book(target)
        except RefusedError as error:
            tell(parent, look, str(error))
        chosen = filedialog.asksaveasfilename(
            parent=parent, title="Restore under a new name", defaultextension=SUFFIX, filetypes=KINDS, confirmoverwrite=False
        )
        if not chosen:
            return None
        target = Path(chosen)
