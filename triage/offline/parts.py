"""What the phone makes its pages from, by role: the address that names its version, and the text that stands there."""

from dataclasses import dataclass

from django.urls import reverse

from triage.offline.bundle import pack_for_phones
from triage.offline.page_bundle import pages_for_phones


@dataclass(frozen=True, slots=True)
class Part:
    url: str
    text: str


def parts() -> dict[str, Part]:
    """Each is JSON; the worker opens the site from them by these names."""
    pack, pages = pack_for_phones(), pages_for_phones()
    return {
        "pack": Part(reverse("offline-pack", args=[pack.version]), pack.text),
        "pages": Part(reverse("offline-page-bundle", args=[pages.version]), pages.text),
    }
