"""What repairs need and cost: the frozen shapes of a pack's parts, jobs, prices and wasted energy.

A range is always shown as a range: `Span` keeps its two ends together.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple


class Range(NamedTuple):
    """From the least to the most of something that is not known better."""

    low: float
    high: float

    def scaled(self, factor: float) -> "Range":
        """The same range in another unit; `factor` is not negative."""
        return Range(self.low * factor, self.high * factor)


# An oven's years, and how many repairs in a hundred do not hold (author's judgement): where a pack says nothing.
DEFAULT_LIFE_YEARS = Range(12.0, 20.0)
DEFAULT_FAILURE_RATE = Range(0.05, 0.15)


@dataclass(frozen=True, slots=True)
class Part:
    """A part or tool a repairer may bring; `carry` is what that costs, as a share of what a second visit costs."""

    id: str
    tool: bool
    carrying_cost: float


@dataclass(frozen=True, slots=True)
class Job:
    """What finishing one fault takes: all of `needs`, each of `may_need` with its chance whatever the others do, and
    exactly one of `one_of` (sum 1). `known` is false where nobody can say before the oven is open."""

    needs: frozenset[str] = frozenset()
    may_need: Mapping[str, float] = field(default_factory=dict)
    one_of: Mapping[str, float] = field(default_factory=dict)
    known: bool = True


@dataclass(frozen=True, slots=True)
class Waste:
    """How a fault wastes electricity while the oven is still used: hot air through a gap, less power than it was
    built for, a cavity hotter than set, or something that is never off. What does not apply is None."""

    gap_cm2: Range | None = None
    power_share: Range | None = None
    too_hot_kelvin: Range | None = None
    always_watts: Range | None = None


@dataclass(frozen=True, slots=True)
class Costs:
    """Prices of whole repairs by price class: `prices[currency][class]` where the trade gives them, `call_outs[class]`
    in multiples of what a call-out costs everywhere else. `life` of an oven in years, `fails` the chance that a
    repair does not hold, `interest` a year, `wastes[fault]` for the faults that waste electricity."""

    prices: Mapping[str, Mapping[str, Range]] = field(default_factory=dict)
    call_out_multiples: Mapping[str, Range] = field(default_factory=dict)
    life_years: Range = DEFAULT_LIFE_YEARS
    failure_rate: Range = DEFAULT_FAILURE_RATE
    interest_rate: float = 0.03
    waste: Mapping[str, Waste] = field(default_factory=dict)
