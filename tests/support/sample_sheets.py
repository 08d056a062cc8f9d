"""The sample sheets, read with nothing but ``csv``."""

import csv

from logbook import sample

Row = dict[str, str]


def sheet(name: str) -> tuple[list[str], list[Row]]:
    """The heading and the rows of a sample sheet."""
    with (sample.folder() / name).open(encoding="utf-8-sig", newline="") as lines:
        heading, *rows = csv.reader(lines)
    return heading, [dict(zip(heading, row, strict=True)) for row in rows]


def written_rows() -> dict[str, str]:
    """The written rows of each stitch pattern of the sample, by its name."""
    return {row["stitch pattern"]: row["written rows"] for row in sheet(sample.SWATCHES)[1]}
