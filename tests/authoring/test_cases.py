"""Files of cases: what is read, and every mistake in one go with its file, line and remedy."""

from pathlib import Path

import pytest

from tests.builders import make_pack
from triage.authoring.cases import Case, Expected, read_cases
from triage.engine import Band
from triage.knowledge.problems import PackProblems

REGIONS = ("anywhere", "elsewhere")
GOOD = """\
- id: cold-and-quiet
  told: It stays cold.
  region: anywhere
  answers: {complaint: stays-cold, heats: no-heat, lamp-state: cant-tell, danger: none}
  expect: {causes: [element-open, board-dead], band: [qualified]}
- id: runs-on-gas
  answers: {fuel: gas}
  expect: {causes: [gas-oven], band: [qualified, make-safe]}
"""
ONE = "- id: one\n  answers: {%s}\n  expect: {causes: [%s], band: [%s]}\n"


@pytest.fixture
def written(tmp_path):
    def write(text):
        path = tmp_path / "jobs.yaml"
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    return write


def wrong(path):
    with pytest.raises(PackProblems) as found:
        read_cases(path, make_pack(), REGIONS)
    return [str(problem) for problem in found.value.problems]


def test_a_file_is_read_case_by_case(written):
    first, second = read_cases(written(GOOD), make_pack(), REGIONS)
    told = {"complaint": "stays-cold", "heats": "no-heat", "lamp-state": "cant-tell", "danger": "none"}
    assert first == Case(
        "cold-and-quiet", "anywhere", told, Expected(("element-open", "board-dead"), (Band.QUALIFIED,))
    )
    assert second == Case("runs-on-gas", "", {"fuel": "gas"}, Expected(("gas-oven",), (Band.QUALIFIED, Band.MAKE_SAFE)))


NOTHING = ["jobs.yaml:1: file: holds no cases. Start each case with `- id:`; the pack README shows one."]
MISTAKES = {
    "an empty file": ("", NOTHING),
    "only a remark": ("# later\n", NOTHING),
    "an empty list": ("[]\n", NOTHING),
    "one case without its dash": ("id: one\n", NOTHING),
    "a word": ("cases\n", NOTHING),
    "an unknown observation": (
        ONE % ("heat: normal", "board-dead", "qualified"),
        ["jobs.yaml:2: case one, answers, heat: is no observation of this pack. Is it heats?"],
    ),
    "an observation nobody can guess": (
        ONE % ("zzz: normal", "board-dead", "qualified"),
        [
            (
                "jobs.yaml:2: case one, answers, zzz: is no observation of this pack. "
                "The pack's observations.yaml lists them all."
            )
        ],
    ),
    "a retired observation": (
        ONE % ("heats-well: normal", "board-dead", "qualified"),
        ["jobs.yaml:2: case one, answers, heats-well: is no longer asked. Use heats."],
    ),
    "an unknown option": (
        ONE % ("heats: warm", "board-dead", "qualified"),
        ["jobs.yaml:2: case one, answers, heats: has no 'warm'. Allowed: normal, less, no-heat, cant-tell."],
    ),
    "an option YAML reads as no word": (
        ONE % ("heats: yes", "board-dead", "qualified"),
        [
            (
                "jobs.yaml:2: case one, answers, heats: True is read by YAML as yes/no or nothing, not as an id. "
                "Ids are lower-case words joined by hyphens."
            )
        ],
    ),
    "an unknown cause": (
        ONE % ("heats: less", "board-deaf", "qualified"),
        ["jobs.yaml:3: case one, expect, causes: has no 'board-deaf'. Is it board-dead?"],
    ),
    "an unknown band": (
        ONE % ("heats: less", "board-dead", "grave"),
        [
            "jobs.yaml:3: case one, expect, band: has no 'grave'. Allowed: normal, self-check, qualified, make-safe.",
        ],
    ),
    "no cause and no band": (
        ONE % ("heats: less", "", ""),
        [
            "jobs.yaml:3: case one, expect, band: names nothing. Name one or more, any of which counts.",
            "jobs.yaml:3: case one, expect, causes: names nothing. Name one or more, any of which counts.",
        ],
    ),
    "an unknown region": (
        "- id: one\n  region: moon\n" + (ONE % ("heats: less", "board-dead", "normal")).partition("\n")[2],
        ["jobs.yaml:2: case one, region: has no 'moon'. Allowed: anywhere, elsewhere."],
    ),
    "the same id twice": (
        2 * (ONE % ("heats: less", "board-dead", "normal")),
        ["jobs.yaml:4: case one: is the id of the case on line 1 too. Give each case an id of its own."],
    ),
    "a case that is a word": (
        "- cold\n",
        ["jobs.yaml:1: case 1: must hold named values. Start it with `id:`."],
    ),
    "a field nobody knows": (
        (ONE % ("heats: less", "board-dead", "normal")) + "  weight: 3\n",
        ["jobs.yaml:4: case one, weight: is not a field here. Known fields: answers, expect, id, region, told."],
    ),
    "everything missing": (
        "- {told: It stays cold.}\n",
        [
            "jobs.yaml:1: case 1: `answers` is missing. Give named values.",
            "jobs.yaml:1: case 1: `expect` is missing. Give named values.",
            "jobs.yaml:1: case 1: `id` is missing. Give a text.",
        ],
    ),
    "an alias": (
        "- &all {id: one}\n- *all\n",
        ["jobs.yaml:2: file: uses an alias (*name). Write the value out."],
    ),
    "a bottomless list": ("[" * 50_000, ["jobs.yaml:1: file: is nested too deeply. Use fewer levels."]),
    "bytes that are no text": (b"\xff\xfe\x00", ["jobs.yaml:1: file: is not UTF-8 text. Save it as UTF-8."]),
}


@pytest.mark.parametrize("mistake", MISTAKES)
def test_each_mistake_is_told_with_its_line_and_what_to_do(written, mistake):
    text, said = MISTAKES[mistake]
    assert wrong(written(text)) == said


def test_all_mistakes_of_a_file_come_at_once(written):
    bad = "- id: one\n  answers: {heat: less, lamp-state: gone}\n  expect: {causes: [bord], band: [bad]}\n"
    assert [line.split(": ")[0] for line in wrong(written(bad))] == ["jobs.yaml:2"] * 2 + ["jobs.yaml:3"] * 2


def test_malformed_yaml_is_told_with_its_line(written):
    (said,) = wrong(written("- id: one\n  answers: {heats: less\n"))
    assert said.startswith("jobs.yaml:3: file: is not valid YAML: ")
    assert said.endswith("Check spaces, colons and quotes.")


def test_a_huge_file_is_refused_by_its_size_alone(tmp_path, monkeypatch):
    path = tmp_path / "jobs.yaml"
    with path.open("wb") as file:
        file.truncate(100_000_000)
    monkeypatch.delattr(Path, "read_text")
    monkeypatch.delattr(Path, "read_bytes")
    assert wrong(path) == ["jobs.yaml:1: file: is larger than 1000000 bytes. Split it."]


@pytest.mark.parametrize("name", ["nowhere.yaml", ".", "x" * 5000])
def test_what_is_no_file_is_said_to_be_none(tmp_path, name):
    (said,) = wrong(tmp_path / name)
    assert said.endswith(":1: file: is no file here. Give the path of a file of cases.")


def test_a_file_that_may_not_be_read_is_told(written, monkeypatch):
    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    path = written(GOOD)
    monkeypatch.setattr(Path, "read_text", refuse)
    assert wrong(path) == ["jobs.yaml:1: file: cannot be opened: Permission denied. Check who may read it."]
