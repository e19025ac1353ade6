"""A hand-over made offline waits on the phone, is seen to wait, and is sent once."""

import re
from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, go_offline, go_online, says, until
from tests.conftest import STAY_LOCAL
from tests.firm_builders import make_firm
from tests.household.checks_done import answers_of
from triage.models import JobSheet

pytestmark = pytest.mark.django_db(transaction=True)

KEPT = "**/check/hand-over/kept/**"
REFUSED = {
    "no IndexedDB": "Object.defineProperty(window, 'indexedDB', { value: undefined })",
    "a private window": "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError') }",
    "a full disk": "IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }",
}


@pytest.fixture
def firm(transactional_db):
    return make_firm(slug="hearth", email="", webhook_url="")


def trail(firm):
    return urlencode({"region": "gb-eng", "firm": firm.slug, **answers_of("fan-element-open", "no-heat")})


def fill_in(page):
    page.get_by_label("Your name").fill("Alex Grey")
    page.get_by_label("Telephone").fill("020 7946 0000")
    page.get_by_label("House and street").fill("3 Mill Lane")
    page.get_by_label("Postcode").fill("AB1 2CD")
    page.get_by_label("I agree to this").check()


def send(page, firm):
    page.get_by_role("button", name=f"Send it to {firm.name}").click()


def open_form(page, firm):
    page.goto(f"{page.site}/check/?{trail(firm)}")
    page.wait_for_function(CONTROLLED)
    page.goto(f"{page.site}/check/hand-over/?{trail(firm)}")


def ignore_offline_errors(page):
    page.complaints[:] = [words for words in page.complaints if "ERR_INTERNET_DISCONNECTED" not in words]


def test_online_it_is_sent_at_once(page, firm):
    open_form(page, firm)
    fill_in(page)
    send(page, firm)
    expect(page.get_by_role("heading", level=1)).to_have_text(f"Sent to {firm.name}")
    assert JobSheet.objects.get().telephone == "020 7946 0000"
    expect(page.locator("#outbox")).to_be_hidden()


def test_it_waits_in_sight_on_every_page_and_is_sent_when_online_again(page, firm):
    open_form(page, firm)
    go_offline(page)
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone and sent when you’re back online")
    page.goto(f"{page.site}/?region=gb-eng")
    expect(page.get_by_text("1 visit is waiting to be sent")).to_be_visible()
    assert JobSheet.objects.count() == 0
    go_online(page)
    says(page, f"Sent to {firm.name}. Reference {{}}.".format(wait_for_sheet(page).reference))
    page.locator("#outbox summary").click()
    page.get_by_role("link", name="See or erase what was sent").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(f"Sent to {firm.name}")
    ignore_offline_errors(page)


def wait_for_sheet(page):
    expect(page.get_by_text("Sent from this phone")).to_be_visible()
    return JobSheet.objects.get()


def test_an_answer_lost_on_the_way_does_not_make_a_second_sheet(page, firm):
    open_form(page, firm)

    def lose_answer(route):
        route.fetch()
        route.abort("internetdisconnected")

    page.route(KEPT, lose_answer, times=1)
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone")
    first = JobSheet.objects.get()
    page.reload()
    assert wait_for_sheet(page).pk == first.pk
    ignore_offline_errors(page)


def test_the_form_itself_opens_from_the_advice_offline_and_carries_the_answers(page, firm):
    page.goto(f"{page.site}/?region=gb-eng&firm={firm.slug}")
    page.wait_for_function(CONTROLLED)
    until(page, "async () => (await (await caches.open('oven-check-forms')).keys()).length === 1")
    go_offline(page)
    page.goto(f"{page.site}/check/?{trail(firm)}")
    page.get_by_role("link", name="Ask for it now").click()
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone")
    go_online(page)
    sheet = wait_for_sheet(page)
    assert dict(sheet.answers)["complaint"] == "no-heat"
    assert len(sheet.answers) == len(answers_of("fan-element-open", "no-heat"))
    ignore_offline_errors(page)


def test_a_firms_check_goes_on_offline_and_stays_the_firms(page, firm):
    page.goto(f"{page.site}/?region=gb-eng&firm={firm.slug}")
    page.wait_for_function(CONTROLLED)
    go_offline(page)
    page.goto(f"{page.site}/?region=gb-eng&firm={firm.slug}")
    page.get_by_role("link", name="It does not get hot at all", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Is there any danger?")
    expect(page).to_have_url(re.compile(f"firm={firm.slug}"))
    ignore_offline_errors(page)


def test_what_the_firm_cannot_take_stays_with_the_reason(page, firm):
    open_form(page, firm)
    go_offline(page)
    page.get_by_label("I agree to this").check()
    send(page, firm)
    says(page, "saved on this phone")
    go_online(page)
    expect(page.locator("#outbox")).to_contain_text("could not be taken as it is")
    expect(page.get_by_role("button", name="Send it now")).to_be_hidden()
    page.get_by_role("button", name="Remove it from this phone").click()
    expect(page.locator("#outbox")).to_be_hidden()
    assert JobSheet.objects.count() == 0
    page.complaints.clear()


@pytest.mark.parametrize("how", REFUSED)
def test_where_nothing_can_be_kept_that_is_said_and_the_code_and_the_words_are_there(page, firm, how):
    page.add_init_script(REFUSED[how])
    open_form(page, firm)
    go_offline(page)
    fill_in(page)
    send(page, firm)
    says(page, "this browser saves nothing. Nothing was sent.")
    expect(page.get_by_label("Your name")).to_have_value("Alex Grey")
    expect(page.locator("#answers-code svg")).to_be_visible()
    says(page, "Or go back to the advice and copy the summary there; what you typed here is then gone.")
    page.get_by_role("link", name="Back to the advice").click()
    expect(page.get_by_role("button", name="Copy these words")).to_be_visible()
    expect(page.locator("#summary")).to_contain_text("OVEN FAULT CHECK")
    ignore_offline_errors(page)


def test_it_outlives_a_killed_tab_and_a_restarted_browser(playwright, chromium_path, live_server, firm, tmp_path):
    def start():
        phone = {name: told for name, told in playwright.devices["Pixel 7"].items() if name != "default_browser_type"}
        return playwright.chromium.launch_persistent_context(
            tmp_path / "phone", executable_path=chromium_path, args=list(STAY_LOCAL), **phone
        )

    first = start()
    page = first.new_page()
    page.site = live_server.url
    open_form(page, firm)
    first.set_offline(True)
    fill_in(page)
    send(page, firm)
    says(page, "saved on this phone")
    page.close()
    first.close()
    second = start()
    page = second.new_page()
    page.goto(f"{live_server.url}/?region=gb-eng")
    assert wait_for_sheet(page).name == "Alex Grey"
    page.reload()
    second.close()
    assert JobSheet.objects.count() == 1
