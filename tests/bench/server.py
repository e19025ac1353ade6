"""The production server on this machine, with static files as in production, and what its workers spend."""

import http.client
import os
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
from tests.bench.sessions import question_addresses

ROOT = Path(__file__).resolve().parents[2]
START_SECONDS = 30
TICK = os.sysconf("SC_CLK_TCK")


@dataclass(frozen=True)
class Running:
    port: int
    process: subprocess.Popen
    log: TextIO

    def cpu_seconds(self):
        """What the server's workers (its children) have used so far, as the kernel counts it."""
        workers = Path(f"/proc/{self.process.pid}/task/{self.process.pid}/children").read_text().split()
        if not workers:
            raise RuntimeError("The server has no worker.")
        fields = [Path(f"/proc/{worker}/stat").read_text().rpartition(")")[2].split() for worker in workers]
        return sum(int(user) + int(system) for user, system in (f[11:13] for f in fields)) / TICK

    def fetch_all(self, addresses):
        """Every address over one kept connection. Anything but a page is an error."""
        with closing(http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)) as connection:
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
        with urlopen(f"http://127.0.0.1:{self.port}{address}", timeout=30) as response:
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
        subprocess.run(collect, cwd=ROOT, env=environment(), check=True)
        try:
            yield
        finally:
            del os.environ["BENCH_STATIC_ROOT"]


def environment():
    """What an operator would set; the rest is in `tests.bench.settings`."""
    ours = {"DJANGO_SETTINGS_MODULE": "tests.bench.settings", "PYTHONPATH": str(ROOT), "STATIC_FROM_SOURCE": "0"}
    return os.environ | ours


@contextmanager
def production_server():
    """granian with one worker; raises with the server's own words when it does not come up."""
    port = free_port()
    granian = str(Path(sys.executable).with_name("granian"))
    options = f"--interface wsgi --workers 1 --blocking-threads 1 --workers-kill-timeout 1 --port {port}"
    with tempfile.TemporaryFile("w+", encoding="utf-8") as log:
        process = subprocess.Popen(
            [granian, *options.split(), "site_config.wsgi:application"],
            cwd=ROOT,
            env=environment(),
            stdout=log,
            stderr=log,
        )
        server = Running(port, process, log)
        try:
            wait_until_open(server)
            yield server
        finally:
            process.terminate()
            process.wait(timeout=15)


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def wait_until_open(server):
    give_up = time.monotonic() + START_SECONDS
    while server.process.poll() is None and time.monotonic() < give_up:
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", server.port)) == 0:
                return
        time.sleep(0.1)
    raise RuntimeError(f"The server did not start:\n{server.said()}")


def server_cost(server, pack, region, requests):
    """Processor milliseconds of a question page and of the bare page, warm, and their ratio."""
    addresses = question_addresses(pack, region, requests, "server")
    bare = [BARE] * max(requests, 2000 if requests > 100 else requests)
    server.fetch_all([*question_addresses(pack, region, min(requests, 100), "warm-up"), *bare[:100]])
    question_cost, bare_cost = server.cpu_milliseconds(addresses), server.cpu_milliseconds(bare)
    # The kernel counts in hundredths of a second; a handful of requests may not fill one.
    ratio = question_cost / bare_cost if bare_cost else float("nan")
    return {"question": question_cost, "bare": bare_cost, "question / bare": ratio}
