"""The energy efficiency index of an oven's cavity, as the label of the European Union counts it.

Source: Commission Delegated Regulation (EU) No 65/2014, Annex II (rounding) and Annex I (classes). The standard
consumption is rounded to two decimals before it divides; without that the index of real product sheets comes out
wrong. Half a unit is rounded up.
"""

from decimal import ROUND_HALF_UP, Decimal

BASE_KWH = Decimal("0.55")
KWH_PER_LITRE = Decimal("0.0042")
# Each class with the index it stays below; D is the rest.
CLASSES = (("A+++", 45), ("A++", 62), ("A+", 82), ("A", 107), ("B", 132), ("C", 159))
LAST_CLASS = "D"
CLASS_NAMES = (*(name for name, _ in CLASSES), LAST_CLASS)


def standard_kwh(litres: Decimal) -> Decimal:
    """What an electric cavity of this volume is expected to use in one cycle, in kWh with two decimals."""
    return (KWH_PER_LITRE * litres + BASE_KWH).quantize(Decimal("0.01"), ROUND_HALF_UP)


def energy_index(litres: Decimal, kwh_a_cycle: Decimal) -> Decimal:
    """100 for an oven that uses exactly the standard consumption; less is better. Both arguments are above zero."""
    return (100 * kwh_a_cycle / standard_kwh(litres)).quantize(Decimal("0.1"), ROUND_HALF_UP)


def energy_class(index: Decimal) -> str:
    return next((name for name, below in CLASSES if index < below), LAST_CLASS)
