"""What the phone is made from stands at addresses that name its version."""

from triage.knowledge.library import library
from triage.knowledge.offline_pack import build_offline_pack
from triage.offline.parts import offline_pack, parts


def test_each_part_is_served_as_it_is_named(client):
    for part in parts().values():
        response = client.get(part.url)
        assert response.content.decode() == part.text
        assert "immutable" in response.headers["Cache-Control"]


def test_the_pages_are_made_from_the_pack_and_their_own_bundle():
    assert set(parts()) == {"pack", "pages"}


def test_the_pack_is_the_sites_own_with_every_region_and_made_once():
    known = library()
    assert offline_pack() == build_offline_pack(known.pack, [profile.region for profile in known.regions.values()])
    assert offline_pack() is offline_pack()
