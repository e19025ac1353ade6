"""Many users at once: `python -m tests.bench.load [--seconds N] [--hour N] [--sqlite]`.

Everything runs on this machine, the second process that asks included, so each figure stands beside a bare page or a
bare insert of the same run. DEVELOPERS.md says how to read them.
"""

import argparse
import json
import os
import tempfile
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from itertools import cycle, islice

from tests.bench.connection import Wire, get
from tests.bench.driver import drive
from tests.bench.flaky_receiver import flaky_receiver
from tests.bench.front import front
from tests.bench.ledger import open_ledger, size
from tests.bench.measures import Measured, measured, show, show_memory
from tests.bench.million import Million, send_waiting
from tests.bench.output import say
from tests.bench.postgres import postgres
from tests.bench.restart import show_restart
from tests.bench.server import built_static_files, production_server
from tests.bench.two_hosts import NEIGHBOURS, two_hosts
from tests.bench.workload import hand_over, simulated_workload

BARE, INSERT = get("/bare/"), get("/insert/")
WORKERS, THREADS = 2, 2
STEPS_PER_HAND_OVER = 100
# What an hour is taken for: ten answers a second, such as 4,500 checks of eight questions.
HOUR = 36_000
# More than this machine answers in a second, so that time and not the list ends a part.
STEPS_A_SECOND, HAND_OVERS_A_SECOND = 800, 100
STEPS_OF_A_CHECK = 6
PAGES_AGAIN = 300
WARM_UP, SENT_TO_BOTH = 3, 50


def main():
    chosen = _arguments()
    with built_static_files(), _database(sqlite=chosen.sqlite) as (url, server), flaky_receiver() as receiver:
        books = open_ledger(url, receiver.url)
        receiver.secrets = [firm["secret"] for firm in books]
        steps, advised = simulated_workload(max(20, 4 * chosen.seconds * STEPS_A_SECOND // STEPS_OF_A_CHECK), "load")
        say(f"{len(steps)} steps of people at their ovens, {len(set(steps))} of them different")
        show_all(url, server, Crowd(steps, advised, cycle(books), chosen.seconds), chosen.hour)


def show_all(url, server, crowd, hour):
    million = Million()
    kind = "SQLite" if server is None else "PostgreSQL"
    empty = size(url)
    with production_server(WORKERS, THREADS, DATABASE_URL=url) as site:
        say(f"Production server with {WORKERS} workers of {THREADS} threads, {kind}, {os.cpu_count()} processors")
        best = show_rates(site, server, crowd, million)
        show_half_load(site, crowd, best.rate / 2)
    with production_server(WORKERS, THREADS, DATABASE_URL=url) as site:
        show_memory(site, list(islice(cycle(crowd.mixed(1)), hour)))
    with production_server(WORKERS, THREADS, DATABASE_URL=url) as site:
        million.hit_rate = show_cache(site, crowd)
    show_restart(url, crowd, crowd.seconds)
    if server is not None:
        show_two_hosts(server, crowd)
    full = size(url)
    million.bytes_a_sheet = (full["bytes"] - empty["bytes"]) / full["sheets"]
    million.delivery = send_waiting(url)
    million.show()


class Crowd:
    """What is still to be asked. Steps come in the order people ask, each part of the run going on from the last."""

    def __init__(self, steps, advised, firms, seconds):
        self.steps, self.advised, self.firms, self.seconds = steps, cycle(advised), firms, seconds
        self.place = 0

    def some_steps(self, share=4):
        """A share of all steps, the next in line."""
        size = len(self.steps) // share
        found = [get(page) for page in islice(cycle(self.steps), self.place, self.place + size)]
        self.place += size
        return found

    def some_hand_overs(self, count):
        return [hand_over(next(self.firms), next(self.advised))[1] for _ in range(count)]

    def mixed(self, share=4):
        """Steps with a hand-over after every hundred."""
        steps = self.some_steps(share)
        hand_overs = iter(self.some_hand_overs(len(steps) // STEPS_PER_HAND_OVER + 1))
        found = []
        for number, step in enumerate(steps, 1):
            found.append(step)
            if number % STEPS_PER_HAND_OVER == 0:
                found.append(next(hand_overs))
        return found


def show_rates(site, server, crowd, million):
    """As fast as eight connections can ask; the mix comes back."""
    seconds, place = crowd.seconds, [(site.host, site.port)]
    for warm_up in ([BARE] * 200, [INSERT] * 50, crowd.some_hand_overs(20)):
        drive(place, warm_up, WARM_UP)
    bare = measured(site, [BARE] * seconds * 6000, seconds, server)
    show("bare template page", bare)
    insert = measured(site, [INSERT] * seconds * 3000, seconds, server)
    show("bare insert", insert, bare)
    show("question steps, as people ask", measured(site, crowd.some_steps(), seconds, server), bare)
    once = measured(site, list(dict.fromkeys(crowd.some_steps(8))), seconds, server)
    show("question steps, each once", once, bare)
    few = list(dict.fromkeys(crowd.some_steps()))[:PAGES_AGAIN]
    for _worker in range(2 * WORKERS):
        drive(place, few, seconds)
    show("question steps, asked again", measured(site, few * 6 * seconds, seconds, server), bare)
    handed = measured(site, crowd.some_hand_overs(seconds * HAND_OVERS_A_SECOND), seconds, server)
    show("hand-overs alone", handed, insert, "bare insert")
    mix = measured(site, crowd.mixed(), seconds, server)
    show("steps and hand-overs, 100 to 1", mix, bare)
    million.step, million.hand_over = once.whole_cost, handed.whole_cost
    return mix


def show_half_load(site, crowd, rate):
    seen = Measured(drive([("127.0.0.1", site.port)], crowd.mixed(8), crowd.seconds, rate, connections=16))
    say(f"At half that load ({rate:.0f} a second, by dice), counted from when each was due")
    show("steps and hand-overs, 100 to 1", seen)


def show_cache(site, crowd):
    """nginx keeps pages as their headers allow; what it cannot answer goes on to the site. The hit rate comes back."""
    with front(site.port) as cache:
        steps = crowd.some_steps()
        before = site.cpu_seconds(), cache.cpu_seconds()
        seen = drive([("127.0.0.1", cache.port)], steps, crowd.seconds)
        after = site.cpu_seconds(), cache.cpu_seconds()
    count, kept = len(seen["waits"]), seen["cache"].get("HIT", 0)
    asked_before = count - len(set(steps[:count]))
    say(f"nginx in front, {count} steps as people ask, {asked_before} of them asked before")
    say(f"  {'a second':<34}{Measured(seen).rate:8.0f}")
    say(f"  {'answered from the cache':<34}{100 * kept / count:8.1f} %")
    say(f"  {'of those asked before':<34}{100 * kept / max(1, asked_before):8.1f} %")
    say(f"  {'processor time a step, site':<34}{1000 * (after[0] - before[0]) / count:8.3f} ms")
    say(f"  {'processor time a step, nginx':<34}{1000 * (after[1] - before[1]) / count:8.3f} ms")
    return kept / count


def show_two_hosts(server, crowd):
    """Both hosts take hand-overs at once and share the database; some are sent to both at one moment, with one key."""
    with two_hosts() as (kind, places), ExitStack() as running:
        sites = []
        for place in places:
            at = {"host": place.address, "inside": place.inside, "DATABASE_URL": server.url(place.database)}
            sites.append(running.enter_context(production_server(1, THREADS, **at)))
        targets = [(site.host, site.port) for site in sites]
        drive(targets, crowd.mixed(16), WARM_UP)
        say(f"Two hosts ({kind}; one worker each) on one PostgreSQL")
        show("steps and hand-overs, 100 to 1", Measured(drive(targets, crowd.mixed(8), crowd.seconds)))
        wanted = crowd.some_hand_overs(SENT_TO_BOTH)
        alike = sum(1 for answers in _sent_to_both(targets, wanted) if len(set(answers)) == 1)
        say(f"  {len(wanted)} hand-overs sent to both hosts at one moment: {alike} got one reference from both")


def _sent_to_both(sites, wanted):
    wires = [Wire(*site) for site in sites]
    with ThreadPoolExecutor(len(wires)) as pool:
        for request in wanted:
            answers = list(pool.map(lambda wire, sent=request: wire.ask(sent).body, wires))
            yield [json.loads(body).get("reference", body) for body in answers]


@contextmanager
def _database(*, sqlite):
    """The database's address, and its server where it has one."""
    if sqlite:
        with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
            yield f"sqlite:///{folder}/bench.sqlite3", None
        return
    with postgres(addresses=("*",), neighbours=NEIGHBOURS) as server:
        yield server.url(), server


def _arguments():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.load", description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=int, default=10, help="how long each part lasts at the most (10)")
    parser.add_argument("--hour", type=int, default=HOUR, help=f"how many requests an hour is taken for ({HOUR})")
    parser.add_argument("--sqlite", action="store_true", help="the database of a small site, not PostgreSQL")
    return parser.parse_args()


if __name__ == "__main__":
    main()
