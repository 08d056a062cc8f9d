"""What is typed and not saved: kept in the user's own folder, and found again after a window died."""

from pathlib import Path

from logbook.book.drafts import NEW, Draft, DraftFile, LeftBehind, left_behind
from logbook.book.logbook import Logbook
from logbook.settings import state_folder

__all__ = ["NEW", "Draft", "DraftFile", "LeftBehind", "drafts_folder", "left_behind"]


def drafts_folder(book: Logbook) -> Path:
    """Where the drafts of this logbook are kept; it may not exist yet."""
    return state_folder() / "drafts" / book.uid
