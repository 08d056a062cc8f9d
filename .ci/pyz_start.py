"""Starts the program out of its one file. Reads on Python 3.6 too, so that an old Python can be told what is missing."""

import sys


def main():
    if sys.version_info < (3, 11):
        this = "%d.%d" % (sys.version_info[0], sys.version_info[1])
        return missing("Python 3.11 or newer; this is Python " + this + ".", "Install a newer Python.")
    if len(sys.argv) == 1 or sys.argv[1].startswith("--sample") or sys.argv[1].endswith(".logbook"):
        try:
            import tkinter
        except ImportError:
            return missing("tkinter, which comes with Python.", "On Debian and Ubuntu: sudo apt install python3-tk.")
        del tkinter
    from logbook.commands.main import main as run

    return run()


def missing(what, mend):
    """Says what is missing, on standard error and in a page of the browser, since a double click shows no terminal."""
    import os
    import tempfile
    import webbrowser

    said = "The swatch and gauge logbook needs " + what + " " + mend
    sys.stderr.write(said + "\n")
    handle, path = tempfile.mkstemp(prefix="logbook-", suffix=".html")
    with os.fdopen(handle, "w") as page:
        page.write("<!DOCTYPE html><meta charset='utf-8'><title>Swatch and gauge logbook</title><p>" + said + "</p>")
    webbrowser.open("file://" + path)
    return 1


if __name__ == "__main__":
    sys.exit(main())
