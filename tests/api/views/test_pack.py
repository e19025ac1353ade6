"""`GET /api/v1/pack`, in the words of the place."""


def test_the_pack_is_in_the_words_of_the_place(client):
    england, states = (client.get(f"/api/v1/pack?region={place}").json() for place in ("gb-eng", "us"))
    assert england["region"]["id"] == "gb-eng"
    assert england["complaints"][0]["answers"][0][0] == "complaint"
    assert england["observations"] != states["observations"]
