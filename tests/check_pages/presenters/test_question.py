"""A question shows its options as links that keep every answer; the danger page is one tap to each sign."""

from dataclasses import replace

from tests.household.checks_done import address
from triage.check_pages.presenters.question import DangerPage, QuestionPage, asked_page, danger_page, question_page
from triage.engine import Question
from triage.knowledge.library import library


def test_each_option_and_cant_tell_lead_on_with_the_answers_kept(check_request):
    page = question_page(check_request(address(complaint="no-heat", danger="none")), "lamp-state", 3, 12)
    before = "/check/?region=gb-eng&complaint=no-heat&danger=none&lamp-state="
    assert [choice.href for choice in page.choices] == [
        before + option for option in library().pack.observations["lamp-state"].options
    ]
    assert page.cant_tell_href == before + "cant-tell"
    assert (page.number, page.at_most) == (3, 12)


def test_each_sign_of_danger_stands_there_once_in_the_order_to_act(check_request):
    page = danger_page(check_request(address("/danger/", complaint="no-heat")))
    labels = [sign.label for sign in page.signs]
    assert len(labels) == len(set(labels))
    assert "gas" in labels[0]
    signs = {sign for flag in library().pack.red_flags.values() for sign in flag.signs}
    assert len(labels) == len(signs)


def test_a_sign_ends_the_questions_at_once(check_request, client):
    for sign in danger_page(check_request(address("/danger/", complaint="no-heat"))).signs:
        assert "complaint=no-heat" in sign.href
        assert 'class="signal' in client.get(sign.href).content.decode()


def test_none_of_these_goes_on_or_first_asks_what_is_wrong(check_request):
    assert danger_page(check_request(address("/danger/", complaint="no-heat"))).none.href.startswith("/check/")
    assert danger_page(check_request("/danger/?region=ie")).none.href == "/?region=ie&danger=none"


def test_the_danger_page_knows_that_it_was_answered(check_request):
    assert danger_page(check_request(address("/danger/", danger="none"))).chosen_before
    assert not danger_page(check_request(address("/danger/"))).chosen_before


def test_a_step_that_asks_gives_the_question_or_the_danger_page(check_request):
    seen = check_request(address(complaint="no-heat"))
    assert isinstance(asked_page(seen, seen.step), DangerPage)
    seen = check_request(address(complaint="no-heat", danger="none"))
    assert isinstance(seen.step, Question)
    assert isinstance(asked_page(seen, seen.step), QuestionPage)


def test_a_test_that_could_tell_more_is_named_beside_the_question(check_request):
    seen = check_request("/check/?region=gb-eng&complaint=no-heat&danger=none")
    assert asked_page(seen, seen.step).better is None
    task = library().pack.tasks["meter-test"]
    better = asked_page(seen, replace(seen.step, better_test=task)).better
    assert better.label == library().texts_for("gb-eng").tasks["meter-test"].title
    assert better.href == "/check/task/meter-test/?region=gb-eng&complaint=no-heat&danger=none"
