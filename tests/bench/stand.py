"""The whole service as a host runs it: database, web workers, delivery worker, and a firm's receiver beside it.

What ends by itself or by force is started again by `Keeper`, as a supervisor would; nobody else lifts a hand.
"""

import subprocess
import sys
import tempfile
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.bench.books import open_books
from tests.bench.disk import Disk, small_disk
from tests.bench.keeper import Keeper
from tests.bench.moody_receiver import MoodyReceiver, moody_receiver
from tests.bench.postgres import Postgres
from tests.bench.processes import free_port
from tests.bench.server import ROOT, Running, environment, server_command

WORKERS, THREADS = 2, 2
DISK_MEGABYTES = 1024
POSTGRES, SQLITE = "PostgreSQL", "SQLite"


@dataclass
class Stand:
    """`disk` is the database's, where it has one of its own; `postgres` None on SQLite."""

    url: str
    keeper: Keeper
    receiver: MoodyReceiver
    site: Running
    firms: list
    log: Path
    postgres: Postgres | None = None
    disk: Disk | None = None

    def deliverer(self, skew=None):
        """Starts a delivery worker; `skew` is how many seconds its clock is wrong."""
        command = ["manage.py", "deliver"] if skew is None else ["-m", "tests.bench.skewed_deliver", str(skew)]
        with self.log.open("a") as log:
            chosen = self.site.environment
            return subprocess.Popen([sys.executable, *command], cwd=ROOT, env=chosen, stdout=log, stderr=log)

    def said(self):
        return self.site.said() + self.log.read_text("utf-8", "replace")


@contextmanager
def stand(kind, *, own_disk, firms=100):
    """A running service. `own_disk`: its database lies on a small disk that can be filled."""
    with ExitStack() as stack:
        folder = Path(stack.enter_context(tempfile.TemporaryDirectory(prefix="oven-bench-")))
        folder.chmod(0o755)  # the database's own user has to get through
        disk = stack.enter_context(small_disk(DISK_MEGABYTES)) if own_disk else None
        receiver = stack.enter_context(moody_receiver())
        keeper = stack.enter_context(Keeper())
        place, database = (disk.folder if disk else folder), None
        if kind == POSTGRES:
            database = _database(place)
            keeper.keep("database", database.start)
        url = database.url() if database else f"sqlite:///{place}/bench.sqlite3"
        books = open_books(url, receiver.url, firms)
        receiver.secrets = [firm["secret"] for firm in books]
        site = Running("127.0.0.1", free_port(), [], _environment(url), (folder / "site.log").open("w+"))
        stack.callback(site.log.close)
        site.command = server_command(site.port, WORKERS, THREADS)
        found = Stand(url, keeper, receiver, site, books, folder / "deliver.log", database, disk)
        keeper.keep("site", site.start)
        keeper.keep("deliverer", found.deliverer)
        yield found


def _environment(url):
    """Limits on a firm's key stay as they are: there are enough firms. Only the receiver is on this machine."""
    return environment(DATABASE_URL=url, TRIAGE_WEBHOOK_NETWORKS="any", PYTHONUNBUFFERED="1")


def _database(place):
    folder = place / "database"
    folder.mkdir()
    return Postgres(folder)
