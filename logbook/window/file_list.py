"""The list in Tk's own dialogs for files, in the colours of all other lists: Tk 8.6 has them written down as black on white."""

import tkinter as tk

_IN_COLOURS = """
if {![info object isa class ::tk::IconList]} {auto_load ::tk::IconList}
if {[info object isa class ::tk::IconList]} {
    if {"DrawInBlack" ni [info class methods ::tk::IconList -private]} {
        oo::define ::tk::IconList {
            renamemethod Create CreateInWhite
            method Create {} {
                my variable canvas
                my CreateInWhite
                $canvas configure -background [option get $canvas background Background]
            }
            renamemethod DrawSelection DrawInBlack
            method DrawSelection {} {
                my variable canvas fill
                set before [$canvas find withtag selectionText]
                my DrawInBlack
                foreach item $before {
                    if {"selectionText" ni [$canvas gettags $item]} {$canvas itemconfigure $item -fill $fill}
                }
            }
        }
    }
}
"""


def colour_file_lists(parent: tk.Misc) -> None:
    """For the next dialog for files over ``parent``, by what the option database says of a canvas. Where Tk has another list of
    its own, that stays as Tk has it.
    """
    above = "" if str(parent) == "." else str(parent)
    for name in ("__tk_filedialog", "__tk_choosedir"):
        parent.tk.call("destroy", f"{above}.{name}")  # hidden since it was last used, in the colours of then
    parent.tk.eval(f"catch {{{_IN_COLOURS}}}")
