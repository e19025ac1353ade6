"""The ids this release uses in addresses, in job sheets and in what phones keep."""

from triage.check_pages.presenters.readings.kinds import KINDS
from triage.knowledge.library import library


def known_ids():
    known = library()
    pack = known.pack
    return {
        "observations": {name: list(asked.options) for name, asked in pack.observations.items()},
        "faults": list(pack.faults),
        "tasks": list(pack.tasks),
        "red_flags": list(pack.red_flags),
        "exits": sorted(set(pack.out_of_scope.values())),
        "readings": sorted(KINDS),
        "regions": sorted(known.regions),
    }
