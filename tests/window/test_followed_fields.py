"""What is wrong with a field is said when it was left, on every form alike."""

import tkinter as tk

from logbook.window.field import Field
from logbook.window.followed_fields import FollowedFields
from logbook.window.look import Look


class Form:
    def __init__(self, root: tk.Tk, look: Look) -> None:
        self.typed: list[str] = []
        self.followed = FollowedFields(self._typed, self._left)
        self.field = self.followed.follow("width", Field(root, look, "Width"))

    def _typed(self, key: str) -> None:
        self.typed.append(self.field.text)
        self.followed.touched(key)

    def _left(self, key: str) -> None:
        """As a form does that puts a bare number in order."""
        self.field.text = f"{self.field.text} cm"

    def leave(self) -> None:
        self.field.input.event_generate("<FocusOut>")
        self.field.update()

    @property
    def fault(self) -> str:
        return self.followed.fault("width", "It is no length.")


def test_what_is_wrong_is_said_when_the_field_was_left_and_no_more_when_something_is_typed(root: tk.Tk, look: Look) -> None:
    form = Form(root, look)
    form.field.grid()
    root.update()
    form.field.text = "wide"
    assert (form.typed, form.fault) == (["wide"], "")
    form.leave()
    assert (form.field.text, form.fault) == ("wide cm", "It is no length.")
    form.field.text = "46"
    assert form.fault == ""


def test_what_stands_in_the_way_is_said_until_something_is_typed_there(root: tk.Tk, look: Look) -> None:
    form = Form(root, look)
    form.followed.lack({"width": "Type a width."})
    assert form.fault == "Type a width."
    form.field.text = "4"
    assert form.fault == ""
    form.followed.leave(["width"])
    assert form.fault == "It is no length."
    form.followed.begin()
    assert form.fault == ""


def test_to_show_a_text_is_not_to_type_it(root: tk.Tk, look: Look) -> None:
    form = Form(root, look)
    form.followed.show({"width": "46"})
    assert (form.field.text, form.typed) == ("46", [])
