"""Texts over the limits of reading and listening are found, and languages that regions speak in vain."""

from dataclasses import replace

from tests.builders import ELECTRIC_OVEN
from triage.authoring.linting.finding import Gravity, PackSource
from triage.authoring.linting.wording import hard_to_read, missing_languages
from triage.knowledge.library import REGIONS, library

PLACES = PackSource(ELECTRIC_OVEN)
HARD = "Does the circulation ventilator demonstrate abnormal acceleration characteristics intermittently?"


def texts_with(**changes):
    texts = library().texts["en"]
    questions = dict(texts.questions) | {"heat-main": replace(texts.questions["heat-main"], **changes)}
    return {"en": replace(texts, questions=questions)}


def test_the_pack_people_use_is_read_with_ease():
    assert hard_to_read(library().texts, PLACES) == []


def test_a_question_above_the_limit_is_a_mistake_with_its_school_year():
    (only,) = hard_to_read(texts_with(ask=HARD), PLACES)
    assert (only.gravity, only.problem.where) == (Gravity.MISTAKE, "heat-main")
    assert only.problem.file == "electric_oven/text/en/observations.yaml"
    assert only.problem.what.endswith("6 is the most.")


def test_the_grade_is_made_for_english_and_used_on_it_only():
    assert hard_to_read({"de": texts_with(ask=HARD)["en"]}, PLACES) == []


def test_what_takes_too_long_to_say_aloud_is_a_mistake_in_any_language():
    (only,) = hard_to_read({"de": texts_with(say="word " * 51)["en"]}, PLACES)
    assert only.problem.what == "`say` takes 51 words aloud, 50 are the most."


def test_half_of_the_questions_must_be_easier_still():
    texts = library().texts["en"]
    middling = "Does the little oven door open with ease, or is it a bit hard for you?"
    harder = {name: replace(question, ask=middling) for name, question in texts.questions.items()}
    found = hard_to_read({"en": replace(texts, questions=harder)}, PLACES)
    assert [f.problem.where for f in found] == ["file"]
    assert "are above school year 4" in found[0].problem.what


def test_languages_that_regions_speak_and_the_pack_does_not_are_one_remark():
    found = missing_languages(library().texts, library().regions, REGIONS, PLACES)
    assert {f.gravity for f in found} == {Gravity.REMARK}
    assert len(found) == 2
    assert all("de (de)" in f.problem.what and "en (" not in f.problem.what for f in found)


def test_a_language_is_complete_once_pack_and_regions_have_it(tmp_path):
    (tmp_path / "messages.en.yaml").touch()
    english = {code: region for code, region in library().regions.items() if region.languages == ("en",)}
    assert english
    assert missing_languages(library().texts, english, tmp_path, PLACES) == []
