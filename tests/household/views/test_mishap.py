"""A wrong address and a failure each get a page in plain words, with the danger signs one tap away."""

from tests.reading_pages import read_page
from triage.household.views import mishap
from triage.knowledge.library import library


def test_a_wrong_address_gets_a_page(client):
    response = client.get("/no/such/page/")
    assert response.status_code == 404
    page = read_page(response)
    assert page.one("h1").text == "This page is not here"
    assert page.select('a[href="/danger/?region=gb-eng"]')
    assert page.select('a[href="tel:999"]')


def test_a_wrong_address_keeps_the_answers_and_the_number_of_the_place(client):
    page = read_page(client.get("/no/such/page/", {"region": "au", "complaint": "no-heat"}))
    assert page.select('a[href="/danger/?region=au&complaint=no-heat"]')
    assert page.select('a[href="tel:000"]')


def test_a_request_for_another_sites_name_gets_a_page_with_the_number_of_every_place(client):
    response = client.get("/", headers={"Host": "evil.example"})
    assert response.status_code == 400
    page = read_page(response)
    assert page.one("h1").text == "This page cannot be shown"
    assert page.select('a[href="/danger/"]')
    for place in library().regions.values():
        assert page.select(f'a[href="tel:{place.emergency}"]'), place.name
    assert "evil.example" not in response.content.decode()


def test_a_program_gets_the_same_as_a_problem_document(client):
    response = client.get("/api/v1/pack", headers={"Host": "evil.example"})
    assert (response.status_code, response.headers["Content-Type"]) == (400, "application/problem+json")
    assert response.json()["detail"] == "This site does not answer such a request. Look at its name."


def test_a_failure_gets_a_page(rf):
    response = mishap.server_error(rf.get("/"))
    assert response.status_code == 500
    assert read_page(response).one("h1").text == "Something went wrong on our side"


def test_a_failure_knows_no_place_so_it_lists_the_number_of_every_place(rf):
    page = read_page(mishap.server_error(rf.get("/")))
    for place in library().regions.values():
        assert page.select(f'a[href="tel:{place.emergency}"]'), place.name


def test_a_failing_view_gets_that_page(client, monkeypatch):
    def fail(_visit):
        raise RuntimeError

    client.raise_request_exception = False
    monkeypatch.setattr("triage.household.views.start.start_page", fail)
    response = client.get("/")
    assert response.status_code == 500
    assert read_page(response).one("h1").text == "Something went wrong on our side"
