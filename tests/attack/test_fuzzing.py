"""A small part of `python -m tests.attack.fuzzing`: no parser breaks, each takes some and refuses some, and a parser
that does break is seen."""

from random import Random

import pytest

from tests.attack.fuzzing import fuzz, shares
from tests.attack.mutating import mutated
from tests.attack.parser import Parser
from tests.attack.parsers import parsers

TOTAL = 20_000


@pytest.fixture(scope="module")
def tallies(tmp_path_factory):
    known = parsers(tmp_path_factory.mktemp("fuzz"))
    return fuzz(known, shares(known, TOTAL), 1)


def test_no_parser_is_broken_by_an_input_nobody_meant(tallies):
    broken = {name: tally.broken[:3] for name, tally in tallies.items() if tally.broken}
    assert broken == {}
    assert sum(tally.count for tally in tallies.values()) >= TOTAL


def test_the_inputs_are_neither_all_nonsense_nor_all_good(tallies, tmp_path):
    refusing = {name for name, parser in parsers(tmp_path).items() if parser.refuses}
    assert {name for name, tally in tallies.items() if not tally.taken} == set()
    assert {name for name in refusing if not tallies[name].refused} == set()


def test_every_good_input_is_taken(tmp_path):
    for name, parser in parsers(tmp_path).items():
        taken = 0
        for good in parser.good:
            try:
                parser.read(good)
                taken += 1
            except parser.refuses:
                continue
        assert taken >= 1, name


def test_a_parser_that_breaks_is_seen():
    def fragile(item):
        return item.decode("ascii")

    (tally,) = fuzz({"fragile": Parser(fragile, [b"abc"])}, {"fragile": 500}, 1).values()
    assert tally.broken
    assert isinstance(tally.broken[0][1], UnicodeDecodeError)


def test_the_same_dice_make_the_same_inputs():
    first = [mutated(Random(7), b"complaint=no-heat") for _ in range(3)]
    assert first == [mutated(Random(7), b"complaint=no-heat") for _ in range(3)]
    assert sum(shares(["address", "step"], 100).values()) >= 100
