"""One tree of the pack people use, grown once for the tests of its words and its drawing."""

from functools import cache

from triage.authoring.decision_tree import grow
from triage.authoring.tree_labels import TreeLabels
from triage.knowledge.library import library


@cache
def no_heat_tree():
    """Two questions deep after "it does not get hot", on a mechanical fan oven."""
    known = library()
    stated = {"heating-system": "fan-only", "control": "mechanical"}
    return grow(known.pack, known.regions["gb-eng"].region, stated, "no-heat", 2, lambda _done: None)


def words():
    return TreeLabels(library().pack, "gb-eng", library().texts_for("gb-eng"))
