"""YAML made to hurt: anchors that multiply, depths without end, tags that make objects, names given twice."""

import itertools
import tracemalloc

import pytest

from tests.builders import electric_oven
from triage.authoring.cases import read_cases
from triage.knowledge.problems import PackProblems
from triage.knowledge.yaml_reader import MAX_FILE_BYTES, read_yaml
from triage.learning.outcome_file import read_outcomes

NAMES = "abcdefghijklm"
LAUGHS = "a: &a [x, x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"{name}: &{name} [{', '.join([f'*{before}'] * 10)}]\n" for before, name in itertools.pairwise(NAMES)
)
ALIAS, TAG, DEEP, INVALID = "uses an alias", "uses a tag", "is nested too deeply", "is not valid YAML"
BOMBS = {
    "anchors that multiply": (LAUGHS, ALIAS),
    "an anchor inside itself": ("a: &a [*a]\n", ALIAS),
    "a merge of itself": ("a: &a\n  <<: *a\n", ALIAS),
    "depth without end": ("a: " + "[" * 5000, DEEP),
    "deep but closed": ("a: " + "[" * 5000 + "]" * 5000, DEEP),
    "a deep mapping": ("{a: " * 3000 + "1" + "}" * 3000, DEEP),
    "an object": ("a: !!python/object/apply:os.system ['true']\n", TAG),
    "a tag of nobody": ("a: !thing 1\n", TAG),
    "a name twice": ("a: 1\na: 2\n", "stands twice"),
    "not text": ("a: \x00\n", INVALID),
    "half a line": ('a: "', INVALID),
    "a number without end": (f"a: {'9' * 100_000}\n", "a number of more than"),
    "a number with an exponent": ("a: 1:" + "59:" * 2000 + "59\n", "a number of more than"),
    "a file without end": ("a: " + "x" * (MAX_FILE_BYTES + 1), "is larger than"),
}


@pytest.mark.parametrize("name", BOMBS)
def test_it_is_refused_with_a_line_and_in_little_memory(name, tmp_path):
    text, sentence = BOMBS[name]
    path = tmp_path / "bomb.yaml"
    path.write_text(text, "utf-8")
    problems = []
    tracemalloc.start()
    read_yaml(path, "bomb.yaml", problems)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert sentence in problems[0].what
    assert problems[0].line >= 1
    assert most < 4_000_000 + 6 * len(text)


@pytest.mark.parametrize("name", BOMBS)
def test_a_file_of_cases_and_a_file_of_outcomes_are_read_alike(name, tmp_path):
    path = tmp_path / "bomb.yaml"
    path.write_text(BOMBS[name][0], "utf-8")
    for read in (
        lambda: read_cases(path, electric_oven(), ("gb-eng",)),
        lambda: read_outcomes([path], electric_oven(), ("gb-eng",)),
    ):
        with pytest.raises(PackProblems) as refused:
            read()
        assert refused.value.problems[0].file == "bomb.yaml"
