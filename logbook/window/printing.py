"""Pages to print, which the browser shows: Tk itself loses characters when it prints."""

import tempfile
import webbrowser
from pathlib import Path

from logbook.pages.session import Session


class Printer:
    """Shows pages from files that go when the program ends."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._folder: tempfile.TemporaryDirectory[str] | None = None

    def show_page(self, html: str, name: str) -> None:
        """Opens a page in the browser, from a file of that name."""
        self._folder = self._folder or tempfile.TemporaryDirectory(prefix="logbook-print-", ignore_cleanup_errors=True)
        page = Path(self._folder.name) / name
        page.write_text(html, "utf-8")
        if webbrowser.open(page.as_uri()):
            self._session.say("The page stands in the browser: print it from there, on A4 or Letter.")
        else:
            self._session.say(f"No browser could be opened: open {page} in one and print it from there.")
