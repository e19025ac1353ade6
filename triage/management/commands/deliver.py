"""`manage.py deliver` sends what is waiting to firms, and goes on until it is asked to stop."""

import signal
from threading import Event

from django.core.management import BaseCommand, CommandParser
from django.db import close_old_connections

from triage.jobsheet.delivery import deliver_due, new_worker

LOOK_EVERY = 2.0


class Command(BaseCommand):
    help = "Sends waiting job sheets to firms until it is stopped. Any number of these may run at once."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--once", action="store_true", help="send what is due now, then stop")

    def handle(self, *_args: object, once: bool, **_options: object) -> None:
        worker, stop = new_worker(), Event()
        if not once:
            for name in (signal.SIGTERM, signal.SIGINT):
                signal.signal(name, lambda *_signal: stop.set())
        while not stop.is_set():
            count = deliver_due(worker)
            if count or once:
                self.stdout.write(f"{count} attempt{'' if count == 1 else 's'} made.")
            if once:
                return
            close_old_connections()
            stop.wait(LOOK_EVERY)
