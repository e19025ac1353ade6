"""What the phone makes its pages from, by role: the address that names its version, and the text that stands there."""

from dataclasses import dataclass
from functools import cache

from django.urls import reverse

from triage.knowledge.library import library
from triage.knowledge.offline_pack import OfflinePack, build_offline_pack
from triage.offline.page_bundle import build_page_bundle


@dataclass(frozen=True, slots=True)
class Part:
    url: str
    text: str


@cache
def offline_pack() -> OfflinePack:
    """The compiled pack of this site: made once, as the library it is made from is loaded once."""
    known = library()
    return build_offline_pack(known.pack, [profile.region for profile in known.regions.values()])


def parts() -> dict[str, Part]:
    """Each is JSON; the worker opens the site from them by these names."""
    pack, pages = offline_pack(), build_page_bundle()
    return {
        "pack": Part(reverse("offline-pack", args=[pack.version]), pack.text),
        "pages": Part(reverse("offline-page-bundle", args=[pages.version]), pages.text),
    }
