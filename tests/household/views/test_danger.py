"""The danger page is one tap from everywhere and keeps the answers."""

from tests.household.checks_done import address, open_page


def test_each_sign_and_none_of_these_keep_the_answers(client):
    page = open_page(client, address("/danger/", complaint="no-heat", lamp_state="lamp-works"))
    bars = page.select("main ul.bars a")
    assert len(bars) > 15
    for bar in bars:
        assert "complaint=no-heat&lamp-state=lamp-works" in bar.attributes["href"]
    assert bars[-1].attributes["href"].endswith("&danger=none")


def test_it_says_when_none_was_answered_before(client):
    assert "You said earlier" in open_page(client, address("/danger/", danger="none")).one("main").text


def test_without_a_complaint_none_of_these_asks_what_is_wrong(client):
    page = open_page(client, "/danger/?region=ie")
    first = open_page(client, page.select("main ul.bars a")[-1].attributes["href"])
    assert first.one("h1").text == "What is your oven doing?"
    assert first.select("ul.bars li a")[1].attributes["href"].startswith("/check/?region=ie&danger=none&complaint=")
