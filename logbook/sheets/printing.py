"""How a sheet is printed: the page, and what stands at its foot."""

from typing import Any

_A4 = "9"
_MOST_LETTERS = 48
"""Of a title at the foot, so that there is room for what stands at the right."""


def set_up_print(sheet: Any, title: str, date: str, *, landscape: bool, pages_wide: int) -> None:
    """A4, fitted to the width; a printer with Letter makes it fit that. ``title`` and ``date``, if any, stand at the foot."""
    sheet.page_setup.orientation = "landscape" if landscape else "portrait"
    sheet.page_setup.paperSize = _A4
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = pages_wide, 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    margins = sheet.page_margins
    margins.left = margins.right = 0.5
    margins.top, margins.bottom, margins.header, margins.footer = 0.6, 0.7, 0.3, 0.35
    sheet.oddFooter.left.text = _in_margin(title) + (f" · {date}" if date else "")
    sheet.oddFooter.right.text = "&A · page &P of &N"
    for part in (sheet.oddFooter.left, sheet.oddFooter.right):
        part.size = 9
    sheet.sheet_view.showGridLines = False


def _in_margin(text: str) -> str:
    """Text for the foot of a page, where an ampersand begins a command."""
    plain = " ".join(text.split())
    return (plain if len(plain) <= _MOST_LETTERS else f"{plain[: _MOST_LETTERS - 1]}…").replace("&", "&&")
