"""What the folded sections of the form of a swatch hold, in a few words beside their names."""

from collections.abc import Mapping

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import YARN_CLASSES
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.craft.words.numbers import show_number
from logbook.pages.swatches.form_texts import Texts

AT_ALL = (Condition.PINNED, Condition.SIDEWAYS, Condition.LENGTHWISE, Condition.HUNG)


def section_words(texts: Texts, swatch: Swatch) -> Mapping[str, str]:
    """For each section by its name what it holds; "" for nothing."""
    measured = {taken.condition for taken in swatch.readings}
    return {
        "swatches.yarn": _joined(yarn_words(texts, swatch)),
        "swatches.pattern": _joined(_pattern_words(texts)),
        "swatches.conditions": _joined([one.words for one in AT_ALL if one in measured]),
        "swatches.more": _joined(_more_words(texts)),
    }


def heading_words(texts: Texts) -> str:
    """Beside the title: date, colour, dye lot."""
    lot = texts["dye lot"].strip()
    return _joined([date_words(texts["date"].strip()), texts["colour"].strip(), f"dye lot {lot}" if lot else ""])


def yarn_words(texts: Texts, swatch: Swatch) -> list[str]:
    """``class 3 light``, ``115 m in 50 g``, the fibre."""
    yarn = swatch.yarn
    if yarn is None:
        return []
    number = yarn.yarn_class
    ball = (
        f"{show_number(yarn.ball_metres)} m in {show_number(yarn.ball_grams)} g" if yarn.ball_grams and yarn.ball_metres else ""
    )
    return ["" if number is None else f"class {number} {YARN_CLASSES[number].name}", ball, texts["fibre"].strip()]


def _pattern_words(texts: Texts) -> list[str]:
    terms, worked, setup = (texts[key].strip() for key in ("terms", "worked", "set-up rows"))
    worked_words = {"flat": "worked flat", "round": "worked in the round"}.get(worked, worked)
    return [
        f"{terms} terms" if terms else "",
        worked_words,
        f"{setup} set-up {'row' if setup == '1' else 'rows'}" if setup else "",
    ]


def _more_words(texts: Texts) -> list[str]:
    grams = texts["swatch grams"].strip()
    pictures = len(picture_names(texts["pictures"]))
    return [
        counted(pictures, "picture") if pictures else "",
        f"{grams} g" if grams else "",
        texts["way of washing"].strip(),
        " ".join(texts["notes"].split()),
    ]


def _joined(parts: list[str]) -> str:
    return " · ".join(part for part in parts if part)
