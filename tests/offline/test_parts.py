"""What the phone is made from stands at addresses that name its version."""

from triage.offline.parts import parts


def test_each_part_is_served_as_it_is_named(client):
    for part in parts().values():
        response = client.get(part.url)
        assert response.content.decode() == part.text
        assert "immutable" in response.headers["Cache-Control"]


def test_the_pages_are_made_from_the_pack_and_their_own_bundle():
    assert set(parts()) == {"pack", "pages"}
