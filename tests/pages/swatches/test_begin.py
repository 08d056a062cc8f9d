from logbook.pages.swatches.begin import FINISHED, GAUGE, MEASURED, STITCH, UNWASHED, begin_texts, form_texts
from logbook.pages.swatches.form_texts import EMPTY


def said(gauge: str, measured: str) -> dict[str, str]:
    return {STITCH: "dc", GAUGE: gauge, MEASURED: measured}


def test_what_is_typed_goes_to_the_readings_of_what_it_was_measured_on() -> None:
    assert form_texts(said("16 sts = 10 cm; 9 rows = 10 cm", FINISHED)) == {
        "stitch pattern": "dc", "readings washed": "16 sts = 10 cm\n9 rows = 10 cm", "readings worked": "",
    }  # fmt: skip
    assert form_texts(said("16 sts = 10 cm", UNWASHED)) == {
        "stitch pattern": "dc", "readings washed": "", "readings worked": "16 sts = 10 cm",
    }  # fmt: skip


def test_the_form_says_the_same_back() -> None:
    for measured in (FINISHED, UNWASHED):
        typed = said("16 sts = 10 cm; 9 rows = 10 cm", measured)
        assert begin_texts({**EMPTY, **form_texts(typed)}, FINISHED) == typed
    assert begin_texts(EMPTY, UNWASHED) == {STITCH: "", GAUGE: "", MEASURED: UNWASHED}
