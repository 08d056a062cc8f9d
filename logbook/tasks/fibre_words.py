"""What is to be minded of a fibre, where it is named: under its field, on tags and in patterns."""

import re

_SYNTHETIC = r"acryl|poly|nylon|synthetic|microfib|elast"
_ALLERGY = r"wool|alpaca|mohair|cashmere|merino|latex|elast"


def fibre_cautions(fibre: str) -> tuple[str, ...]:
    """A sentence for each caution; none for a fibre that wants none."""
    found = []
    if re.search(_SYNTHETIC, fibre, re.IGNORECASE):
        found.append("Synthetic fibre can melt or go flat for good under a hot iron: try steam on the swatch first.")
    if re.search(_ALLERGY, fibre, re.IGNORECASE):
        found.append("Ask the wearer about allergies to wool or latex.")
    return tuple(found)


def short_caution(fibre: str) -> str:
    """What a tag has room for; "" for nothing."""
    parts = ["no hot iron"] if re.search(_SYNTHETIC, fibre, re.IGNORECASE) else []
    parts += ["wool or latex: ask the wearer"] if re.search(_ALLERGY, fibre, re.IGNORECASE) else []
    return " · ".join(parts)
