"""A spreadsheet program that reckons every formula of a workbook anew, to compare with what stands in it."""

import shutil
import subprocess
from collections.abc import Mapping, Sequence
from contextlib import closing
from pathlib import Path
from typing import Any

import openpyxl
import pytest

_ALWAYS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop>
</item>
</oor:items>
"""


def recalculated(workbooks: list[Path], folder: Path) -> list[Path]:
    """The workbooks as LibreOffice saves them with its setting "recalculate on load: always", in one run of it.

    Skips the test where LibreOffice is not installed.
    """
    program = shutil.which("soffice")
    if program is None:
        pytest.skip("LibreOffice (soffice) is not installed: nothing to recalculate with")
    user = folder / "profile" / "user"
    user.mkdir(parents=True)
    (user / "registrymodifications.xcu").write_text(_ALWAYS, "utf-8")
    out = folder / "recalculated"
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = [program, profile, "--headless", "--convert-to", "xlsx", "--outdir", str(out), *map(str, workbooks)]
    subprocess.run(command, check=True, capture_output=True, timeout=900)
    return [out / workbook.name for workbook in workbooks]


def with_inputs(workbook: Path, sheet: str, trials: Sequence[Mapping[str, object]], changed: Path) -> Path:
    """The workbook with a copy of a sheet for each of ``trials``, called 1, 2 and so on, with other contents in some of its cells
    (None: emptied); every formula waits to be worked out."""
    book = openpyxl.load_workbook(workbook)
    for number, inputs in enumerate(trials, start=1):
        copied = book.copy_worksheet(book[sheet])
        copied.title = str(number)
        for cell, content in inputs.items():
            copied[cell].value = content
    book.save(changed)
    return changed


def changed_in_place(workbook: Path, inputs: Mapping[str, Mapping[str, object]], changed: Path) -> Path:
    """The workbook with other contents in some cells of its sheets; every formula waits to be worked out."""
    book = openpyxl.load_workbook(workbook)
    for sheet, cells in inputs.items():
        for cell, content in cells.items():
            book[sheet][cell].value = content
    book.save(changed)
    return changed


def shown(workbook: Path, *sheets: str, formulas: bool = False) -> Mapping[str, Mapping[str, Any]]:
    """What stands in the cells of these sheets that are not empty, by the sheet's name; with ``formulas``, those themselves."""
    book = openpyxl.load_workbook(workbook, read_only=True, data_only=not formulas)
    with closing(book):
        return {
            name: {cell.coordinate: cell.value for row in book[name] for cell in row if cell.value is not None} for name in sheets
        }
