import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.flow import Flow
from logbook.window.look import Look


def test_many_things_are_laid_out_together(root: tk.Tk, look: Look, monkeypatch: pytest.MonkeyPatch) -> None:
    times: list[int] = []
    lay_out = Flow._lay_out

    def counted(flow: Flow) -> None:
        times.append(1)
        lay_out(flow)

    monkeypatch.setattr(Flow, "_lay_out", counted)
    flow = Flow(root, look)
    flow.pack(fill="x")
    root.geometry("400x300")
    root.update()
    for number in range(40):
        flow.add(ttk.Button(flow, text=f"Picture {number}"))
    root.update()
    assert len(times) < 12
    tops = [thing.winfo_y() for thing in flow.things]
    assert tops == sorted(tops)
    assert len(set(tops)) > 5
    times.clear()
    for thing in flow.things:
        thing.configure(text="A longer name")  # type: ignore[call-arg]
    root.update()
    assert len(times) < 6
