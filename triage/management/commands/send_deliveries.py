"""`manage.py send_deliveries` sends what is waiting to firms, and goes on until it is asked to stop.

A database that is away or full is no reason to end: nothing was lost, and it is asked again a little later.
"""

import logging
import signal
from threading import Event

from django.core.management import BaseCommand, CommandParser
from django.db import Error, close_old_connections

from triage.jobsheet.delivery import deliver_due, new_worker

log = logging.getLogger(__name__)

POLL_SECONDS = 2.0


class Command(BaseCommand):
    help = "Sends waiting job sheets to firms until it is stopped. Any number of these may run at once."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--once", action="store_true", help="send what is due now, then stop")

    def handle(self, *_args: object, once: bool, **_options: object) -> None:
        worker, stop = new_worker(), Event()
        if once:
            self._report(deliver_due(worker))
            return
        for name in (signal.SIGTERM, signal.SIGINT):
            signal.signal(name, lambda *_signal: stop.set())
        while not stop.is_set():
            try:
                count = deliver_due(worker, stopped=stop.is_set)
            except Error as error:
                log.warning("the database cannot be used now (%s); trying again", type(error).__name__)
                count = 0
            if count:
                self._report(count)
            close_old_connections()
            stop.wait(POLL_SECONDS)

    def _report(self, count: int) -> None:
        self.stdout.write(f"{count} attempt{'' if count == 1 else 's'} made.")
