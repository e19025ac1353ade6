"""What goes wrong while hand-overs flow. Each is done to the stand and undone; nothing else is mended."""

import os
import random
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass

from tests.bench.moody_receiver import DEAD, MOODS
from tests.bench.processes import family_of

AN_HOUR = 3600


@dataclass(frozen=True)
class Mishap:
    """`does` is given the stand and for how many seconds it lasts, where it lasts."""

    name: str
    does: Callable


def _kill_web_worker(stand, _seconds):
    os.kill(random.choice(stand.site.workers()), signal.SIGKILL)


def _kill_web_server(stand, _seconds):
    """Whoever starts the workers, and all of them."""
    for process in (stand.site.process.pid, *stand.site.workers()):
        os.kill(process, signal.SIGKILL)


def _kill_deliverer(stand, _seconds):
    os.kill(stand.keeper.processes["deliverer"].pid, signal.SIGKILL)


def _kill_database(stand, _seconds):
    """The server and every process of it."""
    for process in family_of(stand.postgres.process.pid):
        os.kill(process, signal.SIGKILL)


def _fill_disk(stand, seconds):
    stand.disk.fill()
    time.sleep(seconds)
    stand.disk.free()


def _skew(hours):
    def does(stand, seconds):
        """A second worker beside the first, so that both claim from one list."""
        name = f"deliverer {hours:+} h"
        stand.keeper.keep(name, lambda: stand.deliverer(hours * AN_HOUR))
        time.sleep(seconds)
        stand.keeper.let_go(name)

    return does


def receiver_in(mood):
    def does(stand, seconds):
        stand.receiver.become(mood)
        time.sleep(seconds)
        stand.receiver.become("content")

    return Mishap(f"the receiver {mood}", does)


def _new_release(stand, _seconds):
    stand.site.process.send_signal(signal.SIGHUP)


WEB_KILLED = Mishap("a web worker killed", _kill_web_worker)
DELIVERER_KILLED = Mishap("the delivery worker killed", _kill_deliverer)


def mishaps_for(stand):
    """All that can happen to this stand. With SQLite all is on one host, which has one clock."""
    found = [WEB_KILLED, DELIVERER_KILLED, Mishap("the web server killed whole", _kill_web_server)]
    if stand.postgres:
        found.append(Mishap("the database killed", _kill_database))
        found += [Mishap(f"a delivery worker's clock {hours:+} h", _skew(hours)) for hours in (1, -1)]
    if stand.disk:
        found.append(Mishap("the disk full", _fill_disk))
    found += [receiver_in(mood) for mood in (*MOODS, DEAD) if mood != "content"]
    return [*found, Mishap("workers replaced (SIGHUP)", _new_release)]
