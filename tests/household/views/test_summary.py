"""The summary is a plain text file under an address of its own."""

from tests.household.checks_done import answers_of, at


def test_it_is_a_text_to_keep(client):
    response = client.get(at("/check/summary/", answers_of("fan-element-open", "no-heat")))
    assert response["Content-Type"] == "text/plain; charset=utf-8"
    assert response["Content-Disposition"] == 'attachment; filename="oven-check.txt"'
    assert response.content.decode().startswith("OVEN FAULT CHECK\n")
    assert response["Cache-Control"].startswith("public")


def test_markup_in_an_address_stays_out_of_it(client):
    assert "<" not in client.get("/check/summary/?complaint=%3Cscript%3E&<b>=1").content.decode()
