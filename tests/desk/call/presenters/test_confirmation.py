"""The reference is spelled as ICAO spells it, and the link is the sender's own."""

from urllib.parse import parse_qs, urlsplit

import pytest

from tests.firm_builders import make_booking, make_job_sheet
from triage.desk.call.presenters.confirmation import confirmation_page
from triage.jobsheet.access import open_as_sender
from triage.models import JobSheet

pytestmark = pytest.mark.django_db


def test_the_reference_is_said_in_two_halves():
    sheet = make_job_sheet()
    JobSheet.objects.filter(pk=sheet.pk).update(reference="KD7MX-4QPTR")
    sheet.refresh_from_db()
    # ICAO Annex 10, Volume II, figure 5-1
    assert confirmation_page(sheet, "https://check.example").spoken == [
        "Kilo Delta Seven Mike X-ray",
        "Four Quebec Papa Tango Romeo",
    ]


def test_the_link_opens_it_for_who_has_it():
    sheet = make_job_sheet()
    page = confirmation_page(sheet, "https://check.example")
    link = urlsplit(page.link)
    assert (link.netloc, link.path) == ("check.example", f"/sheet/{sheet.reference}/")
    assert open_as_sender(sheet.reference, parse_qs(link.query)["token"][0]) == sheet


def test_once_the_sites_key_of_then_is_gone_there_is_no_link(settings):
    sheet = make_job_sheet()
    settings.SECRET_KEY = "another key of thirty-two letters or more"
    assert confirmation_page(sheet, "https://check.example").link == ""


@pytest.mark.parametrize(("telephone", "how"), [("020 7946 0000", "by telephone"), ("", "by e-mail")])
def test_how_the_firm_gets_in_touch(telephone, how):
    page = confirmation_page(make_job_sheet(booking=make_booking(telephone=telephone)), "https://check.example")
    assert page.lines[0].startswith(f"We get in touch {how} to agree a time.")
