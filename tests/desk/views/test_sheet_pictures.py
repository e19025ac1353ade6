"""The pictures of readings on a job sheet's page, read back from its SVG as a browser would parse it."""

from xml.etree import ElementTree

import pytest
from django.urls import reverse

from tests.desk.clients import client_of
from tests.firm_builders import ANSWERS, make_job_sheet, make_member
from tests.reading_pages import read_page
from triage.models import JobSheet

pytestmark = pytest.mark.django_db

SEEN = (*ANSWERS, ("heat-main", "too-little"))
READINGS = (
    ("meter-power", "f35~s60~k1000~p2200"),
    ("thermometer-mean", "c180~r30-174_35-190_40-172_45-188"),
    ("paper-strip-test", "psgggxxxg"),
)


def page_of(sheet):
    response = client_of(make_member(sheet.firm, "repairer")).get(reverse("desk-sheet", args=[sheet.reference]))
    assert response.status_code == 200
    return response.content.decode()


def pictures_in(page):
    """Each picture's SVG as XML, in the order of the page."""
    parts = page.split('<figure class="picture">')[1:]
    return [ElementTree.fromstring(part[part.index("<svg") : part.index("</svg>") + 6]) for part in parts]


def kinds_in(svg):
    return {shape.get("class") for shape in svg}


def test_each_reading_has_its_picture_and_its_words_in_the_same_line():
    page = page_of(make_job_sheet(answers=(*SEEN, *READINGS)))
    meter, heat, seal = pictures_in(page)
    assert {"plate", "hot", "whisker"} <= kinds_in(meter)
    assert len([dot for dot in heat if dot.get("class") == "reading"]) == 4
    assert [shape.get("class") for shape in seal if shape.tag == "circle"][:8].count("leak") == 1
    lines = read_page(page).select(".readings li")
    assert ["1.89 kW ± 0.21" in line.text for line in lines] == [True, False, False]
    told = [line.one("figcaption").text for line in lines]
    assert told[0].startswith("The oven drew 1.89 kW ± 0.21.")
    assert told[1].startswith("Readings from 172 °C to 190 °C, mean ")
    assert told[2] == "The seal lets through at: top left."
    assert all(line.one(".picture svg").attributes["aria-hidden"] == "true" for line in lines)


def test_bars_are_as_long_as_the_figures_say():
    """2200 W by the plate; 35 flashes in a minute of a meter of 1000 imp/kWh are 2040 W, less 150 W for the home."""
    (meter,) = pictures_in(page_of(make_job_sheet(answers=(*SEEN, READINGS[0]))))
    wide = {shape.get("class"): float(shape.get("width")) for shape in meter if shape.tag == "rect"}
    assert wide["hot"] < wide["plate"]
    assert wide["hot"] / wide["plate"] == pytest.approx(0.88, abs=0.01)


def test_figures_that_cannot_be_read_leave_their_words_alone():
    sheet = make_job_sheet(answers=(*SEEN, *READINGS))
    summary = sheet.summary
    summary["readings"][0] |= {"answer": "k0~<svg onload=alert(1)>", "text": "as it was frozen"}
    summary["readings"][2] |= {"observation": "gone-from-the-pack"}
    JobSheet.objects.filter(pk=sheet.pk).update(summary=summary)
    page = page_of(sheet)
    assert len(pictures_in(page)) == 1
    lines = read_page(page).select(".readings li")
    assert "as it was frozen" in lines[0].text
    assert len(lines) == 3


def test_a_sheet_without_readings_has_no_picture():
    assert pictures_in(page_of(make_job_sheet())) == []
