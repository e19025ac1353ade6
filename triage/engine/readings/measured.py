"""A measured value and how sure it is: standard uncertainties, combined as the GUM does (JCGM 100:2008, clause 5).

A limit known only as "within plus or minus a" is a rectangle of standard uncertainty a/sqrt(3) (GUM 4.3.7); the
difference of two figures each cut off at a resolution r is a triangle of r/sqrt(6) (GUM 4.3.9).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import sqrt

from triage.engine.readings.normal import normal_cdf

MIN_UNCERTAINTY = 1e-6
RELATIVE_STEP = 1e-4


@dataclass(frozen=True, slots=True)
class Measured:
    """`uncertainty` is one standard uncertainty. `at_least` is the chance that the value is only a floor: a fan
    that still runs, an average over a time in which the thermostat may have rested."""

    value: float
    uncertainty: float
    p_lower_bound: float = 0.0


def uniform_uncertainty(half_width: float) -> float:
    """The standard uncertainty of something known to lie within plus or minus `half_width`."""
    return half_width / sqrt(3.0)


def triangular_uncertainty(half_width: float) -> float:
    """The standard uncertainty of the difference of two readings, each anywhere within one resolution step."""
    return half_width / sqrt(6.0)


def in_quadrature(*uncertainties: float) -> float:
    """Independent uncertainties of one quantity, in quadrature."""
    return sqrt(sum(u * u for u in uncertainties))


def propagated(
    formula: Callable[..., float], values: Sequence[float], uncertainties: Sequence[float]
) -> tuple[float, float]:
    """A formula's value and standard uncertainty, its slopes taken by central differences (GUM 5.1.2)."""
    parts = []
    for place, u in enumerate(uncertainties):
        step = RELATIVE_STEP * max(abs(values[place]), RELATIVE_STEP)
        above = [v + step if i == place else v for i, v in enumerate(values)]
        below = [v - step if i == place else v for i, v in enumerate(values)]
        parts.append(u * (formula(*above) - formula(*below)) / (2.0 * step))
    return formula(*values), in_quadrature(*parts)


def interval_likelihoods(measured: Measured, spans: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """For each span the likelihood of this measurement if the true value is somewhere in it, summing to one.

    A true value is taken to lie anywhere in its span alike, so a wide span gains nothing by being wide, and a
    measurement that tells nothing favours none. Spans cover a line from end to end and may be equal (then they share
    one likelihood, each in full); a value beyond an end counts as at the end. Where the value may be a floor only,
    every span that reaches above it is as likely as the next.
    """
    spread = max(measured.uncertainty, MIN_UNCERTAINTY)
    value = min(max(measured.value, min(low for low, _ in spans)), max(high for _, high in spans))

    def below(edge: float) -> float:
        return normal_cdf((edge - value) / spread)

    within = {span: (below(span[1]) - below(span[0])) / (span[1] - span[0]) for span in spans}
    reached = {span: below(span[1]) for span in spans}
    floor = measured.p_lower_bound
    return tuple(
        (1.0 - floor) * within[span] / sum(within.values()) + floor * reached[span] / sum(reached.values())
        for span in spans
    )


def probability_above(measured: Measured, limit: float) -> float:
    """The chance that the true value is above `limit`."""
    return normal_cdf((measured.value - limit) / max(measured.uncertainty, MIN_UNCERTAINTY))


def overlaps(measured: Measured, span: tuple[float, float]) -> bool:
    """Whether the value, give or take one standard uncertainty, touches the span: the stricter reading of a flag."""
    return measured.value + measured.uncertainty >= span[0] and measured.value - measured.uncertainty <= span[1]
