"""A question has the words and the options of the page, and each option is a pair to add to the address."""

from tests.api.presenters.steps import check_request, validator
from triage.api.presenters.question import danger_signs_json, question_json, question_step_json
from triage.check_pages.presenters.question import danger_page
from triage.engine import parse_answers, run_check
from triage.knowledge.library import library


def test_a_question_is_the_pages_own():
    asked = check_request({"complaint": "no-heat", "danger": "none"})
    result = question_step_json(asked, asked.step)
    question, text = result["question"], asked.texts.questions[asked.step.observation]
    assert result["kind"] == "question"
    assert (question["ask"], question["how"], question["say"]) == (text.ask, text.look, text.say)
    assert (question["number"], question["max_questions"]) == (1, library().pack.limits.max_questions)
    assert question["options"][-1]["answer"] == "cant-tell"
    assert question["options"][-1]["text"] == "I can’t tell"


def test_each_option_is_an_answer_the_engine_takes():
    asked = check_request({"complaint": "no-heat", "danger": "none"})
    for option in question_json(asked, asked.step.observation)["options"]:
        pair = (option["observation"], option["answer"])
        assert parse_answers(library().pack, [pair]).answers == dict([pair])


def test_the_danger_signs_are_those_of_the_danger_page_in_its_order():
    asked = check_request({"complaint": "no-heat"})
    result = question_step_json(asked, asked.step)
    validator("danger_signs").validate(danger_signs_json(asked))
    assert result["kind"] == "danger-signs"
    assert [sign["text"] for sign in result["signs"]] == [sign.label for sign in danger_page(asked).signs]
    assert result["none"]["observation"] == "danger"
    for sign in result["signs"]:
        step = run_check(library().pack, asked.region.region, [(sign["observation"], sign["answer"])]).step
        assert type(step).__name__ == "Emergency"
