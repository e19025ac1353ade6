"""The words to match, in the region's own."""


def test_the_words_come_as_json(client):
    response = client.get("/desk/call/words.json?region=us")
    assert response.headers["Content-Type"] == "application/json"
    answers = response.json()["answers"]
    assert len(answers) > 200
    assert any("broiler" in row["answer"] for row in answers)
