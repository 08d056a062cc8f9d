"""What can be done with a piece that is worked out: print its page, save its drawing or its figures, shape it."""

from collections.abc import Callable
from pathlib import Path
from tkinter import ttk

from logbook.errors import RefusedError
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.tasks.piece_files import save_piece_svg, save_piece_workbook
from logbook.tasks.pieces import PieceAnswer
from logbook.tasks.printed.piece_page import print_page
from logbook.window.file_dialogs import ask_where_to_save
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.message import tell
from logbook.window.pieces.shaping_dialog import show_shaping
from logbook.window.printing import Printer


class FileActions:
    """``entries`` of the menu *Piece*; ``answer`` is the piece as worked out just now, None while something is missing."""

    def __init__(
        self, frame: ttk.Frame, look: Look, session: Session, form: PieceForm, answer: Callable[[], PieceAnswer | None]
    ) -> None:
        self._frame, self.look, self._session, self._form, self._answer = frame, look, session, form, answer
        self.printer = Printer(session)
        self.entries = (
            Item("&Print its page", "Mod-p", self.print, self._is_worked_out),
            Item("Save the &drawing…", "", self.save_drawing, self._is_worked_out),
            Item("Save the figures as a &workbook…", "", self.save_workbook, self._is_worked_out),
            Item("S&haping…", "Mod-j", self.shape),
        )
        for entry in self.entries:
            if entry.keys:
                bind_keys(frame.winfo_toplevel(), entry.keys, entry.action, while_shown=frame)

    def print(self) -> None:
        """Opens the page to print in the browser."""
        answer = self._worked_out()
        if answer is None:
            return
        source = f"From swatch {self._form.texts['swatch'].strip()}: {self._form.swatch_words()}"
        self.printer.show_page(print_page(answer, self._session.units, source, self._form.texts["notes"]), "piece.html")

    def save_drawing(self) -> None:
        """Asks where to, and writes the drawing there."""
        answer = self._worked_out()
        if answer is not None:
            book = self._session.book
            self.save("Save the drawing", ".svg", "Drawing", lambda to: save_piece_svg(answer, to, self._session.units, book))

    def save_workbook(self) -> None:
        """Asks where to, and writes the figures there."""
        answer = self._worked_out()
        if answer is not None:
            self.save("Save the figures", ".xlsx", "Workbook", lambda to: save_piece_workbook(answer, to, self._session.book))

    def shape(self) -> None:
        """Opens the dialog of shaping."""
        show_shaping(self._frame, self.look, self._answer())

    def _is_worked_out(self) -> bool:
        return self._answer() is not None

    def _worked_out(self) -> PieceAnswer | None:
        answer = self._answer()
        if answer is None:
            self._session.say("There is nothing to print or save yet: the page shows what is missing.")
        return answer

    def save(self, title: str, suffix: str, kind: str, write: Callable[[Path], None]) -> None:
        """Asks where to, and lets ``write`` write there."""
        name = self._form.texts["name"].strip() or "piece"
        chosen = ask_where_to_save(parent=self._frame, title=title, kinds=[(kind, f"*{suffix}")], name=name)
        if not chosen:
            return
        try:
            write(Path(chosen))
        except RefusedError as error:
            tell(self._frame, self.look, str(error))
        else:
            self._session.say(f"Written to {chosen}.")
