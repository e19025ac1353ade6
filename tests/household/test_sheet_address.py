"""The sender's link opens the sheet and no other."""

import pytest

from tests.firm_builders import make_firm, make_job_sheet
from triage.household.sheet_address import check_request_for_sheet, erase_address, query_params, sheet_address
from triage.jobsheet.access import open_as_sender

pytestmark = pytest.mark.django_db


def test_the_token_in_it_opens_the_sheet(rf):
    sheet = make_job_sheet()
    told = query_params(rf.get(sheet_address(sheet, sent="yes")))
    assert told["sent"] == "yes"
    assert open_as_sender(sheet.reference, told["token"]) == sheet
    assert erase_address(sheet, told["token"]).startswith(f"/sheet/{sheet.reference}/erase/?token=")


def test_without_the_sites_key_of_that_time_there_is_no_token(settings):
    sheet = make_job_sheet()
    settings.SECRET_KEY = "another key of this site, long enough to be one"
    assert sheet_address(sheet) == f"/sheet/{sheet.reference}/?token="


def test_the_place_is_the_sheets_whatever_the_browser_speaks(rf):
    sheet = make_job_sheet(make_firm(region="ie"), region="ie")
    check_request = check_request_for_sheet(rf.get("/", headers={"accept-language": "en-US"}), sheet)
    assert (check_request.region.id, check_request.firm) == ("ie", sheet.firm)
