"""The page of swatches on a small logbook, for the dialogs that it opens."""

from tests.support.wardrobe import book, session
from tests.window.swatches.conftest import page

__all__ = ["book", "page", "session"]
