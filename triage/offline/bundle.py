"""The compiled pack of this site: made once, as the library it is made from is loaded once."""

from functools import cache

from triage.knowledge.library import library
from triage.knowledge.offline_pack import PhonePack, phone_pack


@cache
def pack_for_phones() -> PhonePack:
    known = library()
    return phone_pack(known.pack, [profile.region for profile in known.regions.values()])
