"""Readings: what numbers can tell without opening anything, as evidence that states how sure it is.

Each kind has a module with its inputs (`FIELDS`), a `read` from the text that stands in a trail, and the quantities
that come of it as `Measured` values. `evidence` turns those into likelihoods of an observation's options.
"""

from triage.engine.readings.encoding import InvalidReading
from triage.engine.readings.evidence import (
    QUANTITIES,
    READERS,
    flags_raised_by,
    invalid_reason,
    level_likelihood,
    option_likelihoods,
)
from triage.engine.readings.measured import Measured

__all__ = [
    "QUANTITIES",
    "READERS",
    "InvalidReading",
    "Measured",
    "flags_raised_by",
    "invalid_reason",
    "level_likelihood",
    "option_likelihoods",
]
