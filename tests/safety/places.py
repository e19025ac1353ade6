"""The regions as the engine sees them: those with the same shares of ovens and the same removed tasks are one class.

Words, numbers and sentences of a region play no part in its reasoning, so one region stands for its whole class in
walks; pages are checked for every region.
"""

from dataclasses import dataclass
from functools import cache

from triage.engine import Region
from triage.knowledge.library import library


@dataclass(frozen=True)
class RegionClass:
    """`region` stands for all of `members`, which are ids."""

    region: Region
    members: tuple[str, ...]


@cache
def region_classes():
    """Every class, the one with most members first."""
    classes = {}
    for profile in library().regions.values():
        classes.setdefault(_seen_by_the_engine(profile.region), []).append(profile.region)
    found = [RegionClass(regions[0], tuple(region.id for region in regions)) for regions in classes.values()]
    return tuple(sorted(found, key=lambda found_class: (-len(found_class.members), found_class.members)))


def class_named(region):
    """The class that the region with this id belongs to."""
    return next(found for found in region_classes() if region in found.members)


def _seen_by_the_engine(region):
    shares = {variant: tuple(sorted(told.items())) for variant, told in region.shares.items()}
    return tuple(sorted(shares.items())), region.removed_tasks
