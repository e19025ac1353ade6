"""A region's words stand where a text has braces, as a person there would write the sentence."""

from dataclasses import dataclass

import pytest

from triage.knowledge.wording import fill_terms, unknown_terms, with_terms

WORDS = {"board": "fuse box", "grill": "grill", "technician": "appliance engineer", "emergency": "999"}


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("Go to the {board}.", "Go to the fuse box."),
        ("{grill} element", "Grill element"),
        ("It is hot. {grill} and all.", "It is hot. Grill and all."),
        ("Call {emergency}.", "Call 999."),
        ("Ask a {technician}.", "Ask an appliance engineer."),
        ("A {board} is near.", "A fuse box is near."),
        ("{isolate}", "{isolate}"),
        ("No braces here.", "No braces here."),
    ],
)
def test_a_text_is_filled_as_it_would_be_written(text, read):
    assert fill_terms(text, WORDS) == read


def test_a_word_no_region_has_is_named():
    assert unknown_terms("The {board} and the {widget} and {isolate}.") == ("widget",)


@dataclass(frozen=True)
class Shape:
    title: str
    lines: tuple[str, ...]
    named: dict[str, str]
    minutes: int


def test_every_text_of_a_shape_is_filled_and_nothing_else_changes():
    shape = Shape("The {grill}", ("One {board}", "two"), {"{board}": "{board}"}, 5)
    assert with_terms(shape, WORDS) == Shape("The grill", ("One fuse box", "two"), {"{board}": "Fuse box"}, 5)
