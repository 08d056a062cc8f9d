"""The chain of a swatch's stitch in one text, as a pattern states it, and the numbers of the form that it says."""

from collections.abc import Mapping

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.pages.patterns import pattern_texts
from logbook.pages.patterns.wording import cover_words, statement

CHAIN = "chain in words"
"""The name of the text."""
_NUMBERS = {
    "multiple": "multiple",
    "plus": "plus",
    "extra chains": "extra_chains",
    "first stitch in chain": "first_stitch",
    "skipped chains cover": "skip_cover",
}
_KEYS = {CHAIN: pattern_texts.SENTENCE, **_NUMBERS}


def chain_text_of(pattern: StitchPattern | None) -> str:
    """What a pattern states; "" while its multiple is not known."""
    return statement(pattern) if pattern else ""


def follows(texts: Mapping[str, str], key: str, text: str) -> dict[str, str]:
    """Those texts that follow where ``text`` takes the place of that under ``key``, the chain in words or one of the numbers."""
    if key not in _KEYS:
        return {}
    before, there = _as_there(texts), _KEYS[key]
    after = pattern_texts.typed(before, there, _as_there({**texts, key: text})[there])
    return {name: after[there] for name, there in _KEYS.items() if name != key and after[there] != before[there]}


def pattern_numbers(texts: Mapping[str, str]) -> dict[str, str]:
    """Numbers of a swatch's form, as those of the form of a stitch pattern."""
    found = {_NUMBERS[name]: text for name, text in texts.items()}
    return found | ({"skip_cover": _cover_words(found["skip_cover"])} if "skip_cover" in found else {})


def problem(texts: Mapping[str, str]) -> str:
    """What is wrong with the chain in words; "" if nothing is."""
    return pattern_texts.read_form(_as_there(texts)).problems.get(pattern_texts.SENTENCE, "") if texts[CHAIN].strip() else ""


def read_back(texts: Mapping[str, str]) -> str:
    """What it comes to, in short."""
    return pattern_texts.read_back(_as_there(texts))


def _as_there(texts: Mapping[str, str]) -> dict[str, str]:
    found = pattern_texts.texts_of(StitchPattern()) | {there: texts[name] for name, there in _KEYS.items()}
    return found | {"skip_cover": _cover_words(found["skip_cover"])}


def _cover_words(text: str) -> str:
    return cover_words(int(text) if text.strip().isdecimal() and len(text.strip()) < 4 else None)
