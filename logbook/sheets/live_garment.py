"""The live numbers of a garment in all sizes, in a sheet: body and ease, the gauge of each piece and its measures can be changed.

A formula carries what the program said. Of pieces that can't be live the numbers stand as values elsewhere.
"""

from collections.abc import Mapping, Sequence
from functools import partial

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import EDGING
from logbook.craft.pieces.length import RowRule
from logbook.craft.sizes.body_chart import MEASURES
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import HUNDREDTHS, PERCENT, TENTHS, WHOLE, CellLook, Content, Formula, Role, column_letters
from logbook.sheets.live_edges import LiveEdge, live_edges
from logbook.sheets.live_lines import NumberLine, by_repeats
from logbook.sheets.live_measures import EASE, LiveMeasures, filled, of_body, of_piece
from logbook.sheets.live_shapes import is_live, lines_of
from logbook.sheets.published_beside import PublishedLine, published_heading, write_published

_GAUGE = {"p": "$B", "q": "$C", "extra": "$D", "m": "$E", "b": "$F", "beside": "$G", "group": "$H"}
_GROUPS = ("set-up, closing rows", "rows in a repeat")


def gauge_headings(pieces: Sequence[ShapedPiece], cloths: Mapping[str, Cloth]) -> tuple[str, ...]:
    """What stands there of the gauge of each piece; how rows go by groups only if those of one of them do."""
    grouped = any(by_repeats(piece) and RowRule.of(cloths[piece.name].gauges.pattern).in_repeat > 1 for piece in pieces)
    return ("a stitch, mm", "a row, mm", "extra chains", "multiple", "plus", *(_GROUPS if grouped else ()))


class LiveGarment:
    """Writes the sizes' own measures and the gauges of the pieces, which can be changed, and below them each piece in all sizes.

    ``edges`` are those of the pieces that are live, by the names of piece and edge.
    """

    def __init__(self, sheet: SheetWriter, sheet_name: str, sizes: Sequence[GarmentInSize], cloths: Mapping[str, Cloth]) -> None:
        self._sheet, self._name, self._sizes, self._cloths = sheet, sheet_name, sizes, cloths
        self._made = {piece.name: [size.piece(piece.name) for size in sizes] for piece in sizes[0].pieces}
        self._live: dict[str, list[NumberLine]] = {}
        self.edges: dict[str, Mapping[str, LiveEdge]] = {}
        for name, made in sorted(self._made.items(), key=lambda item: item[1][0].planned.shape == EDGING):
            if is_live(made, cloths[name], self.edges):
                self._live[name] = lines_of(made, cloths[name], self.edges)
                self.edges[name] = live_edges(made[0])
        self._headings = gauge_headings(sizes[0].pieces, cloths)
        self._columns = max(len(sizes), len(self._headings))
        self._measures = [LiveMeasures(size.size, size.pieces, self.live) for size in sizes]
        self._wanted = self._wanted_formulas()
        used = {name for measures in self._measures for name in measures.used}
        self._body = [name for name in (*MEASURES, "ease") if name in used]
        self._at: dict[str, int] = {}

    @property
    def live(self) -> tuple[str, ...]:
        """The pieces that are live."""
        return tuple(self._live)

    def cell(self, place: int, key: str) -> str:
        """The cell of a number of a piece, by the key of ``of_piece``, in the size at that place; as other sheets call it."""
        return f"'{self._name}'!{self._cell_of(column_letters(place + 2), key)}"

    def write(self) -> None:
        """What the sizes measure, the gauges, then the pieces that are live."""
        self._place()
        right = CellLook(Role.HEADING, right=True, wraps=True)
        if self._body:
            self._section("Body and ease of each size: change what is shaded")
            names = self._sheet.add(
                ("", *(size.name for size in self._sizes)), (CellLook(Role.HEADING), *[right] * len(self._sizes))
            )
            self._sheet.repeat_when_printed(names)
            for name in self._body:
                self._write_body(name)
            self._sheet.skip()
        self._section("Gauge: change what is shaded")
        self._sheet.add(("", *self._headings), (CellLook(Role.HEADING), *[right] * len(self._headings)))
        for name in self._live:
            self._write_gauge(name, self._made[name][0])
        self._sheet.skip()
        for name, lines in self._live.items():
            self._piece(name, lines)

    def write_published(self, date: str) -> None:
        """What comes of the inputs of each live piece as values published on that day; what the sheet then makes otherwise is
        framed, and counted."""
        published_heading(self._sheet, f"on {date}", self._columns)
        self._sheet.paragraph("These numbers stay. One is framed where the sheet now comes to another.")
        for name, lines in self._live.items():
            made = self._made[name]
            self._heading(name)
            published = []
            for line in lines:
                values = [line.of(piece) for piece in made]
                if line.formula and any(value is not None for value in values):
                    row = self._at[of_piece(name, line.key)]
                    published.append(PublishedLine(line.label, values, row, values, line.numbers))
            write_published(self._sheet, published, "numbers that differ", [""] * len(made))
            self._sheet.skip()

    def _write_gauge(self, name: str, made: ShapedPiece) -> None:
        pattern = self._cloths[name].gauges.pattern
        extra = made.chain - made.foundation if made.chain is not None else None
        repeats = (pattern.multiple or 1, None if made.in_round else pattern.plus or 0) if by_repeats(made) else (None, None)
        rule = RowRule.of(pattern)
        groups = (rule.set_up + rule.closing, rule.in_repeat) if by_repeats(made) and rule.in_repeat > 1 else (None, None)
        cells = (made.stitch_mm, made.row_mm, extra, *repeats, *groups)[: len(self._headings)]
        looks = [
            CellLook() if cell is None else CellLook(Role.INPUT, HUNDREDTHS if place < 2 else WHOLE, right=True)
            for place, cell in enumerate(cells)
        ]
        self._sheet.add((name, *cells), [CellLook(Role.LABEL), *looks])

    def _section(self, words: str) -> None:
        self._sheet.add((words, *[""] * self._columns), CellLook(Role.SECTION), height=21)

    def _wanted_formulas(self) -> dict[tuple[str, str, int], str]:
        """What measures are reckoned by, by piece, measure and the place of the size, where that is not a length alone."""
        if any(bool(size.size.ease.share) != bool(self._sizes[0].size.ease.share) for size in self._sizes):
            return {}  # one row holds no lengths and shares
        formulas = {
            (name, line.key, place): self._measures[place].formula(piece, line.key)
            for name, lines in self._live.items()
            for line in lines
            for place, piece in enumerate(self._made[name])
            if not line.formula and line.key in piece.wanted
        }
        return {where: formula for where, formula in formulas.items() if formula}

    def _write_body(self, name: str) -> None:
        share = name == "ease" and bool(self._sizes[0].size.ease.share)
        if name == "ease":
            values: list[Content] = [size.size.ease.share or size.size.ease.mm / 10 for size in self._sizes]
        else:
            values = [size.size.body[name] / 10 if name in size.size.body else None for size in self._sizes]
        look = CellLook(Role.INPUT, PERCENT if share else TENTHS, right=True)
        self._sheet.add((name if share else f"{name}, cm", *values), [CellLook(Role.LABEL), *[look] * len(values)])

    def _place(self) -> None:
        """Where each number will stand."""
        row = self._sheet.row
        if self._body:
            self._at |= {EASE if name == "ease" else of_body(name): row + 3 + place for place, name in enumerate(self._body)}
            row += 3 + len(self._body)
        row += 3
        for name in self._live:
            self._at[of_piece(name, "gauge")] = row
            row += 1
        row += 1
        for name, lines in self._live.items():
            for place, line in enumerate(lines, start=row + 1):
                self._at[of_piece(name, line.key)] = place
            row += len(lines) + 2

    def _piece(self, name: str, lines: Sequence[NumberLine]) -> None:
        self._heading(name)
        for line in lines:
            cells = [self._content(name, line, place, piece) for place, piece in enumerate(self._made[name])]
            roles = [Role.INPUT if not line.formula and not isinstance(cell, Formula) else Role.CELL for cell in cells]
            self._sheet.add(
                (line.label, *cells), [CellLook(Role.LABEL), *(CellLook(role, line.numbers, right=True) for role in roles)]
            )
        self._sheet.skip()

    def _heading(self, name: str) -> None:
        alike = self._made[name][0].planned.alike
        heading = [CellLook(Role.HEADING), *[CellLook(Role.HEADING, right=True, wraps=True)] * len(self._sizes)]
        self._sheet.add((f"{name}{f' × {alike}' if alike > 1 else ''}", *(size.name for size in self._sizes)), heading)

    def _content(self, name: str, line: NumberLine, place: int, piece: ShapedPiece) -> Content:
        value, formula = line.of(piece), line.formula or self._wanted.get((name, line.key, place), "")
        if value is None or not formula:
            return value
        return Formula(filled(formula, partial(self._own_cell, column_letters(place + 2), name)), value)

    def _own_cell(self, letter: str, name: str, key: str) -> str:
        return self._cell_of(letter, key if key.startswith("~") or "." in key else of_piece(name, key))

    def _cell_of(self, letter: str, key: str) -> str:
        if key.startswith("~"):
            return f"{letter}${self._at[key]}"
        name, _, own = key.rpartition(".")
        column = _GAUGE.get(own)
        return f"{letter}{self._at[key]}" if column is None else f"{column}${self._at[f'{name}.gauge']}"
