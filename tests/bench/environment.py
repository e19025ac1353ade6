"""The whole service as a host runs it: database, web workers, delivery worker, and a firm's receiver beside it.

What ends by itself or by force is started again by `Supervisor`, as a supervisor would; nobody else lifts a hand.
"""

import subprocess
import sys
import tempfile
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.bench.disk import Disk, small_disk
from tests.bench.flaky_receiver import FlakyReceiver, flaky_receiver
from tests.bench.ledger import open_ledger
from tests.bench.postgres import Postgres
from tests.bench.processes import free_port
from tests.bench.server import ROOT, Running, process_environment, server_command
from tests.bench.supervisor import Supervisor

WORKERS, THREADS = 2, 2
DISK_MEGABYTES = 1024
POSTGRES, SQLITE = "PostgreSQL", "SQLite"


@dataclass
class Environment:
    """`disk` is the database's, where it has one of its own; `postgres` None on SQLite."""

    url: str
    supervisor: Supervisor
    receiver: FlakyReceiver
    site: Running
    firms: list
    log: Path
    postgres: Postgres | None = None
    disk: Disk | None = None

    def deliverer(self, skew=None):
        """Starts a delivery worker; `skew` is how many seconds its clock is wrong."""
        command = ["manage.py", "send_deliveries"] if skew is None else ["-m", "tests.bench.clock_skew", str(skew)]
        with self.log.open("a") as log:
            chosen = self.site.environment
            return subprocess.Popen([sys.executable, *command], cwd=ROOT, env=chosen, stdout=log, stderr=log)

    def said(self):
        return self.site.said() + self.log.read_text("utf-8", "replace")


@contextmanager
def running_environment(kind, *, own_disk, firms=100):
    """A running service. `own_disk`: its database lies on a small disk that can be filled."""
    with ExitStack() as stack:
        folder = Path(stack.enter_context(tempfile.TemporaryDirectory(prefix="oven-bench-")))
        folder.chmod(0o755)  # the database's own user has to get through
        disk = stack.enter_context(small_disk(DISK_MEGABYTES)) if own_disk else None
        receiver = stack.enter_context(flaky_receiver())
        supervisor = stack.enter_context(Supervisor())
        place, database = (disk.folder if disk else folder), None
        if kind == POSTGRES:
            database = _database(place)
            supervisor.keep("database", database.start)
        url = database.url() if database else f"sqlite:///{place}/bench.sqlite3"
        books = open_ledger(url, receiver.url, firms)
        receiver.secrets = [firm["secret"] for firm in books]
        site = Running("127.0.0.1", free_port(), [], _environment(url), (folder / "site.log").open("w+"))
        stack.callback(site.log.close)
        site.command = server_command(site.port, WORKERS, THREADS)
        found = Environment(url, supervisor, receiver, site, books, folder / "deliver.log", database, disk)
        supervisor.keep("site", site.start)
        supervisor.keep("deliverer", found.deliverer)
        yield found


def _environment(url):
    """Limits on a firm's key stay as they are: there are enough firms. Only the receiver is on this machine."""
    return process_environment(DATABASE_URL=url, TRIAGE_WEBHOOK_NETWORKS="any", PYTHONUNBUFFERED="1")


def _database(place):
    folder = place / "database"
    folder.mkdir()
    return Postgres(folder)
