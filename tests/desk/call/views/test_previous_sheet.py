"""A repeat caller's job sheet over HTTP: as a page and as the part of a dialog, and never another firm's."""

from tests.firm_builders import make_job_sheet
from tests.reading_pages import read_page
from triage.desk.call.previous_sheet import LOOKUP_POLICY

THERE = "/desk/call/earlier/?region=gb-eng&call-id=ABCDE&call-earlier="


def test_it_is_shown_with_the_way_to_begin(client, agent):
    sheet = make_job_sheet(agent.firm)
    page = read_page(client.get(f"{THERE}{sheet.reference}"))
    assert sheet.reference in page.one("section.previous-sheet").text
    begin = page.one("section.previous-sheet a.primary-action").attributes["href"]
    assert begin.startswith("/desk/call/?region=gb-eng&complaint=no-heat")
    assert "danger=" not in begin


def test_for_the_dialog_it_is_a_part(client, agent):
    sheet = make_job_sheet(agent.firm)
    page = read_page(client.get(f"{THERE}{sheet.reference}", headers={"HX-Request": "true"}))
    assert page.select("html") == []
    assert sheet.reference in page.one("section.previous-sheet").text


def test_another_firms_and_none_are_the_same_answer(client):
    other = make_job_sheet().reference
    pages = [client.get(f"{THERE}{typed}", headers={"HX-Request": "true"}) for typed in (other, "ZZZZZ-ZZZZZ", "x")]
    assert [page.status_code for page in pages] == [404] * 3
    assert len({page.content for page in pages}) == 1
    assert "Your firm has no job sheet with this reference." in pages[0].content.decode()


def test_too_many_tries_are_told_so_even_with_the_right_one(client, agent):
    sheet = make_job_sheet(agent.firm)
    for _ in range(LOOKUP_POLICY.quota):
        client.get(f"{THERE}ZZZZZ-ZZZZZ")
    response = client.get(f"{THERE}{sheet.reference}")
    assert response.status_code == 429
    assert "Too many attempts" in response.content.decode()


def test_without_a_reference_it_asks_for_one_and_keeps_the_call(client):
    page = read_page(client.get("/desk/call/earlier/?region=gb-eng&complaint=no-heat&call-id=ABCDE"))
    assert page.one("#reference").attributes["name"] == "call-earlier"
    carried = {field.attributes["name"]: field.attributes["value"] for field in page.select('input[type="hidden"]')}
    assert carried == {"region": "gb-eng", "complaint": "no-heat", "call-id": "ABCDE"}
    assert "Emergency 999" in page.one("nav.shortcuts").text
