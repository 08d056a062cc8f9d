"""An empty logbook begins with a chain: stitch and gauge beside the width, and what is typed kept as the first swatch."""

from collections.abc import Callable, Iterable, Mapping
from tkinter import ttk

from logbook.pages.swatches.begin import FINISHED, GAUGE, MEASURED, STITCH, UNWASHED, begin_texts, form_texts
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.keyboard import focused
from logbook.window.look import Look

LABEL_LETTERS = 20
EXAMPLES = {STITCH: "e.g. sc, hdc, dc", GAUGE: "e.g. 16 sts = 10 cm"}


class BeginView:
    """``above`` takes the fields, ``below`` the button. ``put`` types texts into the form, ``keep`` saves it."""

    def __init__(
        self,
        above: ttk.Frame,
        below: ttk.Frame,
        look: Look,
        stitches: Callable[[], Iterable[str]],
        put: Callable[[Mapping[str, str]], object],
        keep: Callable[[], object],
    ) -> None:
        self._below, self._put = below, put
        self._showing = False
        above.columnconfigure(0, weight=1)
        self.fields: dict[str, LabelledField] = {
            STITCH: SuggestionField(above, look, "Stitch", stitches, width=16, label_width=LABEL_LETTERS, grow=True),
            GAUGE: Field(above, look, "Gauge", width=18, label_width=LABEL_LETTERS),
            MEASURED: ChoiceField(above, look, "Measured", (FINISHED, UNWASHED), width=16, label_width=LABEL_LETTERS),
        }
        self.fields[MEASURED].text = FINISHED
        for field in self.fields.values():
            look.grid(field, sticky="ew", pady=(0, 0.5))
            field.variable.trace_add("write", lambda *_: self._typed())
        self._wrong = ""
        for event in ("<FocusIn>", "<FocusOut>"):
            self.fields[GAUGE].input.bind(event, lambda _: self.fields[GAUGE].after_idle(self._say_wrong), add="+")
        for key, text in EXAMPLES.items():
            self.fields[key].show_example(text)
        self.keep = ttk.Button(below, text="Keep as a swatch", command=keep, style="Accent.TButton")
        self.keep.grid(sticky="w")

    def show(self, texts: Mapping[str, str], errors: Mapping[str, str], *, wanted: bool) -> None:
        """As the form has them just now; not at all where a swatch is in hand or in the list."""
        if not wanted:
            self._below.grid_remove()
            return
        self._below.grid()
        said = form_texts(self._texts())
        self._showing = True
        if any(texts[key].strip() != text.strip() for key, text in said.items()):  # else what is typed stays, blanks and all
            self._take(texts)
        self._showing = False
        self._wrong = next((errors[key] for key in said if key in errors and key != "stitch pattern"), "")
        self._say_wrong()

    def _say_wrong(self) -> None:
        """A gauge is not at fault while it is typed."""
        gauge = self.fields[GAUGE]
        gauge.show_message(self._wrong if self._wrong and focused(gauge) is not gauge.input else None)

    def _take(self, texts: Mapping[str, str]) -> None:
        for key, text in begin_texts(texts, self.fields[MEASURED].text).items():
            if self.fields[key].text != text:
                self.fields[key].text = text

    def _texts(self) -> dict[str, str]:
        return {key: field.text for key, field in self.fields.items()}

    def _typed(self) -> None:
        if not self._showing:
            self._put(form_texts(self._texts()))
