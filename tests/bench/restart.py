"""A new release put in place while people ask: how many requests are lost."""

import json
import signal
import tempfile
import time
from contextlib import ExitStack

from tests.bench.driver import begin_to_drive
from tests.bench.front import front
from tests.bench.output import say
from tests.bench.server import production_server

RATE = 60
AT_LEAST = 24


def show_restart(url, crowd, seconds):
    seconds = max(AT_LEAST, seconds)
    say(f"A new release under load ({RATE} a second for {seconds} s, hand-overs among them)")
    wanted = crowd.mixed(2)
    with production_server(2, 2, DATABASE_URL=url) as site:
        _show("workers replaced by SIGHUP", site.port, wanted, seconds, lambda: hang_up(site, seconds))
    with ExitStack() as sites:
        one, two = (sites.enter_context(production_server(1, 2, DATABASE_URL=url)) for _ in range(2))
        with front(one.port, two.port) as before:
            _show("two instances behind nginx", before.port, wanted, seconds, lambda: in_turn((one, two), seconds))


def hang_up(site, seconds):
    time.sleep(seconds / 3)
    site.process.send_signal(signal.SIGHUP)


def in_turn(sites, seconds):
    """One instance after the other goes and comes back, as two units restarted in turn."""
    for site in sites:
        time.sleep(seconds / 6)
        site.restart()
        time.sleep(seconds / 6)


def _show(name, port, wanted, seconds, meanwhile):
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
        started = begin_to_drive(folder, [("127.0.0.1", port)], wanted, seconds, RATE)
        meanwhile()
        seen = json.loads(started.communicate(timeout=seconds + 120)[0])
    lost = sum(seen["cuts"].values()) + sum(n for status, n in seen["statuses"].items() if status not in ("200", "201"))
    worst = 1000 * seen["waits"][-1] if seen["waits"] else float("nan")
    say(f"  {name}: {len(seen['waits'])} answered, {lost} lost {seen['cuts'] or ''}, longest wait {worst:.0f} ms,")
    say(f"    {seen['reopened']} sent once more by the client because a kept connection had ended")
    return lost
