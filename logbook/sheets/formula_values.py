"""Formulas that carry their values, so that a previewer which does not calculate shows them.

openpyxl writes a formula cell as ``<c r="B3"><f>…</f><v/></c>``, always with an empty value. The value belongs into that ``<v>``,
and the cell of a text is of type ``str`` (ECMA-376 part 1, 18.3.1.4 and 18.3.1.96); everything else stays as it is.
"""

import re
from collections.abc import Mapping
from xml.sax.saxutils import escape

from logbook.craft.swatches.fields import exact

_FORMULA_CELL = re.compile(r'<c r="([A-Z]+[0-9]+)"([^>]*)>(<f>[^<]*</f>)<v\s*(?:/>|></v>)')


def filled(sheet: str, values: Mapping[str, str | int | float]) -> str:
    """The XML of a sheet, each of its formula cells with what it comes to.

    ``values`` has one for every formula cell of the sheet and for no other. Raises ValueError if it is not so.
    """
    left = set(values)

    def fill(cell: re.Match[str]) -> str:
        place, attributes, formula = cell.groups()
        left.discard(place)
        if place not in values:
            raise ValueError(f"the formula in {place} has no value")
        value = values[place]
        if isinstance(value, str):
            return f'<c r="{place}"{attributes} t="str">{formula}<v>{escape(value)}</v>'
        return f'<c r="{place}"{attributes}>{formula}<v>{exact(value)}</v>'

    done = _FORMULA_CELL.sub(fill, sheet)
    if left or done.count("<f>") != len(values):
        raise ValueError(f"{len(values)} values for {done.count('<f>')} formulas; not found: {sorted(left)}")
    return done
