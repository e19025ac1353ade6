"""The site on this machine with one command, and nothing left behind after Ctrl-C."""

import argparse
import errno
import os
import signal
import socket
import sys
from collections.abc import Callable, Iterable, Iterator
from io import StringIO
from threading import Thread
from time import sleep

from django.conf import settings
from django.core.management import BaseCommand, CommandParser, call_command
from django.db import connections
from granian.constants import Interfaces
from granian.log import LogLevels
from granian.server import Server

# Who can use the site, and where each of them starts.
AUDIENCES = (("Householder", "/"),)

THIS_MACHINE = "127.0.0.1"
EVERY_ADDRESS = "0.0.0.0"  # noqa: S104  (only when --network asks for it)


class Command(BaseCommand):
    help = "Starts the site on this machine, with a fresh database that is removed when it stops."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--port", type=port_number, default=8000, help="where to listen (8000)")
        parser.add_argument("--network", action="store_true", help="also let phones on the same network open the site")

    def handle(self, *_args: object, port: int, network: bool, **_options: object) -> None:
        address = EVERY_ADDRESS if network else THIS_MACHINE
        obstacle = why_not_listen(address, port)
        if obstacle:
            self.stderr.write(obstacle)
            sys.exit(2)
        call_command("migrate", verbosity=0)
        firm = StringIO()
        if settings.DEMO:
            call_command("load_demo", port=port, stdout=firm)
        connections.close_all()  # the server's worker is a fork, and an open SQLite file must not cross it
        serve(address, port, lambda: self.say_at_once(welcome(port, network, firm.getvalue().splitlines())))
        self.stdout.write("Stopped. Nothing is left running and no file is left behind.")

    def say_at_once(self, lines: Iterable[str]) -> None:
        """Also where the output goes to a file or another program, which otherwise gets it when the site has ended."""
        self.stdout.write("\n".join(lines))
        self.stdout.flush()


def port_number(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError(f"{text} is not a port; use a number from 1 to 65535")
    return int(text)


def why_not_listen(address: str, port: int) -> str:
    """A sentence with the remedy when nothing can listen there; empty when all is well."""
    with socket.socket() as probe:
        if os.name == "posix":  # else a demo stopped a moment ago would still seem to hold the port
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((address, port))
        except OSError as problem:
            reason = {
                errno.EADDRINUSE: "is taken by another program",
                errno.EACCES: "is kept for the administrator",
            }.get(problem.errno or 0, f"cannot be opened ({problem.strerror})")
            remedy = f"choose another one: python3 manage.py demo --port {8001 if port == 8000 else 8000}"
            return f"Port {port} {reason}; {remedy}"
    return ""


def serve(address: str, port: int, announce: Callable[[], object]) -> None:
    """Serve until Ctrl-C, a polite kill or a closed terminal; the worker has ended when this returns."""
    server = Server(
        settings.WSGI_APPLICATION.replace(".application", ":application"),
        address=address,
        port=port,
        interface=Interfaces.WSGI,
        blocking_threads=4,
        log_level=LogLevels.error,
        workers_kill_timeout=1,  # a worker asked to stop in its first moment can miss it
    )

    @server.on_startup
    def listening() -> None:
        if hasattr(signal, "SIGHUP"):  # by default the server takes a closed terminal as a wish to reload
            signal.signal(signal.SIGHUP, server.signal_handler_interrupt)
        # The port opens only once the worker is up, which is after this returns.
        Thread(target=announce_when_open, args=(port, announce), daemon=True).start()

    server.serve()


def announce_when_open(port: int, announce: Callable[[], object]) -> None:
    while True:
        with socket.socket() as probe:
            if probe.connect_ex((THIS_MACHINE, port)) == 0:
                break
        sleep(0.05)
    announce()


def welcome(port: int, network: bool, firm: Iterable[str]) -> Iterator[str]:
    """What the terminal says once the site is up; `firm` are the lines about the invented firm."""
    yield "The oven fault check is running."
    for audience, path in AUDIENCES:
        yield f"  {audience}: http://{THIS_MACHINE}:{port}{path}"
    yield from firm
    if network:
        for host in settings.ALLOWED_HOSTS:
            if host[0].isdigit() and host != THIS_MACHINE:
                yield f"  On a phone in the same network: http://{host}:{port}/"
    else:
        yield "  To open it on a phone in the same network, start it with --network."
    yield "Press Ctrl-C to stop."
