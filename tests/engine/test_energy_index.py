"""The index of an oven against product sheets that are public, rounding rule and all."""

from decimal import Decimal

import pytest

from triage.engine.energy_index import CLASS_NAMES, energy_class, energy_index, standard_kwh

# Product sheets of the European product registry (EPREL), seen: litres, kWh a cycle, index and class as declared.
SHEETS = [
    (65, "0.78", "95.1", "A"),
    (73, "0.81", "94.2", "A"),
    (70, "0.80", "95.2", "A"),
    (70, "0.68", "81.0", "A+"),
    (40, "0.76", "105.6", "A"),
]


@pytest.mark.parametrize(("litres", "kwh", "index", "name"), SHEETS)
def test_the_index_and_class_are_those_on_the_sheet(litres, kwh, index, name):
    found = energy_index(Decimal(litres), Decimal(kwh))
    assert (found, energy_class(found)) == (Decimal(index), name)


def test_without_rounding_first_not_one_of_the_sheets_would_be_right():
    for litres, kwh, index, _ in SHEETS:
        exact = 100 * Decimal(kwh) / (Decimal("0.0042") * litres + Decimal("0.55"))
        assert round(exact, 1) != Decimal(index)


def test_a_sheet_that_contradicts_itself_is_found_out():
    """A public sheet prints class A+ beside index 95.3; by Annex I of the regulation that is class A."""
    index = energy_index(Decimal(73), Decimal("0.82"))
    assert (index, energy_class(index)) == (Decimal("95.3"), "A")


@pytest.mark.parametrize(("litres", "kwh"), [(40, "0.72"), (65, "0.82"), (70, "0.84"), (73, "0.86"), (25, "0.66")])
def test_the_standard_consumption_is_rounded_half_up(litres, kwh):
    """Reg. (EU) 65/2014 Annex II; 25 litres stand exactly between two hundredths."""
    assert standard_kwh(Decimal(litres)) == Decimal(kwh)


@pytest.mark.parametrize(
    ("index", "name"),
    [
        ("44.9", "A+++"), ("45", "A++"), ("61.9", "A++"), ("62", "A+"), ("81.9", "A+"), ("82", "A"), ("106.9", "A"),
        ("107", "B"), ("131.9", "B"), ("132", "C"), ("158.9", "C"), ("159", "D"),
    ],
)  # fmt: skip
def test_a_class_ends_just_below_its_bound(index, name):
    """Table 1 of Annex I, Reg. (EU) 65/2014 (seen)."""
    assert energy_class(Decimal(index)) == name
    assert name in CLASS_NAMES
