"""A throw-away PostgreSQL as an operator runs it: it writes through to the disk. Gone when the block ends.

The server is our own child, so that it can be killed and started again, and its processor time read from the kernel.
"""

import os
import shutil
import signal
import subprocess
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

from tests.bench.processes import free_port, processor_seconds

START_SECONDS = 30
# Little room for the log of changes, so that a small disk is enough and a full one is met soon.
CHOSEN = {
    "max_connections": "60",
    "min_wal_size": "32MB",
    "max_wal_size": "64MB",
    "shared_buffers": "64MB",
    "logging_collector": "off",
}


class Postgres:
    """`addresses` are where it listens; `neighbours` the network that may come in beside this machine."""

    def __init__(self, folder, addresses=("127.0.0.1",), neighbours=""):
        self.folder, self.port, self.addresses = Path(folder), free_port(), addresses
        self.program = programs()
        self.process = None
        # It refuses to run as root.
        self.owner = {"user": "postgres", "group": "postgres", "extra_groups": []} if os.getuid() == 0 else {}
        if self.owner:
            shutil.chown(self.folder, "postgres", "postgres")
        make = ["initdb", "-D", self.files, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8"]
        self._run(*make, "--no-sync", "--wal-segsize=4")
        if neighbours:
            with (self.files / "pg_hba.conf").open("a") as rules:
                rules.write(f"host all all {neighbours} trust\n")

    @property
    def files(self):
        return self.folder / "files"

    def url(self, host="127.0.0.1"):
        return f"postgres://postgres@{host}:{self.port}/postgres"

    def command(self):
        chosen = {**CHOSEN, "listen_addresses": ",".join(self.addresses), "unix_socket_directories": self.folder}
        options = [part for name, value in chosen.items() for part in ("-c", f"{name}={value}")]
        return [self.program / "postgres", "-D", self.files, "-p", str(self.port), *options]

    def start(self):
        """The server's process, once it answers or its time is over."""
        with (self.folder / "log").open("a") as log:
            self.process = subprocess.Popen(self.command(), stdout=log, stderr=log, cwd=self.folder, **self.owner)
        give_up = time.monotonic() + START_SECONDS
        while not self.answers() and time.monotonic() < give_up and self.process.poll() is None:
            time.sleep(0.1)
        return self.process

    def answers(self):
        asked = [self.program / "pg_isready", "-q", "-h", "127.0.0.1", "-p", str(self.port)]
        return subprocess.run(asked, check=False, cwd=self.folder).returncode == 0

    def end_at_once(self):
        """Without writing anything down: what was acknowledged is in its log of changes, and is read from there."""
        self.process.send_signal(signal.SIGQUIT)
        self.process.wait(timeout=30)

    def cpu_seconds(self):
        """What the server used, with all the connections that have ended."""
        return processor_seconds(self.process.pid)

    def said(self):
        return (self.folder / "log").read_text("utf-8", "replace")

    def _run(self, name, *words):
        command = [self.program / name, *words]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd=self.folder, **self.owner)


def programs():
    """The folder of the newest server's programs. Raises RuntimeError with the remedy where there is none."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin"), key=lambda path: int(path.parent.name.split(".")[0]))
    at_hand = shutil.which("initdb")
    if not found and not at_hand:
        raise RuntimeError("There is no PostgreSQL here. On Debian: apt-get install postgresql.")
    return found[-1] if found else Path(at_hand).parent


@contextmanager
def postgres(folder=None, **chosen):
    """A running server in `folder`, else in one of its own."""
    with tempfile.TemporaryDirectory(prefix="oven-bench-") as own:
        server = Postgres(folder or own, **chosen)
        server.start()
        if not server.answers():
            raise RuntimeError(f"PostgreSQL did not start:\n{server.said()}")
        try:
            yield server
        finally:
            if server.process.poll() is None:
                server.end_at_once()
