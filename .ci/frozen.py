"""Makes dist/logbook/: the program with Python and all else it needs, in one folder, for the kind of machine it is made on.

    python3 .ci/frozen.py

In a virtual environment of its own, which wants the package index and goes again at the end.
"""

import shutil
import struct
import subprocess
import sys
import tempfile
import venv
from pathlib import Path

TOP = Path(__file__).resolve().parent.parent


def main() -> None:
    with tempfile.TemporaryDirectory(prefix="logbook-frozen-") as name:
        folder = Path(name)
        venv.create(folder / "venv", with_pip=True)
        python = folder / "venv" / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")
        shutil.rmtree(TOP / "build", ignore_errors=True)  # what an earlier build had is packed again though its source is gone
        run(python, "-m", "pip", "install", "--quiet", f"{TOP}[package]", cwd=folder)
        options = ["--noconfirm", "--name", "logbook", "--log-level", "WARN", "--collect-submodules", "logbook"]
        options += ["--collect-data", "logbook", "--distpath", str(TOP / "dist"), "--workpath", str(folder / "work")]
        options += ["--specpath", name]
        if sys.platform in ("win32", "darwin"):  # elsewhere the desktop has the picture from the menu entry
            options += ["--icon", str(icon_file(folder, python))]
        run(python, "-m", "PyInstaller", *options, str(TOP / ".ci" / "frozen_start.py"), cwd=folder)
    print(f"{TOP / 'dist' / 'logbook'}: {sum(f.stat().st_size for f in (TOP / 'dist' / 'logbook').rglob('*')) / 1e6:.0f} MB")


def icon_file(folder: Path, python: Path) -> Path:
    """The picture of 256 pixels as the system wants it for a program: both kinds hold the PNG file as it is."""
    drawn = "import sys; from logbook.craft.drawing.icon import icon_png; sys.stdout.buffer.write(icon_png(256))"
    png = subprocess.run([python, "-c", drawn], cwd=folder, check=True, capture_output=True).stdout
    if sys.platform == "win32":
        path, content = folder / "icon.ico", struct.pack("<HHHBBBBHHII", 0, 1, 1, 0, 0, 0, 0, 1, 32, len(png), 22) + png
    else:
        path, content = folder / "icon.icns", struct.pack(">4sI4sI", b"icns", len(png) + 16, b"ic08", len(png) + 8) + png
    path.write_bytes(content)
    return path


def run(*words: object, cwd: Path) -> None:
    subprocess.run([str(word) for word in words], cwd=cwd, check=True)


if __name__ == "__main__":
    main()
