"""The live numbers of a piece in one or more sizes: from gauge, pattern, ease and lengths to chain, rows, marks and yarn.

The formulas are those of ``craft/pieces``: with E the count that would reach just so, the counts go up from the least in steps,
halves rounded down; marks lie at rows or stitches counted from the hem, the neck in the middle. A formula carries what the
program said. A number that can't be live (rows of unlike heights, where one may stop inside a group) stands as a value.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from logbook.craft.pieces.length import FOUNDATION_MM, RowRule
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule, takes_edges
from logbook.craft.pieces.seams import TAIL_MM, seam_called
from logbook.craft.swatches.conditions import Direction
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import PERCENT, TENTHS, WHOLE, Content, Formula, Look, Role, column_letters

SHOWN = 10
"""Repeats or rows that the gauge is said by."""
_NO_FIT = "does not fit"
_SIGNED = "+0.0;-0.0;0.0"


class LiveSize(NamedTuple):
    """One size: its name, its own plan, and what came of it."""

    name: str
    plan: PiecePlan
    numbers: PieceNumbers


class _Input(NamedTuple):
    key: str
    label: str
    content: Content
    numbers: str = TENTHS
    is_input: bool = True
    note: str = ""


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
        self._at: dict[str, int] = {}
        self._lines: list[_Line] = []
        self._values: dict[tuple[str, str], object] = {}

    def write(self, heading: str) -> None:
        """The inputs, then the table; ``heading`` stands over the first column of it."""
        inputs = self._inputs()
        first = self._sheet.row + 2
        self._at = {one.key: first + place for place, one in enumerate(inputs)}
        self._lines = [line for line in self._all_lines() if self._any(line)]
        top = first + len(inputs) + 3
        self._at |= {line.key: top + place for place, line in enumerate(self._lines)}
        self._section("Gauge, pattern and fit: change what is shaded")
        for one in inputs:
            look = Look(Role.INPUT if one.is_input else Role.CELL, one.numbers, right=True)
            self._sheet.add((one.label, one.content, one.note), (Look(Role.LABEL), look, Look(Role.NOTE)))
        self._sheet.skip()
        self._section("What comes of it")
        names = [size.name for size in self._sizes]
        self._sheet.add((heading, *names), [Look(Role.HEADING), *[Look(Role.HEADING, right=True, wraps=True)] * len(names)])
        for line in self._lines:
            self._write_line(line)

    def row_of(self, key: str) -> int | None:
        """The row of a number of the table; None where there is none."""
        return self._at.get(key) if any(line.key == key for line in self._lines) else None

    def value(self, key: str, size: str) -> object:
        """What a number of a size comes to."""
        return self._values.get((key, size))

    def _section(self, words: str) -> None:
        self._sheet.add((words, *[""] * len(self._sizes)), Look(Role.SECTION), height=21)

    def _write_line(self, line: _Line) -> None:
        cells = [line.of(size, column_letters(place)) for place, size in enumerate(self._sizes, start=2)]
        for size, cell in zip(self._sizes, cells, strict=True):
            self._values[line.key, size.name] = cell.value if isinstance(cell, Formula) else cell
        role = Role.INPUT if line.is_input else Role.CELL
        self._sheet.add((line.label, *cells), [Look(Role.LABEL), *[Look(role, line.numbers, right=True)] * len(cells)])

    def _any(self, line: _Line) -> bool:
        return any(line.of(size, "B") is not None for size in self._sizes)

    def _b(self, key: str) -> str:
        return f"$B${self._at.get(key, 1)}"

    def _c(self, key: str, letter: str) -> str:
        return f"{letter}{self._at.get(key, 1)}"

    def _inputs(self) -> list[_Input]:
        gauges, rule = self._gauges, self._rule
        stitch = gauges.stitches
        found = [
            _Input("repeats", "repeats measured", SHOWN, "General"),
            _Input("reach", "they reach, cm", stitch.pitch_mm * rule.multiple * SHOWN / 10, "0.00"),
            _Input("multiple", "multiple: stitches in a repeat", rule.multiple, WHOLE),
            _Input("plus", "plus: base stitches beside whole repeats", rule.stitches_beside, WHOLE),
            _Input("extra", "extra chains", rule.chains_beside or 0, WHOLE),
        ]
        if self._edges and gauges.edge is not None:
            found += [
                _Input("edge_mm", "one edge stitch, mm", gauges.edge.stitch_mm, "0.00"),
                _Input("edge_extra", "extra chains with edge stitches", self._edge_extra(), WHOLE),
            ]
        if self._by_rows and gauges.rows is not None:
            found += [
                _Input("rows_measured", "rows measured", SHOWN, "General"),
                _Input("rows_reach", "they reach, cm", gauges.rows.pitch_mm * SHOWN / 10, "0.00"),
                _Input("set_up", "rows to set up", gauges.pattern.set_up_rows or 0, WHOLE),
                _Input("in_repeat", "rows in a repeat", gauges.pattern.rows_in_repeat or 1, WHOLE),
                _Input("closing", "rows to close", gauges.pattern.closing_rows or 0, WHOLE),
            ]
        found += self._before_inputs()
        found += self._fit_inputs()
        found += self._sure_inputs()
        found.append(
            _Input(
                "stitch", "one stitch, mm", Formula("{reach}*10/{repeats}/{multiple}", stitch.pitch_mm), "0.00", is_input=False
            )
        )
        if self._by_rows and gauges.rows is not None:
            found.append(
                _Input("row", "one row, mm", Formula("{rows_reach}*10/{rows_measured}", gauges.rows.pitch_mm), "0.00", False)
            )
        seam = self._seam(found)
        first = self._sheet.row + 2
        places = {one.key: f"$B${first + place}" for place, one in enumerate([*found, *seam])}
        return [_placed(one, places) for one in (*found, *seam)]

    def _edge_extra(self) -> int:
        edge = self._gauges.edge
        return 0 if edge is None or edge.extra_chains is None or self._rule.foundation_stitches else edge.extra_chains

    def _before_inputs(self) -> list[_Input]:
        gauges = self._gauges
        edge, rows = (gauges.edge if self._edges else None), (gauges.rows if self._by_rows else None)
        return [
            _Input(key, label, mm, "0.00")
            for key, label, mm in (
                ("stitch_before", "one stitch before washing, mm", gauges.stitches.before_washing_mm),
                ("edge_before", "one edge stitch before washing, mm", edge.before_washing_mm if edge else None),
                ("row_before", "one row before washing, mm", rows.before_washing_mm if rows else None),
            )
            if mm is not None
        ]

    def _fit_inputs(self) -> list[_Input]:
        plan = self._plan
        return [
            _Input("panels", "panels round the body", plan.panels_joined, WHOLE),
            _Input("side", "edging at each side, cm", plan.side_edging_mm / 10),
            _Input("top", "edging at the top, cm", plan.top_edging_mm / 10),
            _Input("bottom", "edging at the bottom, cm", plan.bottom_edging_mm / 10),
            _Input("shoulder_seam", "a shoulder seam takes, cm", plan.shoulder_seam_mm / 10),
            _Input("foundation", "the chain's own height, cm", FOUNDATION_MM / 10 if plan.foundation_chain else 0.0),
        ]

    def _sure_inputs(self) -> list[_Input]:
        gauges, yarn = self._gauges, self._gauges.yarn
        found = []
        if self._across_gauge_sure() is not None:
            found.append(_Input("sure", "the swatch says give or take", self._across_gauge_sure(), PERCENT))
            if self._edges and gauges.edge is not None and gauges.edge.give_or_take is not None:
                found.append(_Input("edge_sure", "give or take of the edge stitch", gauges.edge.give_or_take, PERCENT))
            across = gauges.drift.of(Direction.ROWS if self._plan.sideways else Direction.STITCHES)
            found.append(_Input("drift", "a whole piece strays by up to", across.give_or_take, PERCENT))
        if gauges.weight is not None and self._by_rows:
            found.append(_Input("weight", "100 stitches of one row weigh, g", gauges.weight.grams * 100, "0.000"))
            used = gauges.drift.grams.factor - 1
            if used:
                found.append(_Input("used", "yarn used beyond the swatch, as learned", used, PERCENT))
            found.append(_Input("reserve", "yarn kept in reserve", gauges.assumptions.reserve, PERCENT))
            if yarn.ball_grams:
                found.append(_Input("ball_g", "a ball weighs, g", yarn.ball_grams, "General"))
            if yarn.ball_grams and yarn.ball_metres:
                found.append(_Input("ball_m", "a ball holds, m", yarn.ball_metres, "General"))
        return found

    def _across_gauge_sure(self) -> float | None:
        gauges = self._gauges
        if self._plan.sideways:
            return gauges.rows.give_or_take if gauges.rows else None
        edge_known = not self._edges or gauges.edge is None or gauges.edge.give_or_take is not None
        return gauges.stitches.give_or_take if edge_known else None

    def _seam(self, before: Sequence[_Input]) -> list[_Input]:
        """What a seam takes from each joined edge: a length that was said, or a share of the stitch across it."""
        plan, gauges = self._plan, self._gauges
        pitch = gauges.pitch(plan.round_body) if any(one.key == "row" or not plan.sideways for one in before) else 0.0
        value = plan.seam_allowance(pitch) / 10
        if plan.seam_mm is None and plan.seam and not plan.in_round and value:
            share = plan.seam_allowance(1.0)
            across = "{row}" if plan.sideways else "{stitch}"
            return [
                _Input(
                    "seam", f"a {plan.seam} seam takes from each edge, cm", Formula(f"{share}*{across}/10", value), "0.00", False
                )
            ]
        return [_Input("seam", "a seam takes from each edge, cm", value, "0.00")]

    # Each number of a size: its formula with what the program said.

    def _all_lines(self) -> list[_Line]:
        plan = self._plan
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
            _Line("slit_at", f"slit ends after {up}", self._slit_at, WHOLE),
            _Line("slit", "the slit is, cm", self._slit),
            _Line("armhole_at", f"armhole begins after {up}", self._armhole_at, WHOLE),
            _Line("armhole", "the armhole is deep, cm", self._armhole),
            _Line("shoulder", f"each shoulder, {'rows' if across == 'row' else 'stitches'}", self._shoulder, WHOLE),
            _Line("neck_units", f"neck, {'rows' if across == 'row' else 'stitches'}", self._neck_units, WHOLE),
            _Line("neck", "the neck is wide, cm", self._neck),
            _Line("yarn", "yarn, g", self._yarn, WHOLE),
            _Line("balls", "balls, with the reserve", self._balls, WHOLE),
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
            return Formula(f"{_nearest(exact, str(least), '2', choose)}{edges}", size.numbers.stitches)
        whole = _nearest(exact, f"({multiple}+{plus})", multiple, choose)
        if rule.half_plus is None or rule.in_round:
            return Formula(f"{whole}{edges}", size.numbers.stitches)
        half = _nearest(exact, f"({multiple}+{rule.multiple // 2 + rule.half_plus})", multiple, choose)
        return Formula(f"{_better(exact, whole, half, choose)}{edges}", size.numbers.stitches)

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
            return Formula(_nearest(exact, f"({beside}+{step})", step, choose), rows)
        rule = RowRule.of(self._gauges.pattern)
        each = 1 if plan.any_row else rule.in_repeat
        fixed = rule.set_up + rule.closing
        start = fixed + each * next(n for n in (1, 2) if plan.row_parity.fits(fixed + each * n))
        return Formula(_nearest(exact, str(start), str(each * 2 if each % 2 else each), choose), rows)

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
        return (
            None
            if fit is None
            else Formula(f"{self._b('panels')}*({self._c('width', x)}-2*{self._b('seam')})", fit.around_mm / 10)
        )

    def _real_ease(self, size: LiveSize, x: str) -> Content:
        fit = size.numbers.fit
        return None if fit is None else Formula(f"{self._c('around', x)}-{self._c('body', x)}", fit.ease_mm / 10)

    def _axis(self, x: str, *, up: bool) -> "_Axis":
        """The axis up the body or across it; lengths as formulas in cm."""
        along_stitches = up is self._plan.sideways
        start, end = (self._b("bottom"), self._b("top")) if up else ("0", "0")
        if along_stitches:
            wider = f"{self._c('edges', x)}*({self._b('edge_mm')}-{self._b('stitch')})/10" if self._edges else "0"
            first = self._c("edges", x) if self._edges else "0"
            return _Axis(
                self._c("stitches", x), self._b("stitch"), self._b("multiple"), first, f"({start}+{wider})", f"({end}+{wider})"
            )
        below = f"({start}+{self._b('foundation')})" if up else "0"
        return _Axis(self._c("rows", x), self._b("row"), self._b("in_repeat"), self._b("set_up"), below, end)

    def _snapped(self, at: str, axis: "_Axis") -> str:
        return f"({axis.first}+{axis.step}*{_rounded(f'({at}-{axis.first})/{axis.step}')})" if self._plan.snap else at

    def _mark(self, at: str, axis: "_Axis", value: int) -> Content:
        return Formula(f'IF(AND({at}>0,{at}<{axis.units}),{at},"{_NO_FIT}")', value)

    def _armhole_at(self, size: LiveSize, x: str) -> Content:
        if size.numbers.armhole is None:
            return None
        axis = self._axis(x, up=True)
        depth = f"({self._c('armhole_wanted', x)}+{self._b('shoulder_seam')}-{axis.end})"
        return self._mark(
            self._snapped(f"({axis.units}-{_rounded(f'{depth}*10/{axis.pitch}')})", axis), axis, size.numbers.armhole.at
        )

    def _armhole(self, size: LiveSize, x: str) -> Content:
        if size.numbers.armhole is None:
            return None
        axis, at = self._axis(x, up=True), self._c("armhole_at", x)
        true = f"({axis.units}-{at})*{axis.pitch}/10-{self._b('shoulder_seam')}+{axis.end}"
        return Formula(f'IF(ISNUMBER({at}),{true},"")', size.numbers.armhole.true_mm / 10)

    def _slit_at(self, size: LiveSize, x: str) -> Content:
        if size.numbers.slit is None:
            return None
        axis = self._axis(x, up=True)
        at = self._snapped(_rounded(f"({self._c('slit_wanted', x)}-{axis.start})*10/{axis.pitch}"), axis)
        return self._mark(at, axis, size.numbers.slit.at)

    def _slit(self, size: LiveSize, x: str) -> Content:
        if size.numbers.slit is None:
            return None
        axis, at = self._axis(x, up=True), self._c("slit_at", x)
        return Formula(f'IF(ISNUMBER({at}),{at}*{axis.pitch}/10+{axis.start},"")', size.numbers.slit.true_mm / 10)

    def _shoulder(self, size: LiveSize, x: str) -> Content:
        if size.numbers.neck is None:
            return None
        axis, wanted = self._axis(x, up=False), self._c("neck_wanted", x)
        if self._plan.snap:
            most = f"INT((INT(({axis.units}-2*{axis.first})/{axis.step})-1)/2)"
            exact = f"((({axis.units}-{wanted}*10/{axis.pitch})/2-{axis.first})/{axis.step})"
            own = f"({axis.first}+{axis.step}*MAX(1,MIN({most},ROUNDDOWN(ROUND({exact}+0.5,9),0))))"
        else:
            odd = f"MOD({axis.units},2)"
            pairs = _rounded(f"({wanted}*10/{axis.pitch}-{odd})/2")
            own = f"(({axis.units}-{odd}-2*{pairs})/2)"
        return Formula(f'IF(AND({own}>=1,{axis.units}-2*{own}>=1),{own},"{_NO_FIT}")', size.numbers.neck.shoulder)

    def _neck_units(self, size: LiveSize, x: str) -> Content:
        if size.numbers.neck is None:
            return None
        axis, shoulder = self._axis(x, up=False), self._c("shoulder", x)
        return Formula(f'IF(ISNUMBER({shoulder}),{axis.units}-2*{shoulder},"{_NO_FIT}")', size.numbers.neck.units)

    def _neck(self, size: LiveSize, x: str) -> Content:
        if size.numbers.neck is None:
            return None
        axis, units = self._axis(x, up=False), self._c("neck_units", x)
        return Formula(f'IF(ISNUMBER({units}),{units}*{axis.pitch}/10,"")', size.numbers.neck.begins.true_mm / 10)

    def _yarn(self, size: LiveSize, x: str) -> Content:
        yarn = size.numbers.yarn
        if yarn is None or "weight" not in self._at:
            return None if yarn is None else yarn.grams
        stitches, rows = self._c("stitches", x), self._c("rows", x)
        row_ends = f"(2*{self._b('side')})" if self._plan.sideways else f"({self._b('top')}+{self._b('bottom')})"
        one = f"({stitches}*{rows}+{self._stitch_ends()}*10/{self._b('stitch')}*{rows}+{stitches}*{row_ends}*10/{self._b('row')})"
        thread = self._thread(size, x)
        per_gram = f"/1000*{self._b('ball_g')}/{self._b('ball_m')}" if thread and "ball_m" in self._at else ""
        seams = f"+({thread}){per_gram}" if per_gram else ""
        used = f"*(1+{self._b('used')})" if "used" in self._at else ""
        return Formula(f"({self._b('weight')}/100*{one}*{self._b('panels')}{seams}){used}", yarn.grams)

    def _thread(self, size: LiveSize, x: str) -> str:
        """Yarn of the seams, in mm."""
        plan = size.plan
        if not plan.seam or plan.in_round or size.numbers.length is None:
            return ""
        factor, tails = seam_called(plan.seam).thread, 2 * TAIL_MM
        open_sides = "".join(
            f"-N({self._c(key, x)})" for key, mark in (("slit", size.numbers.slit), ("armhole", size.numbers.armhole)) if mark
        )
        thread = f"{self._b('panels')}*({factor}*10*MAX(0,{self._c('length', x)}{open_sides})+{tails})"
        if size.numbers.neck is not None:
            shoulders = f"2*({factor}*10*({self._c('width', x)}-N({self._c('neck', x)}))/2+{tails})"
            thread += f"+IF({self._b('panels')}=2,{shoulders},0)"
        return thread

    def _balls(self, size: LiveSize, x: str) -> Content:
        yarn = size.numbers.yarn
        if yarn is None or yarn.balls is None or "ball_g" not in self._at:
            return None
        return Formula(f"ROUNDUP({self._c('yarn', x)}*(1+{self._b('reserve')})/{self._b('ball_g')}-0.000000001,0)", yarn.balls)


class _Axis(NamedTuple):
    units: str
    pitch: str
    step: str
    first: str
    start: str
    end: str


def _placed(one: _Input, places: Mapping[str, str]) -> _Input:
    if not isinstance(one.content, Formula):
        return one
    return one._replace(content=Formula(one.content.text.format(**places), one.content.value))


def _cm(mm: float | None) -> Content:
    return None if mm is None else mm / 10


def _rounded(exact: str) -> str:
    """To the nearest whole number, a half to the even one, as the program rounds."""
    return f"(ROUND({exact},0)-IF(AND(ROUND(MOD({exact},1),9)=0.5,MOD(ROUND({exact},0),2)=1),1,0))"


def _nearest(exact: str, least: str, step: str, choose: Choose) -> str:
    """The count in steps from the least one that is nearest to ``exact``, or at least or at most as much."""
    steps = f"({exact}-{least})/{step}"
    rounded = {
        Choose.AT_LEAST: f"ROUNDUP(ROUND({steps},9),0)",
        Choose.AT_MOST: f"ROUNDDOWN(ROUND({steps},9),0)",
        Choose.NEAREST: f"ROUNDUP(ROUND({steps}-0.5,9),0)",
    }[choose]
    return f"({least}+{step}*MAX(0,{rounded}))"


def _better(exact: str, whole: str, half: str, choose: Choose) -> str:
    """Of the best whole and the best half repeats the better."""
    narrow, wide = f"MIN({whole},{half})", f"MAX({whole},{half})"
    if choose is Choose.AT_LEAST:
        return narrow
    if choose is Choose.AT_MOST:
        return f"IF({wide}<={exact}+0.000000001,{wide},{narrow})"
    return f"IF(ROUND(ABS({wide}-{exact})-ABS({narrow}-{exact}),9)<0,{wide},{narrow})"
