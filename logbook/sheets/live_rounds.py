"""The numbers of yokes, crowns and triangles as formulas of a spreadsheet; they are those of ``craft/garments``."""

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.sheets.live_lines import NumberLine, long_line, part_line, width_line
from logbook.sheets.rounding import nearest


def _yoke(one: ShapedPiece) -> list[NumberLine]:
    found = [
        NumberLine("first", "stitches at the neck", nearest("{neck round}*10/{p}"), lambda piece: piece.foundation),
        NumberLine("rows", "rounds", nearest("{yoke depth}*10/{q}"), lambda piece: piece.rows),
        NumberLine(
            "underarm sts", "stitches under each arm", nearest("{underarm}*10/{p}"), lambda piece: piece.parts["underarm"]
        ),
    ]
    if one.chain is not None:
        found.insert(1, NumberLine("chain", "chain", "{first}+{extra}", lambda piece: piece.chain))
    return found


def raglan_lines(one: ShapedPiece) -> list[NumberLine]:
    """A raglan yoke."""
    lines = 4 * one.parts["lines"]
    ring = f"({{back}}+{{front}}+2*{{underarm sts}}+{lines})"
    return [
        *_yoke(one),
        part_line("sleeve", "each sleeve at the neck", nearest(f"({{first}}-{lines})/8")),
        part_line("back", "back at the neck", f"INT(({{first}}-{lines}-2*{{sleeve}})/2)"),
        part_line("front", "front at the neck", f"{{first}}-{lines}-2*{{sleeve}}-{{back}}"),
        part_line("body_increases", "increases in the body, at each line", nearest(f"({{body round}}*10/{{p}}-{ring})/4")),
        part_line("sleeve_increases", "in the sleeves", nearest("({upper arm round}*10/{p}-{sleeve}-{underarm sts})/2")),
        part_line("body", "stitches of the body", f"{ring}+4*{{body_increases}}"),
        part_line("arm", "stitches of a sleeve with its underarm", "{sleeve}+{underarm sts}+2*{sleeve_increases}"),
        NumberLine(
            "last", "stitches of the last round", "{first}+4*{body_increases}+4*{sleeve_increases}", lambda p: p.counts[-1]
        ),
        width_line("around", "body round, cm", "{body}", lambda piece: piece.edges["end"].mm),
        long_line(),
    ]


def round_yoke_lines(one: ShapedPiece) -> list[NumberLine]:
    """A round yoke."""
    more = "({last}-{first})"
    return [
        *_yoke(one),
        part_line("body", "stitches of the body", f"2*{nearest('{body round}*10/{p}/2')}"),
        part_line("sleeve", "each sleeve", f"{nearest('{upper arm round}*10/{p}')}-{{underarm sts}}"),
        part_line("back", "back, and as many in front", "{body}/2-{underarm sts}"),
        part_line("arm", "stitches of a sleeve with its underarm", "{sleeve}+{underarm sts}"),
        NumberLine("last", "stitches of the last round", "2*{back}+2*{sleeve}", lambda piece: piece.counts[-1]),
        NumberLine(
            "times",
            "rounds that increase",
            f"IF({more}=0,0,MIN({{rows}},MAX(3,ROUNDUP(ROUND(3*{more}/{{first}},9),0))))",
            lambda piece: sum(
                now != before for before, now in zip((piece.foundation, *piece.counts), piece.counts, strict=False)
            ),
        ),
        width_line("around", "body round, cm", "{body}", lambda piece: piece.edges["end"].mm),
        long_line(),
    ]


def crown_lines(one: ShapedPiece) -> list[NumberLine]:
    """A crown with its tube."""
    each = one.parts["each_round"]
    exact = bool(one.planned.choice("exact"))
    stitches = nearest("{round}*10/{p}") if exact else f"{{crown_rounds}}*{each}"
    one_more = f"-({{last}}<>{{crown_rounds}}*{each})" if exact else ""
    return [
        part_line("crown_rounds", f"rounds of {each} more", nearest(f"{{round}}*10/{{p}}/{each}")),
        NumberLine("last", "stitches round", stitches, lambda piece: piece.counts[-1]),
        NumberLine("rows", "rounds", nearest("{height}*10/{q}"), lambda piece: piece.rows),
        part_line("tube_rounds", "of these even", f"{{rows}}-{{crown_rounds}}{one_more}"),
        width_line("around", "round, cm", "{last}", lambda piece: piece.widths[-1]),
        long_line(),
    ]


def triangle_lines(one: ShapedPiece) -> list[NumberLine]:
    """A triangle from its tip."""
    first, more = one.foundation, int(one.planned.choice("more a row"))
    return [
        NumberLine("rows", "rows", f"1+{nearest(f'({{wingspan}}*10/{{p}}-{first})/{more}')}", lambda piece: piece.rows),
        NumberLine("last", "stitches of the last row", f"{first}+{more}*({{rows}}-1)", lambda piece: piece.counts[-1]),
        width_line("wide", "wingspan, cm", "{last}", lambda piece: piece.widths[-1]),
        long_line(),
    ]
