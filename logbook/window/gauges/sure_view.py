"""Two folded sections under the starting chain: how sure it is and what would help, and how the fabric changes."""

from collections.abc import Callable, Iterable
from tkinter import ttk

from logbook.craft.swatches.swatch import Swatch
from logbook.pages.gauges.circumstances import Circumstances
from logbook.window.canvas import DrawingCanvas
from logbook.window.folding import Folding
from logbook.window.look import Look
from logbook.window.sentence import Sentence

SURE, CHANGES = "swatches.sure", "swatches.changes"


class SureView(ttk.Frame):
    """``in_hand`` gives the swatch as typed and what else is known. What is folded away is not reckoned, nor imported."""

    def __init__(
        self,
        parent: ttk.Frame,
        look: Look,
        opened: Iterable[str],
        in_hand: Callable[[], tuple[Swatch, Circumstances]],
        on_fold: Callable[[str, bool], object],
    ) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look, self._in_hand, self._on_fold = look, in_hand, on_fold
        self._opened = set(opened)
        self.columnconfigure(0, weight=1)
        self.sure = self._section(SURE, "How sure", 0)
        self.changes = self._section(CHANGES, "Washed, pulled", 1)
        self._said: list[Sentence] = []
        place = self.changes.inside
        self._drawing = DrawingCanvas(place, look)
        self._drawing.grid(row=0, column=0, sticky="ew")
        self._figures = Sentence(place)
        look.grid(self._figures, row=1, column=0, sticky="ew", pady=(0.5, 1.5))

    def show(self) -> None:
        """Brings what is open up to date."""
        if self.sure.is_open:
            self._show_sure()
        if self.changes.is_open:
            self._show_changes()

    def _section(self, name: str, title: str, row: int) -> Folding:
        folding = Folding(self, title, name in self._opened, lambda is_open: self._folded(name, is_open))
        folding.inside.columnconfigure(0, weight=1)
        folding.grid(row=row, column=0, sticky="ew")
        return folding

    def _folded(self, name: str, is_open: bool) -> None:
        self.show()
        self._on_fold(name, is_open)

    def _show_sure(self) -> None:
        from logbook.pages.gauges.how_sure import how_sure

        texts: list[tuple[str, bool]] = []
        for advised in how_sure(*self._in_hand()):
            texts += [(advised.heading, True), (" ".join(advised.sentences), False)]
        while len(self._said) < len(texts):
            self._said.append(Sentence(self.sure.inside))
        for row, sentence in enumerate(self._said):
            if row < len(texts):
                text, is_heading = texts[row]
                sentence.configure(text=text, style="Card.Section.TLabel" if is_heading else "Card.TLabel")
                self.look.grid(sentence, row=row, column=0, sticky="ew", pady=(0, 0 if is_heading else 1.5))
            else:
                sentence.grid_remove()

    def _show_changes(self) -> None:
        from logbook.pages.gauges.changes import changes_drawing, changes_of

        swatch, known = self._in_hand()
        found = changes_of(swatch, known.assumed)
        self._figures.configure(text="\n".join(found.lines) or found.missing)
        self._drawing.show(changes_drawing(found.squares) if found.squares else None)
        if found.squares:
            self._drawing.grid()
        else:
            self._drawing.grid_remove()
