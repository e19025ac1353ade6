"""The structured job sheet: whole, and what it says is what was stored."""

import json

import pytest

from tests.firm_builders import make_booking, make_job_sheet
from tests.jobsheet.pictures import jpeg
from triage.jobsheet.actions import erase
from triage.jobsheet.contents import serialize_sheet
from triage.jobsheet.reference import spelled_out

pytestmark = pytest.mark.django_db


def test_it_holds_whose_oven_it_is_and_what_the_check_came_to():
    sheet = make_job_sheet(booking=make_booking(photo=jpeg(20, 20)))
    sheet.refresh_from_db()
    result = serialize_sheet(sheet)
    assert result["spelled"] == spelled_out(sheet.reference)
    assert result["contact"] == {"name": "Alex Grey", "telephone": "020 7946 0000", "email": "alex@home.example"}
    assert result["rating_plate"] == {
        "maker": "Ovenworks",
        "model": "OW-60",
        "serial": "S-17",
        "power": "2.9 kW",
        "year": "2015",
        "photo": True,
    }
    assert result["windows"] == [{"start": "2030-05-06T09:00:00", "end": "2030-05-06T12:00:00"}]
    assert result["check"] == sheet.summary
    assert json.loads(json.dumps(result)) == result


def test_an_erased_one_names_nobody():
    sheet = make_job_sheet()
    erase(sheet=sheet, actor="sender")
    result = serialize_sheet(sheet)
    assert result["contact"] == {"name": "", "telephone": "", "email": ""}
    assert result["windows"] == []
    assert "Grey" not in json.dumps(result)
