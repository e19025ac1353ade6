"""Faults injected while hand-overs flow. Each is done to the environment and undone; nothing else is mended."""

import os
import random
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass

from tests.bench.flaky_receiver import DEAD, FAULT_MODES
from tests.bench.processes import family_of

AN_HOUR = 3600


@dataclass(frozen=True)
class Fault:
    """`does` is given the environment and for how many seconds it lasts, where it lasts."""

    name: str
    does: Callable


def _kill_web_worker(environment, _seconds):
    os.kill(random.choice(environment.site.workers()), signal.SIGKILL)


def _kill_web_server(environment, _seconds):
    """Whoever starts the workers, and all of them."""
    for process in (environment.site.process.pid, *environment.site.workers()):
        os.kill(process, signal.SIGKILL)


def _kill_deliverer(environment, _seconds):
    os.kill(environment.supervisor.processes["deliverer"].pid, signal.SIGKILL)


def _kill_database(environment, _seconds):
    """The server and every process of it."""
    for process in family_of(environment.postgres.process.pid):
        os.kill(process, signal.SIGKILL)


def _fill_disk(environment, seconds):
    environment.disk.fill()
    time.sleep(seconds)
    environment.disk.free()


def _skew(hours):
    def does(environment, seconds):
        """A second worker beside the first, so that both claim from one list."""
        name = f"deliverer {hours:+} h"
        environment.supervisor.keep(name, lambda: environment.deliverer(hours * AN_HOUR))
        time.sleep(seconds)
        environment.supervisor.let_go(name)

    return does


def receiver_in(mood):
    def does(environment, seconds):
        environment.receiver.become(mood)
        time.sleep(seconds)
        environment.receiver.become("content")

    return Fault(f"the receiver {mood}", does)


def _new_release(environment, _seconds):
    environment.site.process.send_signal(signal.SIGHUP)


WEB_KILLED = Fault("a web worker killed", _kill_web_worker)
DELIVERER_KILLED = Fault("the delivery worker killed", _kill_deliverer)


def faults_for(environment):
    """All that can happen to this environment. With SQLite all is on one host, which has one clock."""
    found = [WEB_KILLED, DELIVERER_KILLED, Fault("the web server killed whole", _kill_web_server)]
    if environment.postgres:
        found.append(Fault("the database killed", _kill_database))
        found += [Fault(f"a delivery worker's clock {hours:+} h", _skew(hours)) for hours in (1, -1)]
    if environment.disk:
        found.append(Fault("the disk full", _fill_disk))
    found += [receiver_in(mood) for mood in (*FAULT_MODES, DEAD) if mood != "content"]
    return [*found, Fault("workers replaced (SIGHUP)", _new_release)]
