"""Reading the first sheet of a workbook (.xlsx), cell by cell, straight off its XML.

openpyxl writes our workbooks but does not read foreign ones: it builds trees of whatever a part holds, and its pattern for a
print area takes 0.13 s for 2,000 apostrophes, 2.3 s for 8,000 and so on with the square; it drops rows that stand out of order;
a formula whose result was never worked out looks to it like an empty cell; and 5,000 swatches take it 3.4 s, where this takes
0.8 s. Here time and memory are bounded by the limits, whatever a file says.

Format: ECMA-376, part 1 (SpreadsheetML) and part 2 (packages).
"""

import posixpath
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from logbook.errors import RefusedError
from logbook.sheets.cell_texts import GatheredTexts, whole_number
from logbook.sheets.limits import FOREIGN, MOST_SHEETS, Limits, RawSheet, RowCollector
from logbook.sheets.number_formats import Moment, builtin_moment, moment_of
from logbook.sheets.progress import Progress
from logbook.sheets.sheet_cells import SheetReader
from logbook.sheets.zip_parts import DamagedZipError, Handlers, ZipParts, refusing_damage

_OTHER_SHEETS = {"chartsheet", "dialogsheet", "xlMacrosheet", "xlIntlMacrosheet"}
"""Kinds of sheets that hold no log."""


def read_workbook(content: bytes, name: str, limits: Limits = FOREIGN, progress: Progress | None = None) -> RawSheet:
    """The rows of the first sheet. Raises RefusedError past a limit, or if this is no workbook that can be read."""
    return _read(content, name, lambda sheets: sheets[:1], limits, progress)[0]


def read_sheets(content: bytes, name: str, wanted: str | None = None, progress: Progress | None = None) -> tuple[RawSheet, ...]:
    """The rows of every sheet, or of the one called ``wanted``.

    Raises RefusedError as ``read_workbook``, and if there is none of that name.
    """

    def choose(sheets: Sequence[tuple[str, str]]) -> Sequence[tuple[str, str]]:
        if wanted is None:
            return sheets
        chosen = [one for one in sheets if one[0].casefold() == wanted.strip().casefold()]
        if not chosen:
            names = ", ".join(f"“{sheet}”" for sheet, _ in sheets)
            raise RefusedError(f"“{name}” has no sheet “{wanted[:40]}”: its sheets are {names}.")
        return chosen

    return _read(content, name, choose, FOREIGN, progress)


def read_first_and(
    content: bytes, name: str, others: Callable[[str], bool], limits: Limits, progress: Progress | None = None
) -> tuple[RawSheet, tuple[RawSheet, ...]]:
    """The rows of the first sheet, and of those whose names ``others`` is true of. Raises RefusedError as ``read_workbook``."""
    first, *rest = _read(
        content, name, lambda sheets: [sheets[0], *(one for one in sheets[1:] if others(one[0]))], limits, progress
    )
    return first, tuple(rest)


_Chosen = Callable[[Sequence[tuple[str, str]]], Sequence[tuple[str, str]]]


def _read(content: bytes, name: str, choose: _Chosen, limits: Limits, progress: Progress | None) -> tuple[RawSheet, ...]:
    with refusing_damage(name):
        parts = ZipParts(content, name, limits, progress)
        try:
            workbook = _find_workbook(parts)
            chosen = choose(workbook.sheets)
            shared, moments = _shared_strings(parts, workbook.shared), _moments(parts, workbook.styles)
            read = []
            for sheet_name, path in chosen:
                sheet = SheetReader(shared, moments, workbook.since_1904, RowCollector(limits, progress))
                parts.read(path, sheet.handlers())
                read.append(RawSheet(sheet_name, tuple(sheet.collector.rows)))
            return tuple(read)
        finally:
            parts.close()


@dataclass(frozen=True, slots=True)
class _Workbook:
    """Where the parts needed lie, "" for one that is not there; of each sheet its name and where it lies."""

    sheets: tuple[tuple[str, str], ...]
    shared: str
    styles: str
    since_1904: bool


def _find_workbook(parts: ZipParts) -> _Workbook:
    if not parts.has("_rels/.rels"):
        raise DamagedZipError("it is a zip file, but no .xlsx")
    roots = [target for kind, target in _relations(parts, "").values() if kind == "officeDocument"]
    if not roots or not parts.has(roots[0]):
        raise DamagedZipError("it holds no workbook")
    sheets, since_1904 = _sheets(parts, roots[0])
    relations = _relations(parts, roots[0])
    named = {kind: target for kind, target in relations.values() if parts.has(target)}
    found = []
    for sheet_name, identity in sheets:
        kind, target = relations.get(identity, ("", ""))
        if kind == "worksheet":
            found.append((sheet_name, target))
        elif kind not in _OTHER_SHEETS:
            raise DamagedZipError(f"its sheet “{sheet_name[:40]}” leads nowhere")
    if not found:
        raise DamagedZipError("it holds no sheet of cells")
    return _Workbook(tuple(found), named.get("sharedStrings", ""), named.get("styles", ""), since_1904)


def _relations(parts: ZipParts, path: str) -> dict[str, tuple[str, str]]:
    """What the part at ``path`` ("": the package) refers to: by id, the last word of the kind of relation and the path."""
    folder, name = posixpath.split(path)
    found: dict[str, tuple[str, str]] = {}

    def relation(attributes: dict[str, str]) -> None:
        if attributes.get("TargetMode") != "External":
            target = posixpath.normpath(posixpath.join("/" + folder, attributes["Target"])).lstrip("/")
            found[attributes["Id"]] = (attributes["Type"].rpartition("/")[2], target)

    parts.read(posixpath.join(folder, "_rels", f"{name}.rels"), Handlers({"Relationship": relation}))
    return found


def _sheets(parts: ZipParts, path: str) -> tuple[list[tuple[str, str]], bool]:
    """Name and relation id of every sheet, and whether days are counted from 1904."""
    sheets: list[tuple[str, str]] = []
    since_1904 = False

    def sheet(attributes: dict[str, str]) -> None:
        identity = next((value for key, value in attributes.items() if key.endswith(":id")), "")
        sheets.append((attributes.get("name", ""), identity))
        if len(sheets) > MOST_SHEETS:
            raise RefusedError(f"The workbook has more than {MOST_SHEETS} sheets: save the one with the log by itself.")

    def properties(attributes: dict[str, str]) -> None:
        nonlocal since_1904
        since_1904 = attributes.get("date1904") in ("1", "true")

    parts.read(path, Handlers({"sheet": sheet, "workbookPr": properties}))
    return sheets, since_1904


def _shared_strings(parts: ZipParts, path: str) -> list[str]:
    """The texts that cells refer to by number."""
    strings: list[str] = []
    texts = GatheredTexts()

    def start(attributes: dict[str, str]) -> None:
        texts.clear()

    def end() -> None:
        strings.append(texts.joined())

    if path:
        parts.read(path, Handlers({**texts.starts, "si": start}, {**texts.ends, "si": end}, texts.text))
    return strings


def _moments(parts: ZipParts, path: str) -> list[Moment]:
    """For each cell style whether its number format shows a number, a date or a time."""
    custom: dict[str, Moment] = {}
    moments: list[Moment] = []
    inside = False

    def number_format(attributes: dict[str, str]) -> None:
        custom[attributes["numFmtId"]] = moment_of(attributes["formatCode"])

    def turn(to: bool) -> None:
        nonlocal inside
        inside = to

    def style(attributes: dict[str, str]) -> None:
        if inside:
            identity = attributes.get("numFmtId", "0")
            moments.append(custom.get(identity) or builtin_moment(whole_number(identity)))

    if path:
        starts = {"numFmt": number_format, "cellXfs": lambda _: turn(True), "xf": style}
        parts.read(path, Handlers(starts, {"cellXfs": lambda: turn(False)}))
    return moments
