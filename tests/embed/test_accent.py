"""The firm's colour arrives as a stylesheet, clear on the light page and the dark one."""

import re

import pytest

from tests.firm_builders import make_firm
from triage.web.accent import dark_shades

pytestmark = pytest.mark.django_db


def test_the_colour_is_set_by_day_and_its_clear_shade_by_night(client):
    response = client.get(f"/embed/{make_firm(accent='#5b3f8c').slug}/accent.css")
    assert response["Content-Type"] == "text/css; charset=utf-8"
    sheet = response.content.decode()
    assert re.findall(r"--heat: (\S+);", sheet) == ["#5b3f8c", dark_shades("#5b3f8c").accent, "Highlight"]
    assert sheet.count("{") == sheet.count("}")


def test_an_unknown_firm_has_none(client):
    assert client.get("/embed/nobody/accent.css").status_code == 404


def test_a_page_for_the_firm_links_it_and_another_does_not(client):
    slug = make_firm().slug
    assert f'href="/embed/{slug}/accent.css"' in client.get(f"/?region=ie&firm={slug}").content.decode()
    assert "accent.css" not in client.get("/?region=ie").content.decode()
