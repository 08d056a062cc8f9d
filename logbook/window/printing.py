"""Pages to print, which the browser shows: Tk itself loses characters when it prints."""

from pathlib import Path
from typing import TYPE_CHECKING

from logbook.pages.session import Session

if TYPE_CHECKING:
    import tempfile


class Printer:
    """Shows pages from files that go when the program ends."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._folder: tempfile.TemporaryDirectory[str] | None = None

    def show_page(self, html: str, name: str) -> None:
        """Opens a page in the browser, from a file of that name."""
        import tempfile  # both are slow to import, and a window that prints nothing is not to wait for them
        import webbrowser

        self._folder = self._folder or tempfile.TemporaryDirectory(prefix="logbook-print-", ignore_cleanup_errors=True)
        page = Path(self._folder.name) / name
        page.write_text(html, "utf-8")
        if webbrowser.open(page.as_uri()):
            self._session.say(f"Sent to your browser, to print on A4 or Letter. If it does not show there, open {page}")
        else:
            self._session.say(f"No browser could be opened. Open {page} in one, and print it from there.")
