"""Text of several lines: what is pasted."""

import tkinter as tk

from logbook.window.look import Look
from logbook.window.text_area import TextArea


def test_what_is_pasted_takes_the_place_of_what_is_selected(root: tk.Tk, look: Look) -> None:
    area = TextArea(root, look, undo=True).area
    area.insert("1.0", "62 sts\n63 sts")
    area.edit_separator()
    root.clipboard_clear()
    root.clipboard_append("one\ntwo")
    area.tag_add("sel", "1.0", "1.2")
    area.mark_set("insert", "1.2")
    area.event_generate("<<Paste>>")
    assert area.get("1.0", "end-1c") == "one\ntwo sts\n63 sts"
    area.edit_undo()
    assert area.get("1.0", "end-1c") == "62 sts\n63 sts"
    root.clipboard_clear()
    area.tag_add("sel", "1.0", "end")
    area.event_generate("<<Paste>>")
    assert area.get("1.0", "end-1c") == "62 sts\n63 sts"
