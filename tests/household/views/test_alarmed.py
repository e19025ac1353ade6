"""Figures that raise a red flag open the check at once, in a page and in a fragment."""

from urllib.parse import parse_qs, urlsplit

import pytest

from tests.household.checks_done import at

CLIMBING = {"read-form": "1", "read-set": "180", "danger": "none"}
for number, (time, shown) in enumerate([(30, 220), (35, 250), (40, 280)], 1):
    CLIMBING |= {f"read-time-{number}": str(time), f"read-shown-{number}": str(shown)}
ADDRESS = at("/reading/thermometer/", CLIMBING)


def test_the_page_turns_to_the_danger(client):
    response = client.get(ADDRESS)
    assert response.status_code == 302
    assert parse_qs(urlsplit(response.headers["Location"]).query)["thermometer-swing"] == ["c180~r30-220_35-250_40-280"]
    assert "signal--" in client.get(response.headers["Location"], follow=True).content.decode()


def test_a_fragment_makes_the_browser_go_there(client):
    response = client.get(ADDRESS, headers={"HX-Request": "true"})
    assert response.status_code == 200
    assert response.headers["HX-Redirect"] == client.get(ADDRESS).headers["Location"]


@pytest.mark.parametrize("shown", ["170", "182"])
def test_figures_that_raise_nothing_are_shown(client, shown):
    response = client.get(at("/reading/thermometer/", {**CLIMBING, **{f"read-shown-{n}": shown for n in (1, 2, 3)}}))
    assert response.status_code == 200
    assert "reading-result" in response.content.decode()
