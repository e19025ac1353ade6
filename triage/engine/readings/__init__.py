"""Readings: what numbers can tell without opening anything, as evidence that states how sure it is.

Each kind has a module with its inputs (`FIELDS`), a `read` from the text that stands in a trail, and the quantities
that come of it as `Measured` values. `evidence` turns those into likelihoods of an observation's options.
"""

from triage.engine.readings.evidence import KINDS, QUANTITIES, gauge_answer, level_likelihood, raised_by, unreadable
from triage.engine.readings.measured import Measured
from triage.engine.readings.written import Unreadable

__all__ = [
    "KINDS",
    "QUANTITIES",
    "Measured",
    "Unreadable",
    "gauge_answer",
    "level_likelihood",
    "raised_by",
    "unreadable",
]
