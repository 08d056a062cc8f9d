import tkinter as tk
from tkinter import ttk

from logbook.window.field import Field
from logbook.window.keyboard import list_is_open
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.text_field import TextField
from logbook.window.wheel import install_wheel
from tests.support.screen import press, settle, wait_until


class Made:
    def __init__(self, root: tk.Tk, look: Look, fields: int) -> None:
        install_wheel(root)
        root.geometry("500x300")
        root.rowconfigure(0, weight=1)
        root.columnconfigure(0, weight=1)
        self.form = Scrolled(root, look, 40)
        self.form.grid(sticky="nsew")
        self.form.inside.columnconfigure(0, weight=1)
        self.fields = [Field(self.form.inside, look, f"Field {n}", label_width=10) for n in range(fields)]
        for field in self.fields:
            field.grid(sticky="ew")
        settle(root)

    def sees(self, field: Field) -> bool:
        top = field.winfo_rooty() - self.form.winfo_rooty()
        return top >= 0 and top + field.winfo_height() <= self.form.winfo_height()


def test_a_focused_field_comes_into_view_with_its_message_line(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    assert not made.sees(made.fields[-1])
    press(made.fields[0].input)
    for _ in range(19):
        press(root.focus_get() or root, "<Tab>")
    assert root.focus_get() is made.fields[-1].input
    wait_until(root, lambda: made.sees(made.fields[-1]))
    press(made.fields[0].input)
    wait_until(root, lambda: made.sees(made.fields[0]))


def test_a_focused_field_stays_in_view_when_the_form_gets_lower(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    press(made.fields[3].input)
    settle(root)
    assert made.sees(made.fields[3])
    root.geometry("500x120")
    wait_until(root, lambda: root.winfo_height() == 120)
    wait_until(root, lambda: made.sees(made.fields[3]))


def test_a_field_that_was_scrolled_away_comes_back_with_a_key(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    press(made.fields[0].input)
    settle(root)
    made.form.canvas.yview_moveto(1)
    settle(root)
    assert not made.sees(made.fields[0])
    made.fields[0].input.event_generate("<Key-4>")
    wait_until(root, lambda: made.sees(made.fields[0]))


def test_a_field_stays_in_view_when_what_is_above_it_takes_its_size_late_until_the_wheel_is_turned(
    root: tk.Tk, look: Look
) -> None:
    made = Made(root, look, 20)
    for field in made.fields[:10]:
        field.grid_remove()
    settle(root)
    made.fields[17].input.focus_force()
    settle(root)
    assert made.sees(made.fields[17])
    for field in made.fields[:5]:
        field.grid()
    wait_until(root, lambda: made.fields[0].winfo_ismapped() and made.form.canvas.yview()[0] > 0)
    assert made.sees(made.fields[17])
    made.fields[17].input.event_generate("<Button-4>")
    for field in made.fields[5:10]:
        field.grid()
    settle(root)
    assert not made.sees(made.fields[17])


def test_a_form_does_not_scroll_away_from_under_an_open_list(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    box = ttk.Combobox(made.form.inside, values=["one", "two"])
    box.grid()
    press(box)
    settle(root)
    box.event_generate("<Down>")
    wait_until(root, lambda: list_is_open(box))
    made.form.canvas.yview_moveto(0)
    root.geometry("500x280")
    wait_until(root, lambda: root.winfo_height() == 280)
    settle(root)
    assert made.form.canvas.yview()[0] == 0
    root.tk.call("ttk::combobox::Unpost", str(box))


def test_a_form_that_was_scrolled_down_is_seen_when_it_has_become_short(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 40)
    made.form.canvas.yview_moveto(1)
    settle(root)
    for field in made.fields[2:]:
        field.grid_remove()
    wait_until(root, lambda: made.form.inside.winfo_ismapped() and made.sees(made.fields[0]))


def test_the_wheel_scrolls_a_long_form_only(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    made.fields[1].input.event_generate("<Button-5>")
    settle(root)
    assert made.form.canvas.yview()[0] > 0
    made.fields[1].input.event_generate("<Button-4>")
    settle(root)
    assert made.form.canvas.yview()[0] == 0


def test_a_short_form_has_no_bar_and_the_bar_changes_no_width(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 2)
    assert not made.form.bar.winfo_ismapped()
    made.fields[1].input.event_generate("<Button-5>")
    settle(root)
    assert made.form.canvas.yview() == (0, 1)
    width = made.fields[0].winfo_width()
    for n in range(20):
        Field(made.form.inside, look, str(n)).grid(sticky="ew")
    settle(root)
    assert made.form.bar.winfo_ismapped()
    assert made.fields[0].winfo_width() == width


def test_a_long_text_keeps_the_wheel_for_itself(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    text = TextField(made.form.inside, look, "Notes")
    text.grid(row=0, sticky="ew")
    text.text = "\n".join("lines" for _ in range(50))
    settle(root)
    text.area.event_generate("<Button-5>")
    settle(root)
    assert made.form.canvas.yview()[0] == 0
    assert text.area.yview()[0] > 0


def test_what_follows_the_last_field_is_reached_by_keys(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 20)
    made.fields[0].input.focus_force()
    settle(root)
    made.fields[0].input.event_generate("<Next>")
    settle(root)
    down = made.form.canvas.yview()[0]
    assert down > 0
    made.fields[0].input.event_generate("<Prior>")
    settle(root)
    assert made.form.canvas.yview()[0] < down / 2


def test_what_became_short_while_it_was_hidden_is_in_view_again(root: tk.Tk, look: Look) -> None:
    page = ttk.Frame(root)
    scrolled = Scrolled(page, look, 10)
    scrolled.pack(fill="both", expand=True)
    long, short = (tk.Frame(scrolled.inside, height=height, width=10) for height in (5000, 400))
    long.grid()
    short.grid()
    root.geometry("300x200+0+0")
    page.pack(fill="both", expand=True)
    settle(root)
    scrolled.canvas.yview_moveto(1)
    settle(root)
    page.pack_forget()
    settle(root)
    long.grid_remove()
    settle(root)
    page.pack(fill="both", expand=True)
    settle(root)
    assert short.winfo_viewable()
    assert scrolled.canvas.canvasy(0) <= 400
