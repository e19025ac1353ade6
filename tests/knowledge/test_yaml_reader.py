"""YAML as plain data that remembers its lines; what a person would not write is refused with its reason."""

import pytest

from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import MAX_FILE_BYTES, read_yaml

SHOWN = "oven/faults.yaml"


@pytest.fixture
def read(tmp_path):
    """Reads a text as a file would be read: what came of it, and what was wrong."""

    def _read(content):
        path = tmp_path / "faults.yaml"
        path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
        problems = []
        return read_yaml(path, SHOWN, problems), problems

    return _read


def told(problems):
    return [str(problem) for problem in problems]


def test_names_lists_and_values_come_back_as_plain_data(read):
    plain, problems = read("oven: {calls: 50, share: 0.5, hot: true, door: shut, parts: [lamp, fan], none: }\n")
    assert problems == []
    assert plain == {
        "oven": {
            "calls": 50,
            "share": 0.5,
            "hot": True,
            "door": "shut",
            "parts": ["lamp", "fan"],
            "none": None,
        }
    }


def test_every_name_and_item_remembers_its_line(read):
    plain, _ = read("# A remark.\noven:\n  calls: 50\n  parts:\n    - lamp\n    - fan\n")
    assert (plain.line, plain.lines) == (2, {"oven": 2})
    assert plain["oven"].lines == {"calls": 3, "parts": 4}
    assert plain["oven"]["parts"].lines == [5, 6]


def test_the_order_of_names_is_that_of_the_file(read):
    assert list(read("zebra: 1\napple: 2\nmango: 3\n")[0]) == ["zebra", "apple", "mango"]


def test_yes_and_no_stay_words_as_names(read):
    assert list(read("yes: 1\nno: 2\non: 3\n")[0]) == ["yes", "no", "on"]


def test_letters_of_every_language_are_read(read):
    assert read("oven: Küche – четыре\n")[0] == {"oven": "Küche – четыре"}


@pytest.mark.parametrize(
    ("content", "line", "where"),
    [("a: 1\nb: 2\na: 3\n", 3, "a"), ("oven:\n  calls: 1\n  calls: 1\n", 3, "calls")],
)
def test_a_name_that_stands_twice_is_told_with_its_second_line(read, content, line, where):
    assert told(read(content)[1]) == [f"{SHOWN}:{line}: {where}: stands twice in the same place. Keep one of them."]


@pytest.mark.parametrize(
    ("content", "line"),
    [
        ("a: &here [x]\nb: *here\n", 2),
        ("a: &a [lol]\nb: &b [*a, *a]\nc: [*b, *b]\n", 2),
        ("a: &x {k: v}\nb:\n  <<: *x\n", 3),
    ],
)
def test_an_alias_is_refused(read, content, line):
    plain, problems = read(content)
    assert plain is None
    assert told(problems) == [f"{SHOWN}:{line}: file: uses an alias (*name). Write the value out."]


@pytest.mark.parametrize("value", ["2026-03-01", "2026-03-01 10:00:00"])
def test_a_date_is_told_and_stays_text(read, value):
    plain, problems = read(f"name: oven\nversion: {value}\n")
    assert told(problems) == [f"{SHOWN}:2: {value}: is read by YAML as a date or a tagged value. Put it in quotes."]
    assert plain["version"] == value


@pytest.mark.parametrize(
    ("value", "tag"),
    [
        ("!own text", "!own"),
        ("!own:str text", "!own:str"),
        ("!own [a]", "!own"),
        ("!own {a: b}", "!own"),
        ("!!set {a}", "tag:yaml.org,2002:set"),
        ("!!binary aGk=", "tag:yaml.org,2002:binary"),
        ("!!int text", "tag:yaml.org,2002:int"),
        ("!!bool perhaps", "tag:yaml.org,2002:bool"),
        ("!!python/name:str x", "tag:yaml.org,2002:python/name:str"),
        ("!!python/object/apply:os.getcwd []", "tag:yaml.org,2002:python/object/apply:os.getcwd"),
    ],
)
def test_a_tag_on_anything_is_refused(read, value, tag):
    plain, problems = read(f"name: oven\nversion: {value}\n")
    assert plain is None
    assert told(problems) == [f"{SHOWN}:2: file: uses a tag ({tag}). Write the plain value."]


@pytest.mark.parametrize(
    ("content", "line"),
    [
        ("oven:\n  calls: 1\n\tfamily: x\n", 3),
        ("oven: 'unclosed\n", 2),
        ("oven: [1, 2\n", 2),
        ("oven: {a: 1\nnext: 2\n", 2),
        ("a: 1\n---\nb: 2\n", 2),
        ("a: b: c\n", 1),
    ],
)
def test_what_is_not_yaml_is_told_with_its_line(read, content, line):
    plain, problems = read(content)
    assert plain is None
    (problem,) = problems
    assert (problem.file, problem.line, problem.where) == (SHOWN, line, "file")
    assert problem.what.startswith("is not valid YAML: ")
    assert problem.remedy == "Check spaces, colons and quotes."


def test_a_letter_that_no_text_file_holds_is_told(read):
    plain, problems = read("oven: a\x07b\n")
    assert plain is None
    assert told(problems)[0].startswith(f"{SHOWN}:1: file: is not valid YAML: ")


@pytest.mark.parametrize("content", ["", "# Only a remark.\n", "- a\n- b\n", "text\n", "3\n", "~\n"])
def test_a_file_without_named_entries_is_refused(read, content):
    plain, problems = read(content)
    assert plain is None
    assert told(problems) == [f"{SHOWN}:1: file: does not hold named entries. Start with `name:` lines."]


@pytest.mark.parametrize("content", ["oven: ü\n".encode("latin-1"), "oven: a\n".encode("utf-16"), b"\xff\xfe\xfd"])
def test_a_file_in_another_encoding_is_refused(read, content):
    plain, problems = read(content)
    assert plain is None
    assert told(problems) == [f"{SHOWN}:1: file: is not UTF-8 text. Save it as UTF-8."]


def test_a_file_that_is_not_there_is_named(tmp_path):
    problems = []
    assert read_yaml(tmp_path / "nowhere.yaml", SHOWN, problems) is None
    assert problems == [PackProblem(SHOWN, 1, "file", "is missing.", "Add it; the pack README names every file.")]


def test_a_file_that_is_too_large_is_refused_and_one_at_the_limit_is_read(read):
    start = b"oven: hot\n# "
    assert read(start + b"x" * (MAX_FILE_BYTES - len(start)))[1] == []
    plain, problems = read(start + b"x" * (MAX_FILE_BYTES - len(start) + 1))
    assert plain is None
    assert told(problems) == [f"{SHOWN}:1: file: is larger than {MAX_FILE_BYTES} bytes. Split it."]


def test_lists_nested_without_end_are_refused(read):
    plain, problems = read("oven:\n  " + "[" * 5000 + "]" * 5000 + "\n")
    assert plain is None
    assert told(problems) == [f"{SHOWN}:2: file: is nested too deeply. Use fewer levels."]
