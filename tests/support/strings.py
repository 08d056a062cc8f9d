"""Texts that have hurt programs before."""

LONGEST = 32_767
"""Characters a cell of a workbook holds."""

THAT_HURT = (
    "=1+1",
    '=HYPERLINK("http://example.org","yarn")',
    "+1",
    "-1",
    "@SUM(A1)",
    "'=quoted",
    "'",
    '"',
    '""',
    "O'Neill's \"best\"",
    "Robert'); DROP TABLE swatch;--",
    "% _ \\ *?[a-z]",
    "semi;colon, comma\tand tab",
    "two\nlines",
    "line one\n\nline three",
    "007",
    "00.50",
    "1e5",
    "3-4",
    "½ of 18¼",
    "−5",
    "TRUE",
    "NULL",
    "None",
    "#REF!",
    "<b>&amp;</b> ]]> <!--",
    "{0} {name} %s %(x)d $HOME",
    "../../etc/passwd",
    "צמר רך",
    "خيط ناعم 100",
    "left \u202eright\u202c left",
    "a\u200bb\u2060c",
    "e\u0301 and é",
    "ß ẞ ſ İ ı",
    "🧶👩🏽\u200d🎨🏴\U000e0067\U000e0062\U000e007f",
    "𝔭𝔲𝔯𝔩 𠀋",
    "日本語の糸",
    "_x0041_ _x005F_",
    "x" * LONGEST,
    "long word " * 3000 + "end",
)
"""Each is kept as it is."""

REFUSED = {
    "a\x00b": "U+0000",
    "bell \x07": "U+0007",
    "escape\x1b[31mred": "U+001B",
    "\x7f": "U+007F",
    "half \ud83e a pair": "U+D83E",
    "no character \ufffe": "U+FFFE",
    "x" * (LONGEST + 1): "32767",
}
"""What can't be kept, and what the sentence names."""
