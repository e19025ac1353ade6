"""The library holds everything, once, and says it in the words of a place."""

import shutil

import pytest

from triage.knowledge.library import ELECTRIC_OVEN, REGIONS, library, load_library
from triage.knowledge.problems import PackProblems


def test_it_is_loaded_once():
    assert library() is library()
    assert library().texts_for("us") is library().texts_for("us")


def test_it_speaks_as_people_do_there():
    assert library().texts_for("gb-eng").faults["grill-element-open"].name == "Burnt-out grill element"
    assert library().texts_for("us").faults["grill-element-open"].name == "Burnt-out broiler element"


def test_a_language_that_does_not_exist_yet_is_english():
    assert library().texts_for("de", "de") is library().texts_for("de", "en")


def test_no_braces_are_left_in_any_region_but_those_put_in_when_a_page_is_made():
    for region in library().regions:
        assert "{" not in repr(library().texts_for(region)).replace("{isolate}", "").replace("{'", "").replace("{}", "")


def test_a_broken_text_and_a_broken_region_are_told_together(tmp_path):
    pack = shutil.copytree(ELECTRIC_OVEN, tmp_path / "electric_oven")
    regions = shutil.copytree(REGIONS, tmp_path / "regions")
    levels, ireland = pack / "text" / "en" / "levels.yaml", regions / "ie.yaml"
    levels.write_text(levels.read_text("utf-8") + "\nnonsense: {}\n", "utf-8")
    ireland.write_text(ireland.read_text("utf-8").replace("name: Ireland", "nome: Ireland"), "utf-8")
    with pytest.raises(PackProblems) as caught:
        load_library(pack, regions)
    files = {problem.file for problem in caught.value.problems}
    assert files == {"electric_oven/text/en/levels.yaml", "regions/ie.yaml"}
