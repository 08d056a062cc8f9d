from pathlib import Path

import pytest

from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.tasks.printed.tags import tag_sheet, tag_sheet_of
from tests.support.books import small_book


def test_a_tag_says_what_the_real_swatch_is() -> None:
    page = tag_sheet(
        [Swatch(tag="LC-02", date="2026-05-01", yarn=Yarn(name="Étang"), hook_mm=4.5, colour="moss", dye_lot="7")], "Tags"
    )
    for said in ("LC-02", "Étang", "moss, lot 7", "hook 4.5 mm (US 7, UK 7)", "1 May 2026"):
        assert said in page


def test_text_is_text() -> None:
    page = tag_sheet([Swatch(tag="<b>&", colour="<script>")], "T<i>")
    assert "<script>" not in page
    assert "&lt;b&gt;&amp;" in page


def test_the_sheet_of_some_swatches(tmp_path: Path) -> None:
    with small_book(tmp_path / "book.logbook", 3) as book:
        with book.reading() as connection:
            uids = [uid for (uid,) in connection.execute("SELECT uid FROM swatch ORDER BY tag LIMIT 2")]
        page = tag_sheet_of(book, uids)
        assert page.count('class="tag"') == 2
        assert "S-03" not in page
        with pytest.raises(RefusedError, match="no swatch"):
            tag_sheet_of(book, ["gone"])
