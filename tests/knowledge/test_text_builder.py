"""The shapes are the schema: what a text file holds is what its shape asks for, and every mistake has its line."""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.knowledge.entry import Entry
from triage.knowledge.text_builder import build_named, build_shape, check_terms
from triage.knowledge.yaml_reader import read_yaml


@dataclass(frozen=True)
class Part:
    name: str


@dataclass(frozen=True)
class Shape:
    title: str
    lines: tuple[str, ...]
    parts: tuple[Part, ...]
    options: Mapping[str, str]
    whole: Part
    note: str = ""


GOOD = """
one:
  title: A title
  lines: [first, second]
  parts: [{name: a part}]
  options: {left: Left}
  whole: {name: all of it}
"""


def read(tmp_path, text):
    (tmp_path / "texts.yaml").write_text(text, "utf-8")
    problems = []
    return read_yaml(tmp_path / "texts.yaml", "texts.yaml", problems), problems


def test_each_field_is_read_as_its_type_asks(tmp_path):
    fields, problems = read(tmp_path, GOOD)
    found = build_named("texts.yaml", fields, Shape, ["one"], problems)
    assert problems == []
    assert found["one"] == Shape("A title", ("first", "second"), (Part("a part"),), {"left": "Left"}, Part("all of it"))


def test_a_missing_a_stray_and_an_unknown_text_are_each_told_with_their_line(tmp_path):
    fields, problems = read(tmp_path, GOOD.replace("  title: A title\n", "  tytle: A title\n") + "two: {title: x}\n")
    build_named("texts.yaml", fields, Shape, ["one", "three"], problems)
    told = sorted(map(str, problems))
    assert told == [
        "texts.yaml:1: three: has no text here. Add an entry with that name.",
        "texts.yaml:3: one, tytle: is not a field here. Known fields: lines, note, options, parts, title, whole.",
        "texts.yaml:3: one: `title` is missing. Give a text.",
        "texts.yaml:8: two: has no 'two'. Allowed: one, three.",
    ]


def test_a_list_with_something_else_than_texts_in_it_is_refused(tmp_path):
    fields, problems = read(tmp_path, GOOD.replace("[first, second]", "[first, {a: b}]"))
    build_named("texts.yaml", fields, Shape, ["one"], problems)
    (problem,) = problems
    assert (problem.line, problem.where, problem.what) == (4, "one, lines", "must be a list of texts.")


def test_an_optional_text_left_empty_is_as_if_it_were_not_there(tmp_path):
    fields, problems = read(tmp_path, GOOD + "  note: ''\n")
    assert build_shape(Entry("texts.yaml", "one", fields["one"], problems), Shape).note == ""
    assert problems == []


def test_a_word_in_braces_that_no_region_has_is_told_with_its_line(tmp_path):
    fields, problems = read(tmp_path, "one:\n  lines:\n    - The {board} is near.\n    - The {widget} is far.\n")
    check_terms("texts.yaml", fields, problems)
    assert [(p.line, p.where, p.what) for p in problems] == [(4, "lines", "has no word {widget}.")]
