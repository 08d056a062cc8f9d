"""What a garment takes in all sizes, in a sheet: grams, metres and balls of each yarn, hours and cost; live from the stitches
of its pieces and what is known of swatches and balls.
"""

from collections.abc import Iterator, Mapping, Sequence

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.together import YarnOf
from logbook.craft.pieces.seams import TAIL_MM, seam_if_named
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import HUNDREDTHS, PERCENT, TENTHS, WHOLE, CellLook, Content, Formula, Heading, Role, column_letters
from logbook.sheets.garment_joins import JoinsSheet
from logbook.sheets.live_garment import LiveGarment
from logbook.sheets.live_measures import of_piece
from logbook.sheets.published_beside import frame_differing, published_heading

HEADINGS = (
    Heading("Size", 18), Heading("Yarn", 26), Heading("Colour", 16), Heading("Grams", 10, WHOLE, True),
    Heading("Metres", 10, WHOLE, True), Heading("Balls", 9, WHOLE, True), Heading("Hours", 9, TENTHS, True),
    Heading("Cost", 11, HUNDREDTHS, True), Heading("", 8),
)  # fmt: skip
_PIECES = ("Piece", "its yarn", "", "100 sts of a row weigh, g", "used beyond the swatch", "100 sts take, minutes")
_BALLS = ("Yarn", "", "", "a ball weighs, g", "a ball holds, m", "kept in reserve", "", "a ball costs")


class YarnSheet:
    """Writes a line for each size and yarn, and below them what they are reckoned from, to be changed."""

    def __init__(
        self,
        sheet: SheetWriter,
        sizes: Sequence[GarmentInSize],
        cloths: Mapping[str, Cloth],
        live: LiveGarment,
        joins: JoinsSheet,
    ) -> None:
        self._sheet, self._sizes, self._cloths, self._live, self._joins = sheet, sizes, cloths, live, joins
        self._pieces = [piece for piece in sizes[0].pieces if cloths[piece.name].gauges.weight is not None or sizes[0].time]
        self._yarns = {self._key(self._cloths[piece.name]): self._cloths[piece.name] for piece in self._pieces}
        self._of_piece: dict[str, int] = {}
        self._of_yarn: dict[tuple[str, str], int] = {}

    def write(self, published: str = "") -> None:
        """The lines, then the inputs; if they were ``published`` on a date, the lines once more as values that stay."""
        count = sum(len(size.yarn) for size in self._sizes)
        first = self._sheet.row + 2
        below = first + count + 3
        self._of_piece = {piece.name: below + place for place, piece in enumerate(self._pieces)}
        below += len(self._pieces) + 2
        self._of_yarn = {key: below + place for place, key in enumerate(self._yarns)}
        self._sheet.table(HEADINGS, self._lines(first), count)
        if self._pieces:
            self._inputs()
        if published and count:
            self._published(published, first, count)

    def _published(self, date: str, first: int, count: int) -> None:
        self._sheet.skip()
        published_heading(self._sheet, f"on {date}: framed where the sheet now comes to another number", 8)
        heads = [CellLook(Role.HEADING, right=heading.right, wraps=True) for heading in HEADINGS]
        top = self._sheet.add([heading.name for heading in HEADINGS], heads) + 1
        for line in self._lines(first):
            values = [cell.value if isinstance(cell, Formula) else cell for cell in line]
            self._sheet.add(values, [heading.look for heading in HEADINGS])
        for place, heading in enumerate(HEADINGS, 1):
            if heading.numbers in (WHOLE, TENTHS, HUNDREDTHS):
                letter, decimals = column_letters(place), len(heading.numbers.partition(".")[2])
                frame_differing(self._sheet, letter, letter, top, first, rows=count, decimals=decimals)

    @staticmethod
    def _key(cloth: Cloth) -> tuple[str, str]:
        return cloth.gauges.yarn.name, cloth.colour

    def _inputs(self) -> None:
        right = CellLook(Role.HEADING, right=True, wraps=True)
        heads = [CellLook(Role.HEADING)] * 3 + [right] * 5
        self._sheet.skip()
        self._sheet.add(("Worked out from these: change what is shaded", *[""] * 7), CellLook(Role.SECTION), height=21)
        self._sheet.add(_PIECES, heads[: len(_PIECES)])
        for piece in self._pieces:
            gauges = self._cloths[piece.name].gauges
            weight = gauges.weight.grams * 100 if gauges.weight else None
            minutes = gauges.minutes_a_stitch * gauges.drift.minutes.factor * 100 if gauges.minutes_a_stitch else None
            cells = (
                piece.name,
                gauges.yarn.name,
                self._cloths[piece.name].colour,
                weight,
                gauges.drift.grams.factor - 1,
                minutes,
            )
            self._sheet.add(cells, [CellLook(Role.LABEL)] * 3 + [_input("0.000"), _input(PERCENT), _input(HUNDREDTHS)])
        self._sheet.skip()
        self._sheet.add(_BALLS, heads)
        for (name, colour), cloth in self._yarns.items():
            yarn, reserve = cloth.gauges.yarn, cloth.gauges.assumptions.reserve
            ball = (name, colour, "", yarn.ball_grams, yarn.ball_metres, reserve, "", yarn.ball_price)
            looks = [_input("General"), _input("General"), _input(PERCENT), CellLook(), _input(HUNDREDTHS)]
            self._sheet.add(ball, [CellLook(Role.LABEL)] * 3 + looks)

    def _lines(self, first: int) -> Iterator[Sequence[Content]]:
        row = first
        for place, size in enumerate(self._sizes):
            for number, of in enumerate(size.yarn):
                yield self._line(place, size, of, row, whole=number == 0)
                row += 1

    def _line(self, place: int, size: GarmentInSize, of: YarnOf, row: int, *, whole: bool) -> Sequence[Content]:
        """``whole``: whether it has the hours and cost of the whole size, as the first of its lines does."""
        key = (of.yarn, of.colour)
        at, yarn = self._of_yarn[key], self._yarns[key].gauges.yarn
        of_it = [
            piece
            for piece in size.pieces
            if self._cloths[piece.name].gauges.weight and self._key(self._cloths[piece.name]) == key
        ]
        grams = "+".join(self._grams(place, size, piece, at if yarn.ball_metres and yarn.ball_grams else 0) for piece in of_it)
        needed = of.needed
        metres = None if needed.metres is None else Formula(f"D{row}*E{at}/D{at}", needed.metres)
        balls = None if needed.balls is None else Formula(f"ROUNDUP(D{row}*(1+F{at})/D{at}-0.000000001,0)", needed.balls)
        hours = cost = currency = None
        if whole and size.hours is not None:
            minutes = "+".join(
                f"F{self._of_piece[one.name]}/100*{self._worked(place, one)}*{one.planned.alike}" for one in size.pieces
            )
            hours = Formula(f"({minutes})/60", size.hours)
        if whole and size.cost:
            prices = "+".join(f"F{row + n}*H{self._of_yarn[one.yarn, one.colour]}" for n, one in enumerate(size.yarn))
            cost, currency = Formula(prices, size.cost[0]), size.cost[1]
        return (size.name, of.yarn, of.colour, Formula(grams, needed.grams), metres, balls, hours, cost, currency)

    def _worked(self, place: int, piece: ShapedPiece) -> str:
        """All stitches of one such piece."""
        if piece.name in self._live.live:
            return self._live.cell(place, of_piece(piece.name, "worked"))
        return str(piece.stitches_worked)

    def _grams(self, place: int, size: GarmentInSize, piece: ShapedPiece, ball: int) -> str:
        """Of all such pieces, with the seams sewn with their yarn where it is known how long a ``ball`` (its row) is."""
        row, alike = self._of_piece[piece.name], piece.planned.alike
        seam = seam_if_named(piece.planned.seam)
        own = [number for number, join in enumerate(size.joins) if join.planned.of == piece.name and not join.goes_on]
        thread = ""
        if seam is not None and own and ball:
            each = "+".join(f"{seam.thread}*10*{self._joins.length(place, number)}+{2 * TAIL_MM}" for number in own)
            thread = f"+{alike}*({each})/1000*D{ball}/E{ball}"
        return f"(D{row}/100*{self._worked(place, piece)}*{alike}{thread})*(1+E{row})"


def _input(numbers: str) -> CellLook:
    return CellLook(Role.INPUT, numbers, right=True)
