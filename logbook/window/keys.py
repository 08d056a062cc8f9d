"""Keys: Command on macOS and Control elsewhere, the letters underlined in labels, and what Tk leaves out."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.keyboard import take_keyboard

SHIFT, CONTROL = 0x1, 0x4
NAMES = {"Prior": "PgUp", "Next": "PgDn", "Delete": "Del", "Return": "Enter", "Escape": "Esc"} | {"plus": "+", "minus": "−"}
UNDERLINED = ("TButton", "TCheckbutton", "TLabel", "TMenubutton")


class MnemonicLabel(ttk.Label):
    """A label with an underlined letter that leads to another widget."""

    target: tk.Widget | None = None


def on_macos(widget: tk.Misc) -> bool:
    return str(widget.tk.call("tk", "windowingsystem")) == "aqua"


def split_mnemonic(text: str) -> tuple[str, int]:
    """``"Fi&nd"`` → ``("Find", 2)``: the text without the mark, and the place of the underlined letter, −1 for none."""
    before, mark, after = text.partition("&")
    return (before + after, len(before)) if mark and after and after[0].isalnum() else (text, -1)


def accelerator(widget: tk.Misc, keys: str) -> str:
    """``"Mod-Shift-s"`` as a menu shows it: ``Ctrl+Shift+S``, on macOS ``⇧⌘S``."""
    *modifiers, key = keys.split("-")
    name = NAMES.get(key, key.upper() if len(key) == 1 else key)
    if on_macos(widget):
        signs = {"Mod": "⌘", "Shift": "⇧", "Alt": "⌥"}
        return "".join(signs[m] for m in ("Alt", "Shift", "Mod") if m in modifiers) + name
    return "+".join([{"Mod": "Ctrl"}.get(m, m) for m in modifiers] + [name])


def bind_keys(widget: tk.Misc, keys: str, action: Callable[[], object], *, while_shown: tk.Misc | None = None) -> None:
    """Runs ``action`` on keys like ``"Mod-s"`` or ``"Mod-Shift-z"``; Mod is Command on macOS; Caps Lock is ignored.

    With ``while_shown`` only while that widget can be seen, so that pages of one window may share a key.
    """
    *modifiers, key = keys.split("-")
    shifted = "Shift" in modifiers
    prefix = "".join(f"{_modifier(widget, m)}-" for m in modifiers)

    def run(event: "tk.Event[tk.Misc]") -> str | None:
        hidden = while_shown is not None and not (while_shown.winfo_exists() and while_shown.winfo_viewable())
        if hidden or bool(int(event.state) & SHIFT) != shifted:
            return None
        action()
        return "break"

    for spelling in {key, key.upper()} if len(key) == 1 else {key}:
        widget.bind(f"<{prefix}Key-{spelling}>", run, add="+")


def _modifier(widget: tk.Misc, name: str) -> str:
    return name if name != "Mod" else "Command" if on_macos(widget) else "Control"


def install_keys(root: tk.Misc) -> None:
    """Once a program: Return presses a focused button, and Control+A selects all instead of moving as in Emacs."""
    # No further binding gets this Return: in a dialog it would press the default button as well.
    for button in ("TButton", "TMenubutton"):
        for key in ("<Return>", "<KP_Enter>"):
            root.bind_class(button, key, f"{root.tk.eval(f'bind {button} <space>')}\nbreak")
    if on_macos(root):
        return
    for event, letter in {
        "LineStart": "a",
        "LineEnd": "e",
        "NextLine": "n",
        "PrevLine": "p",
        "NextChar": "f",
        "PrevChar": "b",
    }.items():
        for spelling in (letter, letter.upper()):
            root.event_delete(f"<<{event}>>", f"<Control-Key-{spelling}>")
    for letter in ("o", "d", "k", "t", "h", "i"):
        for kind in ("Text", "TEntry", "TCombobox", "TSpinbox"):
            root.unbind_class(kind, f"<Control-Key-{letter}>")
    root.event_add("<<SelectAll>>", "<Control-Key-a>", "<Control-Key-A>")


def install_mnemonics(window: tk.Tk | tk.Toplevel) -> None:
    """Alt with an underlined letter goes to the field, or presses the button, that shows it in ``window`` just now."""
    if on_macos(window):
        return

    def follow(event: "tk.Event[tk.Misc]") -> str | None:
        # On Windows AltGr arrives as Control and Alt: that is a letter being typed.
        if int(event.state) & CONTROL or (not event.char and len(event.keysym) != 1):
            return None
        found = _underlined(window, (event.char if event.char.isprintable() else "") or event.keysym)
        if found is None:
            return None
        target = found.target if isinstance(found, MnemonicLabel) else found
        if target is not None:
            take_keyboard(target)
            if isinstance(target, ttk.Button | ttk.Checkbutton):
                target.invoke()
        return "break"

    window.bind("<Alt-Key>", follow, add="+")


def _underlined(place: tk.Misc, letter: str) -> tk.Misc | None:
    for child in place.winfo_children():
        if not child.winfo_ismapped() or isinstance(child, tk.Toplevel | tk.Menu):
            continue
        if child.winfo_class() in UNDERLINED and _shows(child, letter):
            return child
        if (found := _underlined(child, letter)) is not None:
            return found
    return None


def _shows(widget: tk.Misc, letter: str) -> bool:
    place, text = int(widget.cget("underline")), str(widget.cget("text"))
    label_to_nowhere = isinstance(widget, ttk.Label) and getattr(widget, "target", None) is None
    return 0 <= place < len(text) and text[place].lower() == letter.lower() and not label_to_nowhere
