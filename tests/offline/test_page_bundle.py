"""What the phone's pages are made of: one text per language."""

import json

from django.urls import reverse

from triage.offline.page_bundle import build_page_bundle


def test_it_is_one_text_and_its_version_is_made_of_its_bytes():
    assert build_page_bundle() is build_page_bundle()
    assert build_page_bundle().version == build_page_bundle().version.lower()
    assert len(build_page_bundle().version) == 16


def test_addresses_are_the_sites_own_with_a_star_for_a_name():
    paths = json.loads(build_page_bundle().text)["paths"]
    assert paths["task"].replace("*", "some-task") == reverse("household-task", args=["some-task"])
    assert paths["exit"].replace("*", "gas-oven") == reverse("household-exit", args=["gas-oven"])
    assert paths["step"] == reverse("household-step")
