"""A guess at the place takes a territory and nothing else for one."""

import pytest

from triage.check_pages.region import guess_region
from triage.knowledge.library import library


@pytest.mark.parametrize(
    ("accepts", "region"),
    [
        ("en-US,en;q=0.9", "us"),
        ("en-GB", "gb-eng"),
        ("de-CH;q=0.4,de-DE;q=0.8", "de"),
        ("mi-NZ", "nz"),
        ("zh-Hans-AU", "au"),
        ("en-JP", "iec"),
        ("en", "ie"),
        ("", "ie"),
        ("*", "ie"),
        ("en-US;q=broken,en-IE;q=0.1", "ie"),
        ("-" * 400, "ie"),
    ],
)
def test_the_place_is_guessed_from_a_territory_only(accepts, region):
    assert guess_region(accepts, library().regions, "ie") == region


def test_a_very_long_header_is_read_in_part():
    assert guess_region("en," * 10_000 + "en-US", library().regions, "ie") == "ie"
