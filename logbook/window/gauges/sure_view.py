"""Under the starting chain: how sure it is and what would help, folded, and the same square of fabric in each state."""

from collections.abc import Callable, Iterable
from tkinter import ttk

from logbook.craft.swatches.swatch import Swatch
from logbook.pages.gauges.circumstances import Circumstances
from logbook.window.canvas import DrawingCanvas
from logbook.window.flow import Flow
from logbook.window.folding import Folding
from logbook.window.look import Look
from logbook.window.sentence import Sentence

SURE = "swatches.sure"


class SureView(ttk.Frame):
    """``in_hand`` gives the swatch as typed and what else is known. What is folded away is not reckoned, nor imported."""

    def __init__(
        self,
        parent: ttk.Frame,
        look: Look,
        opened: Iterable[str],
        in_hand: Callable[[], tuple[Swatch, Circumstances]],
        on_fold: Callable[[str, bool], object],
        row: Flow,
    ) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look, self._in_hand, self._on_fold = look, in_hand, on_fold
        self._opened = set(opened)
        self.columnconfigure(0, weight=1)
        self.sure = Folding(self, "How accurate", SURE in self._opened, self._folded, row)
        self.sure.inside.columnconfigure(0, weight=1)
        self.sure.grid(row=0, column=0, sticky="ew")
        self._said: list[Sentence] = []
        self.squares = ttk.Frame(self, style="Card.TFrame")
        self.squares.columnconfigure(1, weight=1)
        look.grid(ttk.Separator(self.squares), row=0, column=0, columnspan=2, sticky="ew", pady=(1.5, 1.5))
        ttk.Label(self.squares, text="The same square", style="Card.Section.TLabel").grid(row=1, column=0, sticky="w")
        self._scale = Sentence(self.squares, style="Muted.TLabel")
        self._scale.configure(anchor="e", justify="right")
        look.grid(self._scale, row=1, column=1, sticky="ew", padx=(2, 1))
        self._drawing = DrawingCanvas(self.squares, look)
        look.grid(self._drawing, row=2, column=0, columnspan=2, sticky="ew", pady=(0.5, 0))
        self._figures = Sentence(self.squares, style="Muted.TLabel")
        look.grid(self._figures, row=3, column=0, columnspan=2, sticky="ew", pady=(0.5, 0))
        self.squares.grid(row=1, column=0, sticky="ew")

    def show(self) -> None:
        """Brings what is open up to date."""
        if self.sure.is_open:
            self._show_sure()
        self._show_squares()

    def _folded(self, is_open: bool) -> None:
        self.show()
        self._on_fold(SURE, is_open)

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

    def _show_squares(self) -> None:
        from logbook.pages.gauges.changes import changes_of
        from logbook.pages.gauges.same_square import compared_words, same_square, states_of

        swatch, known = self._in_hand()
        states = states_of(swatch, known.assumed, known.units)
        if not states:
            self.squares.grid_remove()
            return
        self.squares.grid()
        self._scale.configure(text=compared_words(states, known.units))
        self._drawing.show(same_square(states, known.units))
        self._figures.configure(text="\n".join(changes_of(swatch, known.assumed)))
