import codecs
import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError
from logbook.sheets.columns import COLUMNS
from logbook.sheets.csv_file import checksum, guarded, read_csv, unguarded, write_csv
from logbook.sheets.limits import Unusable
from tests.support.logged import Listed
from tests.support.swatches import plain_swatch

HEADING = "tag;yarn;hook mm"


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=1+1", "'=1+1"),
        ("'=1", "''=1"),
        ("''=1", "'''=1"),
        ("+5", "'+5"),
        ("-5", "'-5"),
        ("@x", "'@x"),
        ("\tx", "'\tx"),
        ("'tis", "'tis"),
        ("''x", "''x"),
        ("007", "007"),
        ("", ""),
        ("a=b", "a=b"),
    ],
)
def test_the_apostrophe(text: str, cell: str) -> None:
    assert guarded(text) == cell
    assert unguarded(cell) == text


@given(st.text(st.sampled_from("'=+-@\t\rax \n"), max_size=6))
def test_the_apostrophe_comes_off_again(text: str) -> None:
    assert unguarded(guarded(text)) == text


def test_the_form_of_the_file() -> None:
    stream = io.BytesIO()
    written = write_csv(stream, Listed([plain_swatch(1), plain_swatch(2)]))
    content = stream.getvalue()
    assert content.startswith(codecs.BOM_UTF8 + b'"uid","tag","date"')
    assert content.endswith(b'"\r\n')
    assert content.count(b"\r\n") == content.count(b"\n") == 3
    rows = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))
    columns = [column.name for column in COLUMNS if column.name != "pictures"]  # only where there are any
    assert rows[0] == columns
    assert content.count(b'"') == 2 * 3 * len(columns), "every cell is quoted"
    assert rows[1][:2] == ["u1", "T-1"]
    stream.seek(0)
    assert checksum(stream) == written
    assert checksum(io.BytesIO(content[:-1])) != written, "one that was cut short"


@pytest.mark.parametrize("notes", ["bell \a", "part \x1f part", "\x1f"])
def test_text_that_can_not_be_kept_is_named(notes: str) -> None:
    with pytest.raises(RefusedError, match=r"“T-9”, notes: .*U\+00(07|1F)"):
        write_csv(io.BytesIO(), Listed([Swatch(tag="T-9", notes=notes)]))


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_files_of_other_programs(delimiter: str, encoding: str, line_end: str) -> None:
    lines = [HEADING, "A;Čaj, soft;4,5", "", '"B;1";"two' + line_end + 'lines";5']
    text = line_end.join(lines[:1] + lines[1:]).replace(";", delimiter)
    text = text.replace("Čaj, soft", '"Čaj, soft"').replace("4,5", '"4,5"').replace(f"B{delimiter}1", "B;1")
    rows = read_csv(text.encode(encoding), "x.csv").rows
    assert [row.cells for row in rows] == [
        ("tag", "yarn", "hook mm"),
        ("A", "Čaj, soft", "4,5"),
        ("B;1", "two\nlines", "5"),
    ]
    assert [row.number for row in rows] == [1, 2, 4]


def test_a_heading_of_one_column() -> None:
    assert [row.cells for row in read_csv(b"tag\nA\n", "x.csv").rows] == [("tag",), ("A",)]


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("tag;yarn\nA;Größe".encode("cp1252"), "not written in UTF-8"),
        ("tag;yarn".encode("utf-16-le"), "can't be read as CSV"),
        ("tag;yarn".encode("utf-32"), "can't be read as CSV"),
        (b"tag,yarn\n\0\0", "can't be read as CSV"),
        (codecs.BOM_UTF16_LE + b"\x00\xd8x", "not written"),
        (b'tag,yarn\n"A,B\n', "beyond row 1"),
        (b'tag,yarn\n"A"x,B\n', "beyond row 1"),
        (b"tag\n" + b"x" * 200_000, "beyond row 1"),
    ],
)
def test_what_can_not_be_read_is_said_in_one_sentence(content: bytes, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        read_csv(content, "x.csv")


def test_limits() -> None:
    last = b"tag\n" + b"\n" * 99_998 + b"A\n"
    assert read_csv(last, "x.csv").rows[-1].number == 100_000
    with pytest.raises(RefusedError, match="100,001"):
        read_csv(b"tag\n" + b"\n" * 99_999 + b"A\n", "x.csv")
    assert len(read_csv(b"tag\n" + b"," * 255 + b"x", "x.csv").rows[1].cells) == 256
    with pytest.raises(RefusedError, match="257 columns"):
        read_csv(b"tag\n" + b"," * 256 + b"x", "x.csv")
    assert read_csv(b"tag\n" + b"," * 900, "x.csv").rows[-1].number == 1
    long = read_csv(b"tag\n" + b"x" * 32_768, "x.csv").rows[1].cells[0]
    assert isinstance(long, Unusable)
    assert "32,768" in long.why
    assert read_csv(b"", "x.csv").rows == ()
