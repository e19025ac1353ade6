"""The normal distribution function, by one stated algorithm that every port of the engine can follow line by line.

Marsaglia, "Evaluating the Normal Distribution", Journal of Statistical Software 11(4), 2004: a half plus the density
times x + x^3/3 + x^5/(3*5) + x^7/(3*5*7) + ..., added until a term no longer changes the sum.
"""

from math import exp, pi, sqrt

MAX_DEVIATIONS = 8.0


def normal_cdf(x: float) -> float:
    """P(Z <= x); beyond eight standard deviations exactly 0 or 1."""
    if x <= -MAX_DEVIATIONS:
        return 0.0
    if x >= MAX_DEVIATIONS:
        return 1.0
    term = total = x
    before, odd = 0.0, 1.0
    while total != before:
        before = total
        odd += 2.0
        term *= x * x / odd
        total += term
    share = 0.5 + total * exp(-0.5 * x * x) / sqrt(2.0 * pi)
    return min(max(share, 0.0), 1.0)
