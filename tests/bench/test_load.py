"""Every piece of the load bench works, tried on a handful of requests to a site on SQLite. No figure is judged here."""

from itertools import cycle, pairwise

import numpy
import pytest

from tests.bench.books import open_books, size
from tests.bench.driver import due_moments
from tests.bench.load import STEPS_PER_HAND_OVER, Crowd, show_half_load
from tests.bench.measures import Measured, measured, show, show_memory
from tests.bench.million import Million, send_waiting
from tests.bench.moody_receiver import moody_receiver
from tests.bench.people import people_asking
from tests.bench.server import built_static_files, production_server

FIRMS = 3


@pytest.fixture(scope="module")
def asked():
    return people_asking(30, "test")


def crowd_of(asked, firms, seconds=1):
    steps, advised = asked
    return Crowd(steps, advised, cycle(firms), seconds)


def seen(waits, statuses=None, cuts=None):
    return {"seconds": 2.0, "waits": sorted(waits), "statuses": statuses or {"200": len(waits)}, "cuts": cuts or {}}


def test_a_tiny_load_goes_through_every_part(asked, tmp_path, capsys):
    url = f"sqlite:///{tmp_path}/bench.sqlite3"
    with built_static_files(), moody_receiver() as receiver:
        firms = open_books(url, receiver.url, FIRMS)
        receiver.secrets = [firm["secret"] for firm in firms]
        crowd = crowd_of(asked, firms)
        with production_server(2, 1, DATABASE_URL=url) as site:
            steps = measured(site, crowd.some_steps(), 5)
            handed = measured(site, crowd.some_hand_overs(FIRMS), 5)
            show("steps", steps, handed, "hand-over")
            show_half_load(site, crowd, 20)
            show_memory(site, crowd.some_steps())
        told = size(url)
        assert told["sheets"] == FIRMS
        assert told["bytes"] == (tmp_path / "bench.sqlite3").stat().st_size
        assert send_waiting(url) > 0
    assert (steps.unwell, handed.unwell, handed.seen["statuses"]) == (0, 0, {"201": FIRMS})
    assert len(receiver.arrived) == receiver.counts["messages"] == FIRMS
    assert receiver.counts["wrong signature"] == 0
    assert "rate / hand-over" in capsys.readouterr().out


def test_a_hand_over_follows_every_hundred_steps(asked):
    mixed = crowd_of((asked[0] * 9, asked[1]), [{"slug": "hearth", "key": "none"}]).mixed(1)
    places = [number for number, request in enumerate(mixed, 1) if request.startswith(b"POST ")]
    assert len(places) > 1
    assert all(late - early == STEPS_PER_HAND_OVER + 1 for early, late in pairwise([0, *places]))


def test_people_begin_alike_and_go_their_own_ways(asked):
    steps, advised = asked
    assert 1 < len(set(steps)) < len(steps)
    assert advised
    assert steps == people_asking(30, "test")[0]


def test_waits_are_told_as_numpy_tells_them():
    """numpy.percentile by the nearest rank from above, one of the nine ways of Hyndman and Fan (1996)."""
    waits = [number * number / 1000 for number in range(1, 251)]
    found = Measured(seen(waits), site_cpu=1.0, database_cpu=0.5)
    for share in (0.5, 0.95, 0.99):
        expected = 1000 * numpy.percentile(waits, 100 * share, method="inverted_cdf")
        assert found.wait(share) == pytest.approx(expected, rel=0.02)
    assert (found.rate, found.cost, found.whole_cost) == (125, 4, 0.006)


def test_what_was_refused_or_cut_is_not_well():
    assert Measured(seen([1.0], {"200": 1, "500": 2, "201": 4}, {"TimeoutError": 3})).unwell == 5


def test_requests_fall_due_by_dice_at_the_rate_asked_for():
    """Gaps of a Poisson stream have a mean and a standard deviation of one over the rate."""
    gaps = numpy.diff([0.0, *due_moments(50, 20_000)])
    assert gaps.mean() == pytest.approx(0.02, rel=0.03)
    assert gaps.std() == pytest.approx(0.02, rel=0.03)


def test_a_million_checks_are_plain_arithmetic():
    million = Million(step=0.005, hand_over=0.025, delivery=0.0125, hit_rate=0.5, bytes_a_sheet=10_000)
    # A million times 4 steps of 5 ms and 0.08 times 37.5 ms: 23,000 seconds.
    assert million.processor_hours() == pytest.approx(23_000 / 3600)
    assert million.gigabytes() == pytest.approx(0.8)
