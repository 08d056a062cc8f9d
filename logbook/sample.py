"""Where the sample lies: an open-air theatre's swatches, planned pieces and garments, and a sheet with faults in it."""

import atexit
import tempfile
from functools import cache
from importlib import resources
from pathlib import Path

from logbook.errors import RefusedError

SWATCHES = "swatches.csv"
PIECES = "pieces.json"
GARMENTS = ("matinee_top.json", "interval_cardigan.json", "foyer_raglan.json")
FAULTY = "faulty.csv"
PICTURES = "swatches.pictures"
"""The folder of the pictures that swatches and made pieces name."""

_PACKAGE = resources.files("logbook")


@cache
def folder() -> Path:
    """The folder that holds SWATCHES, PIECES, GARMENTS, FAULTY and PICTURES; RefusedError if there is none.

    Installed it lies inside the package, in a checkout beside it. Where the program is one packed file, it is taken out of it
    into a folder that goes with the program's end.
    """
    inside = _PACKAGE / "sample_data"
    for place in (inside, Path(str(_PACKAGE)).parent / "sample_data"):
        if isinstance(place, Path) and (place / SWATCHES).is_file():
            return place
    if not (inside / SWATCHES).is_file():
        raise RefusedError(f"The sample is missing: there is no {SWATCHES} with this program. Install the program again.")
    unpacked = tempfile.TemporaryDirectory(prefix="logbook-sample-", ignore_cleanup_errors=True)
    atexit.register(unpacked.cleanup)
    for name in (SWATCHES, PIECES, *GARMENTS, FAULTY):
        (Path(unpacked.name) / name).write_bytes((inside / name).read_bytes())
    pictures = Path(unpacked.name) / PICTURES
    pictures.mkdir()
    for file in (inside / PICTURES).iterdir():
        (pictures / file.name).write_bytes(file.read_bytes())
    return Path(unpacked.name)
