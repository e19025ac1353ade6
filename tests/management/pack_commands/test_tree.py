"""`manage.py pack tree`: an outline to sign, a drawing, and the same as JSON."""

import json
from xml.etree import ElementTree

import pytest

from tests.management.pack_commands.asking import refused, said
from triage.knowledge.library import library

SMALL = ("tree", "--complaint", "glass", "--depth", "1")


def test_the_outline_can_be_signed_and_the_drawing_is_beside_it(tmp_path):
    file = tmp_path / "tree.svg"
    text = said(*SMALL, "--variant", "control=mechanical", "heating-system=fan-only", "--svg", str(file))
    assert text.startswith("Decision tree of electric-oven for control mechanical, heating-system fan-only\n")
    assert library().pack.version in text
    assert text.splitlines()[-1].startswith("Signature: ")
    assert ElementTree.parse(file).getroot().tag.endswith("svg")
    assert [path.name for path in tmp_path.iterdir()] == ["tree.svg"]


def test_as_json_every_place_has_its_number_and_answers():
    told = json.loads(said(*SMALL, "--json"))
    assert (told["pack"], told["region"], told["depth"]) == ("electric-oven", "gb-eng", 1)
    assert told["different"] <= told["grown"]
    first = told["places"][0]
    assert (first["number"], first["complaint"]) == ("1", "glass")
    assert all(place["answers"] for place in told["places"] if "." in place["number"])


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("--variant", "control"), "'control' is no kind of oven. Write --variant control=mechanical."),
        (("--variant", "=x"), "'=x' is no kind of oven."),
        (("--variant", "control=steam"), "control has no steam. Known: mechanical, electronic."),
        (("--variant", "colour=red"), "There is no kind of oven called colour."),
        (
            ("--variant", "control=mechanical", "control=electronic"),
            "control cannot be mechanical and electronic at once.",
        ),
        (("--complaint", "sings"), "There is no complaint sings."),
        (("--depth", "99"), "A depth of 99 cannot be drawn."),
        (("--region", "moon"), "There is no region moon."),
    ],
)
def test_what_cannot_be_grown_gets_one_sentence(words, sentence):
    assert refused("tree", *words).startswith(sentence)


def test_a_drawing_that_cannot_be_written_gets_one_sentence_and_no_outline(tmp_path):
    sentence = refused(*SMALL, "--svg", str(tmp_path / "gone" / "tree.svg"))
    assert sentence.endswith("Name a file in a folder that is there.")
