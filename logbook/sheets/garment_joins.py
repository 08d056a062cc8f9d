"""The joins of a garment in all sizes, in a sheet: both lengths, whether they fit, how to sew them. Live where its pieces are."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import EASES, FITS, Joined, JoinVerdict, counts_must_agree
from logbook.craft.garments.rates import Rate, rates_by_share
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import TENTHS, Content, Formula, Heading
from logbook.sheets.live_edges import LiveEdge
from logbook.sheets.live_garment import LiveGarment
from logbook.sheets.live_measures import filled, of_piece

HEADINGS = (
    Heading("Size", 12), Heading("Join", 44, wraps=True), Heading("First, cm", 11, TENTHS, True),
    Heading("Second, cm", 11, TENTHS, True), Heading("Off, cm", 10, TENTHS, True), Heading("Verdict", 11),
    Heading("Sewn", 12),
)  # fmt: skip
RATES = "Rates"
"""The sheet that is out of sight, by which formulas find how edges are sewn."""


class JoinsSheet:
    """Writes the joins of the sizes; where the first length of each stands is then told by ``length``."""

    def __init__(self, sheet: SheetWriter, sheet_name: str, sizes: Sequence[GarmentInSize], live: LiveGarment) -> None:
        self._sheet, self._name, self._sizes, self._live = sheet, sheet_name, sizes, live
        self._rows: dict[tuple[int, int], int] = {}

    def length(self, place: int, join: int) -> str:
        """The cell, as other sheets call it, of how long the first edge of a join is in cm, in the size at that place."""
        return f"'{self._name}'!C{self._rows[place, join]}"

    def write(self) -> None:
        """A line for each join of each size."""
        every = [(place, number, join) for place, size in enumerate(self._sizes) for number, join in enumerate(size.joins)]
        first = self._sheet.row + 2
        self._rows = {(place, number): first + row for row, (place, number, _) in enumerate(every)}
        self._sheet.table(HEADINGS, self._joins(every), len(every))

    @property
    def looks_up_rates(self) -> bool:
        """Whether a join finds its rate on the sheet of rates."""
        return any(self._edges(join) for size in self._sizes for join in size.joins)

    def _joins(self, every: Sequence[tuple[int, int, Joined]]) -> Iterator[Sequence[Content]]:
        for place, number, join in every:
            planned, rate = join.planned, _rate_words(join.rate)
            words = f"{planned.edge} of {planned.of} to {planned.at} of {' and '.join(planned.to)}"
            values: list[Content] = [join.a.mm / 10, join.b_mm / 10, join.difference_mm / 10, join.verdict.value, rate]
            if self._edges(join):
                formulas = self._formulas(place, number, join)
                values = [Formula(text, value) for text, value in zip(formulas, values, strict=True)]  # type: ignore[arg-type]
            yield (self._sizes[place].name, words, *values)

    def _edges(self, join: Joined) -> tuple[tuple[str, LiveEdge], ...]:
        """The edges that are joined, each with its piece, the first first; none if one of them is not live."""
        names = ((join.planned.of, join.planned.edge), *((name, join.planned.at) for name in join.planned.to))
        found = [(name, self._live.edges.get(name, {}).get(edge)) for name, edge in names]
        return tuple((name, edge) for name, edge in found if edge is not None) if all(edge for _, edge in found) else ()

    def _formulas(self, place: int, number: int, join: Joined) -> tuple[str, ...]:
        edges, row, size = self._edges(join), self._rows[place, number], self._sizes[place]
        (first, a), others = edges[0], edges[1:]
        twice = 2 if len(others) == 1 and join.planned.at == "armhole" == join.b_measure else 1

        def of(name: str, text: str) -> str:
            return filled(text, lambda key: self._live.cell(place, of_piece(name, key)))

        a_count = of(first, a.units)
        b_mm, b_count = (
            f"{twice}*({'+'.join(of(name, text) for name, text in texts)})"
            for texts in ([(name, edge.mm) for name, edge in others], [(name, edge.units) for name, edge in others])
        )
        steps = ",".join(of(name, edge.step) for name, edge in edges)
        shapes = [size.piece(name) for name in (join.planned.of, *join.planned.to)]
        if counts_must_agree(join.planned, shapes[0], shapes[1:]) and join.a.along.value == join.b_along:
            verdict = f'IF({a_count}={b_count},"{JoinVerdict.FITS}","{JoinVerdict.TROUBLE}")'
        else:
            off, other = f"ABS(E{row})", f"D{row}"
            fits = f"{off}<=MAX({FITS}*{other},MAX({steps})/20)+0.0000000001"
            eases = f'IF({off}<={EASES}*{other}+0.0000000001,"{JoinVerdict.EASE_IN}","{JoinVerdict.TROUBLE}")'
            verdict = f'IF({fits},"{JoinVerdict.FITS}",{eases})'
        shares, words = (f"{RATES}!${column}$1:${column}${len(rates_by_share())}" for column in "AB")
        met = self._meets(place, join, size)
        return (
            f"{of(first, a.mm)}/10",
            f"{b_mm}/10",
            f"C{row}-D{row}",
            f'IF({met},{verdict},"{JoinVerdict.TROUBLE}")' if met else verdict,
            f"LOOKUP({a_count}/({b_count}),{shares},{words})",
        )

    def _meets(self, place: int, join: Joined, size: GarmentInSize) -> str:
        """That the straight rows of a sleeve meet each inset of the armholes; "" where there is none."""
        if join.planned.at != "armhole":
            return ""
        of, conditions = size.piece(join.planned.of), []

        def cell(name: str, key: str) -> str:
            return self._live.cell(place, of_piece(name, key))

        has = f"{cell(of.name, 'even')}*{cell(of.name, 'q')}" if "straight" in of.wanted else "0"
        for other in join.planned.to:
            if size.piece(other).wanted.get("inset"):
                count, p = cell(other, "inset sts"), cell(other, "p")
                near = f"MAX({FITS}*{count}*{p},{cell(of.name, 'q')}/2,{p}/2)+0.000000001"
                conditions.append(f"OR({count}=0,ABS({has}-{count}*{p})<={near})")
        return f"AND({','.join(conditions)})" if conditions else ""


def write_rates(sheet: SheetWriter) -> None:
    """Every rate, with the share from which on it is the nearest before it."""
    for share, rate in rates_by_share():
        sheet.add((share, _rate_words(rate)))


def _rate_words(rate: Rate) -> str:
    return f"{rate[0]} to {rate[1]}"
