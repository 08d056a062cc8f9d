"""Where the sample lies: an open-air theatre's swatches, planned pieces and garments, and a sheet with faults in it."""

from pathlib import Path

from logbook.errors import RefusedError

SWATCHES = "swatches.csv"
PIECES = "pieces.json"
GARMENTS = ("matinee_top.json", "interval_cardigan.json", "foyer_raglan.json")
FAULTY = "faulty.csv"

_PACKAGE = Path(__file__).resolve().parent


def folder() -> Path:
    """The folder that holds SWATCHES, PIECES, GARMENTS and FAULTY; RefusedError if there is none.

    Installed it lies inside the package, in a checkout beside it.
    """
    for place in (_PACKAGE / "sample_data", _PACKAGE.parent / "sample_data"):
        if (place / SWATCHES).is_file():
            return place
    raise RefusedError(f"The sample is missing: there is no {SWATCHES} with this program. Install the program again.")
