"""The production server on this machine, with static files as in production, and what its workers spend."""

import http.client
import os
import secrets
import socket
import subprocess
import sys
import tempfile
import time
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO
from urllib.request import urlopen

from tests.bench.page_speed import BARE
from tests.bench.processes import children_of, free_port, processor_seconds, resident_bytes
from tests.bench.sessions import question_addresses

ROOT = Path(__file__).resolve().parents[2]
START_SECONDS = 30
SECRET = secrets.token_urlsafe(50)


@dataclass
class Running:
    """`command` in `environment` is what starts it, the first time and any other."""

    host: str
    port: int
    command: list[str]
    environment: dict[str, str]
    log: TextIO
    process: subprocess.Popen | None = None

    def start(self):
        """Its process, once it can be reached. Raises RuntimeError with the server's own words when it cannot."""
        self.process = subprocess.Popen(self.command, cwd=ROOT, env=self.environment, stdout=self.log, stderr=self.log)
        give_up = time.monotonic() + START_SECONDS
        while self.process.poll() is None and time.monotonic() < give_up:
            with socket.socket() as probe:
                if probe.connect_ex((self.host, self.port)) == 0:
                    return self.process
            time.sleep(0.1)
        raise RuntimeError(f"The server did not start:\n{self.said()}")

    def stop(self):
        """As an operator stops it: what it has begun to answer it answers."""
        self.process.terminate()
        self.process.wait(timeout=30)

    def restart(self):
        self.stop()
        self.start()

    def workers(self):
        """The processes that answer; whoever started them is another."""
        found = children_of(self.process.pid)
        if not found:
            raise RuntimeError(f"The server has no worker:\n{self.said()}")
        return found

    def cpu_seconds(self):
        """What the server's workers have used so far, as the kernel counts it."""
        return sum(map(processor_seconds, self.workers()))

    def megabytes(self):
        """What each worker holds in memory."""
        return [resident_bytes(worker) / 1e6 for worker in self.workers()]

    def fetch_all(self, addresses):
        """Every address over one kept connection. Anything but a page is an error."""
        with closing(http.client.HTTPConnection(self.host, self.port, timeout=30)) as connection:
            for address in addresses:
                connection.request("GET", address, headers={"Accept-Encoding": "gzip", "Accept-Language": "en"})
                response = connection.getresponse()
                response.read()
                if response.status != 200:
                    raise RuntimeError(f"{address} answered {response.status}:\n{self.said()}")

    def said(self):
        """What the server wrote so far."""
        self.log.seek(0)
        return self.log.read()

    def body(self, address):
        """What one address answers, unpacked."""
        with urlopen(f"http://{self.host}:{self.port}{address}", timeout=30) as response:
            return response.read()

    def cpu_milliseconds(self, addresses):
        """Processor time of the workers per request."""
        before = self.cpu_seconds()
        self.fetch_all(addresses)
        return 1000 * (self.cpu_seconds() - before) / len(addresses)


@contextmanager
def built_static_files():
    """The static files as production serves them, named in the environment for this process and the server."""
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as folder:
        os.environ["BENCH_STATIC_ROOT"] = folder
        collect = [sys.executable, "manage.py", "collectstatic", "--noinput", "-v0"]
        subprocess.run(collect, cwd=ROOT, env=process_environment(), check=True)
        try:
            yield
        finally:
            del os.environ["BENCH_STATIC_ROOT"]


def process_environment(**chosen):
    """What an operator would set; the rest is in `tests.bench.settings`. All processes share one secret."""
    ours = {"DJANGO_SETTINGS_MODULE": "tests.bench.settings", "PYTHONPATH": str(ROOT), "STATIC_FROM_SOURCE": "0"}
    return {"SECRET_KEY": SECRET} | os.environ | ours | chosen


def server_command(port, workers=1, threads=1, host="127.0.0.1"):
    """The production server. A worker that was killed is replaced at once; one that makes way for a new release goes
    so many seconds after its follower came, which has to have read the knowledge by then."""
    options = f"--interface wsgi --workers {workers} --blocking-threads {threads} --host {host} --port {port}"
    lasting = "--workers-kill-timeout 5 --respawn-failed-workers --respawn-interval 6"
    granian = str(Path(sys.executable).with_name("granian"))
    return [granian, *options.split(), *lasting.split(), "site_config.wsgi:application"]


@contextmanager
def production_server(workers=1, threads=1, host="127.0.0.1", inside=(), **chosen):
    """granian; raises with the server's own words when it does not come up. `inside` is a command that puts it into a
    network of its own, `chosen` more of the environment."""
    port = free_port()
    command = [*inside, *server_command(port, workers, threads, host)]
    with tempfile.TemporaryFile("w+", encoding="utf-8") as log:
        server = Running(host, port, command, process_environment(**chosen), log)
        try:
            server.start()
            yield server
        finally:
            server.stop()


def server_cost(server, pack, region, requests):
    """Processor milliseconds of a question page, of the same pages asked for again and of the bare page, and ratios."""
    addresses = question_addresses(pack, region, requests, "server")
    bare = [BARE] * max(requests, 2000 if requests > 100 else requests)
    server.fetch_all([*question_addresses(pack, region, min(requests, 100), "warm-up"), *bare[:100]])
    rounds = {"question": addresses, "again": addresses * 4, "bare": bare}
    cost = {name: server.cpu_milliseconds(wanted) for name, wanted in rounds.items()}
    # The kernel counts in hundredths of a second; a handful of requests may not fill one.
    against = cost["bare"] or float("nan")
    return {**cost, "question / bare": cost["question"] / against, "again / bare": cost["again"] / against}
