"""The looks of cells in the colours of the window: one accent, quiet bands, inputs told apart by fill and border.

All of it still reads in grey: what colour says is also said by weight, lines or a note.
"""

from typing import Any

from logbook.sheets.cells import CellLook, Role

ACCENT, INK, MUTED = "7A3B5D", "23262F", "595C66"
_TINT, _BAND, _LINE, _HAIR, _TROUBLE = "EBD9E2", "F4F1EA", "827A6C", "D8D2C6", "A12622"

_AT_THE_LEFT = (Role.CELL, Role.NOTE)


def dress(cell: Any, look: CellLook) -> None:
    """Gives an openpyxl cell its look."""
    from openpyxl.styles import Alignment, Border, Font, PatternFill, Side

    role = look.role
    cell.font = Font(
        name="Courier New" if role is Role.ALIGNED else "Calibri",
        size={Role.TITLE: 16, Role.ANSWER: 14, Role.SECTION: 12, Role.NOTE: 10, Role.ALIGNED: 9}.get(role, 11),
        bold=role in (Role.TITLE, Role.HEADING, Role.SECTION, Role.ANSWER, Role.TROUBLE),
        color={
            Role.TITLE: ACCENT, Role.SECTION: ACCENT, Role.ANSWER: ACCENT, Role.SUBTITLE: MUTED, Role.NOTE: MUTED,
            Role.TROUBLE: _TROUBLE,
        }.get(role, INK),
    )  # fmt: skip
    if role in (Role.HEADING, Role.INPUT):
        cell.fill = PatternFill("solid", fgColor=_TINT)
    if role is Role.HEADING:
        cell.border = Border(bottom=Side("medium", color=ACCENT))
    elif role is Role.INPUT:
        side = Side("thin", color=_LINE)
        cell.border = Border(side, side, side, side)
    elif role is Role.SECTION:
        cell.border = Border(bottom=Side("thin", color=_HAIR))
    across = "right" if look.right else "center" if look.centred else "left" if look.wraps or role in _AT_THE_LEFT else None
    indent = 1 if across == "left" and role in (Role.CELL, Role.NOTE, Role.HEADING) else 0
    down = "center" if role in (Role.HEADING, Role.INPUT, Role.ANSWER, Role.LABEL, Role.ALIGNED) else "top"
    cell.alignment = Alignment(horizontal=across, vertical=down, wrap_text=look.wraps or None, indent=indent)
    cell.number_format = look.numbers


def difference_rule(formula: str) -> Any:
    """A frame and bold type where a formula is true."""
    from openpyxl.formatting.rule import FormulaRule
    from openpyxl.styles import Border, Font, Side

    side = Side("thin", color=_TROUBLE)
    return FormulaRule(formula=[formula], font=Font(bold=True, color=_TROUBLE), border=Border(side, side, side, side))  # type: ignore[no-untyped-call]


def band_rule() -> Any:
    """Every second row a quiet band, whatever order a filter or sorting brings the rows into."""
    from openpyxl.formatting.rule import FormulaRule
    from openpyxl.styles import PatternFill

    return FormulaRule(formula=["MOD(ROW(),2)=0"], fill=PatternFill("solid", bgColor=_BAND))  # type: ignore[no-untyped-call]
