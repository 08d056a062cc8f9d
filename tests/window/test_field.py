import tkinter as tk
from tkinter import ttk

import pytest

from logbook.craft.words.lengths import Units
from logbook.pages.pieces.plan_texts import taken_unit
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.look import Look
from logbook.window.text_field import TextField
from tests.support.screen import press, settle, type_text

YARNS = ["Mérida lace", "Bracken DK", "Meadow 4-ply", "Summer cotton"]


def shown(field: LabelledField) -> LabelledField:
    field.grid(sticky="ew")
    field.master.columnconfigure(0, weight=1)
    settle(field)
    return field


@pytest.mark.parametrize("text", ["12.5", "12,5", ' 18 1/4"', "eleven", "-5 %"])
def test_any_keystroke_is_taken(root: tk.Tk, look: Look, text: str) -> None:
    field = Field(root, look, "&Width", unit="cm")
    heard: list[str] = []
    field.variable.trace_add("write", lambda *_: heard.append(field.text))
    shown(field)
    type_text(field.input, text)
    assert field.text == text
    assert heard == [text[: i + 1] for i in range(len(text))]


def test_its_letter_leads_to_it(root: tk.Tk, look: Look) -> None:
    first, second = Field(root, look, "&Width"), TextField(root, look, "N&otes")
    shown(first)
    shown(second)
    press(root, "<Alt-w>")
    assert root.focus_get() is first.input
    press(first.input, "<Alt-o>")
    assert root.focus_get() is second.area
    assert first.label["underline"] == 0


@pytest.mark.parametrize("label_width", [0, 10])
def test_a_message_takes_a_line_while_it_is_there_and_is_told_without_colour(root: tk.Tk, look: Look, label_width: int) -> None:
    field = shown(Field(root, look, "Width", label_width=label_width))
    after = ttk.Button(root, text="after")
    after.grid()
    settle(root)
    place = (after.winfo_y(), field.winfo_reqwidth(), field.input.winfo_x(), field.input.winfo_width())
    field.show_message("Type a length, for example 12.5")
    settle(root)
    assert field.message["text"] == "✕ Type a length, for example 12.5"
    assert "invalid" in field.input.state()  # type: ignore[attr-defined]
    assert (field.winfo_reqwidth(), field.input.winfo_x(), field.input.winfo_width()) == place[1:]
    assert 0 < after.winfo_y() - place[0] <= look.label_height
    field.show_message("Rather wide", "warning")
    assert field.message["text"] == "! Rather wide"
    assert "invalid" not in field.input.state()  # type: ignore[attr-defined]
    field.show_message(None)
    settle(root)
    assert field.message is not None
    assert not field.message["text"].strip()
    assert after.winfo_y() == place[0]


def test_a_hint_moves_nothing_while_one_types(root: tk.Tk, look: Look) -> None:
    field, below = shown(Field(root, look, "Yarn")), shown(Field(root, look, "Hook"))
    settle(root)
    place = below.winfo_y()
    press(below.input)
    field.show_message("New yarn: saving adds it.", "hint")
    settle(root)
    assert below.winfo_y() == place
    after = ttk.Button(root, text="after")
    after.grid()
    press(after)
    settle(root)
    assert below.winfo_y() > place
    assert field.message["text"] == "New yarn: saving adds it."


def test_a_long_message_is_wrapped_and_not_cut(root: tk.Tk, look: Look) -> None:
    root.geometry("300x400")
    field = shown(Field(root, look, "Width", label_width=8))
    line = look.line
    field.show_message("Type how wide it is, for example 12.5 or 18 1/4 in, as the tape shows it")
    settle(root)
    assert field.message.winfo_height() >= 2 * line
    assert field.message.winfo_rootx() + field.message.winfo_width() <= root.winfo_rootx() + 300


def test_a_long_label_goes_on_in_another_line_where_there_is_too_little_room(root: tk.Tk, look: Look) -> None:
    field = shown(Field(root, look, "Stitches skipped at the beginning of a row"))
    assert field.label.winfo_height() < 2 * look.line
    root.geometry("200x400")
    settle(root)
    assert field.label.winfo_height() >= 2 * look.line
    assert field.label.winfo_reqwidth() <= 200


def test_in_a_narrow_place_the_label_moves_above_and_the_entry_stays_within(root: tk.Tk, look: Look) -> None:
    field = shown(Field(root, look, "Stitch pattern", label_width=14, width=30, unit="cm"))
    assert field.input.winfo_x() > field.label.winfo_width()
    root.geometry("220x400")
    settle(root)
    assert field.input.winfo_y() >= field.label.winfo_y() + field.label.winfo_height()
    assert field.unit.winfo_rootx() + field.unit.winfo_width() <= root.winfo_rootx() + 220
    root.geometry("900x400")
    settle(root)
    assert field.input.winfo_x() > field.label.winfo_width()


def test_when_one_field_does_not_fit_beside_its_label_all_have_it_above(root: tk.Tk, look: Look) -> None:
    letter = look.base.measure("0")
    short = shown(Field(root, look, "Width", width=6, label_width=10))
    choice = shown(ChoiceField(root, look, "Worked", ("from the bottom up", "sideways"), width=20, label_width=10))
    for letters, beside in ((60, True), (28, False)):
        root.geometry(f"{letters * letter}x300")
        settle(root)
        for field in (short, choice):
            assert (field.input.winfo_x() > field.label.winfo_x() + field.label.winfo_reqwidth()) == beside
    assert choice.input.winfo_width() == choice.input.winfo_reqwidth()


def test_suggestions_are_named_while_typing_and_listed_on_down(root: tk.Tk, look: Look) -> None:
    field = SuggestionField(root, look, "Yarn", lambda: YARNS)
    shown(field)
    type_text(field.box, "me")
    assert field.text == "me"
    assert root.focus_get() is field.box
    assert field.message["text"] == "↓ Mérida lace · Meadow 4-ply · Summer cotton"
    press(field.box, "<Down>")
    assert field.box["values"] == ("Mérida lace", "Meadow 4-ply", "Summer cotton")
    root.tk.call("ttk::combobox::Unpost", str(field.box))
    field.text = "Bracken DK"
    field.box.event_generate("<Down>")
    settle(root)
    assert field.box["values"] == tuple(YARNS)
    root.tk.call("ttk::combobox::Unpost", str(field.box))


def test_a_suggestion_hint_goes_and_an_error_stays(root: tk.Tk, look: Look) -> None:
    field, other = SuggestionField(root, look, "Yarn", lambda: YARNS), Field(root, look, "Hook")
    shown(field)
    shown(other)
    type_text(field.box, "zz")
    assert not field.said[0]
    field.text = ""
    type_text(field.box, "b")
    other.input.focus_force()
    settle(root)
    assert not field.said[0]
    field.show_message("Say which yarn")
    press(field.box)
    press(other.input)
    assert field.message["text"] == "✕ Say which yarn"


def test_a_choice_is_made_by_letter(root: tk.Tk, look: Look) -> None:
    field = ChoiceField(root, look, "Worked", ("flat", "round", "rib"))
    shown(field)
    assert field.text == "flat"
    type_text(field.input, "r")
    assert field.text == "round"
    type_text(field.input, "r")
    assert field.text == "rib"
    type_text(field.input, "x")
    assert field.text == "rib"


def test_tab_leaves_a_text_field_both_ways(root: tk.Tk, look: Look) -> None:
    before, text, after = Field(root, look, "A"), TextField(root, look, "Notes"), Field(root, look, "B")
    for field in (before, text, after):
        shown(field)
    type_text(text.area, "two words")
    press(text.area, "<Tab>")
    assert root.focus_get() is after.input
    press(text.area, "<Shift-Tab>")
    assert root.focus_get() is before.input
    assert text.text == "two words"


def test_a_text_field_and_its_variable_are_the_same(root: tk.Tk, look: Look) -> None:
    field = TextField(root, look, "Notes")
    shown(field)
    field.text = "pinned out\novernight"
    assert field.area.get("1.0", "end-1c") == "pinned out\novernight"
    field.area.insert("end", ".")
    settle(root)
    assert field.text == "pinned out\novernight."


def test_a_letter_with_alt_leads_elsewhere_and_chooses_nothing(root: tk.Tk, look: Look) -> None:
    field = ChoiceField(root, look, "Worked", ("flat", "round", "rib"))
    shown(field)
    press(field.input, "<Alt-Key-r>")
    press(field.input, "<Control-Key-r>")
    assert field.text == "flat"
    press(field.input, "<Key-r>")
    assert field.text == "round"


def test_an_error_that_typing_elsewhere_brings_moves_nothing_until_that_is_left(root: tk.Tk, look: Look) -> None:
    first, second, third = (Field(root, look, label) for label in ("Width", "Length", "Neck"))
    for field in (first, second, third):
        shown(field)
    second.input.focus_force()
    settle(root)
    place = second.winfo_y()
    first.show_message("The armhole asks for more.", waits=True)
    settle(root)
    assert second.winfo_y() == place
    third.input.focus_force()
    settle(root)
    assert second.winfo_y() > place
    second.input.focus_force()
    third.show_message("Too long.", waits=True)
    third.show_message("Too long.")  # it stands in the way of saving
    settle(root)
    assert third.message is not None
    assert third.message.winfo_viewable()


def test_the_unit_of_a_bare_number_stands_in_the_field_while_one_types_and_moves_nothing(root: tk.Tk, look: Look) -> None:
    units = [Units.CM]
    field = Field(root, look, "Length wanted", width=9, label_width=14)
    field.show_example("none")
    field.show_taken_unit(lambda typed: taken_unit(typed, units[0]))
    shown(field)
    place = (field.winfo_reqwidth(), field.winfo_reqheight(), field.input.winfo_width())

    def said() -> list[str]:
        return [label["text"] for label in field.input.winfo_children() if label.winfo_viewable()]

    assert said() == ["none"]
    type_text(field.input, "46")
    assert said() == ["cm"]
    units[0] = Units.INCHES
    field.say_taken_unit()
    settle(root)
    assert said() == ["in"]
    type_text(field.input, " c")
    assert said() == []  # half typed
    type_text(field.input, "m")
    assert said() == []
    assert (field.winfo_reqwidth(), field.winfo_reqheight(), field.input.winfo_width()) == place
    field.text = "1234567"
    settle(root)
    assert said() == []  # no room behind it
    field.text = "5"
    field.input.state(["disabled"])  # type: ignore[attr-defined]
    field.say_taken_unit()
    settle(root)
    assert said() == []
