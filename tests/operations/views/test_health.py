"""`/health/` answers whatever else is broken. These tests have no database, so a query would fail them."""


def test_a_living_process_says_so(client):
    response = client.get("/health/")
    assert (response.status_code, response.content) == (200, b"This process is alive.\n")
    assert response["Cache-Control"] == "no-store"
    assert not response.cookies


def test_it_is_asked_without_tls(client, settings):
    settings.SECURE_SSL_REDIRECT = True
    assert client.get("/health/").status_code == 200
    assert client.get("/").status_code == 301


def test_nothing_can_be_sent_to_it(client):
    assert client.post("/health/").status_code == 405
