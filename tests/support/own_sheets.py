# ruff: noqa: E501  a sheet reads by its rows
"""Twelve sheets as makers keep them, each made in another way, with what each of its columns is.

Everything in them is invented. ``columns``: for each heading the column of the log ("": none); ``over`` is what must be said.
"""

import csv
import io
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any, NamedTuple

import openpyxl

Cells = Sequence[Sequence[Any]]


class Own(NamedTuple):
    """A sheet: its name, what writes it, its columns in order, the swatches in it, and what must be said of counts."""

    name: str
    write: Callable[[Path], None]
    columns: tuple[tuple[str, str], ...]
    swatches: int
    over: str = ""
    good: int | None = None


def _book(rows: Cells, title: str = "Sheet1", before: Callable[[Any], None] | None = None) -> Callable[[Path], None]:
    def write(path: Path) -> None:
        book = openpyxl.Workbook()
        sheet: Any = book.active
        sheet.title = title
        for row in rows:
            sheet.append(list(row))
        if before:
            before(book)
        book.save(path)

    return write


def _text(rows: Cells, delimiter: str, encoding: str) -> Callable[[Path], None]:
    def write(path: Path) -> None:
        lines = io.StringIO(newline="")
        csv.writer(lines, delimiter=delimiter, lineterminator="\r\n").writerows(rows)
        path.write_bytes(lines.getvalue().encode(encoding))

    return write


def _merged(book: Any) -> None:
    sheet = book.active
    for area in ("A1:A2", "B1:B2", "C1:C2", "D1:E1", "F1:G1"):
        sheet.merge_cells(area)


def _second_sheet(book: Any) -> None:
    book.create_sheet("Shopping", 0).append(["buttons", "thread"])


SHEETS = (
    Own(
        "english.xlsx",
        _book([
            ("Swatch", "Date", "Yarn", "Color", "Hook size", "Stitch pattern", "Gauge (sts x rows per 4 in)", "Comments"),
            ("A1", date(2021, 3, 4), "Quayside Aran", "slate", "H/8", "single crochet", "14 sts x 16 rows", "firm"),
            ("A2", date(2021, 3, 9), "Quayside Aran", "slate", "I-9", "single crochet", "13 sts x 15 rows", ""),
            ("A3", date(2021, 5, 30), "Tollgate DK", "rust", "G/6", "half double crochet", "16 x 12", "nice drape"),
        ]),
        (("Swatch", "tag"), ("Date", "date"), ("Yarn", "yarn"), ("Color", "colour"), ("Hook size", "hook mm"),
         ("Stitch pattern", "stitch pattern"), ("Gauge (sts x rows per 4 in)", "stitches as worked"), ("Comments", "notes")),
        3,
    ),
    Own(
        "german.csv",
        _text([
            ("Nr.", "Datum", "Garn", "Farbe", "Partie", "Häkelnadel", "Muster", "Maschen/10cm", "Reihen/10cm", "gewaschen", "Bemerkung"),
            ("1", "12.03.2019", "Hafenwolle", "möwengrau", "14", "4,5 mm", "Stäbchen", "14,5", "8", "30 °C", "wird weich"),
            ("2", "2.4.2019", "Hafenwolle", "möwengrau", "14", "5", "Stäbchen", "13", "7,5", "30 °C", ""),
            ("3", "17. Mai 2019", "Torfmoor", "grün", "", "4", "feste Maschen", "17", "19", "", "zu fest?"),
        ], ";", "cp1252"),
        (("Nr.", "tag"), ("Datum", "date"), ("Garn", "yarn"), ("Farbe", "colour"), ("Partie", "dye lot"), ("Häkelnadel", "hook mm"),
         ("Muster", "stitch pattern"), ("Maschen/10cm", "stitches as worked"), ("Reihen/10cm", "rows as worked"),
         ("gewaschen", ""), ("Bemerkung", "notes")),
        3,
    ),
    Own(
        "french.csv",
        _text([
            ("N°", "Fait le", "Laine", "Coloris", "Bain", "Crochet", "Point", "Échantillon", "Remarques"),
            ("7", "03/11/2020", "Laine du Phare", "bleu nuit", "B2", "4 mm", "maille serrée", "18 m x 20 rgs sur 10 cm", ""),
            ("8", "21/11/2020", "Laine du Phare", "écru", "B2", "4,5 mm", "bride", "16 m x 9 rgs sur 10 cm", "à refaire"),
        ], ";", "utf-8-sig"),
        (("N°", "tag"), ("Fait le", "date"), ("Laine", "yarn"), ("Coloris", "colour"), ("Bain", "dye lot"), ("Crochet", "hook mm"),
         ("Point", "stitch pattern"), ("Échantillon", "stitches as worked"), ("Remarques", "notes")),
        2,
    ),
    Own(
        "swedish.csv",
        _text([
            ("Provlapp", "Datum", "Garn", "Färg", "Färgbad", "Virknål", "Mönster", "Masktäthet", "Tvättråd", "Anteckningar"),
            ("P-1", "2022-02-01", "Skärgårdsull", "dimblå", "7", "5,0", "fasta maskor", "14 m x 16 varv på 10 cm", "handtvätt", "fin"),
            ("P-2", "2022-02-14", "Skärgårdsull", "dimblå", "7", "5,5", "stolpar", "12 m x 7 varv på 10 cm", "handtvätt", ""),
        ], "\t", "utf-16"),
        (("Provlapp", "tag"), ("Datum", "date"), ("Garn", "yarn"), ("Färg", "colour"), ("Färgbad", "dye lot"), ("Virknål", "hook mm"),
         ("Mönster", "stitch pattern"), ("Masktäthet", "stitches as worked"), ("Tvättråd", "way of washing"), ("Anteckningar", "notes")),
        2,
    ),
    Own(
        "row four.xlsx",
        _book([
            ("My swatches since 2015",), ("kept by hand, all flat",), (),
            ("Label", "Made on", "Wool", "Shade", "Hook (mm)", "Stitch", "Sts", "Rows", "Washed?"),
            ("r1", "2015-06-01", "Lanternfish", "coral", 4, "moss stitch", 18, 17, "yes"),
            ("r2", "2015-06-20", "Lanternfish", "coral", 4.5, "moss stitch", 17, 15, "no"),
        ]),
        (("Label", "tag"), ("Made on", "date"), ("Wool", "yarn"), ("Shade", "colour"), ("Hook (mm)", "hook mm"), ("Stitch", "stitch pattern"),
         ("Sts", "stitches as worked"), ("Rows", "rows as worked"), ("Washed?", "")),
        2, over="10 cm",
    ),
    Own(
        "two tables.xlsx",
        _book([
            ("Tag", "Yarn", "Hook", "Pattern", "Stitches in 10 cm", "Rows in 10 cm"),
            ("t1", "Gullwing", "3.5 mm", "sc", 20, 22),
            ("t2", "Gullwing", "4 mm", "sc", 18, 20),
            ("t3", "Gullwing", "4 mm", "dc", 16, 9),
            (),
            ("Yarn", "Shop", "Price"),
            ("Gullwing", "market stall", 7.5),
            ("Tollgate DK", "market stall", 6),
        ]),
        (("Tag", "tag"), ("Yarn", "yarn"), ("Hook", "hook mm"), ("Pattern", "stitch pattern"),
         ("Stitches in 10 cm", "stitches as worked"), ("Rows in 10 cm", "rows as worked")),
        3,
    ),
    Own(
        "merged.xlsx",
        _book([
            ("Swatch", "Yarn", "Hook", "Before washing", None, "Washed", None),
            (None, None, None, "sts / 10 cm", "rows / 10 cm", "sts / 10 cm", "rows / 10 cm"),
            ("m1", "Cobbler", "5 mm", 14, 16, 13.5, 16.5),
            ("m2", "Cobbler", "5.5 mm", 13, 15, 12.5, 15.5),
        ], before=_merged),
        (("Swatch", "tag"), ("Yarn", "yarn"), ("Hook", "hook mm"), ("Before washing sts / 10 cm", "stitches as worked"),
         ("Before washing rows / 10 cm", "rows as worked"), ("Washed sts / 10 cm", "stitches washed"),
         ("Washed rows / 10 cm", "rows washed")),
        2,
    ),
    Own(
        "totals.csv",
        _text([
            ("id", "yarn name", "yardage", "skein weight", "weight category", "crochet hook", "swatch weight", "tension"),
            ("k1", "Ferrymead", "219", "100 g", "DK", "4.0mm", "12 g", "17 sts x 19 rows in 10cm"),
            ("", "", "", "", "", "", "", ""),
            ("k2", "Ferrymead", "219", "100 g", "DK", "4.5mm", "13 g", "16 sts x 18 rows in 10cm"),
            ("Total", "", "438", "200", "", "", "25", ""),
        ], ",", "utf-8"),
        (("id", "tag"), ("yarn name", "yarn"), ("yardage", "ball metres"), ("skein weight", "ball grams"),
         ("weight category", "yarn class"), ("crochet hook", "hook mm"), ("swatch weight", "swatch grams"),
         ("tension", "stitches as worked")),
        2,
    ),
    Own(
        "inches.xlsx",
        _book([
            ("Sample no", "Date", "Yarn", "Dye lot", "Hook", "Stitch used", "Stitches per inch", "Rows per inch", "Maker", "Remarks"),
            ("s1", "May 3, 2018", "Saltmarsh", "0042", "US G-6 (4 mm)", "sc", 4.25, 4.5, "Ida", ""),
            ("s2", "12/25/2018", "Saltmarsh", "0042", "US H-8 (5 mm)", "sc", 3.75, 4, "Ida", "looser"),
        ]),
        (("Sample no", "tag"), ("Date", "date"), ("Yarn", "yarn"), ("Dye lot", "dye lot"), ("Hook", "hook mm"), ("Stitch used", "stitch pattern"),
         ("Stitches per inch", "stitches as worked"), ("Rows per inch", "rows as worked"), ("Maker", "worked by"), ("Remarks", "notes")),
        2,
    ),
    Own(
        "repeats.xlsx",
        _book([
            ("tag", "garn", "lauflänge", "nadelstärke", "grundmuster", "rapport", "maschenprobe gewaschen", "notizen"),
            ("w1", "Nebelgarn", "125 m / 50 g", 3.5, "Muschelmuster", 6, "4 repeats = 15.1 cm", ""),
            ("w2", "Nebelgarn", "125 m / 50 g", 4, "Muschelmuster", 6, "4 repeats = 16 cm", "locker"),
        ], title="Proben", before=_second_sheet),
        (("tag", "tag"), ("garn", "yarn"), ("lauflänge", "ball metres"), ("nadelstärke", "hook mm"), ("grundmuster", "stitch pattern"),
         ("rapport", "multiple"), ("maschenprobe gewaschen", "stitches washed"), ("notizen", "notes")),
        2,
    ),
    Own(
        "unsure dates.csv",
        _text([
            ("Swatch", "Date", "Yarn", "Fiber content", "Strands", "Hook", "Blocked gauge 10 cm", "Price", "Where from"),
            ("u1", "03/04/2021", "Millrace", "100 % wool", "2", "6 mm", "12 sts x 13 rows", "8.50", "fair"),
            ("u2", "05/06/2021", "Millrace", "100 % wool", "2", "6.5 mm", "11 sts x 12 rows", "8.50", "fair"),
        ], ",", "utf-8"),
        (("Swatch", "tag"), ("Date", "date"), ("Yarn", "yarn"), ("Fiber content", "fibre"), ("Strands", "strands"), ("Hook", "hook mm"),
         ("Blocked gauge 10 cm", "stitches pinned"), ("Price", "ball price"), ("Where from", "")),
        2, good=0,
    ),
    Own(
        "pairs.csv",
        _text([
            ("Prov nr", "Garnnamn", "Material", "Nystanvikt", "Löpmängd", "Kulör", "Nål", "Mask", "m/10cm", "v/10cm", "Vikt", "Övrigt"),
            ("1", "Fyrgarn", "ull", "50", "120", "röd", "4,0", "fasta maskor", "17,5", "20", "11", ""),
            ("2", "Fyrgarn", "ull", "50", "120", "röd", "4,5", "fasta maskor", "16", "18,5", "12", "bra"),
            ("Summa", "", "", "", "", "", "", "", "", "", "23", ""),
        ], ";", "cp1252"),
        (("Prov nr", "tag"), ("Garnnamn", "yarn"), ("Material", "fibre"), ("Nystanvikt", "ball grams"), ("Löpmängd", "ball metres"),
         ("Kulör", "colour"), ("Nål", "hook mm"), ("Mask", "stitch pattern"), ("m/10cm", "stitches as worked"), ("v/10cm", "rows as worked"),
         ("Vikt", "swatch grams"), ("Övrigt", "notes")),
        2,
    ),
)  # fmt: skip
