"""A call handed over by keyboard alone, and what keeps it whole when the session or the line is gone."""

import pytest
from playwright.sync_api import expect

from tests.browser.calling_by_key import DESK, sit_down
from tests.browser.examining import assert_no_barriers_by_day_and_night, examine
from tests.desk.call.reading_aloud import ELEMENT
from triage.jobsheet.reference import spelled_out
from triage.models import JobSheet

pytestmark = pytest.mark.django_db(transaction=True)

TOLD = "&".join(f"{name}={answer}" for name, answer in ELEMENT.items())


@pytest.fixture
def browser_context_args():
    """A desk with a mouse on it: by thumb the same page is larger and may scroll."""
    return {"viewport": DESK, "locale": "en-GB"}


@pytest.fixture
def agent(page):
    return sit_down(page, page.site).open(f"region=gb-eng&{TOLD}&call-board=yes")


def to_the_form(agent):
    """Every line read out, then B."""
    while agent.read_out():
        pass
    assert agent.page.locator(".shortcuts").evaluate("e => e.scrollWidth - e.clientWidth") <= 0
    assert agent.page.locator(".main-column").evaluate("e => e.scrollHeight - e.clientHeight") <= 0
    agent.page.locator("#prompt-title").focus()
    with agent.page.expect_navigation():
        agent.press("b", moves=False)
    agent.page.wait_for_function("() => document.activeElement.name === 'name'")


def fill_in(agent):
    """As the caller says it: one box after the other, then each sentence of the consent."""
    keys = agent.page.keyboard
    for answer in ("Alex Grey", "020 7946 0000", "", "3 Mill Lane", "AB1 2CD", "Second floor"):
        keys.type(answer)
        keys.press("Tab")
    agent.page.locator("fieldset.consent input").first.focus()
    for _ in range(agent.page.locator("fieldset.consent input").count()):
        keys.press("Space")
        keys.press("Tab")


def hand_it_over(agent):
    agent.page.keyboard.press("Control+Enter")


def test_a_call_is_handed_over_by_keyboard_and_its_reference_is_there_to_read_out(agent):
    agent.press("n", moves=False)
    agent.page.keyboard.type("Rings back after lunch.")
    agent.press("Escape", moves=False)
    to_the_form(agent)
    fill_in(agent)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    sheet = JobSheet.objects.get()
    assert (sheet.firm, sheet.taken_by) == (agent.member.firm, agent.member)
    assert (sheet.name, sheet.access, sheet.telephone) == ("Alex Grey", "Second floor", "020 7946 0000")
    assert dict(sheet.answers) == ELEMENT
    assert sheet.notes.get().text == "Rings back after lunch."
    said = agent.page.locator(".spelled").inner_text()
    assert " ".join(said.split()) == spelled_out(sheet.reference)
    kept = agent.page.evaluate("JSON.stringify(localStorage)")
    assert "Mill Lane" not in kept
    assert sheet.reference in kept


def test_what_is_wrong_is_put_right_where_it_stands(agent):
    to_the_form(agent)
    hand_it_over(agent)
    expect(agent.page.get_by_role("alert")).to_contain_text("Give a name the repairer can ask for.")
    agent.page.locator("[name=name]").focus()
    fill_in(agent)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    assert JobSheet.objects.count() == 1
    agent.page.complaints.clear()  # the refusal


def test_a_session_that_ends_takes_nothing_that_was_typed(agent):
    to_the_form(agent)
    fill_in(agent)
    there = agent.page.url
    agent.page.context.clear_cookies(name="sessionid")
    hand_it_over(agent)
    door = agent.page.locator("[data-js-session-expired]")
    expect(door).to_be_visible()
    expect(door).to_contain_text("You were signed out. Everything recorded is saved in this browser.")
    assert not JobSheet.objects.exists()
    agent.page.keyboard.press("Escape")
    with agent.page.expect_navigation():
        agent.page.keyboard.press("r")
    agent.sign_in()
    agent.page.wait_for_url(there)
    expect(agent.page.locator("[name=street]")).to_have_value("3 Mill Lane")
    assert agent.page.locator("fieldset.consent input:checked").count() == agent.page.locator(".consent input").count()
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    assert JobSheet.objects.get().name == "Alex Grey"


def test_signing_in_again_in_another_tab_is_enough(agent):
    to_the_form(agent)
    fill_in(agent)
    agent.page.context.clear_cookies()
    hand_it_over(agent)
    expect(agent.page.locator("[data-js-session-expired]")).to_be_visible()
    sit_down(agent.page, agent.site, agent.member)
    agent.page.context.new_page().goto(f"{agent.site}/desk/account/")
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    assert JobSheet.objects.count() == 1
    agent.page.complaints.clear()  # the token of before


def test_without_a_line_nothing_is_lost_and_the_next_key_hands_it_over_once(agent):
    to_the_form(agent)
    fill_in(agent)
    agent.page.context.set_offline(True)
    hand_it_over(agent)
    expect(agent.page.locator("#call-status")).to_contain_text("so no job sheet was created. Everything typed is saved")
    agent.page.context.set_offline(False)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    assert JobSheet.objects.count() == 1
    agent.page.complaints.clear()


def test_without_a_line_no_key_leaves_the_form(agent):
    to_the_form(agent)
    there = agent.page.url
    agent.page.keyboard.press("Escape")
    agent.page.context.set_offline(True)
    agent.page.wait_for_function("() => !navigator.onLine")
    for key in "dz":
        agent.page.evaluate("document.getElementById('call-status').textContent = ''")
        agent.page.keyboard.press(key)
        expect(agent.page.locator("#call-status")).to_contain_text("so no other page can be opened")
    assert agent.page.url == there
    agent.page.context.set_offline(False)
    agent.page.wait_for_function("() => navigator.onLine")
    with agent.page.expect_navigation():
        agent.page.keyboard.press("d")
    expect(agent.page.locator(".prompt--danger")).to_be_visible()


def test_danger_after_the_hand_over_reads_the_signs_again_with_all_else_kept(agent):
    to_the_form(agent)
    fill_in(agent)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    agent.page.wait_for_function("() => document.activeElement.tagName === 'H1'")
    with agent.page.expect_navigation():
        agent.page.keyboard.press("d")
    expect(agent.page.locator(".prompt--danger")).to_be_visible()
    assert agent.trail == {name: answer for name, answer in ELEMENT.items() if name != "danger"}
    agent.page.reload()
    expect(agent.page.locator(".prompt--danger")).to_be_visible()


def test_two_tabs_hand_one_call_over_once(agent):
    to_the_form(agent)
    other = agent.page.context.new_page()
    other.set_viewport_size(DESK)
    other.goto(agent.page.url)
    fill_in(agent)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    reference = JobSheet.objects.get().reference
    expect(other.locator("#call-status")).to_contain_text(f"This call already has a job sheet: {reference}.")
    other.fill("[name=name]", "Alex Gray")
    other.fill("[name=telephone]", "020 7946 0000")
    for box in other.locator("fieldset.consent input").all():
        box.check()
    other.keyboard.press("Control+Enter")
    refused = f"job sheet with other details: {reference}. Correct it there."
    expect(other.locator("main [role=alert]")).to_contain_text(refused)
    assert JobSheet.objects.count() == 1


def test_the_form_and_the_reference_fit_the_screen_and_stand_in_nobodys_way(agent):
    to_the_form(agent)
    seen(agent)
    fill_in(agent)
    hand_it_over(agent)
    agent.page.wait_for_url("**/desk/call/taken/**")
    seen(agent)


def test_after_danger_the_band_stays_over_the_form_and_all_of_it_fits(page):
    agent = sit_down(page, page.site).open("region=gb-eng&complaint=smell&smell-type=plastic-or-fishy&call-board=yes")
    to_the_form(agent)
    expect(page.get_by_role("alert").first).to_contain_text("Burning smell: switch off and leave off.")
    seen(agent)


def seen(agent):
    assert_no_barriers_by_day_and_night(agent.page)
    root = "document.documentElement"
    assert agent.page.evaluate(f"[{root}.scrollWidth, {root}.scrollHeight]") == [DESK["width"], DESK["height"]]
    examine(agent.page, "D Danger")


def test_without_javascript_it_is_a_form_like_any(browser, live_server):
    context = browser.new_context(java_script_enabled=False, viewport=DESK)
    page = context.new_page()
    agent = sit_down(page, live_server.url)
    page.goto(f"{live_server.url}/desk/call/?region=gb-eng&{TOLD}&call-board=yes")
    while page.locator("#prompt li.current a").count():
        page.locator("#prompt li.current a").click()
    page.locator("section.finished a.primary-action").click()
    for name, answer in {"name": "Alex Grey", "telephone": "020 7946 0000"}.items():
        page.fill(f"[name={name}]", answer)
    for box in page.locator("fieldset.consent input").all():
        box.check()
    with page.expect_navigation():
        page.locator("button.primary-action").click()
    assert JobSheet.objects.get().taken_by == agent.member
    context.close()
