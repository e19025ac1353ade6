"""What goes wrong in the middle of a call: the session ends, the line is lost, two tabs, a letter pasted in."""

import pytest
from playwright.sync_api import expect

from tests.browser.calling_by_key import Agent, sit_down
from triage.models import Member

pytestmark = pytest.mark.django_db(transaction=True)

ASKING = "region=gb-eng&complaint=no-heat&heat-main=no-heat&danger=none"
DOOR = "You were signed out. Everything recorded is saved in this browser."


@pytest.fixture
def agent(page):
    return sit_down(page, page.site).open(ASKING)


def note(agent, words):
    agent.press("n", moves=False)
    agent.page.keyboard.type(words)
    agent.press("Escape", moves=False)


def lose_the_session(agent):
    agent.page.context.clear_cookies(name="sessionid")


def test_after_signing_in_again_the_same_call_is_there_with_all_that_was_recorded(agent):
    reference = agent.page.locator("#call-reference").inner_text()
    note(agent, "Rings back after lunch.")
    agent.read_out()
    lose_the_session(agent)
    agent.press("1", moves=False)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_visible()
    expect(agent.page.locator("[data-js-session-expired]")).to_contain_text(DOOR)
    agent.type("light comes on")
    agent.press("Enter", moves=False)
    agent.press("1", moves=False)
    expect(agent.page.locator("#unsent li")).to_have_count(2)
    agent.press("Escape", moves=False)
    note(agent, " Has a dog.")
    with agent.page.expect_navigation():
        agent.press("r", moves=False)
    agent.sign_in()
    agent.page.wait_for_url("**/desk/call/?**")
    expect(agent.page.locator("#call-reference")).to_have_text(reference)
    agent.wait_for_answer("lamp-works")
    assert len(agent.trail) == 5
    expect(agent.page.locator("#notes")).to_have_value("Rings back after lunch. Has a dog.")
    expect(agent.page.locator("#caller-says")).to_have_value("light comes on")
    expect(agent.page.locator("[data-js-session-expired]")).to_be_hidden()


def test_signing_in_again_in_another_tab_is_noticed_here(agent):
    agent.read_out()
    lose_the_session(agent)
    agent.press("1", moves=False)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_visible()
    sit_down(agent.page, agent.site, agent.member)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_hidden()
    agent.wait_for_answer("display-state")
    expect(agent.page.locator("#call-status")).to_have_text("Back online. Everything recorded was sent.")


def test_no_part_of_another_page_is_ever_put_into_the_call(agent):
    agent.read_out()
    lose_the_session(agent)
    agent.press("1", moves=False)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_visible()
    expect(agent.page.locator("[name=password]")).to_have_count(0)
    expect(agent.page.locator("#prompt")).to_be_visible()


def test_who_is_no_longer_of_the_firm_goes_through_the_door_too(agent):
    agent.read_out()
    Member.objects.filter(pk=agent.member.pk).delete()
    agent.press("1", moves=False)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_visible()
    expect(agent.page.locator("[data-js-session-expired]")).to_contain_text(DOOR)


def test_after_a_lost_line_the_next_key_works_again(agent):
    agent.read_out()
    agent.page.context.set_offline(True)
    agent.press("1", moves=False)
    expect(agent.page.locator("#call-status")).to_contain_text("Answers are saved in this browser")
    for key in ("h", "x"):
        agent.press(key, moves=False)
        expect(agent.page.locator("#call-status")).to_contain_text("so no other page can be opened.")
    agent.page.context.set_offline(False)
    expect(agent.page.locator("#call-status")).to_contain_text("Everything recorded was sent.")
    assert "display-state" in agent.trail
    agent.read_out()
    agent.press("1")
    assert len(agent.trail) == 5
    agent.page.complaints.clear()


def test_a_note_written_in_one_tab_is_not_undone_by_the_other(agent):
    other = Agent(agent.page.context.new_page(), agent.site, agent.member)
    other.page.goto(agent.page.url)
    other.page.wait_for_function("() => document.getElementById('call-reference').textContent")
    note(agent, "Has a dog.")
    expect(other.page.locator("#notes")).to_have_value("Has a dog.")
    other.type("light comes on")
    other.record("Oven light: Yes")
    note(other, " Rings back.")
    agent.wait_for_answer("lamp-works")
    expect(agent.page.locator("#notes")).to_have_value("Has a dog. Rings back.")
    assert agent.trail == other.trail


def test_a_letter_too_long_to_keep_is_cut_and_said_so(agent):
    letter = "Dear Sir, my oven is stone cold and the fan is going. " + "I am most unhappy with it. " * 2000
    agent.press("/", moves=False)
    agent.page.locator("#caller-says").fill(letter)
    expect(agent.page.locator("#call-status")).to_contain_text("Only the first 20000 characters fit here")
    assert agent.page.locator("#caller-says").input_value() == letter[:20_000]
    agent.record("Oven fan turns: Yes")
    assert agent.trail["circ-fan-state"] == "turns-normally"
    agent.page.locator("#notes").fill("x" * 12_000)
    expect(agent.page.locator("#call-status")).to_contain_text("Only the first 10000 characters fit here")
    agent.page.reload()
    assert agent.page.locator("#notes").input_value() == "x" * 10_000
    assert agent.page.locator("#caller-says").input_value() == letter[:20_000]


def test_another_firm_at_the_same_browser_sees_none_of_it(agent):
    note(agent, "Has a dog.")
    agent.page.context.clear_cookies()
    other = sit_down(agent.page, agent.site).open()
    assert other.page.locator("#notes").input_value() == ""
    other.press("Escape", moves=False)
    other.page.locator("#prompt-title").focus()
    other.press("g", moves=False)
    expect(other.page.locator("#saved-calls-status")).to_have_text("No other call is saved here.")
