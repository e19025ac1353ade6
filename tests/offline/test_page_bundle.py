"""What the phone's pages are made of: one text per language, light enough to come along."""

import json

import brotli
from django.urls import reverse

from triage.offline.bundle import pack_for_phones
from triage.offline.page_bundle import pages_for_phones
from triage.offline.views.service_worker import BUILT

# Of the 120 kB that everything offline may weigh; the rest is styles, scripts of the pages themselves, htmx and icons.
HEAVIEST = 87_000 + 2_450  # the worker's own code comes in one script with that of the pages


def test_it_is_one_text_and_its_version_is_made_of_its_bytes():
    assert pages_for_phones() is pages_for_phones()
    assert pages_for_phones().version == pages_for_phones().version.lower()
    assert len(pages_for_phones().version) == 16


def test_addresses_are_the_sites_own_with_a_star_for_a_name():
    paths = json.loads(pages_for_phones().text)["paths"]
    assert paths["task"].replace("*", "some-task") == reverse("household-task", args=["some-task"])
    assert paths["exit"].replace("*", "gas-oven") == reverse("household-exit", args=["gas-oven"])
    assert paths["step"] == reverse("household-step")


def test_english_is_said_as_it_stands():
    assert json.loads(pages_for_phones().text)["sentences"] == {}


def test_script_pages_and_pack_together_are_light():
    """Compressed as they travel (`views/packed.py`)."""
    texts = (BUILT.read_text("utf-8"), pages_for_phones().text, pack_for_phones().text)
    assert sum(len(brotli.compress(text.encode())) for text in texts) <= HEAVIEST
