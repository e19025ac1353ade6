"""Every step, whatever answers lead to it, is what the description says, in the words of the pages."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.api.presenters.steps import check_request, validator
from tests.household.every_page import ELEMENT, SEAL
from triage.api.presenters.step import context_json, step_json
from triage.knowledge.library import library

ASKED = library().pack.observations


@given(
    pairs=st.lists(
        st.sampled_from([(name, answer) for name, asked in ASKED.items() for answer in (*asked.options, "cant-tell")]),
        max_size=12,
    ),
    region=st.sampled_from(sorted(library().regions)),
)
@settings(max_examples=60, deadline=None)
def test_any_answers_give_a_step_as_described(pairs, region):
    result = step_json(check_request(pairs, region))
    validator("step").validate(result)
    assert result["region"]["id"] == region
    assert result["emergency_number"]["number"] == library().regions[region].emergency


def test_what_was_kept_goes_on_and_what_was_not_is_told():
    result = step_json(check_request({"complaint": "no-heat", "danger": "none", "lamp-state": "blue"}))
    kept = [(answer["observation"], answer["answer"]) for answer in result["answers"]]
    assert kept == [("complaint", "no-heat"), ("danger", "none")]
    assert result["problems"] == ["We did not know the answer “blue” to “Oven light”. It was left out."]
    assert result["links"]["step"] == "http://testserver/check/?region=gb-eng&complaint=no-heat&danger=none"


@pytest.mark.parametrize(
    "answers", [{"complaint": "no-heat"}, {"complaint": "no-heat", "danger": "none"}, ELEMENT, SEAL]
)
def test_a_question_and_an_advice_have_the_safety_line(answers):
    assert step_json(check_request(answers))["safety"].endswith("keep away from the oven and call 999.")


def test_a_step_about_danger_has_no_other_words_in_it():
    assert step_json(check_request({"smell-type": "gas"}))["safety"] == ""


def test_a_place_nobody_knows_is_told():
    around = context_json(check_request(region="atlantis"))
    assert around["notices"] == [
        "We do not know the place in this address. The rules and numbers shown are for England."
    ]
    assert around["pack"] == {"id": library().pack.id, "version": library().pack.version}
