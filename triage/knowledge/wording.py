"""Words that differ from place to place: a text says `{board}`, the region says what people there call it.

`{isolate}` is a line of its own: it stands for the steps that cut the supply, which depend on how the oven is wired
and are put in when a page is made (`isolation.yaml`).
"""

import re
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar, cast

REGION_TERMS = (
    "board",
    "breaker",
    "leakage_switch",
    "cooker_switch",
    "grill",
    "oven",
    "technician",
    "electrician",
    "emergency",
    "low_temp",
    "high_temp",
    "network",
)
ISOLATE = "{isolate}"

_PLACEHOLDER = re.compile(r"(?P<article>\b[Aa] )?\{(?P<name>[a-z_]*)\}")
_VOWELS = tuple("aeiouAEIOU")
_SENTENCE_ENDS = (". ", "? ", "! ")

Shape = TypeVar("Shape")


def unknown_terms(text: str) -> tuple[str, ...]:
    """The names in braces that no region has a word for."""
    known = {*REGION_TERMS, ISOLATE.strip("{}")}
    return tuple(match["name"] for match in _PLACEHOLDER.finditer(text) if match["name"] not in known)


def fill_terms(text: str, terms: Mapping[str, str]) -> str:
    """`text` with the region's words, a capital where a sentence begins and "an" before a vowel."""

    def word(match: re.Match[str]) -> str:
        told = terms.get(match["name"])
        if told is None:
            return match[0]
        article = match["article"] or ""
        if article and told.startswith(_VOWELS):
            article = f"{article[0]}n "
        begins = match.start() == 0 or text[: match.start()].endswith(_SENTENCE_ENDS)
        return article + (told[:1].upper() + told[1:] if begins and not article else told)

    return _PLACEHOLDER.sub(word, text)


def with_terms(shape: Shape, terms: Mapping[str, str]) -> Shape:
    """The same frozen texts with every placeholder filled; ids and numbers stay as they are."""
    return cast(Shape, _filled(shape, terms))


def _filled(value: Any, terms: Mapping[str, str]) -> Any:
    if isinstance(value, str):
        return fill_terms(value, terms)
    if isinstance(value, tuple):
        return tuple(_filled(item, terms) for item in value)
    if isinstance(value, Mapping):
        return {key: _filled(item, terms) for key, item in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **{field.name: _filled(getattr(value, field.name), terms) for field in fields(value)})
    return value
