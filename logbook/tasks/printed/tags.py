"""Tags to print, cut out and tie to the swatches: a page of HTML that the browser prints on A4 or Letter."""

from collections.abc import Iterable, Sequence
from html import escape

from logbook.book.logbook import Logbook
from logbook.book.swatches import swatches
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.dates import date_words
from logbook.craft.words.hooks import hook_names, show_hook
from logbook.errors import RefusedError
from logbook.tasks.fibre_words import short_caution
from logbook.tasks.printed.markup import page

_STYLE = """
@page { margin: 12mm }
body { font: 9pt/1.25 sans-serif; color: #000; margin: 0 }
p.how { margin: 0 0 4mm; font-size: 9pt }
.tags { display: flex; flex-wrap: wrap; gap: 0 }
.tag { box-sizing: border-box; width: 60mm; min-height: 40mm; padding: 4mm 3mm 3mm 12mm; border: 1px dashed #777;
  position: relative; break-inside: avoid; margin: 0 -1px -1px 0; overflow-wrap: anywhere }
.tag::before { content: ""; position: absolute; left: 4mm; top: 17.5mm; width: 5mm; height: 5mm; border: 1px solid #777;
  border-radius: 50% }
.tag b { display: block; font-size: 15pt; line-height: 1.2 }
.tag span { display: block }
@media print { p.how { display: none } }
"""


def tag_sheet(made: Iterable[Swatch], title: str) -> str:
    """The whole page. Three tags of 60 × 40 mm stand side by side, which A4 and Letter both take."""
    tags = "\n".join(_tag(swatch) for swatch in made)
    how = "Print this page, cut along the dashed lines, punch the hole, and tie each tag to its swatch."
    body = (f'<p class="how">{how}</p>', f'<div class="tags">\n{tags}\n</div>')
    return page(title, _STYLE, body)


def tag_sheet_of(book: Logbook, uids: Sequence[str]) -> str:
    """The page of the tags of these swatches. Raises RefusedError if there are none."""
    with book.reading() as connection:
        found = swatches(connection, uids)
    if not found:
        raise RefusedError("There is no swatch to print a tag of: choose some in the list.")
    return tag_sheet(found, f"Tags of {book.path.stem}")


def _tag(swatch: Swatch) -> str:
    hook = ""
    if swatch.hook_mm is not None:
        names = hook_names(swatch.hook_mm)
        hook = f"hook {show_hook(swatch.hook_mm)}" + (f" ({names})" if names else "")
    strands = f"{swatch.strands} strands" if (swatch.strands or 1) > 1 else ""
    colour = ", ".join(part for part in (swatch.colour, f"lot {swatch.dye_lot}" if swatch.dye_lot else "", strands) if part)
    said = (
        swatch.yarn.name if swatch.yarn else "",
        colour,
        swatch.pattern.name if swatch.pattern else "",
        hook,
        " · ".join(part for part in (date_words(swatch.date), swatch.worked_by) if part),
        short_caution(swatch.yarn.fibre) if swatch.yarn else "",
    )
    lines = "".join(f"<span>{escape(line)}</span>" for line in said if line)
    return f'<div class="tag"><b>{escape(swatch.tag)}</b>{lines}</div>'
