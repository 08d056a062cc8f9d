import pytest

from logbook.tasks.fibre_words import fibre_cautions, short_caution


@pytest.mark.parametrize(
    ("fibre", "iron", "allergy"),
    [
        ("100 % cotton", False, False),
        ("100 % acrylic", True, False),
        ("80 % Merino, 20 % polyamide", True, True),
        ("wool", False, True),
        ("linen, latex elastic", True, True),
        ("", False, False),
    ],
)
def test_cautions_where_they_apply(fibre: str, iron: bool, allergy: bool) -> None:
    said, short = " ".join(fibre_cautions(fibre)), short_caution(fibre)
    assert ("hot iron" in said, "hot iron" in short) == (iron, iron)
    assert ("allergies" in said, "ask the wearer" in short) == (allergy, allergy)
