"""Workbooks of other programs, and those that only look like workbooks."""

import datetime as dt
import io
import zipfile
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.errors import RefusedError
from logbook.sheets.limits import RawCell, RawSheet, Unusable
from logbook.sheets.number_formats import Moment, builtin_moment, moment_of
from logbook.sheets.reading import read_sheet
from logbook.sheets.workbook_reading import read_workbook
from tests.support.workbook_parts import SHEET, STRINGS, packed, parts_of, relations, sheet_xml, text_row, workbook


def cells(content: bytes) -> list[tuple[RawCell, ...]]:
    return [row.cells for row in read_workbook(content, "x.xlsx").rows]


def cell(xml: str, *texts: str) -> RawCell:
    """The one cell of a sheet."""
    [row] = cells(workbook(f"<row>{xml}</row>", *texts))
    return row[0]


@pytest.mark.parametrize(
    ("xml", "content"),
    [
        ('<c t="s"><v>1</v></c>', "second"),
        ('<c t="inlineStr"><is><t>=x</t></is></c>', "=x"),
        ('<c t="inlineStr"><is><r><t>two </t></r><r><rPr><b/></rPr><t>runs</t></r><rPh><t>aloud</t></rPh></is></c>', "two runs"),
        ('<c t="str"><f>A1</f><v>worked out</v></c>', "worked out"),
        ('<c t="inlineStr"><is><t>a_x000D_\nb_x0041__x005F_x0041_</t></is></c>', "a\nbA_x0041_"),
        ("<c><v>4.5</v></c>", 4.5),
        ("<c><f>9/2</f><v>4.5</v></c>", 4.5),
        ('<c t="n"><v>1E-2</v></c>', 0.01),
        ('<c t="b"><v>1</v></c>', "TRUE"),
        ('<c t="b"><v>false</v></c>', "FALSE"),
        ('<c t="b"><v>-11</v></c>', Unusable("what is neither true nor false")),
        ('<c s="1"><v>46173</v></c>', dt.date(2026, 5, 31)),
        ('<c s="3"><v>46173</v></c>', dt.date(2026, 5, 31)),
        ('<c s="1"><v>59</v></c>', dt.date(1900, 2, 28)),
        ('<c s="1"><v>61</v></c>', dt.date(1900, 3, 1)),
        ('<c t="d"><v>2026-05-31T00:00:00</v></c>', dt.date(2026, 5, 31)),
        ('<c t="d"><v>2026-05-31T10:00:00</v></c>', Unusable("a time of day")),
        ('<c s="1"><v>60</v></c>', Unusable("a day that no calendar has")),
        ('<c s="1"><v>-5</v></c>', Unusable("a day that no calendar has")),
        ('<c s="1"><v>46173.5</v></c>', Unusable("a time of day")),
        ('<c s="2"><v>0.5</v></c>', Unusable("a time of day")),
        ('<c t="e"><v>#REF!</v></c>', Unusable("the error #REF!")),
        ("<c><f>A1*2</f></c>", Unusable("a formula whose result was never worked out")),
        ("<c><f>A1*2</f><v/></c>", Unusable("a formula whose result was never worked out")),
    ],
)
def test_kinds_of_cells(xml: str, content: RawCell) -> None:
    assert cell(xml, "first", "second") == content


def test_a_formula_that_gives_empty_text_is_a_blank_cell() -> None:
    assert cells(workbook('<row><c t="str"><f>""</f><v></v></c></row>')) == []


def test_prefixes_paths_and_kinds_of_the_strict_form() -> None:
    parts = parts_of(text_row(1, "tag"), "a")
    parts["xl/workbook.xml"] = (
        '<x:workbook xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"'
        ' xmlns:q="http://purl.oclc.org/ooxml/officeDocument/relationships"><x:workbookPr date1904="1"/><x:sheets>'
        '<x:sheet name="Picture" sheetId="1" q:id="rId3"/><x:sheet name="Log" sheetId="2" q:id="rId1"/></x:sheets></x:workbook>'
    )
    parts["xl/_rels/workbook.xml.rels"] = relations(
        ("worksheet", "/xl/elsewhere/log.xml"), ("styles", "styles.xml"), ("chartsheet", "chartsheets/sheet1.xml")
    )
    parts["xl/elsewhere/log.xml"] = (
        '<x:worksheet xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"><x:sheetData><x:row r="7"><x:c r="C7" s="1"><x:v>0'
        "</x:v></x:c></x:row></x:sheetData><extLst><row><c><v>9</v></c></row></extLst></x:worksheet>"
    )
    del parts[SHEET]
    sheet = read_workbook(packed(parts), "x")
    assert sheet.name == "Log"
    assert [(row.number, row.cells) for row in sheet.rows] == [(7, (None, None, dt.date(1904, 1, 1)))]


@pytest.mark.parametrize("kind", ["worksheet]]>", ""])
def test_a_sheet_that_leads_nowhere_is_not_passed_over_for_the_next(kind: str) -> None:
    parts = parts_of(text_row(1, "tag"), "a")
    parts["xl/workbook.xml"] = str(parts["xl/workbook.xml"]).replace(
        "</sheets>", '<sheet name="Readings" sheetId="2" r:id="rId2"/></sheets>'
    )
    first = (kind, "worksheets/sheet1.xml") if kind else ("styles", "styles.xml")
    parts["xl/_rels/workbook.xml.rels"] = relations(first, ("worksheet", "worksheets/sheet2.xml"))
    parts["xl/worksheets/sheet2.xml"] = sheet_xml(text_row(1, "gauge no."))
    with pytest.raises(RefusedError, match="its sheet “Log” leads nowhere"):
        read_workbook(packed(parts), "x")


def test_a_sheet_of_another_language_is_refused() -> None:
    parts = parts_of(text_row(1, "tag"), "a")
    parts[SHEET] = parts[SHEET].replace("spreadsheetml", "spreadsheetmx")
    with pytest.raises(RefusedError, match="not written in the language of workbooks"):
        read_workbook(packed(parts), "x")


def test_a_cell_of_two_texts_is_refused_since_spreadsheets_differ_over_which_counts() -> None:
    with pytest.raises(RefusedError, match="holds two texts"):
        read_workbook(workbook('<row r="7"><c t="inlineStr"><is><t>a</t></is><is><t>b</t></is></c></row>'), "x")


def test_blank_rows_and_cells_count_by_their_places() -> None:
    rows = (
        text_row(1, "tag")
        + '<row r="3"/><row r="5"><c r="B5" t="s"><v>0</v></c><c r="D5"/></row><row><c t="s"><v>0</v></c></row>'
    )
    sheet = read_workbook(workbook(rows, "a"), "x")
    assert [(row.number, row.cells) for row in sheet.rows] == [(1, ("tag",)), (5, (None, "a")), (6, ("a",))]


def test_a_far_blank_row_or_cell_is_only_blank() -> None:
    far = '<row r="3000000000"><c r="XFD3000000000"/></row>'
    assert cells(workbook(text_row(1, "tag") + far)) == [("tag",)]


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ('<row r="3000000000"><c><v>1</v></c></row>', "3,000,000,000"),
        ('<row r="100001"><c><v>1</v></c></row>', "100,001"),
        ('<row r="30000000000"><c><v>1</v></c></row>', "whole number"),
        ('<row r="1"><c r="IW1"><v>1</v></c></row>', "column 257"),
        ('<row r="1"><c r="XFDA1"><v>1</v></c></row>', "no cell of its row"),
        ('<row r="1"><c r="XFE1"/></row>', "row 1 has more than 16,384 cells"),
        ("<row>" + "<c/>" * 16_385 + "</row>", "row 1 has more than 16,384 cells"),
        ('<row r="5"/><row r="3"/>', "row 3 stands after row 5"),
        ('<row r="1"/><row r="1"/>', "row 1 stands after row 1"),
        ('<row><c r="B1"><v>1</v></c><c r="A1"><v>1</v></c></row>', "out of order"),
        ('<row r="2"><c r="A3"><v>1</v></c></row>', "no cell of its row"),
        ('<row><c t="s"><v>7</v></c></row>', "can be read"),
        ('<row><c t="s"><v>-1</v></c></row>', "can be read"),
        ("<row><c><v>nan</v></c></row>", "none"),
        ("<row><c><v>1_0</v></c></row>", "none"),
        ("<row><c><v>x</v></c></row>", "can be read"),
        ('<row><c t="zz"><v>1</v></c></row>', "unknown kind"),
        ('<row r="one"/>', "whole number"),
        ("<row><c><v>20</v><c/></c></row>", "within another"),
        ('<c r="A1"><v>20</v></c>', "no row"),
        ("<row><c><v>20</v></c><row/></row>", "row 2 stands within row 1"),
        ("<row><c><v>20</v><v>21</v></c></row>", "two values"),
        ("<row>", "mismatched tag"),
        ("&bomb;", "undefined entity"),
    ],
)
def test_sheets_that_contradict_themselves_or_reach_too_far(rows: str, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        read_workbook(workbook(rows, "only"), "x")


def test_the_last_row_and_column_allowed() -> None:
    sheet = read_workbook(workbook('<row r="100000"><c r="IV100000"><v>1</v></c></row>'), "x")
    assert (sheet.rows[0].number, len(sheet.rows[0].cells)) == (100_000, 256)


@pytest.mark.parametrize("missing", ["_rels/.rels", "xl/workbook.xml", "xl/_rels/workbook.xml.rels", SHEET])
def test_a_workbook_with_a_part_missing(missing: str) -> None:
    parts = parts_of(text_row(1, "tag"))
    del parts[missing]
    with pytest.raises(RefusedError, match="not a workbook that can be read"):
        read_workbook(packed(parts), "x")


def test_a_workbook_without_styles_or_shared_texts() -> None:
    parts = parts_of("<row><c><v>5</v></c></row>")
    del parts["xl/styles.xml"], parts[STRINGS]
    assert cells(packed(parts)) == [(5.0,)]
    with pytest.raises(RefusedError, match="can be read"):
        read_workbook(packed({**parts, SHEET: sheet_xml('<row><c s="1"><v>5</v></c></row>')}), "x")


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"SQLite format 3\0" + bytes(100), "is a logbook"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(100), "password"),
        (b"%PDF-1.7", "not a workbook"),
        (b"PK\x03\x04" + bytes(100), "not a workbook that can be read"),
        (b"", "not a workbook"),
    ],
)
def test_files_that_are_something_else(content: bytes, says: str, tmp_path: Path) -> None:
    file = tmp_path / "x.xlsx"
    file.write_bytes(content)
    with pytest.raises(RefusedError, match=says):
        read_sheet(file)


def test_files_that_are_not_there_or_no_files(tmp_path: Path) -> None:
    for path in (tmp_path / "none.csv", tmp_path, tmp_path / "a\0b"):
        with pytest.raises(RefusedError):
            read_sheet(path)


def test_a_zip_that_is_no_workbook() -> None:
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
    with pytest.raises(RefusedError, match=r"zip file, but no \.xlsx"):
        read_workbook(content.getvalue(), "x.ods")


def test_what_openpyxl_writes_reads_the_same() -> None:
    book = openpyxl.Workbook()
    sheet: Any = book.active
    sheet.append(["tag", "date", "hook mm", "=1+1", None, True])
    sheet.append(["A", dt.date(2026, 5, 31), 4.5, dt.datetime(2026, 5, 31, 12), "last"])
    content = io.BytesIO()
    book.save(content)
    sheet_read: RawSheet = read_workbook(content.getvalue(), "x")
    assert sheet_read.rows[0].cells == (
        "tag", "date", "hook mm", Unusable("a formula whose result was never worked out"), None, "TRUE",
    )  # fmt: skip
    assert sheet_read.rows[1].cells == ("A", dt.date(2026, 5, 31), 4.5, Unusable("a time of day"), "last")


@pytest.mark.parametrize(
    ("code", "moment"),
    [
        ("General", Moment.NONE),
        ("0.00", Moment.NONE),
        ('#,##0.00\\ "days"', Moment.NONE),
        ("[Red]0", Moment.NONE),
        ("0_d", Moment.NONE),
        ("yyyy-mm-dd", Moment.DATE),
        ("[$-409]d\\ mmm;@", Moment.DATE),
        ("mmm", Moment.DATE),
        ("dd/mm/yy hh:mm", Moment.DATE),
        ("hh:mm", Moment.TIME),
        ("[h]:mm", Moment.TIME),
        ("mm:ss", Moment.TIME),
    ],
)
def test_number_formats(code: str, moment: Moment) -> None:
    assert moment_of(code) is moment


def test_formats_known_by_number() -> None:
    assert [builtin_moment(identity) for identity in (0, 9, 14, 20, 22, 49)] == [
        Moment.NONE, Moment.NONE, Moment.DATE, Moment.TIME, Moment.DATE, Moment.NONE,
    ]  # fmt: skip


def test_an_empty_sheet() -> None:
    assert cells(packed({**parts_of(""), SHEET: sheet_xml("")})) == []
