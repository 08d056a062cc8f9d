"""One window a logbook: where it is kept which logbook a window shows."""

from pathlib import Path

from logbook.book.shown import ShownBook, ask_for_window
from logbook.settings import state_folder

__all__ = ["ShownBook", "brought_to_front", "shown_folder"]

PATIENCE_S = 3.0
"""So long a window that stands still is waited for; then another is opened."""


def shown_folder() -> Path:
    """Where that is kept; it may not exist yet."""
    return state_folder() / "windows"


def brought_to_front(path: Path) -> bool:
    """Whether a window shows the logbook at ``path`` already, and has come to the front."""
    return ask_for_window(shown_folder(), path, PATIENCE_S)
