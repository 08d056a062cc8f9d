"""The font the window tests write with: a box for every letter, as wide as letters of a usual sans serif are.

With it a test finds the same room on every machine, whatever fonts are there, or none. fontconfig hands it out for every family.
"""

from pathlib import Path
from xml.sax.saxutils import escape

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

FAMILY = "Plain Boxes"
EM = 1000
ASCENT, DESCENT = 930, 240
WIDTHS = {
    280: "iljI.,:;'|!’‘·",
    400: 'frt()[]{}-/\\ \u00a0"“”°*²³¹',
    540: "czsvxykJ?<>",
    960: "mwMW%@—…←→½¼¾⅓⅔⅛⅜⅝⅞",
    720: "ABCDGHKNOPQRUVXYZ&",
}
"""Of an em of 1000; what is not named here is as wide as a digit."""
USUAL = 630
BOLDER = 1.09
"""How much wider bold letters are."""
COVERED = (*range(0x20, 0x7F), *range(0xA0, 0x250), *range(0x370, 0x400), *range(0x2010, 0x2800))
CONFIG = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>{folder}</dir>
  <cachedir>{folder}/cache</cachedir>
  <match target="font"><edit name="hinting" mode="assign"><bool>false</bool></edit></match>
</fontconfig>
"""


def write_font(folder: Path) -> Path:
    """Writes the font, regular and bold, and gives the file of settings by which fontconfig knows no other one."""
    for name, wider in (("Regular", 1.0), ("Bold", BOLDER)):
        _font(name, wider).save(folder / f"{name}.ttf")
    config = folder / "fonts.conf"
    config.write_text(CONFIG.format(folder=escape(str(folder))), encoding="utf-8")
    return config


def _font(style: str, wider: float) -> FontBuilder:
    named = {letter: width for width, letters in WIDTHS.items() for letter in letters}
    widths = {f"box{width}": round(width * wider) for width in (*WIDTHS, USUAL)}
    builder = FontBuilder(EM, isTTF=True)
    builder.setupGlyphOrder([".notdef", *widths])
    builder.setupCharacterMap({code: f"box{named.get(chr(code), USUAL)}" for code in COVERED})
    builder.setupGlyf({".notdef": _box(USUAL)} | {name: _box(width) for name, width in widths.items()})
    builder.setupHorizontalMetrics({".notdef": (USUAL, 80)} | {name: (width, 80) for name, width in widths.items()})
    builder.setupHorizontalHeader(ascent=ASCENT, descent=-DESCENT)
    builder.setupNameTable({"familyName": FAMILY, "styleName": style})
    bold = style == "Bold"
    builder.setupOS2(
        sTypoAscender=ASCENT, sTypoDescender=-DESCENT, usWinAscent=ASCENT, usWinDescent=DESCENT,
        usWeightClass=700 if bold else 400, fsSelection=0x20 if bold else 0x40,
    )  # fmt: skip
    builder.setupPost()
    builder.setupHead(unitsPerEm=EM, macStyle=1 if bold else 0)
    return builder


def _box(width: int):  # type: ignore[no-untyped-def]  # the library names no types
    pen = TTGlyphPen(None)
    left, right = 80, max(width - 80, 120)
    pen.moveTo((left, 0))
    for corner in ((left, 560), (right, 560), (right, 0)):
        pen.lineTo(corner)
    pen.closePath()
    return pen.glyph()
