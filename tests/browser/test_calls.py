"""Five calls by keyboard alone, each coming to the advice a householder with the same oven gets.

Key presses and seconds of speech of each are kept in pytest's cache: `pytest --cache-show 'calls/*'`.
"""

import pytest
from playwright.sync_api import expect

from tests.browser.calling_by_key import Agent, householder, sit_down
from tests.firm_builders import make_job_sheet
from tests.pack_texts import fault_name
from triage.jobsheet.reference import spelled_out

FAN_ELEMENT = fault_name("fan-element-open")

pytestmark = pytest.mark.django_db(transaction=True)

ELEMENT = {
    "complaint": "no-heat",
    "heat-main": "no-heat",
    "danger": "none",
    "circ-fan-state": "turns-normally",
    "lamp-state": "lamp-works",
    "display-state": "time-normal",
    "heating-light": "light-stays-on",
    "function-pattern": "only-grill-works",
    "grill-glow": "grill-even",
    "recent-event": "nothing-new",
}


@pytest.fixture
def agent(page):
    return sit_down(page, page.site)


@pytest.fixture
def figures(request):
    def keep(name, agent):
        request.config.cache.set(f"calls/{name}", {"key presses": agent.presses, "seconds of speech": agent.seconds})

    return keep


def same_advice(agent, told):
    """The link to the phone and the householder's own way come to the heading the agent read out."""
    heading = agent.heading
    agent.page.goto(agent.now("phoneUrl"))
    assert agent.page.locator("h1").inner_text() == heading
    own, words = householder(agent.page, agent.site, told)
    assert own == heading
    return words


def test_a_straight_call(agent, figures):
    agent.open()
    agent.type("oven is stone cold")
    agent.record("What is wrong: It does not get hot at all")
    agent.go_on(ELEMENT)
    figures("straight", agent)
    assert agent.trail.items() >= {"complaint": "no-heat", "danger": "none"}.items()
    assert agent.heading == "This is a job for an appliance engineer"
    words = same_advice(agent, ELEMENT)
    assert FAN_ELEMENT in words
    assert any(FAN_ELEMENT in said for said in agent.said)


def test_a_rambling_call_told_out_of_order(agent, figures):
    told = {**ELEMENT, "trip-device": "unknown-device", "trip-reset": "held", "danger": "none"}
    agent.open()
    agent.type("fan's going but it's stone cold, and it tripped yesterday")
    first = agent.found()[0]
    assert first.startswith("What tripped: ")
    agent.record("Oven fan turns: Yes", "What is wrong: It does not get hot", "What tripped: Something went off")
    agent.type("i put it back and it stayed on, the light comes on")
    agent.record("After the reset: It stayed on", "Oven light: Yes")
    agent.go_on(told)
    figures("rambling", agent)
    expect(agent.page.locator("section.alarm")).to_contain_text("It tripped: leave it off")
    recorded = {"circ-fan-state", "complaint", "heat-main", "trip-device", "trip-reset", "lamp-state"}
    assert recorded <= set(agent.trail)
    assert any(said.startswith("Leave the trip switch off for now") for said in agent.said)
    same_advice(agent, told)


def test_danger_in_the_middle(agent, figures):
    told = {"complaint": "slow-or-cool", "heat-main": "too-little", "danger": "none", "smell-type": "plastic-or-fishy"}
    agent.open()
    agent.type("its slow and never gets hot enough")
    agent.record("What is wrong: It is slow")
    for _ in range(3):
        agent.read_out()
    assert agent.kind == "question"
    agent.type("now theres a smell of burning plastic")
    assert agent.found()[0].startswith("Kind of smell: Plastic burning")
    agent.record("Kind of smell: Plastic burning")
    band = agent.page.get_by_role("alert")
    expect(band).to_contain_text("Say now: “Turn the oven's controls to off.")
    expect(band).to_contain_text("999")
    assert agent.kind == "act"
    expect(agent.page.locator("#prompt .options")).to_have_count(0)
    while agent.read_out() or agent.kind == "caller":
        if agent.kind == "caller":
            agent.say(agent.page.locator("#prompt-title").inner_text())
            agent.press("0")
    figures("danger", agent)
    assert any(said.startswith("Do not go to the fuse box in the dark") for said in agent.said)
    assert not any(said.startswith("Go to the fuse box") for said in agent.said)
    agent.page.goto(agent.now("phoneUrl"))
    heading = agent.page.locator("h1").inner_text()
    assert heading == "Burning smell: switch off and leave off"
    assert householder(agent.page, agent.site, told)[0] == heading


def test_a_caller_who_cannot_tell_anything(agent, figures):
    agent.open()
    agent.press("Escape", moves=False)
    agent.say("In your own words, what is the oven doing, or not doing?")
    agent.page.locator("#prompt-title").focus()
    agent.press("0")
    agent.go_on({}, board="0")
    figures("cannot tell", agent)
    assert set(agent.trail.values()) <= {"cant-tell", "none"}
    same_advice(agent, dict(agent.trail))


def test_a_repeat_call_is_found_by_its_reference(agent, figures):
    agent.open()
    reference = agent.page.locator("#call-reference").inner_text()
    agent.type("stone cold")
    agent.record("What is wrong: It does not get hot at all")
    agent.press("n", moves=False)
    agent.page.keyboard.type("rings back after lunch")
    agent.press("Escape", moves=False)
    agent.press("x", moves=False)
    agent.page.wait_for_function("was => document.getElementById('call-reference').textContent !== was", arg=reference)
    agent.page.wait_for_function("() => document.querySelector('[data-js-call-state]').dataset.kind === 'open'")

    second = Agent(agent.page, agent.site)
    second.press("Escape", moves=False)
    second.page.locator("#prompt-title").focus()
    second.press("g", moves=False)
    second.page.locator("#find-call").focus()
    second.page.keyboard.type(reference.lower())
    second.presses += len(reference)
    with second.page.expect_navigation():
        second.press("Enter", moves=False)
    expect(second.page.locator("#call-reference")).to_have_text(reference)
    expect(second.page.locator("#notes")).to_have_value("rings back after lunch")
    assert second.trail.items() >= {"complaint": "no-heat", "heat-main": "no-heat"}.items()
    second.press("Escape", moves=False)
    second.go_on(ELEMENT)
    figures("repeat", second)
    assert FAN_ELEMENT in same_advice(second, ELEMENT)


def test_a_repeat_call_begins_with_an_earlier_job_sheet(agent, figures):
    told = {name: answer for name, answer in ELEMENT.items() if name != "danger"}
    sheet = make_job_sheet(agent.member.firm, answers=tuple({**told, "danger": "none", "supply-off": "yes"}.items()))
    agent.open()
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    agent.page.locator("#find-call").focus()
    agent.page.keyboard.type(make_job_sheet().reference)
    agent.press("Enter", moves=False)
    expect(agent.page.locator("#previous-sheet")).to_have_text(
        "Your firm has no job sheet with this reference. Ask the caller to spell it again, or start a new call."
    )
    agent.page.locator("#find-call").fill("")
    agent.page.locator("#find-call").focus()
    agent.page.keyboard.type(sheet.reference.lower())
    agent.presses += len(sheet.reference)
    agent.press("Enter", moves=False)
    expect(agent.page.locator("#previous-sheet")).to_contain_text(sheet.reference)
    expect(agent.page.locator("#previous-sheet a.primary-action")).to_be_focused()
    agent.press("1")
    assert agent.trail == told
    assert agent.kind == "danger"
    agent.go_on(ELEMENT)
    figures("repeat, from a job sheet", agent)
    assert agent.heading == "This is a job for an appliance engineer"
    agent.page.complaints.clear()  # the reference that is none


def test_a_reference_said_in_words_is_understood(agent):
    sheet = make_job_sheet(agent.member.firm)
    agent.open()
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    agent.page.locator("#find-call").fill(spelled_out(sheet.reference).lower())
    agent.press("Enter", moves=False)
    expect(agent.page.locator("#previous-sheet")).to_contain_text(sheet.reference)


def test_an_earlier_oven_in_another_place_brings_its_words_and_numbers(agent):
    sheet = make_job_sheet(agent.member.firm, answers=(("complaint", "no-heat"), ("danger", "none")), region="us")
    agent.open()
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    agent.page.locator("#find-call").fill(sheet.reference)
    agent.press("Enter", moves=False)
    expect(agent.page.locator("#previous-sheet a.primary-action")).to_be_focused()
    with agent.page.expect_navigation():
        agent.press("1", moves=False)
    expect(agent.page.locator(".shortcuts")).to_contain_text("Emergency 911")
    expect(agent.page.locator("header.call-header")).to_contain_text("United States")
    assert agent.trail == {"complaint": "no-heat"}
