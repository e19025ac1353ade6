"""One person's whole way on a phone: the first visit, offline, a check with a task, an answer changed, danger,
and a visit asked for that is sent when online again. In between the worker is killed and a newer version is out."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, SETS, go_offline, go_online, let_old_worker_rest, says, until
from tests.browser.test_offline_hand_over import fill_in, firm, ignore_offline_errors, send, wait_for_sheet  # noqa: F401
from tests.browser.test_offline_update import UPDATE, WAITS, publish  # noqa: F401
from tests.browser.walking_by_hand import cannot_tell_the_rest, heading, is_question, no_danger, tap
from triage.models import JobSheet

pytestmark = pytest.mark.django_db(transaction=True)

FORM_KEPT = "async () => (await (await caches.open('oven-check-forms')).keys()).length === 1"


def walk_to_the_advice(page):
    no_danger(page)
    assert is_question(page)
    first = heading(page).inner_text()
    assert 1 <= cannot_tell_the_rest(page) <= 12
    expect(page.get_by_role("heading", name="What to do now")).to_be_visible()
    return first


def do_a_task(page):
    """The first that is offered, each of its questions said yes to, until it says what to do; then back."""
    advice = page.evaluate("location.href")
    page.locator("main a[href*='/check/task/']").first.click()
    expect(page.locator("li.gate").first).to_be_visible()
    for gate in range(page.locator("li.gate").count()):
        page.locator("li.gate").nth(gate).get_by_role("link", name="Yes", exact=True).click()
        expect(page.locator("li.gate").nth(gate).locator("[aria-current]")).to_have_text("Yes")
    expect(page.get_by_role("heading", name="What to do", exact=True)).to_be_visible()
    page.goto(advice)


def change_the_first_answer(page, first):
    page.locator("main").get_by_role("link", name=re.compile("^Change")).nth(2).click()  # after complaint and danger
    expect(heading(page)).to_have_text(first)
    page.locator("main .bars a").first.click()
    expect(heading(page)).not_to_have_text(first)
    cannot_tell_the_rest(page)


def test_a_whole_way_offline_from_the_second_page_on(page, firm, publish):  # noqa: F811
    page.goto(f"{page.site}/?region=gb-eng&firm={firm.slug}")
    page.wait_for_function(CONTROLLED)
    until(page, FORM_KEPT)
    tap(page, "The door or its seal is not right")
    publish(version="newer")
    page.evaluate(UPDATE)
    until(page, WAITS)
    go_offline(page)
    first = walk_to_the_advice(page)
    let_old_worker_rest(page)
    do_a_task(page)
    change_the_first_answer(page, first)
    assert len(page.evaluate(SETS)) == 2
    tap(page, "Danger? Stop here")
    page.locator("main a", has_text="burning smell of plastic").click()
    expect(page.get_by_role("heading", name="Do this now, in this order")).to_be_visible()
    expect(page.get_by_role("link", name="Call 999").first).to_be_visible()
    page.get_by_role("link", name="Ask for it now").click()
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone")
    assert JobSheet.objects.count() == 0
    go_online(page)
    sheet = wait_for_sheet(page)
    told = dict(sheet.answers)
    assert (told["complaint"], told["smell-type"]) == ("door", "plastic-or-fishy")
    assert JobSheet.objects.count() == 1
    ignore_offline_errors(page)
