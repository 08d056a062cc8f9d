"""The live numbers of a piece in one or more sizes: from gauge, pattern, ease and lengths to chain, rows, marks and yarn.

The formulas are those of ``craft/pieces``: with E the count that would reach just so, the counts go up from the least in steps,
halves rounded down; marks lie at rows or stitches counted from the hem, the neck in the middle. A formula carries what the
program said. A number that can't be live (rows of unlike heights, where one may stop inside a group) stands as a value.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from logbook.craft.pieces.length import RowRule
from logbook.craft.pieces.options import Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule, takes_edges
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import TENTHS, WHOLE, CellLook, Content, Formula, Role, column_letters
from logbook.sheets.live_cells import Cells, LiveSize
from logbook.sheets.live_inputs import LiveInputs
from logbook.sheets.live_marks import LiveMarks
from logbook.sheets.live_yarn import LiveYarn
from logbook.sheets.rounding import better, in_steps

_SIGNED = "+0.0;-0.0;0.0"


class _Line(NamedTuple):
    key: str
    label: str
    of: Callable[[LiveSize, str], Content]
    numbers: str = TENTHS
    is_input: bool = False


class LiveSizes:
    """Writes the inputs and the table of sizes into a sheet; where each number stands is then told by ``row_of``."""

    def __init__(self, sheet: SheetWriter, plan: PiecePlan, gauges: PieceGauges, sizes: Sequence[LiveSize]) -> None:
        self._sheet, self._plan, self._gauges, self._sizes = sheet, plan, gauges, sizes
        self._rule = chain_rule(plan, gauges)
        self._edges = takes_edges(plan, gauges)
        self._by_rows = plan.sideways or any(size.plan.length_mm is not None for size in sizes)
        self._inputs = LiveInputs(plan, gauges, self._rule, edges=self._edges, by_rows=self._by_rows)
        self._at = Cells()
        self._b, self._c = self._at.b, self._at.c
        self._marks = LiveMarks(plan, self._at, edges=self._edges)
        self._yarn = LiveYarn(plan, self._at)
        self._lines: list[_Line] = []
        self._values: dict[tuple[str, str], object] = {}

    def write(self, heading: str) -> None:
        """The inputs, then the table; ``heading`` stands over the first column of it."""
        first = self._sheet.row + 2
        inputs = self._inputs.all_from(first)
        self._at.rows |= {one.key: first + place for place, one in enumerate(inputs)}
        self._lines = [line for line in self._all_lines() if self._any(line)]
        top = first + len(inputs) + 3
        self._at.rows |= {line.key: top + place for place, line in enumerate(self._lines)}
        self._section("Gauge, pattern and fit: change what is shaded")
        for one in inputs:
            look = CellLook(Role.INPUT if one.is_input else Role.CELL, one.numbers, right=True)
            self._sheet.add((one.label, one.content, one.note), (CellLook(Role.LABEL), look, CellLook(Role.NOTE)))
        self._sheet.skip()
        self._section("What it comes to")
        names = self.names
        looks = [CellLook(Role.HEADING), *[CellLook(Role.HEADING, right=True, wraps=True)] * len(names)]
        row = self._sheet.add((heading, *names), looks)
        if any(names):
            self._sheet.repeat_when_printed(row)
        for line in self._lines:
            self._write_line(line)

    def row_of(self, key: str) -> int | None:
        """The row of a number of the table; None where there is none."""
        return self._at.rows.get(key) if any(line.key == key for line in self._lines) else None

    def value(self, key: str, size: str) -> object:
        """What a number of a size comes to."""
        return self._values.get((key, size))

    @property
    def names(self) -> Sequence[str]:
        """The sizes."""
        return [size.name for size in self._sizes]

    def cell(self, key: str, size: str) -> Formula | None:
        """A number of a size as other sheets take it: a formula that is its cell; None where it has none."""
        row, value = self.row_of(key), self.value(key, size)
        if row is None or not isinstance(value, int | float):
            return None
        letter = column_letters(self.names.index(size) + 2)
        return Formula(f"'{self._sheet.name}'!${letter}${row}", value)

    def _section(self, words: str) -> None:
        self._sheet.add((words, *[""] * len(self._sizes)), CellLook(Role.SECTION), height=21)

    def _write_line(self, line: _Line) -> None:
        cells = [line.of(size, column_letters(place)) for place, size in enumerate(self._sizes, start=2)]
        for size, cell in zip(self._sizes, cells, strict=True):
            self._values[line.key, size.name] = cell.value if isinstance(cell, Formula) else cell
        role = Role.INPUT if line.is_input else Role.CELL
        self._sheet.add((line.label, *cells), [CellLook(Role.LABEL), *[CellLook(role, line.numbers, right=True)] * len(cells)])

    def _any(self, line: _Line) -> bool:
        return any(line.of(size, "B") is not None for size in self._sizes)

    def _all_lines(self) -> list[_Line]:
        """Each number of a size: its formula with what the program said."""
        plan, marks, yarn = self._plan, self._marks, self._yarn
        across, up = ("row", "stitch") if plan.sideways else ("stitch", "row")
        return [
            _Line("body", "body, cm", lambda s, x: _cm(s.plan.body_mm), is_input=True),
            _Line("ease", "ease all round, cm", self._ease, _SIGNED, is_input=True),
            _Line("wanted", "width wanted, cm", self._wanted, is_input=all(s.plan.width_mm is not None for s in self._sizes)),
            _Line("length_wanted", "length wanted, cm", lambda s, x: _cm(s.plan.length_mm), is_input=True),
            _Line("armhole_wanted", "armhole wanted, cm", lambda s, x: _cm(s.plan.armhole_mm), is_input=True),
            _Line("neck_wanted", "neck wanted, cm", lambda s, x: _cm(s.plan.neck_mm), is_input=True),
            _Line("slit_wanted", "slit wanted, cm", lambda s, x: _cm(s.plan.slit_mm), is_input=True),
            _Line("edges", "edge stitches at each side", self._edge_stitches, WHOLE, is_input=True),
            _Line("chain", "chain", self._chain, WHOLE),
            _Line("stitches", "base stitches", self._stitches, WHOLE),
            _Line("repeats_of", "repeats", self._repeats, "General"),
            _Line("rows", "rows", self._rows, WHOLE),
            _Line("width", "width, cm", self._width),
            _Line("off", "off the width wanted, cm", self._off, _SIGNED),
            _Line("sure_of", "give or take of a whole piece, cm", self._sure),
            _Line("before", "width before washing, cm", lambda s, x: self._before(s, x, width=True)),
            _Line("around", "all round, cm", self._around),
            _Line("real_ease", "ease as it comes out, cm", self._real_ease, _SIGNED),
            _Line("length", "length, cm", self._length),
            _Line("length_before", "length before washing, cm", lambda s, x: self._before(s, x, width=False)),
            _Line("slit_at", f"slit ends after {up}", marks.slit_at, WHOLE),
            _Line("slit", "the slit is, cm", marks.slit),
            _Line("armhole_at", f"armhole begins after {up}", marks.armhole_at, WHOLE),
            _Line("armhole", "the armhole is deep, cm", marks.armhole),
            _Line("shoulder", f"each shoulder, {'rows' if across == 'row' else 'stitches'}", marks.shoulder, WHOLE),
            _Line("neck_units", f"neck, {'rows' if across == 'row' else 'stitches'}", marks.neck_units, WHOLE),
            _Line("neck", "the neck is wide, cm", marks.neck),
            _Line("yarn", "yarn, g", yarn.yarn, WHOLE),
            _Line("balls", "balls, with the reserve", yarn.balls, WHOLE),
            _Line("hours", "hours", yarn.hours),
        ]  # fmt: skip

    def _edge_stitches(self, size: LiveSize, x: str) -> Content:
        return size.numbers.edge_stitches if self._edges else None

    def _off(self, size: LiveSize, x: str) -> Content:
        return Formula(f"{self._c('width', x)}-{self._c('wanted', x)}", size.numbers.width.difference_mm / 10)

    def _before(self, size: LiveSize, x: str, *, width: bool) -> Content:
        """Width or length with the pitch as worked."""
        whole = size.numbers.width if width else size.numbers.length
        value = None if whole is None else whole.before_washing_mm
        if value is None:
            return None
        if width is self._plan.sideways:
            if "row_before" not in self._at or (self._plan.any_row and self._plan.row_shares):
                return value / 10
            return Formula(f"{self._c('rows', x)}*{self._b('row_before')}/10+{self._row_ends()}", value / 10)
        if "stitch_before" not in self._at:
            return value / 10
        edges = f"2*{self._c('edges', x)}*{self._b('edge_before')}/10" if "edge_before" in self._at else self._edge_cm(x)
        cloth = f"{self._pattern_stitches(x)}*{self._b('stitch_before')}/10"
        return Formula(f"{cloth}+{edges}+{self._stitch_ends()}", value / 10)

    def _ease(self, size: LiveSize, x: str) -> Content:
        return None if size.plan.body_mm is None or size.plan.width_mm is not None else size.plan.ease.of(size.plan.body_mm) / 10

    def _wanted(self, size: LiveSize, x: str) -> Content:
        value = size.numbers.width.wanted_mm / 10
        if size.plan.width_mm is not None:
            return value
        return Formula(f"({self._c('body', x)}+{self._c('ease', x)})/{self._b('panels')}+2*{self._b('seam')}", value)

    def _stitch_target(self, x: str) -> str:
        return f"({self._c('length_wanted', x)}+{self._b('shoulder_seam')})" if self._plan.sideways else self._c("wanted", x)

    def _stitch_ends(self) -> str:
        return f"({self._b('top')}+{self._b('bottom')})" if self._plan.sideways else f"(2*{self._b('side')})"

    def _row_ends(self) -> str:
        own = f"2*{self._b('side')}" if self._plan.sideways else f"{self._b('top')}+{self._b('bottom')}"
        return f"({own}+{self._b('foundation')})"

    def _edge_cm(self, x: str) -> str:
        return f"2*{self._c('edges', x)}*{self._b('edge_mm')}/10" if self._edges else "0"

    def _stitches(self, size: LiveSize, x: str) -> Content:
        exact = f"(({self._stitch_target(x)}-{self._stitch_ends()}-{self._edge_cm(x)})*10/{self._b('stitch')})"
        edges = f"+2*{self._c('edges', x)}" if self._edges else ""
        rule, choose = self._rule, self._rule.choose
        multiple, plus = self._b("multiple"), self._b("plus")
        if rule.parity is not Parity.ANY:
            least = next(n + rule.stitches_beside for n in (1, 2) if rule.parity.fits(n + rule.stitches_beside))
            return Formula(f"{in_steps(exact, str(least), '2', choose)}{edges}", size.numbers.stitches)
        whole = in_steps(exact, f"({multiple}+{plus})", multiple, choose)
        if rule.half_plus is None or rule.in_round:
            return Formula(f"{whole}{edges}", size.numbers.stitches)
        half = in_steps(exact, f"({multiple}+{rule.multiple // 2 + rule.half_plus})", multiple, choose)
        return Formula(f"{better(exact, whole, half, choose)}{edges}", size.numbers.stitches)

    def _pattern_stitches(self, x: str) -> str:
        own = self._c("stitches", x)
        return f"({own}-2*{self._c('edges', x)})" if self._edges else own

    def _chain(self, size: LiveSize, x: str) -> Content:
        extra = self._b("extra")
        if self._edges:
            extra = f"IF({self._c('edges', x)}>0,{self._b('edge_extra')},{extra})"
        return Formula(f"{self._c('stitches', x)}+{extra}", size.numbers.chain)

    def _repeats(self, size: LiveSize, x: str) -> Content:
        rule, own = self._rule, self._pattern_stitches(x)
        if rule.parity is not Parity.ANY:
            return Formula(f"{own}-{self._b('plus')}", size.numbers.repeats)
        whole = f"({own}-{self._b('plus')})/{self._b('multiple')}"
        if rule.half_plus is None or rule.in_round:
            return Formula(whole, size.numbers.repeats)
        beside = rule.multiple // 2 + rule.half_plus
        half = f"({own}-{beside})/{self._b('multiple')}+0.5"
        return Formula(f"IF(MOD({own}-{self._b('plus')},{self._b('multiple')})=0,{whole},{half})", size.numbers.repeats)

    def _stitch_size(self, x: str) -> str:
        return f"{self._pattern_stitches(x)}*{self._b('stitch')}/10+{self._edge_cm(x)}+{self._stitch_ends()}"

    def _rows(self, size: LiveSize, x: str) -> Content:
        plan, rows = self._plan, size.numbers.rows
        if rows is None or self._gauges.rows is None:
            return None
        if plan.any_row and plan.row_shares:
            return rows
        target = self._c("wanted", x) if plan.sideways else f"({self._c('length_wanted', x)}+{self._b('shoulder_seam')})"
        exact = f"(({target}-{self._row_ends()})*10/{self._b('row')})"
        choose = plan.width_choose if plan.sideways else plan.length_choose
        beside, step = f"({self._b('set_up')}+{self._b('closing')})", "1" if plan.any_row else self._b("in_repeat")
        if plan.row_parity is Parity.ANY:
            return Formula(in_steps(exact, f"({beside}+{step})", step, choose), rows)
        rule = RowRule.of(self._gauges.pattern)
        each = 1 if plan.any_row else rule.in_repeat
        fixed = rule.set_up + rule.closing
        start = fixed + each * next(n for n in (1, 2) if plan.row_parity.fits(fixed + each * n))
        return Formula(in_steps(exact, str(start), str(each * 2 if each % 2 else each), choose), rows)

    def _row_size(self, size: LiveSize, x: str) -> str | None:
        if self._plan.any_row and self._plan.row_shares:
            return None
        return f"{self._c('rows', x)}*{self._b('row')}/10+{self._row_ends()}"

    def _width(self, size: LiveSize, x: str) -> Content:
        formula = self._row_size(size, x) if self._plan.sideways else self._stitch_size(x)
        return size.numbers.width.mm / 10 if formula is None else Formula(formula, size.numbers.width.mm / 10)

    def _length(self, size: LiveSize, x: str) -> Content:
        if size.numbers.length is None:
            return None
        formula = self._stitch_size(x) if self._plan.sideways else self._row_size(size, x)
        return size.numbers.length.mm / 10 if formula is None else Formula(formula, size.numbers.length.mm / 10)

    def _sure(self, size: LiveSize, x: str) -> Content:
        value = size.numbers.width.give_or_take_mm
        if value is None or "sure" not in self._at:
            return _cm(value)
        width = self._c("width", x)
        if self._plan.sideways:
            cloth, edges = f"({width}-{self._row_ends()})", "0"
        else:
            cloth = f"({self._pattern_stitches(x)}*{self._b('stitch')}/10)"
            edges = f"({self._b('edge_sure')}*{self._edge_cm(x)})" if "edge_sure" in self._at else "0"
        return Formula(f"SQRT(({self._b('sure')}*{cloth})^2+{edges}^2+({self._b('drift')}*{width})^2)", value / 10)

    def _around(self, size: LiveSize, x: str) -> Content:
        fit = size.numbers.fit
        if fit is None:
            return None
        return Formula(f"{self._b('panels')}*({self._c('width', x)}-2*{self._b('seam')})", fit.around_mm / 10)

    def _real_ease(self, size: LiveSize, x: str) -> Content:
        fit = size.numbers.fit
        return None if fit is None else Formula(f"{self._c('around', x)}-{self._c('body', x)}", fit.ease_mm / 10)


def _cm(mm: float | None) -> Content:
    return None if mm is None else mm / 10
