"""The firm's desk in a real browser: through the door, a visit written down by thumb, on paper, and for everyone."""

import io
import re

import pytest
from django.urls import reverse
from playwright.sync_api import expect
from pypdf import PdfReader

from tests.browser.examining import WCAG, barriers, examine, take_pictures
from tests.desk.clients import PASSWORD, make_account
from tests.desk.outcomes import make_outcomes
from tests.firm_builders import make_booking, make_delivery, make_firm, make_job_sheet
from triage.models import Member, Outcome
from triage.web.api_keys import make_key

pytestmark = pytest.mark.django_db(transaction=True)

WIDE, PHONE = {"width": 1280, "height": 800}, {"width": 360, "height": 740}
LONG = (
    ("complaint", "no-heat"),
    ("danger", "none"),
    ("heat-main", "no-heat"),
    ("function-pattern", "fan-fails"),
    ("heating-system", "fan-only"),
    ("control", "electronic"),
    ("circ-fan-state", "turns-normally"),
    ("lamp-state", "lamp-works"),
    ("display-state", "time-normal"),
    ("onset", "sudden-bang"),
    ("age-band", "five-to-ten"),
    ("meter-power", "near-zero"),
    ("did-set-clock", "not-fixed"),
    ("supply-off", "yes"),
)
SMELL = (("complaint", "smell"), ("smell-type", "plastic-or-fishy"), ("smell-place", "panel-or-behind"))
READINGS = (
    ("meter-power", "f35~s60~k1000~p2200"),
    ("paper-strip-test", "psggggssg"),
    ("preheat-time", "m24~c200"),
)
MEASURED = (*(pair for pair in LONG if pair[0] != "meter-power"), *READINGS)
PAGES = ("inbox", "calibration", "deliveries", "exports", "staff", "settings", "keys", "account", "second-factor")


@pytest.fixture
def member():
    return Member.objects.create(user=make_account(is_staff=True), firm=make_firm(), role="owner")


def sign_in(page, site, wanted="/desk/"):
    page.goto(f"{site}{wanted}")
    page.fill("[name=account]", "robin")
    page.fill("[name=password]", PASSWORD)
    page.click("main button")
    page.wait_for_url(f"{site}{wanted}")


def test_a_usual_visit_is_written_down_with_six_taps_from_the_job_sheet(page, member):
    sheet = make_job_sheet(member.firm, answers=LONG)
    sign_in(page, page.site, reverse("desk-sheet", args=[sheet.reference]))
    taps = [
        ".button-link",
        "[name=found] >> nth=0",
        "[name=fitted] >> nth=0",
        "[name=result] >> nth=0",
        "[name=minutes] >> nth=1",
    ]
    for place in [*taps, ".primary-action"]:
        page.locator(place).click()
    page.wait_for_url(f"{page.site}{reverse('desk-sheet', args=[sheet.reference])}")
    outcome = Outcome.objects.get(sheet=sheet)
    assert (outcome.found, outcome.minutes, outcome.fixed_first_visit) == (["fan-element-open"], 30, True)


def test_everything_works_without_a_script(browser, live_server, member):
    sheet = make_job_sheet(member.firm)
    page = browser.new_context(java_script_enabled=False, viewport=PHONE).new_page()
    sign_in(page, live_server.url, reverse("desk-sheet", args=[sheet.reference]))
    page.get_by_role("button", name="Booked").click()
    page.fill("#text", "Comes on Tuesday.")
    page.get_by_role("button", name="Save note").click()
    assert page.locator("#notes bdi").inner_text() == "Comes on Tuesday."
    page.get_by_role("button", name="Sign out").click()
    expect(page).to_have_url(re.compile("/desk/sign-in/$"))
    page.context.close()


@pytest.mark.parametrize("trail", [LONG, SMELL, LONG[:2], MEASURED])
def test_a_job_sheet_prints_on_two_pages_of_a4_at_most(page, member, trail):
    sheet = make_job_sheet(member.firm, answers=trail)
    sign_in(page, page.site, reverse("desk-sheet", args=[sheet.reference]))
    page.emulate_media(color_scheme="dark")
    paper = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    assert len(paper.pages) <= 2
    width, height = (round(float(side) * 25.4 / 72) for side in paper.pages[0].mediabox[2:])
    assert (width, height) == (210, 297)  # ISO 216
    words = "".join(page.extract_text() for page in paper.pages)
    for told in (sheet.reference, "Not proved dead", "Ovenworks", "020 7946 0000", sheet.summary["causes"][0]["name"]):
        assert told in " ".join(words.split())
    assert "Sign out" not in words
    assert ("Drawn now" in words) == (trail is MEASURED)


def test_the_inbox_and_a_job_sheet_are_there_to_look_at(page, member):
    sheet = make_job_sheet(member.firm, answers=MEASURED)
    sign_in(page, page.site)
    take_pictures(page, "desk inbox")
    page.goto(f"{page.site}{reverse('desk-sheet', args=[sheet.reference])}")
    take_pictures(page, "job sheet")


def test_axe_finds_nothing_nothing_overflows_and_all_is_large_enough(browser, live_server, member):
    sheet = make_job_sheet(
        member.firm, answers=(*SMELL, *READINGS), booking=make_booking(name="W" * 120, street="x" * 200)
    )
    make_outcomes(member.firm, 2)
    make_delivery(member.firm, state="dead", last_error="The receiver answered 500.")
    page = browser.new_context(viewport=PHONE).new_page()
    sign_in(page, live_server.url)
    make_key(firm=member.firm, name="n" * 80)
    for name in PAGES:
        look_over(page, f"{live_server.url}{reverse(f'desk-{name}')}")
    for name in ("sheet", "outcome", "erase"):
        look_over(page, f"{live_server.url}{reverse(f'desk-{name}', args=[sheet.reference])}")
    page.context.close()


def look_over(page, address):
    page.set_viewport_size(WIDE)
    page.goto(address)
    assert barriers(page, WCAG) == [], address
    examine(page, way_out="")
