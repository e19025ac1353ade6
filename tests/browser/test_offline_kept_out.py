"""What may be secret or is another's to answer comes from the site alone: the worker keeps none of it and makes none.

Each request that reaches the site is counted at the site, because a browser calls whatever passed the worker the
worker's own.
"""

from urllib.parse import urlsplit

import pytest
from django.core.signals import request_started
from playwright.sync_api import expect

from tests.browser.phone import CONTROLLED, go_offline, says, until
from tests.firm_builders import make_firm
from tests.household.checks_done import answers_of, at
from triage.offline.precache import precache_manifest

pytestmark = pytest.mark.django_db(transaction=True)

TRAIL = {"firm": "hearth", **answers_of("fan-element-open", "no-heat")}
SUMMARY = at("/check/summary/", answers_of("fan-element-open", "no-heat"))
ANOTHER = at("/check/summary/", answers_of("door-seal-worn", "door"))
LEFT_OUT = "open the address below when you’re online"
OPENED = {
    "a sheet": "/sheet/KD7MX-4QPTR/?token=secret",
    "the hand-over": at("/check/hand-over/", TRAIL),
    "the desk": "/desk/",
    "the call page": "/desk/call/",
}
FOR_A_FIRM = [at("/check/", TRAIL), "/?region=gb-eng&firm=hearth"]
FETCHED = {
    "the API": "/api/v1/firms/hearth/job-sheets/KD7MX-4QPTR",
    "the form to keep": "/check/hand-over/kept/?firm=hearth",
}
ALL_KEPT = """async () => {
  const found = [];
  for (const name of await caches.keys()) {
    for (const { url } of await (await caches.open(name)).keys()) found.push(url.slice(location.origin.length));
  }
  return found.sort();
}"""
BLANK = "/check/hand-over/blank/?region=gb-eng&firm=hearth"
FETCH = "address => fetch(address, { headers: { 'HX-Request': 'true' } }).then((answer) => answer.status, () => 'none')"
READ = "address => fetch(address, { headers: { 'HX-Request': 'true' } }).then((answer) => answer.text())"
ITS_COLOUR = 'link[href*="/embed/"]'
IN_A_FRAME = """address => new Promise((resolve) => {
  const frame = document.body.appendChild(document.createElement("iframe"));
  frame.onload = resolve;
  frame.src = address;
})"""


@pytest.fixture
def reached():
    """The addresses the site was asked for, in order."""
    asked = []

    def note(environ, **_told):
        query = environ["QUERY_STRING"]
        asked.append(f"{environ['PATH_INFO']}?{query}" if query else environ["PATH_INFO"])

    request_started.connect(note)
    yield asked
    request_started.disconnect(note)


@pytest.fixture
def phone(page):
    make_firm(slug="hearth", email="", webhook_url="", origins=[page.site])
    page.goto(f"{page.site}/?region=gb-eng&firm=hearth")
    page.wait_for_function(CONTROLLED)
    until(page, "async () => (await (await caches.open('oven-check-forms')).keys()).length === 1")
    yield page
    page.complaints.clear()  # pages that are not there, and a connection that was taken away


def assert_nothing_more_is_kept(phone):
    assert phone.evaluate(ALL_KEPT) == sorted([BLANK, *(file.url for file in precache_manifest().files)])


@pytest.mark.parametrize("name", OPENED)
def test_a_page_that_is_not_the_phones_is_the_sites_each_time_and_is_kept_nowhere(phone, reached, name):
    for _ in range(2):
        phone.goto(phone.site + OPENED[name])
    assert reached.count(OPENED[name]) == 2
    assert_nothing_more_is_kept(phone)


@pytest.mark.parametrize("name", FETCHED)
def test_what_a_script_asks_of_the_site_passes_the_worker_by(phone, reached, name):
    for _ in range(2):
        assert phone.evaluate(FETCH, FETCHED[name]) != "none"
    assert reached.count(FETCHED[name]) == 2
    assert_nothing_more_is_kept(phone)
    go_offline(phone)
    assert phone.evaluate(FETCH, FETCHED[name]) == "none"


@pytest.mark.parametrize("address", FOR_A_FIRM)
def test_a_page_for_a_firm_is_the_sites_in_its_colour_and_kept_only_as_the_site_lets_caches(phone, address):
    for _ in range(2):
        phone.goto(phone.site + address)
        expect(phone.locator(ITS_COLOUR)).to_have_count(1)
    assert_nothing_more_is_kept(phone)


def test_a_firms_frame_passes_the_worker_by(phone):
    phone.goto(f"{phone.site}/?region=gb-eng")
    answers = []
    phone.on("response", lambda answer: answers.append(answer) if answer.frame != phone.main_frame else None)
    phone.evaluate(IN_A_FRAME, FOR_A_FIRM[0])
    expect(phone.frame_locator("iframe").locator(ITS_COLOUR)).to_have_count(1)
    opened = next(answer for answer in answers if answer.url == phone.site + FOR_A_FIRM[0])
    assert not opened.from_service_worker
    assert_nothing_more_is_kept(phone)


@pytest.mark.parametrize("name", ["a sheet", "the desk", "the call page"])
def test_offline_nothing_of_it_is_shown(phone, name):
    phone.goto(phone.site + OPENED[name])
    go_offline(phone)
    phone.goto(phone.site + OPENED[name])
    says(phone, "that page needs a connection")
    assert urlsplit(phone.url).path == "/"


def test_offline_the_hand_over_is_the_blank_form(phone):
    phone.goto(phone.site + OPENED["the hand-over"])
    phone.get_by_label("Your name").fill("Alex Grey")
    go_offline(phone)
    phone.goto(phone.site + OPENED["the hand-over"])
    expect(phone.get_by_label("Your name")).to_have_value("")


def test_the_file_for_a_repairer_is_the_sites_where_there_is_a_line(phone, client):
    """It names the parts to bring, which the phone leaves to the site."""
    with_a_line = phone.evaluate(READ, SUMMARY)
    assert with_a_line == client.get(SUMMARY, HTTP_HOST=urlsplit(phone.site).netloc).content.decode()
    go_offline(phone)
    assert LEFT_OUT not in with_a_line
    assert LEFT_OUT in phone.evaluate(READ, ANOTHER)
