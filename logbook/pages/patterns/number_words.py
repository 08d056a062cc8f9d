"""What the numbers of a stitch pattern are while they are folded away."""

from collections.abc import Mapping

from logbook.craft.words.counting import counted, ordinal
from logbook.pages.patterns.message import Message
from logbook.pages.patterns.pattern_texts import SENTENCE, Texts
from logbook.pages.patterns.rows_card import CHAIN_FIGURES, ROW_FIGURES


def number_words(texts: Texts) -> str:
    """``first stitch in the 4th chain · 1 set-up row · 2 rows in a repeat``: what the sentence does not say."""
    first = texts["first_stitch"].strip()
    first = ordinal(int(first)) if first.isdecimal() else first
    said = [f"first stitch in the {first} chain" if first else ""]
    for key, one in {"set_up_rows": "set-up row", "rows_in_repeat": "row", "closing_rows": "closing row"}.items():
        text = texts[key].strip()
        if text.isdecimal() and int(text):
            said.append(counted(int(text), one) + (" in a repeat" if key == "rows_in_repeat" else ""))
    return " · ".join(part for part in said if part)


def in_sight(messages: Mapping[str, Message]) -> dict[str, Message]:
    """The first warning that is of a number, for the sentence above them."""
    found = (messages[key] for key in (*CHAIN_FIGURES, *ROW_FIGURES) if key in messages)
    warning = next((message for message in found if message.kind == "warning"), None)
    return {} if warning is None else {SENTENCE: warning}
