"""Outcomes from a file: read whole, or refused with every mistake."""

import pytest

from tests.builders import PACK
from tests.learning.visits import written_library
from triage.knowledge.problems import PackProblems
from triage.learning.outcome_file import read_outcomes

GOOD = """\
outcomes:
  - reference: visit-1
    firm: north-street
    region: anywhere
    day: '2026-02-03'
    answers: {complaint: stays-cold, danger: none, heats: cant-tell, heats-well: long-gone}
    found: [element-open, lamp-failed]
    first_visit: true
  - reference: visit-2
    region: anywhere
    day: '2026-02-04'
    answers: {}
    found: [other]
    fitted: []
    first_visit: false
"""


def read(folder, *texts):
    paths = [folder / f"outcomes-{number}.yaml" for number in range(1, len(texts) + 1)]
    for path, text in zip(paths, texts, strict=True):
        path.write_text(text, "utf-8")
    return read_outcomes(paths, PACK, ["anywhere"])


def refused(folder, *texts):
    with pytest.raises(PackProblems) as caught:
        read(folder, *texts)
    return str(caught.value).splitlines()


def test_outcomes_are_read_in_order_without_what_was_retired(tmp_path):
    first, second = read(tmp_path, GOOD)
    assert (first.reference, first.firm, first.region, first.day) == (
        "visit-1",
        "north-street",
        "anywhere",
        "2026-02-03",
    )
    assert first.answers == {"complaint": "stays-cold", "danger": "none", "heats": "cant-tell"}
    assert (first.found, first.first_visit) == (("element-open", "lamp-failed"), True)
    assert (second.answers, second.firm, second.fitted, second.first_visit) == ({}, "", (), False)


def test_several_files_are_one_list_and_a_visit_told_twice_is_refused(tmp_path):
    assert [o.reference for o in read(tmp_path, GOOD, GOOD.replace("visit-", "call-"))] == [
        "visit-1",
        "visit-2",
        "call-1",
        "call-2",
    ]
    assert refused(tmp_path, GOOD, GOOD)[0] == (
        "outcomes-2.yaml:2: file, outcomes 1, reference: 'visit-1' stands twice. Tell each visit once."
    )


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "region: anywhere\n    day: '2026-02-03'",
            "region: moon\n    day: '2026-02-03'",
            "4: file, outcomes 1, region: has no 'moon'. Allowed: anywhere.",
        ),
        (
            "'2026-02-03'",
            "'03/02/2026'",
            "5: file, outcomes 1, day: is no date: '03/02/2026'. Write it as '2026-03-01'.",
        ),
        ("heats: cant-tell", "heets: none", "6: file, outcomes 1, answers, heets: has no 'heets'. Allowed: complaint,"),
        (
            "heats: cant-tell",
            "heats: warm",
            "6: file, outcomes 1, answers, heats: has no 'warm'. Allowed: normal, less, no-heat, cant-tell.",
        ),
        ("danger: none", "danger: some", "6: file, outcomes 1, answers, danger: has no 'some'. Allowed: none."),
        (
            "[element-open, lamp-failed]",
            "[gremlins]",
            "7: file, outcomes 1, found: has no 'gremlins'. Allowed: element-open,",
        ),
        ("[element-open, lamp-failed]", "[]", "7: file, outcomes 1, found: names no fault. Name what was found;"),
        ("fitted: []", "fitted: [magic]", "14: file, outcomes 2, fitted: has no 'magic'. Allowed: nothing yet."),
        (
            "first_visit: true",
            "first_visit: perhaps",
            "8: file, outcomes 1, first_visit: must be true or false, not 'perhaps'.",
        ),
        ("    first_visit: false\n", "", "9: file, outcomes 2: `first_visit` is missing. Write true or false."),
        ("firm: north-street", "firm: ../north", "3: file, outcomes 1, firm: '../north' is not an id."),
        ("firm: north-street", "colour: red", "3: file, outcomes 1, colour: is not a field here."),
        ("reference: visit-1", "reference:", "2: file, outcomes 1, reference: must be a text, not ''."),
    ],
)
def test_each_mistake_is_told_with_its_line_and_a_remedy(tmp_path, old, new, told):
    assert GOOD.count(old) == 1
    (line,) = refused(tmp_path, GOOD.replace(old, new))
    assert line.startswith(f"outcomes-1.yaml:{told}")


def test_all_mistakes_are_told_at_once(tmp_path):
    text = GOOD.replace("[other]", "[gremlins]").replace("first_visit: true", "first_visit: 3")
    assert len(refused(tmp_path, text, "outcomes: []\n")) == 3


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "outcomes-1.yaml:1: file: does not hold named entries. Start with `name:` lines."),
        ("outcomes: []\n", "outcomes-1.yaml:1: file, outcomes: holds no outcome. List one at least."),
        ("outcomes: 7\n", "outcomes-1.yaml:1: file, outcomes: must be a list. Start each entry with `- `."),
        ("outcomes: [\n", "outcomes-1.yaml:2: file: is not valid YAML"),
    ],
)
def test_a_file_without_outcomes_is_refused(tmp_path, text, told):
    assert refused(tmp_path, text)[0].startswith(told)


def test_a_hundred_megabytes_are_refused_unread(tmp_path):
    path = tmp_path / "huge.yaml"
    with path.open("wb") as file:
        file.truncate(100_000_000)
    with pytest.raises(PackProblems, match=r"^huge\.yaml:1: file: is larger than 1000000 bytes\. Split it\.$"):
        read_outcomes([path], PACK, ["anywhere"])


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(PackProblems, match=r"nothing\.yaml:1: file: is missing\."):
        read_outcomes([tmp_path / "nothing.yaml"], PACK, ["anywhere"])


def test_a_reading_is_an_answer_and_a_spoilt_one_is_not(tmp_path):
    pack = written_library().pack
    text = GOOD.replace("{}", "{preheat-time: READING}").replace("[other]", "[other-not-listed]")
    text = "outcomes:\n" + text[text.index("  - reference: visit-2") :]
    path = tmp_path / "outcomes.yaml"
    path.write_text(text.replace("READING", "m30~c200"), "utf-8")
    (outcome,) = read_outcomes([path], pack, ["anywhere"])
    assert outcome.answers == {"preheat-time": "m30~c200"}
    path.write_text(text.replace("READING", "m30~c200x"), "utf-8")
    with pytest.raises(PackProblems, match="preheat-time: has no 'm30~c200x'"):
        read_outcomes([path], pack, ["anywhere"])
