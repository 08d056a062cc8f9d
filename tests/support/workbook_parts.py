"""Workbooks put together part by part, so that a test can bend any of them."""

import io
import zipfile
from collections.abc import Mapping
from xml.sax.saxutils import escape

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
KINDS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships"
SHEET = "xl/worksheets/sheet1.xml"
STRINGS = "xl/sharedStrings.xml"


def relations(*kinds: tuple[str, str]) -> str:
    """A part of relations, each of a kind and a target."""
    inner = "".join(
        f'<Relationship Id="rId{n}" Type="{KINDS}/{kind}" Target="{target}"/>' for n, (kind, target) in enumerate(kinds, start=1)
    )
    return f'<?xml version="1.0"?><Relationships xmlns="{PACKAGE}">{inner}</Relationships>'


def sheet_xml(rows: str) -> str:
    """A sheet of these rows."""
    return f'<?xml version="1.0"?><worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData></worksheet>'


def strings_xml(*texts: str) -> str:
    """The shared texts."""
    inner = "".join(f"<si><t>{escape(text)}</t></si>" for text in texts)
    return f'<?xml version="1.0"?><sst xmlns="{MAIN}">{inner}</sst>'


def parts_of(rows: str, *texts: str) -> dict[str, str | bytes]:
    """All parts of a small workbook with ``rows`` in its sheet. Style 1 is a date, style 2 a time, style 3 one of its own."""
    kinds = "application/vnd.openxmlformats-officedocument.spreadsheetml"
    overrides = "".join(
        f'<Override PartName="/{path}" ContentType="{kinds}.{kind}+xml"/>'
        for path, kind in (
            ("xl/workbook.xml", "sheet.main"), (SHEET, "worksheet"), (STRINGS, "sharedStrings"), ("xl/styles.xml", "styles")
        )
    )  # fmt: skip
    return {
        "[Content_Types].xml": '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Default Extension="xml" ContentType="application/xml"/>{overrides}</Types>',
        "_rels/.rels": relations(("officeDocument", "xl/workbook.xml")),
        "xl/workbook.xml": f'<workbook xmlns="{MAIN}" xmlns:r="{KINDS}"><sheets><sheet name="Log" sheetId="1" r:id="rId1"/>'
        "</sheets></workbook>",
        "xl/_rels/workbook.xml.rels": relations(
            ("worksheet", "worksheets/sheet1.xml"), ("sharedStrings", "sharedStrings.xml"), ("styles", "styles.xml")
        ),
        "xl/styles.xml": f'<styleSheet xmlns="{MAIN}"><numFmts count="1">'
        '<numFmt numFmtId="170" formatCode="[$-409]d\\ mmm\\ yy;@"/>'
        '</numFmts><fonts count="1"><font/></fonts><fills count="1"><fill><patternFill/></fill></fills>'
        '<borders count="1"><border/></borders>'
        '<cellStyleXfs count="1"><xf numFmtId="14"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="14"/>'
        '<xf numFmtId="20"/><xf numFmtId="170"/></cellXfs></styleSheet>',
        STRINGS: strings_xml(*texts),
        SHEET: sheet_xml(rows),
    }


def packed(parts: Mapping[str, str | bytes]) -> bytes:
    """The parts as a zip file."""
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        for path, part in parts.items():
            archive.writestr(path, part)
    return content.getvalue()


def workbook(rows: str, *texts: str) -> bytes:
    """A small workbook with ``rows`` in its sheet."""
    return packed(parts_of(rows, *texts))


def text_row(number: int, *texts: str) -> str:
    """A row of texts held in the cells themselves."""
    return f'<row r="{number}">' + "".join(f'<c t="inlineStr"><is><t>{escape(t)}</t></is></c>' for t in texts) + "</row>"
