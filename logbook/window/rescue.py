"""A damaged logbook: the newest good backup is offered under a new name, and then the name of the damaged one.

The damaged file stays as it is, under its own name or under one that says so.
"""

import tkinter as tk
from pathlib import Path

from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.keeping import (
    SUFFIX,
    AlteredError,
    DamagedError,
    Logbook,
    damaged_name,
    newest_good_backup,
    open_book,
    others_backed_up,
    restore,
    restored_name,
    set_aside,
    set_right_as,
)
from logbook.window.file_dialogs import ask_where_to_save
from logbook.window.look import Look
from logbook.window.message import Answer, ask, tell

KINDS = [("Logbooks", f"*{SUFFIX}")]


def offer_rescue(parent: tk.Misc, look: Look, path: Path, damage: RefusedError, uid: str = "") -> Logbook | None:
    """The restored logbook, opened; None if there is no good backup or the user would rather leave it."""
    if isinstance(damage, AlteredError):
        return _set_right(parent, look, path, damage)
    backup = newest_good_backup(path, uid)
    if backup is None:
        others = others_backed_up()
        known = f" There are backups of {', '.join(others)}: restore one if it is of this logbook." if others else ""
        tell(parent, look, str(damage), f"No good backup of it was found on this computer.{known}")
        return None
    target = restored_name(path)
    answer = ask(
        parent,
        look,
        f"{damage} The newest good backup is from {backup.made.astimezone():%Y-%m-%d %H:%M} "
        f"and holds {counted(backup.swatches or 0, 'swatch')}.",
        [Answer("restore", "&Restore it under a new name"), Answer("leave", "&Not now")],
        default="restore",
        escape="leave",
        details=f"It would be written to {target}. The damaged file is not touched.",
    )
    if answer == "leave":
        return None
    book = _restored(parent, look, backup.path, target)
    if book is not None and isinstance(damage, DamagedError) and _can_swap(path, book.path):
        return _named(parent, look, path, book, "The backup is restored")
    return book


def _set_right(parent: tk.Misc, look: Look, path: Path, damage: AlteredError) -> Logbook | None:
    """A copy in which what was altered is as it was written, opened."""
    target = restored_name(path)
    answers = [Answer("right", "&Repair it under a new name"), Answer("leave", "&Not now")]
    details = f"Nothing newer is lost. It would be written to {target}. The damaged file is not touched."
    if ask(parent, look, str(damage), answers, default="right", escape="leave", details=details) == "leave":
        return None
    try:
        set_right_as(path, target)
        book = open_book(target)
    except RefusedError as error:
        tell(parent, look, str(error))
        return None
    return _named(parent, look, path, book, "It is repaired") if _can_swap(path, book.path) else book


def _restored(parent: tk.Misc, look: Look, backup: Path, target: Path) -> Logbook | None:
    """The restored logbook, opened; where it can't be written another place is asked for."""
    while True:
        try:
            restore(backup, target)
            return open_book(target)
        except RefusedError as error:
            tell(parent, look, str(error))
        chosen = ask_where_to_save(
            parent=parent, title="Restore under a new name", kinds=KINDS, name=target.stem, confirmoverwrite=False
        )
        if not chosen:
            return None
        target = Path(chosen)


def _can_swap(damaged: Path, restored: Path) -> bool:
    """A link stays what it is: what it leads to lies elsewhere."""
    return damaged.is_file() and not damaged.is_symlink() and damaged.parent.samefile(restored.parent)


def _named(parent: tk.Misc, look: Look, damaged: Path, book: Logbook, done: str) -> Logbook:
    """The restored or repaired logbook, opened; under the damaged one's name, if the user wants that."""
    aside = damaged_name(damaged)
    answer = ask(
        parent,
        look,
        f"{done} as {book.path.name}. Should it take the name {damaged.name}, so that it opens next time?",
        [Answer("swap", "&Use that name"), Answer("keep", "&Keep both names")],
        default="swap",
        escape="keep",
        details=f"The damaged file would be kept beside it as {aside.name}. Nothing is deleted.",
    )
    if answer != "swap":
        return book
    book.close()
    try:
        set_aside(damaged, aside, book.path)
    except RefusedError as error:
        tell(parent, look, str(error))
        return open_book(book.path)
    return open_book(damaged)
