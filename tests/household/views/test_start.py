"""The first page lists every complaint, finds it by other words, and shows whose rules apply."""

from tests.household.checks_done import links_of, open_page


def test_each_complaint_is_a_link_that_works_without_htmx(client):
    page = open_page(client, "/?region=gb-eng")
    lines = [line for line in page.select("ul.bars li") if "data-danger" not in line.attributes]
    assert len(lines) == 42
    for line in lines:
        link = line.one("a")
        assert link.attributes["href"] == link.attributes["hx-get"]
        assert link.attributes["href"].startswith("/check/?region=gb-eng&complaint=")


def test_a_line_is_found_by_the_words_people_type(client):
    lines = open_page(client, "/?region=gb-eng").select("ul.bars li")
    for typed in ("cold", "tripping", "burning smell"):
        assert any(typed in line.attributes["data-search-terms"] for line in lines)


def test_the_place_is_shown_and_changed_in_one_tap(client):
    page = open_page(client, "/", **{"Accept-Language": "en-IE"})
    assert page.one("#place").text == "Rules and numbers for Ireland"
    assert page.one('header a[href="#place"]').text == "Ireland"
    there = open_page(client, links_of(page)["United States"])
    assert there.one("#place").text == "Rules and numbers for United States"
    assert there.select('a[href="tel:911"]')


def test_an_unknown_place_is_said(client):
    assert "We do not know the place" in open_page(client, "/?region=atlantis").one("main .note").text


def test_words_of_the_place_are_used(client):
    assert "broiler" in open_page(client, "/?region=us").one("main").text
    assert "broiler" not in open_page(client, "/?region=gb-eng").one("main").text
