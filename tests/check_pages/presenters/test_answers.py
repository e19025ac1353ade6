"""Answers are shown in the words that were pressed, and each can be changed."""

import pytest

from tests.household.checks_done import address
from triage.check_pages.presenters.answers import answer_label, answers_so_far, question_label
from triage.knowledge.library import library

TEXTS = library().texts_for("gb-eng")


@pytest.mark.parametrize(
    ("observation", "answer", "words"),
    [
        ("danger", "none", ("Danger signs", "None of these")),
        ("complaint", "no-heat", ("What is wrong", "No heat at all")),
        ("complaint", "cant-tell", ("What is wrong", "I can’t tell")),
        ("cold", "unsure", ("Is the oven quite cold?", "Not sure")),
        ("did-set-clock", "fixed", ("Set the clock and choose manual", "That fixed it")),
        ("never-heard-of", "this", ("never-heard-of", "this")),
    ],
)
def test_each_kind_of_answer_has_words(observation, answer, words):
    assert (question_label(TEXTS, observation), answer_label(TEXTS, observation, answer)) == words


def test_changing_an_answer_leaves_the_others_and_danger_is_changed_on_its_own_page(check_request):
    seen = check_request(address(complaint="no-heat", danger="none", lamp_state="lamp-works"))
    complaint, danger, lamp = answers_so_far(seen.texts, seen.answers, seen.links)
    assert complaint.change_href == "/check/?region=gb-eng&danger=none&lamp-state=lamp-works"
    assert danger.change_href.startswith("/danger/?region=gb-eng&complaint=no-heat&danger=none")
    assert lamp.change_href == "/check/?region=gb-eng&complaint=no-heat&danger=none"


def test_only_the_answers_asked_for_are_shown(check_request):
    seen = check_request(address(complaint="no-heat", danger="none"))
    assert [a.question for a in answers_so_far(seen.texts, seen.answers, seen.links, ["danger"])] == ["Danger signs"]
