"""The region an author names on the command line."""

from django.core.management import CommandError

from triage.knowledge.library import Library
from triage.knowledge.region_builder import RegionProfile


def region_named(library: Library, code: str) -> RegionProfile:
    """The region of that id. CommandError with those there are when there is none."""
    if code not in library.regions:
        raise CommandError(f"There is no region {code}. Known: {', '.join(library.regions)}.", returncode=2)
    return library.regions[code]
