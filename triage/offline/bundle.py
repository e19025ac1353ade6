"""The compiled pack of this site: made once, as the library it is made from is loaded once."""

from functools import cache

from triage.knowledge.library import library
from triage.knowledge.offline_pack import OfflinePack, offline_pack


@cache
def pack_for_phones() -> OfflinePack:
    known = library()
    return offline_pack(known.pack, [profile.region for profile in known.regions.values()])
