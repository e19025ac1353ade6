"""Reading one entry field by field: the value when it is right, else a problem with its line and a stand-in."""

import pytest

from triage.knowledge.entry import Entry, entries
from triage.knowledge.yaml_reader import read_yaml


@pytest.fixture
def entry(tmp_path):
    """The fields of a text as an entry that collects its problems."""

    def _entry(text):
        (tmp_path / "file.yaml").write_text(text, "utf-8")
        problems = []
        fields = read_yaml(tmp_path / "file.yaml", "file.yaml", problems)
        assert problems == []
        return Entry("file.yaml", "oven", fields, problems)

    return _entry


def told(entry):
    return [str(problem) for problem in entry.problems]


def test_values_of_the_right_kind_come_back_as_they_are(entry):
    oven = entry("name: ' Oven '\ncalls: 5\nhot: true\nband: normal\nparts: [lamp, fan-two]\n")
    assert oven.text("name") == "Oven"
    assert oven.number("calls", 1, 10) == 5.0
    assert oven.flag("hot", False) is True
    assert oven.choice("band", ["normal", "qualified"]) == "normal"
    assert oven.ids("parts") == ("lamp", "fan-two")
    oven.close()
    assert told(oven) == []


def test_a_field_that_is_not_there_takes_its_default(entry):
    oven = entry("other: 1\n")
    assert oven.text("name", "Oven") == "Oven"
    assert oven.number("calls", 1, 10, 3) == 3
    assert oven.flag("hot", True) is True
    assert oven.choice("band", ["normal", "qualified"], "qualified") == "qualified"
    assert oven.ids("parts", None, ("lamp",)) == ("lamp",)
    assert oven.gate("needs", {}) == {}
    assert list(oven.items("chains", required=False)) == []
    assert told(oven) == []


@pytest.mark.parametrize(
    ("read", "stand_in", "remedy"),
    [
        (lambda oven: oven.text("field"), "", "Give a text."),
        (lambda oven: oven.number("field", 2, 9), 2, "Give a number."),
        (lambda oven: oven.choice("field", ["one", "two"]), "one", "Give one of one, two."),
        (lambda oven: oven.ids("field"), (), "Give a list."),
        (lambda oven: list(oven.items("field")), [], "Give a list of entries."),
        (lambda oven: oven.below("field", required=True), None, "Give named values."),
    ],
)
def test_a_missing_field_is_told_on_the_line_of_its_entry_and_read_as_a_stand_in(entry, read, stand_in, remedy):
    oven = entry("\nother: 1\n")
    assert read(oven) == stand_in
    assert told(oven) == [f"file.yaml:2: oven: `field` is missing. {remedy}"]


@pytest.mark.parametrize("value", ["3", "[a]", "''", "{a: b}", "true", ""])
def test_what_is_no_text_is_told(entry, value):
    oven = entry(f"other: 1\nname: {value}\n")
    assert oven.text("name") == ""
    (line,) = told(oven)
    assert line.startswith("file.yaml:2: oven, name: must be a text, not ")
    assert line.endswith(" Put it in quotes if YAML reads it as something else.")


@pytest.mark.parametrize("value", ["many", "0.5", "10.5", "true", "[3]", "", ".nan", ".inf", "-3"])
def test_what_is_no_number_in_the_range_is_told_with_the_range(entry, value):
    oven = entry(f"calls: {value}\n")
    assert oven.number("calls", 1, 10) == 1
    (line,) = told(oven)
    assert line.startswith("file.yaml:1: oven, calls: must be a number from 1 to 10, not ")


@pytest.mark.parametrize("value", ["never", "1", "''", "[true]"])
def test_what_is_neither_true_nor_false_is_told(entry, value):
    oven = entry(f"hot: {value}\n")
    assert oven.flag("hot", True) is True
    (line,) = told(oven)
    assert line.startswith("file.yaml:1: oven, hot: must be true or false, not ")


@pytest.mark.parametrize("value", ["low", "3", "[normal]", "{normal: 1}", "", "true"])
def test_what_is_not_among_the_choices_is_told_with_all_of_them(entry, value):
    oven = entry(f"band: {value}\n")
    assert oven.choice("band", ["normal", "qualified"]) == "normal"
    (line,) = told(oven)
    assert line.startswith("file.yaml:1: oven, band: has no ")
    assert line.endswith(" Allowed: normal, qualified.")


def test_a_choice_among_nothing_is_told_and_does_not_stop_the_reading(entry):
    oven = entry("band: low\n")
    assert oven.choice("band", []) == ""
    assert len(told(oven)) == 1


@pytest.mark.parametrize("value", ["lamp", "3", "{lamp: 1}", "true", ""])
def test_what_is_no_list_is_told(entry, value):
    oven = entry(f"parts: {value}\n")
    assert oven.ids("parts") == ()
    (line,) = told(oven)
    assert line.startswith("file.yaml:1: oven, parts: must be a list, not ")


def test_in_a_list_only_what_is_wrong_is_left_out(entry):
    oven = entry("parts: [lamp, Fan, door]\n")
    assert oven.ids("parts", ["lamp", "fan"]) == ("lamp",)
    assert told(oven) == [
        "file.yaml:1: oven, parts: 'Fan' is not an id. Ids are lower-case words joined by hyphens.",
        "file.yaml:1: oven, parts: has no 'door'. Allowed: lamp, fan.",
    ]


@pytest.mark.parametrize("item", ["yes", "No", "on", "~"])
def test_an_item_that_yaml_reads_as_yes_or_no_is_told_as_such(entry, item):
    oven = entry(f"parts: [{item}]\n")
    assert oven.ids("parts") == ()
    assert "is read by YAML as yes/no or nothing" in told(oven)[0]


@pytest.mark.parametrize("item", ["Lamp", "two words", "under_score", "-lamp", "lamp-", "a--b", "ünder", "3.5"])
def test_only_lower_case_words_joined_by_hyphens_are_ids(entry, item):
    oven = entry(f"parts: ['{item}']\n")
    assert oven.ids("parts") == ()
    assert len(told(oven)) == 1


def test_items_that_are_no_entries_are_told_by_their_number(entry):
    oven = entry("chains:\n  - {cause: a}\n  - b\n")
    assert [item.text("cause") for item in oven.items("chains")] == ["a"]
    assert told(oven) == ["file.yaml:1: oven, chains: entry 2 must hold named values. Write it as {name: value}."]


def test_a_gate_names_ids_and_the_options_of_each(entry):
    oven = entry("needs:\n  control: [electronic]\n  colour: [white]\n")
    gate = oven.gate("needs", {"control": ("mechanical", "electronic")})
    assert gate == {"control": frozenset({"electronic"})}
    assert told(oven) == ["file.yaml:3: oven, needs, colour: has no 'colour'. Allowed: control."]


def test_what_nobody_asked_for_is_told_with_what_is_known_here(entry):
    oven = entry("name: a\ncolour: white\n")
    oven.text("name")
    oven.number("calls", 0, 1, 0)
    oven.close()
    assert told(oven) == ["file.yaml:2: oven, colour: is not a field here. Known fields: calls, name."]


def test_the_entries_of_a_file_come_in_its_order_under_their_names(entry):
    fields = entry("lamp: {a: 1}\nfan: {a: 2}\n").fields
    problems = []
    assert [(name, below.where) for name, below in entries("file.yaml", fields, problems)] == [
        ("lamp", "lamp"),
        ("fan", "fan"),
    ]
    assert problems == []


def test_an_entry_without_fields_or_with_a_bad_name_is_told_and_left_out(entry):
    fields = entry("lamp: {a: 1}\nBad Name: {a: 1}\nfan: 3\ndoor:\n").fields
    problems = []
    assert [name for name, _ in entries("file.yaml", fields, problems)] == ["lamp"]
    assert [problem.line for problem in problems] == [2, 3, 4]
