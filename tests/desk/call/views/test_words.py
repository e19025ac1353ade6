"""The words to match are fetched once and kept until they change."""


def test_the_words_come_as_json_and_may_be_kept(client):
    response = client.get("/call/words.json?region=us")
    assert response.headers["Content-Type"] == "application/json"
    assert "public" in response.headers["Cache-Control"]
    assert len(response.json()["answers"]) > 200
    again = client.get("/call/words.json?region=us", headers={"If-None-Match": response.headers["ETag"]})
    assert again.status_code == 304
