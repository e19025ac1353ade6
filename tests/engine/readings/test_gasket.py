"""The seal test: which pattern of eight places speaks for what."""

from itertools import product

import pytest

from tests.builders import electric_oven
from triage.engine.readings import gasket, option_likelihoods
from triage.engine.readings.gasket import SEAL_PLACES


def classes(text):
    return gasket.read_gasket(text).likelihoods


def test_the_text_names_every_place_clockwise_from_the_top_left():
    found = dict.fromkeys(SEAL_PLACES, False) | {"top-right": True}
    del found["bottom"]
    assert gasket.encode_gasket(found) == "pggsggxgg"
    assert gasket.read_gasket("pggsggxgg").leaking_places == ("top-right",)
    assert gasket.read_gasket("pggsggxgg").leaks[5] is None


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("pgggggggg", "tight"),
        ("pggggxggg".replace("x", "g"), "tight"),
        ("pssggggxg", "spot"),
        ("psssggggg", "side"),
        ("pggggsssg", "side"),
        ("psgggggss", "side"),
    ],
)
def test_a_clear_pattern_is_likeliest_as_what_it_looks_like(text, name):
    assert max(classes(text), key=classes(text).get) == name


def test_the_likelihoods_of_all_patterns_under_a_tight_seal_add_up_to_one():
    """Bayes' rule run forwards: over all 256 patterns the errors' own distribution comes out whole."""
    patterns = list(product((True, False), repeat=8))
    total = sum(0.1 ** sum(p) * 0.9 ** (8 - sum(p)) for p in patterns)
    assert total == pytest.approx(1.0)
    assert sum(gasket._pattern_likelihood(p, frozenset()) for p in patterns) == pytest.approx(total)
    assert sum(gasket._pattern_likelihood(p, gasket.SIDES[3]) for p in patterns) == pytest.approx(1.0)


def test_one_slipping_strip_is_no_proof():
    assert 0.25 < classes("pgsgggggg")["spot"] < 0.75


def test_the_left_side_ends_at_the_top_left_corner():
    assert gasket.SIDES[3] == frozenset({6, 7, 0})


@pytest.mark.parametrize("test", ["paper-strip-test", "torch-gap-test"])
def test_both_tests_of_the_pack_read_the_same_map(test):
    asked = electric_oven().observations[test]
    told = option_likelihoods(asked, "psssggxgg")
    assert max(told, key=told.get) == asked.options[-1]
    assert sum(told.values()) == pytest.approx(1.0)
