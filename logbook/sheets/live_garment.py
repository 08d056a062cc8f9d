"""The live numbers of a garment's pieces in all sizes, in a sheet: the gauge of each piece and its measures can be changed.

A formula carries what the program said. Of pieces that can't be live the numbers stand as values elsewhere.
"""

from collections.abc import Mapping, Sequence

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import HUNDREDTHS, WHOLE, CellLook, Content, Formula, Role, column_letters
from logbook.sheets.live_shapes import NumberLine, is_live, lines_of


class LiveGarment:
    """Writes the gauges of the pieces, which can be changed, and below them each piece in all sizes."""

    def __init__(self, sheet: SheetWriter, sizes: Sequence[GarmentInSize], cloths: Mapping[str, Cloth]) -> None:
        self._sheet, self._sizes, self._cloths = sheet, sizes, cloths
        self._made = {piece.name: [size.piece(piece.name) for size in sizes] for piece in sizes[0].pieces}
        self._live = {name: lines_of(made, cloths[name]) for name, made in self._made.items() if is_live(made, cloths[name])}
        self._at: dict[str, int] = {}

    @property
    def live(self) -> tuple[str, ...]:
        """The pieces that are live."""
        return tuple(self._live)

    def write(self) -> None:
        """The gauges, then the pieces that are live."""
        self._place()
        self._sheet.add(("Gauge: change what is shaded", *[""] * max(len(self._sizes), 3)), CellLook(Role.SECTION), height=21)
        right = CellLook(Role.HEADING, right=True, wraps=True)
        self._sheet.add(("", "a stitch, mm", "a row, mm", "extra chains"), (CellLook(Role.HEADING), right, right, right))
        for name in self._live:
            made = self._made[name][0]
            extra = made.chain - made.foundation if made.chain is not None else None
            inputs = [CellLook(Role.INPUT, numbers, right=True) for numbers in (HUNDREDTHS, HUNDREDTHS, WHOLE)]
            cells = (name, made.stitch_mm, made.row_mm, *(() if extra is None else (extra,)))
            self._sheet.add(cells, [CellLook(Role.LABEL), *inputs][: len(cells)])
        self._sheet.skip()
        for name, lines in self._live.items():
            self._piece(name, lines)

    def _place(self) -> None:
        """Where each number will stand."""
        row = self._sheet.row + 3
        for name in self._live:
            self._at[f"{name}.gauge"] = row
            row += 1
        row += 1
        for name, lines in self._live.items():
            for place, line in enumerate(lines, start=row + 1):
                self._at[f"{name}.{line.key}"] = place
            row += len(lines) + 2

    def _piece(self, name: str, lines: Sequence[NumberLine]) -> None:
        alike = self._made[name][0].wish.alike
        heading = [CellLook(Role.HEADING), *[CellLook(Role.HEADING, right=True, wraps=True)] * len(self._sizes)]
        self._sheet.add((f"{name}{f' × {alike}' if alike > 1 else ''}", *(size.name for size in self._sizes)), heading)
        for line in lines:
            role = Role.CELL if line.formula else Role.INPUT
            cells = [self._cell(name, line, place, piece) for place, piece in enumerate(self._made[name], start=2)]
            self._sheet.add(
                (line.label, *cells), [CellLook(Role.LABEL), *[CellLook(role, line.numbers, right=True)] * len(cells)]
            )
        self._sheet.skip()

    def _cell(self, name: str, line: NumberLine, place: int, piece: ShapedPiece) -> Content:
        value = line.of(piece)
        if value is None or not line.formula:
            return value
        letter = column_letters(place)
        own = {key: f"{letter}{self._at[f'{name}.{key}']}" for key in (one.key for one in self._live[name])}
        gauge = self._at[f"{name}.gauge"]
        own |= {"p": f"$B${gauge}", "q": f"$C${gauge}", "extra": f"$D${gauge}"}
        text = line.formula
        for other in self._live:
            text = text.replace(f"{{{other}.p}}", f"$B${self._at[f'{other}.gauge']}")
            for key in ("body", "arm"):
                text = text.replace(f"{{{other}.{key}}}", f"{letter}{self._at.get(f'{other}.{key}', 1)}")
        for key, cell in own.items():
            text = text.replace(f"{{{key}}}", cell)
        return Formula(text, value)
