"""The region an author names."""

import pytest
from django.core.management import CommandError

from triage.knowledge.library import library
from triage.management.pack_commands.regions import region_named


def test_a_region_is_found_by_its_id():
    assert region_named(library(), "us").region.id == "us"


def test_a_region_that_is_not_there_is_refused_with_those_that_are():
    with pytest.raises(CommandError, match=r"^There is no region moon\. Known: .*\bfr\b.*\bus\b.*\.$") as refused:
        region_named(library(), "moon")
    assert refused.value.returncode == 2
