"""The site's compiled pack is made from the library the site works with, once."""

from triage.knowledge.library import library
from triage.knowledge.offline_pack import offline_pack
from triage.offline.bundle import pack_for_phones


def test_it_is_the_sites_own_pack_with_every_region():
    known = library()
    assert pack_for_phones() == offline_pack(known.pack, [profile.region for profile in known.regions.values()])


def test_it_is_made_once():
    assert pack_for_phones() is pack_for_phones()
