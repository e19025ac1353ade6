"""A frame begins where the firm's page says, in the firm's place."""

import pytest

from tests.firm_builders import make_firm

pytestmark = pytest.mark.django_db


@pytest.fixture
def firm():
    return make_firm(slug="hearth", region="ie", origins=["https://hearth.example", "https://www.hearth.example"])


@pytest.mark.parametrize(
    ("asked", "begins"),
    [
        ("", "/?region=ie&firm=hearth"),
        ("?complaint=no-heat", "/check/?region=ie&firm=hearth&complaint=no-heat"),
        ("?complaint=no-heat&region=us", "/check/?region=us&firm=hearth&complaint=no-heat"),
        ("?complaint=flies-away", "/?region=ie&firm=hearth"),
        ("?danger=none&lamp-state=lamp-dead", "/?region=ie&firm=hearth"),
        ("?region=us", "/?region=us&firm=hearth"),
        ("?region=atlantis", "/?region=gb-eng&firm=hearth"),
        ("?lang=en&complaint=no-heat", "/check/?region=ie&firm=hearth&complaint=no-heat"),
        ("?lang=fr", "/?region=ie&firm=hearth"),
        ("?lang=%00%ff", "/?region=ie&firm=hearth"),
        ("?firm=other", "/?region=ie&firm=hearth"),
        ("?%00=%ff&complaint=%00", "/?region=ie&firm=hearth"),
    ],
)
def test_where_it_begins(client, firm, asked, begins):
    response = client.get(f"/embed/hearth/{asked}")
    assert (response.status_code, response["Location"]) == (302, begins)


def test_an_unknown_firm_has_no_frame(client):
    assert client.get("/embed/nobody/").status_code == 404


def ancestors(response):
    (found,) = [rule for rule in response["Content-Security-Policy"].split("; ") if rule.startswith("frame-ancestors")]
    return found


def test_only_the_firms_own_origins_may_frame_it(client, firm):
    response = client.get("/embed/hearth/", follow=True)
    assert ancestors(response) == "frame-ancestors https://hearth.example https://www.hearth.example"
    assert ancestors(client.get("/?region=ie")) == "frame-ancestors 'none'"
    assert ancestors(client.get("/?region=ie&firm=nobody")) == "frame-ancestors 'none'"


def test_a_page_that_has_not_changed_may_still_be_framed(client, firm):
    """RFC 9111, 3.2: the headers of a 304 replace those of the page the browser kept."""
    address = "/?region=ie&firm=hearth"
    again = client.get(address, headers={"If-None-Match": client.get(address)["ETag"]})
    assert again.status_code == 304
    assert "https://hearth.example" in ancestors(again)


def test_a_page_for_no_firm_asks_no_database(client, django_assert_num_queries):
    with django_assert_num_queries(0):
        client.get("/check/?region=ie&complaint=no-heat")


def test_a_page_for_a_firm_asks_once(client, firm, django_assert_num_queries):
    with django_assert_num_queries(1):
        client.get("/check/?region=ie&firm=hearth&complaint=no-heat")
