"""Every piece of the load bench works, tried on a handful of requests to a site on SQLite. No figure is judged here."""

from itertools import cycle

from tests.bench.flaky_receiver import flaky_receiver
from tests.bench.ledger import open_ledger, size
from tests.bench.load import Crowd, show_half_load
from tests.bench.measures import measured, show, show_memory
from tests.bench.million import send_waiting
from tests.bench.server import built_static_files, production_server
from tests.bench.workload import simulated_workload

FIRMS = 3


def test_a_tiny_load_goes_through_every_part(tmp_path, capsys):
    url = f"sqlite:///{tmp_path}/bench.sqlite3"
    with built_static_files(), flaky_receiver() as receiver:
        firms = open_ledger(url, receiver.url, FIRMS)
        receiver.secrets = [firm["secret"] for firm in firms]
        crowd = Crowd(*simulated_workload(30, "test"), cycle(firms), 1)
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
