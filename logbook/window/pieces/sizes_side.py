"""The sizes of the piece in hand and what was made of it: their views, and what can be done with them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from tkinter import ttk

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.words.dates import date_words
from logbook.pages.pieces.chart_choice import ChartChoice
from logbook.pages.pieces.made_form import Begun, MadeForm
from logbook.pages.pieces.made_list import MadeList
from logbook.pages.pieces.piece_card import PieceCard, PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.pieces.plan_texts import ReadPlan
from logbook.pages.pieces.run_card import RunCard, RunMaker, texts_with, told_once
from logbook.pages.pieces.size_texts import ReadSizes, sizes_text
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.tasks.made_pieces import made_from
from logbook.tasks.pieces import PieceAnswer
from logbook.window.folding import Folding
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.pieces.chart_dialog import show_chart
from logbook.window.pieces.file_actions import FileActions
from logbook.window.pieces.made_dialog import show_made
from logbook.window.pieces.made_view import MadeView
from logbook.window.pieces.run_files import RunFiles, RunOnPage
from logbook.window.pieces.run_view import RunActions, RunView
from logbook.window.sentence import Sentence

SHUT, LINES_FOLD = "pieces.sizes shut", "pieces.lines"
"""Sizes stand open where there are some, unless the user has shut them."""


@dataclass(frozen=True, slots=True)
class PieceAround:
    """What the page gives: its saving, its piece as worked out now, what is typed in find; and how it hears of changes.

    ``changed``: a text of the form is another, or another size is looked at; ``shown_anew``: more texts of the form are others;
    ``reloaded``: the logbook holds something else.
    """

    save: Callable[[], bool]
    answer: Callable[[], PieceAnswer | None]
    words: Callable[[], str]
    changed: Callable[[], object]
    shown_anew: Callable[[], object]
    reloaded: Callable[[], object]
    fold: Callable[[str, bool], object]


class SizesSide:
    """``below_plan`` is the place of the run, ``below_list`` that of the made pieces."""

    def __init__(
        self,
        frame: ttk.Frame,
        look: Look,
        session: Session,
        form: PieceForm,
        maker: PieceMaker,
        files: FileActions,
        around: PieceAround,
        below_plan: ttk.Frame,
        below_list: ttk.Frame,
    ) -> None:
        self._frame, self.look, self._session, self._form, self._around = frame, look, session, form, around
        self._pieces, self._maker = maker, RunMaker(session, maker)
        self.card = RunCard()
        self._made = MadeList(session)
        self._made_form: MadeForm | None = None
        self._chart: ChartChoice | None = None
        self.folding, self.view = self._build_run(below_plan)
        self.made_words = Sentence(below_plan)
        look.grid(self.made_words, row=1, column=0, sticky="ew", pady=(1, 0))
        self.made = MadeView(below_list, look, self._made, lambda: session.units, self.open_made)
        look.grid(self.made, row=2, column=0, sticky="ew", pady=(2, 0))
        self.files = RunFiles(frame, session, files, self._on_page())
        window = frame.winfo_toplevel()
        bind_keys(window, "Mod-m", self.log_made, while_shown=frame)
        bind_keys(window, "Mod-b", self.choose_chart, while_shown=frame)
        self.reload()

    def _build_run(self, parent: ttk.Frame) -> tuple[Folding, RunView]:
        opened = self._session.settings.opened
        folding = Folding(parent, "Si&zes", False, lambda is_open: self._around.fold(SHUT, not is_open))
        folding.grid(row=0, column=0, sticky="ew")
        folding.inside.columnconfigure(0, weight=1)
        actions = RunActions(
            typed=self._typed,
            remedy=self._apply,
            chosen=self._around.changed,
            from_chart=self.choose_chart,
            copy_lines=lambda: self.files.copy_lines(),
            fold_lines=partial(self._around.fold, LINES_FOLD),
            lines_open=LINES_FOLD in opened,
        )
        view = RunView(folding.inside, self.look, actions)
        view.grid(row=0, column=0, sticky="ew")
        return folding, view

    def _on_page(self) -> RunOnPage:
        return RunOnPage(
            card=lambda: self.card,
            saved=lambda: self._form.saved,
            name=lambda: self._form.texts["name"].strip(),
            notes=lambda: self._form.texts["notes"],
            source=self._source,
            save=self._saved,
            changed=self._around.reloaded,
        )

    @property
    def entries(self) -> tuple[Item, ...]:
        """What the menu offers besides the piece's own."""
        return (*self.files.entries, Item("Log what was &made…", "Mod-m", self.log_made))

    def plan_in_hand(self, read: ReadPlan, sizes: ReadSizes) -> ReadPlan:
        """The plan of the size in hand; without sizes that of the piece."""
        return self._maker.plan_of_size(read, sizes, self.view.size_name)

    def show(self, read: ReadPlan, sizes: ReadSizes) -> None:
        """Brings the run up to date with what is typed."""
        swatch, edge = self._form.swatch_uid(), self._form.swatch_uid("edge swatch")
        self.card = self._maker.card(read, sizes, swatch, edge, self._form.saved)
        self.view.show(self.card, self._form.texts["sizes"])
        self.made_words.configure(text="\n".join(self._made.of(self._form.uid)))

    def told_with(self, piece: PieceCard) -> PieceCard:
        """Says of the sizes what the card of the size in hand does not, and gives that without what stands here."""
        piece, run = told_once(piece, self.card, self.view.size_name)
        self.view.say(run)
        return piece

    def shown_anew(self) -> None:
        """Another piece is in hand: its sizes are in sight, if it has some."""
        self.folding.show(bool(self._form.texts["sizes"].strip()) and SHUT not in self._session.settings.opened)

    def reload(self) -> None:
        """The logbook holds something else."""
        self._made.reload()
        self.made.reload(self._around.words())

    def look_up(self) -> None:
        """Other words are looked for."""
        self.made.look_up(self._around.words())

    def choose_chart(self) -> None:
        """Sizes from a body chart, in the place of those there are."""
        self._show_chart(ChartChoice(self._session))

    def chart_draft(self) -> Draft | None:
        """What is typed in a body chart."""
        return self._chart.draft() if self._chart is not None else None

    def chart_texts(self, name: str) -> Mapping[str, str] | None:
        """The texts of a body chart as the logbook has it; None if it has it not."""
        return ChartChoice(self._session).kept(name)

    def take_up_chart(self, texts: Mapping[str, str]) -> None:
        """Opens the body charts, one with these texts typed."""
        chart = self._chart = ChartChoice(self._session)
        chart.typed = (texts["name"], texts["table"])
        self._frame.after_idle(self._show_chart, chart)

    def _show_chart(self, chart: ChartChoice) -> None:
        self._chart = chart
        try:
            show_chart(self._frame.winfo_toplevel(), self.look, self._session, chart, self._take_sizes)
        finally:
            self._chart = None

    def log_made(self) -> None:
        """A made piece: of the saved piece in hand in the size in hand, else on its own."""
        piece, answer = self._form.saved, self._around.answer()
        if piece is None or answer is None or self._form.is_dirty:
            self._show_made(MadeForm(self._session, MadePiece()))
            return
        begun = made_from(piece, answer, self.view.size_name, self._form.swatch_hook())
        self._show_made(MadeForm(self._session, begun, answer, self._begun_in))

    def _begun_in(self, size: str) -> Begun | None:
        """The saved piece in hand begun in the size of that name; None: it has none of that name, or it can't be worked out."""
        piece = self._form.saved
        if piece is None or size not in [one.name for one in piece.sizes]:
            return None
        plan = self._maker.plan_of_size(self._form.read(), self._form.sizes(), size)
        answer = self._pieces.card(plan, self._form.swatch_uid(), self._form.swatch_uid("edge swatch"), size).answer
        return None if answer is None else (made_from(piece, answer, size, self._form.swatch_hook()), answer)

    def open_made(self, uid: str) -> None:
        """Opens a made piece to be read or changed."""
        if uid in self._made.pieces:
            self._show_made(MadeForm(self._session, self._made.pieces[uid]))

    def made_draft(self) -> Draft | None:
        """What is typed for a made piece."""
        return self._made_form.draft() if self._made_form is not None else None

    def made_texts(self, uid: str) -> Mapping[str, str] | None:
        """The texts of a made piece as the logbook has it; None if it has it not."""
        made = self._made.pieces.get(uid)
        return MadeForm(self._session, made).texts if made is not None else None

    def take_up_made(self, uid: str, texts: Mapping[str, str]) -> None:
        """Opens a made piece, or a new one where there is none, with these texts typed."""
        form = self._made_form = MadeForm(self._session, self._made.pieces.get(uid, MadePiece()))
        form.take_up(texts)
        self._frame.after_idle(self._show_made, form)

    def _show_made(self, form: MadeForm) -> None:
        self._made_form = form
        try:
            show_made(self._frame.winfo_toplevel(), self.look, self._session, form, self._made_changed)
        finally:
            self._made_form = None

    def _made_changed(self, said: str) -> None:
        self.reload()
        self._around.reloaded()
        self._session.say(said)

    def _take_sizes(self, sizes: tuple[SizePlan, ...]) -> None:
        self.folding.show(True)
        self._typed(sizes_text(sizes, self._session.units))
        self.view.start()

    def _typed(self, text: str) -> None:
        self._form.type_in("sizes", text)
        self._around.changed()

    def _apply(self, remedy: PiecePlan) -> None:
        for key, text in texts_with(remedy, self._form.texts).items():
            self._form.type_in(key, text)
        self._around.shown_anew()

    def _saved(self) -> bool:
        return not self._form.is_dirty or self._around.save()

    def _source(self) -> str:
        run = self.card.set_run
        if run is not None:
            return f"From swatch {run.tag}, published on {date_words(run.date)}"
        return f"From swatch {self._form.texts['swatch'].strip()}: {self._form.swatch_words()}"
