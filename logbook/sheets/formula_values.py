"""Formulas that carry their values, so that a previewer which does not calculate shows them.

openpyxl writes a formula cell as ``<c r="B3"><f>…</f><v/></c>``, always with an empty value. The value belongs into that ``<v>``
(ECMA-376 part 1, 18.3.1.96), so it is put there afterwards, in the finished part of the zip; everything else stays as it is.
"""

import re
import zipfile
from collections.abc import Mapping
from io import BytesIO

from logbook.craft.swatches.fields import exact

_FORMULA_CELL = re.compile(r'(<c r="([A-Z]+[0-9]+)"[^>]*><f>[^<]*</f>)<v\s*(?:/>|></v>)')


def with_values(workbook: bytes, part: str, values: Mapping[str, float]) -> bytes:
    """The same workbook, each formula cell of ``part`` (``xl/worksheets/sheet4.xml``) with the number it comes to.

    ``values`` has a number for every formula cell of that part and for no other. Raises ValueError if it is not so.
    """
    written = BytesIO()
    with zipfile.ZipFile(BytesIO(workbook)) as old, zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as new:
        for info in old.infolist():
            content = old.read(info)
            if info.filename == part:
                content = _filled(content.decode("utf-8"), values).encode("utf-8")
            new.writestr(info.filename, content)
    return written.getvalue()


def _filled(sheet: str, values: Mapping[str, float]) -> str:
    left = set(values)

    def fill(cell: re.Match[str]) -> str:
        left.discard(cell[2])
        if cell[2] not in values:
            raise ValueError(f"the formula in {cell[2]} has no value")
        return f"{cell[1]}<v>{exact(values[cell[2]])}</v>"

    filled = _FORMULA_CELL.sub(fill, sheet)
    if left or filled.count("<f>") != len(values):
        raise ValueError(f"{len(values)} values for {filled.count('<f>')} formulas; not found: {sorted(left)}")
    return filled
