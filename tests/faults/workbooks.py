"""Workbooks made to harm, and broken ones by the thousand: each must be refused in one sentence or read right, soon and small.

    python -m tests.faults.workbooks --count 2000

makes mutants of sound workbooks, reads each, compares what was read with another reader, and says the longest time (of the
processor) and the most memory it took; then the same of harmful ones. The exit status is 0 only if all held. With ``--folder`` it
only reads what lies there.
"""

import argparse
import datetime as dt
import io
import json
import random
import struct
import subprocess
import sys
import tempfile
import time
import warnings
import zipfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

import openpyxl

from logbook.errors import RefusedError
from logbook.sheets.cell_texts import unescaped
from logbook.sheets.limits import RawCell, RawSheet, Unusable
from logbook.sheets.reading import read_sheet
from logbook.sheets.sheet_cells import NEITHER
from logbook.sheets.swatch_rows import swatches_of
from logbook.sheets.workbook import write_workbook
from logbook.sheets.workbook_reading import read_workbook
from tests.support.logged import log_of
from tests.support.swatches import AWKWARD, awkward_swatches, plain_swatch
from tests.support.workbook_parts import KINDS, MAIN, SHEET, STRINGS, packed, parts_of, sheet_xml, text_row, workbook

MOST_SECONDS = 5.0
MOST_MEGABYTES = 200.0
Reader = Callable[[bytes, str], RawSheet]


def bombs() -> Iterator[tuple[str, bytes]]:
    """Each limit crossed, one file a limit, and what grows while it is read. All must be refused."""
    heading = text_row(1, "tag", "yarn", "hook mm")
    sound = parts_of(heading, "a")
    yield "more than 20 MB", packed(sound) + bytes(20_000_000)
    yield "1,001 parts", packed({**sound, **{f"xl/media/{n}.png": "" for n in range(1001)}})
    yield "a directory of 200,000 parts", _with_long_directory(packed(sound))
    yield "50 MB inflated", packed({**sound, "xl/media/a.bin": bytes(51_000_000)})
    yield "50 MB inflated, of spaces in the sheet", packed({**sound, SHEET: sheet_xml(" " * 51_000_000)})
    yield "a size that lies", _with_size_lied(packed({**sound, "xl/media/a.bin": bytes(51_000_000)}), 51_000_000)
    for encoding in ("utf-8", "utf-16-le", "utf-16-be", "latin-1"):
        for path in (SHEET, STRINGS, "xl/workbook.xml", "docProps/app.xml"):
            yield f"document type in {encoding} in {path}", packed({**sound, path: _laughs(encoding)})
    yield "a document type after a long comment", packed({**sound, SHEET: f"<!--{'x' * 100_000}--><!DOCTYPE x><x/>"})
    yield "51 sheets", packed({**sound, "xl/workbook.xml": _sheets(51)})
    yield "100,001 rows", workbook("".join(f'<row r="{n}"><c><v>1</v></c></row>' for n in range(1, 100_002)))
    yield "row 3,000,000,000", workbook(heading + '<row r="3000000000"><c><v>1</v></c></row>')
    yield "257 columns", workbook('<row r="1">' + "<c><v>1</v></c>" * 257 + "</row>")
    yield "5,000,000 blank cells in one row", workbook('<row r="1">' + "<c/>" * 5_000_000 + "</row>")
    yield "nested 10,000,000 deep", packed({**sound, SHEET: "<a>" * 10_000_000})
    yield "one tag of 3,000,000 attributes", workbook("<row " + "".join(f'a{n}="" ' for n in range(3_000_000)) + "/>")
    yield "one name of 40 MB", workbook("<" + "a" * 40_000_000 + "/>")


def heavy() -> Iterator[tuple[str, bytes]]:
    """Files inside every limit that still ask for much. Refused or read, but soon and small."""
    yield "40 MB of print area", packed({**parts_of(text_row(1, "tag")), "xl/workbook.xml": _print_area("$A:" * 13_000_000)})
    yield (
        "a footer that patterns choke on",
        _with_tail(f"<headerFooter><oddFooter>{'&amp;L&amp;C' * 100_000}</oddFooter></headerFooter>"),
    )
    yield "500,000 merged cells", _with_tail("<mergeCells>" + '<mergeCell ref="A1:B2"/>' * 500_000 + "</mergeCells>")
    yield "one long text in 100,000 cells", workbook('<row><c t="s"><v>0</v></c></row>' * 99_999, "4 repeats = 15.1 cm; " * 1_500)


def slow() -> Iterator[tuple[str, bytes]]:
    """More of both kinds, that take some seconds each to make and to read. The first three must be refused."""
    sound = parts_of(text_row(1, "tag"), "a")
    yield "6,000,000 rows without a thing", workbook("<row/>" * 6_000_000)
    yield "8,000,000 shared texts", packed({**sound, STRINGS: f'<sst xmlns="{MAIN}">' + "<si/>" * 8_000_000 + "</sst>"})
    yield "texts that grow fourfold", workbook("".join(text_row(n, "🧶" + "x" * 30_000) for n in range(1, 1_500)))
    yield "2,400,000 blank cells in rows as long as can be", workbook(("<row>" + "<c/>" * 16_000 + "</row>") * 150)
    yield "100,000 rows of ten cells", workbook(("<row>" + "<c><v>1</v></c>" * 10 + "</row>") * 100_000)


def _print_area(text: str) -> str:
    names = f'<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">{text}</definedName></definedNames></workbook>'
    return _sheets(1).replace("</workbook>", names)


def _sheets(count: int) -> str:
    inner = "".join(f'<sheet name="S{n}" sheetId="{n + 1}" r:id="rId1"/>' for n in range(count))
    return f'<workbook xmlns="{MAIN}" xmlns:r="{KINDS}"><sheets>{inner}</sheets></workbook>'


def _with_tail(xml: str) -> bytes:
    whole = sheet_xml(text_row(1, "tag")).replace("</worksheet>", xml + "</worksheet>")
    return packed({**parts_of(""), SHEET: whole})


def _laughs(encoding: str) -> bytes:
    entities = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))
    declared = "utf-16" if encoding.startswith("utf-16") else encoding
    mark = "\ufeff" if encoding.startswith("utf-16") else ""
    text = (
        f'{mark}<?xml version="1.0" encoding="{declared}"?><!DOCTYPE x [<!ENTITY l0 "ha">{entities}]><worksheet>&l9;</worksheet>'
    )
    return text.encode(encoding)


def _with_long_directory(content: bytes) -> bytes:
    """The zip's directory repeated, as its end states it."""
    end = content.rindex(b"PK\x05\x06")
    size, start = struct.unpack("<II", content[end + 12 : end + 20])
    one = content[start : start + size]
    many = one * (200_000 // one.count(b"PK\x01\x02"))
    tail = bytearray(content[end:])
    struct.pack_into("<HHII", tail, 8, 65_535, 65_535, len(many), start)
    return content[:start] + many + bytes(tail)


def _with_size_lied(content: bytes, size: int) -> bytes:
    """Every place that states the inflated ``size`` says 10 instead."""
    return content.replace(struct.pack("<I", size), struct.pack("<I", 10))


def sound_workbooks() -> list[bytes]:
    """What the mutants are made of: one of ours, one with shared texts, dates and formulas, one of openpyxl's own."""
    ours = io.BytesIO()
    write_workbook(ours, log_of([*awkward_swatches()[:3], plain_swatch(8)]), "The log", "2026-05-31")
    rows = (
        '<row r="1" spans="1:4"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="s"><v>2</v></c></row>'
        '<row r="2"><c r="A2" t="s"><v>3</v></c><c r="B2" s="1"><v>46173</v></c><c r="C2"><f>9/2</f><v>4.5</v></c></row>'
        '<row r="4"><c r="A4" t="str"><f>"x"</f><v>x</v></c><c r="C4"><f>A1</f><v>12</v></c><c r="D4" t="b"><v>1</v></c></row>'
    )
    book = openpyxl.Workbook()
    sheet: Any = book.active
    sheet.append(["tag", "date", "hook mm", "notes"])
    for number, text in enumerate(AWKWARD):
        sheet.append([text, dt.date(2026, 1, 1 + number), number / 4, number])
    theirs = io.BytesIO()
    book.save(theirs)
    return [ours.getvalue(), workbook(rows, "tag", "date", "hook mm", "swatch"), theirs.getvalue()]


def mutants(count: int, seed: int) -> Iterator[bytes]:
    """``count`` broken workbooks: bytes of the file bent, or bytes and tags of a part bent and packed soundly again."""
    chance = random.Random(seed)
    originals = sound_workbooks()
    for _ in range(count):
        original = chance.choice(originals)
        yield _bent(original, chance) if chance.random() < 0.35 else _bent_inside(original, chance)


def _bent(content: bytes, chance: random.Random) -> bytes:
    bent = bytearray(content)
    for _ in range(chance.choice((1, 1, 3, 20))):
        place, many = chance.randrange(len(bent)), chance.choice((1, 1, 4, 100))
        what = chance.randrange(4)
        if what == 0:
            bent[place] ^= 1 << chance.randrange(8)
        elif what == 1:
            bent[place : place + many] = chance.randbytes(many)
        elif what == 2 and len(bent) > 200:
            del bent[place : place + many]
        else:
            bent[place:place] = bent[max(0, place - many) : place]
    return bytes(bent[: chance.randrange(len(bent))] if chance.random() < 0.1 else bent)


_TRICKS = (
    b"3000000000", b"-1", b"0", b"1E9", b"nan", b"inf", b"1e999", b"99999999999999999999", b"", b"<row>", b"</row>",
    b"<c/>", b"<v>", b"</v>", b"</sheetData>", b"<sheetData>", b"&lt;", b"&#0;", b"&#xD800;", b"&x;", b"<!DOCTYPE a>",
    b"<![CDATA[", b"]]>", b"<!--", b"_x0000_", b"_xD800_", b"\xff\xfe", b"\x00", b"\xf0\x9f\xa7\xb6", b'r="A1"',
    b't="s"', b't="e"', b't="d"', b's="1"', b'r:id="rId9"',
)  # fmt: skip


def _bent_inside(content: bytes, chance: random.Random) -> bytes:
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        parts: dict[str, str | bytes] = {name: archive.read(name) for name in archive.namelist()}
    path = chance.choice([*parts, SHEET, SHEET, SHEET])
    if chance.random() < 0.08:
        del parts[path]
        return packed(parts)
    part = bytearray(parts[path])
    for _ in range(chance.choice((1, 1, 2, 5))):
        places = [place for place, byte in enumerate(part) if byte in b'<>"=/0123456789']
        place = chance.choice(places) if places else 0
        what = chance.randrange(4)
        if what == 0:
            part[place : place + 1] = chance.choice(_TRICKS)
        elif what == 1:
            part[place:place] = chance.choice(_TRICKS)
        elif what == 2:
            del part[place : place + chance.choice((1, 10, 200))]
        else:
            part[place:place] = part[place : place + chance.choice((20, 200, 2000))]
    parts[path] = bytes(part)
    return packed(parts)


def judged(content: bytes, read: Reader = read_workbook) -> tuple[str, float]:
    """``refused``, ``right``, ``alone`` (the other reader can't), or what is wrong; and the seconds reading took.

    Raises whatever the reader raises beside RefusedError: that would be a fault.
    """
    begun = time.process_time()
    try:
        sheet = read(content, "x.xlsx")
        swatches_of(sheet)
    except RefusedError as error:
        said = str(error)
        whole = "\n" not in said and said.endswith((".", "CSV."))
        return ("refused" if whole else f"not one sentence: {said}"), time.process_time() - begun
    seconds = time.process_time() - begun
    return _compared(content, sheet), seconds


def _compared(content: bytes, sheet: RawSheet) -> str:
    """Against openpyxl, where that reads the file: the same cells in the same places."""
    mine = {
        (row.number, place): cell for row in sheet.rows for place, cell in enumerate(row.cells, start=1) if cell not in (None, "")
    }
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            theirs = _seen_by_openpyxl(content)
        except Exception:  # whatever it raises, it is no judge of this file
            return "alone"
    for place in [place for place, cell in theirs.items() if cell is _EMPTY_OR_UNKNOWN]:
        if isinstance(mine.get(place), Unusable | None):
            mine.pop(place, None)
            del theirs[place]
    for place in [place for place, cell in theirs.items() if isinstance(cell, bool) and mine.get(place) == NEITHER]:
        del mine[place], theirs[place]  # openpyxl takes every number but 0 for true
    if _comparable(mine) == _comparable(theirs):
        return "right"
    different = set(_comparable(mine).items()) ^ set(_comparable(theirs).items())
    return f"differs: {sorted(different, key=str)[:6]}"


_EMPTY_OR_UNKNOWN = Unusable("an empty text, or a formula that was never worked out: openpyxl does not tell them apart")


def _seen_by_openpyxl(content: bytes) -> dict[tuple[int, int], Any]:
    values = _cells(content, data_only=True)
    bare = [place for place, cell in values.items() if cell.value is None]  # empty, or formulas that were never worked out
    formulas = _cells(content, data_only=False) if bare else {}
    cells = {}
    for place, cell in values.items():
        value: Any = cell.value
        if cell.data_type == "e" or (value is None and formulas[place].data_type == "f"):
            value = _EMPTY_OR_UNKNOWN if cell.data_type == "str" else Unusable("an error or a formula")
        if value not in (None, ""):
            cells[place] = value
    return cells


def _cells(content: bytes, *, data_only: bool) -> dict[tuple[int, int], Any]:
    """Of the first sheet, by row and column; the others are not read."""
    book = openpyxl.load_workbook(io.BytesIO(content), read_only=True, data_only=data_only)
    return {(cell.row, cell.column): cell for row in book.worksheets[0].iter_rows() for cell in row if hasattr(cell, "row")}


def _comparable(cells: dict[tuple[int, int], Any]) -> dict[tuple[int, int], str]:
    return {place: _as_text(cell) for place, cell in cells.items() if _as_text(cell)}


def _as_text(cell: RawCell | Any) -> str:
    """Both readers' cells in one form: what can't be used is one thing, escapes and line ends are undone."""
    if isinstance(cell, bool):
        return str(cell).upper()
    if isinstance(cell, dt.datetime) and cell.time() == dt.time():
        return cell.date().isoformat()
    if isinstance(cell, Unusable | dt.time | dt.datetime | dt.timedelta):
        return "unusable"
    if isinstance(cell, int | float):
        return repr(float(cell))
    return unescaped(str(cell))


def read_all(folder: Path) -> dict[str, Any]:
    """Reads every file of ``folder`` as an import would: by name ``read`` or why not, the seconds, and the peak in MB."""
    seen: dict[str, Any] = {}
    for path in sorted(folder.iterdir()):
        begun = time.process_time()
        try:
            swatches_of(read_sheet(path))
            outcome = "read"
        except RefusedError as error:
            outcome = f"refused: {error}"
        seen[path.name] = [outcome, time.process_time() - begun]
    return {"files": seen, "megabytes": _peak()}


def read_in_a_child(files: Iterable[tuple[str, bytes]], folder: Path) -> dict[str, Any]:
    """The same of files made now, in a process of its own, so that the memory measured is that of reading."""
    for name, content in files:
        (folder / f"{name.replace('/', ' ')}.xlsx").write_bytes(content)
    done = subprocess.run(
        [sys.executable, "-m", "tests.faults.workbooks", "--folder", str(folder)],
        capture_output=True, text=True, cwd=Path(__file__).parents[2],
    )  # fmt: skip
    if not done.stdout:
        raise RuntimeError(done.stderr)
    result: dict[str, Any] = json.loads(done.stdout)
    return result


def _peak() -> float:
    """The most memory this process ever held. (``getrusage`` would count the parent's too.)"""
    status = Path("/proc/self/status").read_text()
    return int(status.partition("VmHWM:")[2].split()[0]) / 1024


def judge_mutants(count: int, seed: int, read: Reader = read_workbook) -> dict[str, Any]:
    """How many mutants came out how, those that should not have, and the longest time."""
    outcomes: dict[str, int] = {}
    faults, slowest = [], 0.0
    for number, content in enumerate(mutants(count, seed)):
        outcome, seconds = judged(content, read)
        slowest = max(slowest, seconds)
        outcomes[outcome[:7]] = outcomes.get(outcome[:7], 0) + 1
        if outcome not in ("refused", "right", "alone") or seconds > MOST_SECONDS:
            faults.append([number, outcome, seconds])
    return {"outcomes": outcomes, "faults": faults, "slowest": slowest, "megabytes": _peak()}


def main(arguments: list[str]) -> int:
    """Judges mutants and all bombs, or only reads the files of a folder, and prints one JSON object for each."""
    parser = argparse.ArgumentParser(allow_abbrev=False)
    parser.add_argument("--count", type=int, default=2000, help="how many mutants")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--folder", type=Path, help="read the files of this folder instead")
    chosen = parser.parse_args(arguments)
    if chosen.folder:
        print(json.dumps(read_all(chosen.folder), indent=1))
        return 0
    mutated = judge_mutants(chosen.count, chosen.seed)
    with tempfile.TemporaryDirectory() as folder:
        made = read_in_a_child([*bombs(), *heavy(), *slow()], Path(folder))
    print(json.dumps([mutated, made], indent=1, ensure_ascii=False))
    seconds = [mutated["slowest"], *(seconds for _, seconds in made["files"].values())]
    held = not mutated["faults"] and max(seconds) <= MOST_SECONDS
    return 0 if held and max(mutated["megabytes"], made["megabytes"]) <= MOST_MEGABYTES else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
