"""The rows of a sheet as its XML has them, set aside as they come: a long sheet takes no more memory than a short one.

openpyxl takes twelve times as long over a cell, and leaves off the last digit of numbers like 1/3. Every formula has its value
beside it, so that a previewer which does not calculate shows it. Format: ECMA-376 part 1, 18.3.1.4, .53, .73 and .96.
"""

import re
import tempfile
import zipfile
from collections.abc import Callable, Sequence
from typing import NamedTuple
from xml.sax.saxutils import escape

from logbook.craft.swatches.fields import exact
from logbook.sheets.cells import Content, Formula, column_letters

_NO_ROWS = re.compile(r"<sheetData\s*(?:/>|></sheetData>)")
_IN_MEMORY = 1_000_000
_AT_ONCE = 262_144
_LARGE = 1_500_000_000
"""Beyond this a part of a zip file says its length in another way."""


class Dress(NamedTuple):
    """How a cell looks: the number of its style in the workbook, and whether it shows where nothing is in it."""

    style: int
    blank: bool = False


class SheetRows:
    """The rows of one sheet. Closed, they are gone."""

    def __init__(self) -> None:
        self._file = tempfile.SpooledTemporaryFile(max_size=_IN_MEMORY)  # noqa: SIM115 - it lives until ``close``
        self._letters: list[str] = []

    def add(self, number: int, contents: Sequence[Content], dresses: Sequence[Dress], height: float | None = None) -> None:
        """One row, whose ``number`` is above those before; texts must be such as a cell holds."""
        while len(self._letters) < len(contents):
            self._letters.append(f'<c r="{column_letters(len(self._letters) + 1)}')
        tall = "" if height is None else f' ht="{height:g}" customHeight="1"'
        cells = [f'<row r="{number}"{tall}>']
        end = f'{number}" s="'
        for place, (content, dress) in enumerate(zip(contents, dresses, strict=True)):
            if content is None or content == "":
                if dress.blank:
                    cells.append(f'{self._letters[place]}{end}{dress.style}"/>')
            else:
                cells.append(f"{self._letters[place]}{end}{dress.style}{_inside(content)}")
        cells.append("</row>")
        self._file.write("".join(cells).encode())

    def pour(self, archive: zipfile.ZipFile, name: str, around: str, told: Callable[[int], object]) -> None:
        """Writes the part ``name`` of a workbook: ``around`` is its XML without rows. ``told`` hears how many bytes went in.

        Raises ValueError if ``around`` is not such XML.
        """
        head, tail = _NO_ROWS.split(around)
        size = self._file.tell()
        self._file.seek(0)
        with archive.open(name, "w", force_zip64=size > _LARGE) as part:
            part.write(f"{head}<sheetData>".encode())
            while some := self._file.read(_AT_ONCE):
                part.write(some)
                told(len(some))
            part.write(f"</sheetData>{tail}".encode())

    def size(self) -> int:
        """Bytes of all rows."""
        return self._file.tell()

    def close(self) -> None:
        """Lets go of what was set aside."""
        self._file.close()


def _inside(content: str | int | float | Formula) -> str:
    """The rest of a cell's element, behind the number of its style."""
    if isinstance(content, str):  # also of what looks like a formula or an error
        kept = ' xml:space="preserve"' if content[0].isspace() or content[-1].isspace() or "\n" in content else ""
        return f'" t="inlineStr"><is><t{kept}>{escape(content)}</t></is></c>'
    if isinstance(content, Formula):
        formula, value = escape(content.text), content.value
        if isinstance(value, str):
            return f'" t="str"><f>{formula}</f><v>{escape(value)}</v></c>'
        return f'"><f>{formula}</f><v>{_number(value)}</v></c>'
    return f'"><v>{_number(content)}</v></c>'


def _number(value: int | float) -> str:
    text = repr(value)
    return text[:-2] if text.endswith(".0") else text if "e" not in text else exact(value)
