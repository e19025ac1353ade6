"""What a first visit costs in bytes: the first page with its styles, and everything the browser fetches.

The second is counted on the wire between browser and server, headers included, so that nothing a page or a service
worker loads is missed.
"""

import gzip
import re
import shutil
import socket
import threading
from contextlib import contextmanager, suppress

from playwright.sync_api import sync_playwright

from tests.conftest import STAY_LOCAL

# Ten segments of 1460 bytes: what a server may send before the first acknowledgement (RFC 6928).
INITIAL_WINDOW = 14_600
CHUNK = 65_536
QUIET_MILLISECONDS = 2000
STYLE = re.compile(r'<link rel="stylesheet" href="([^"]+)"')


def first_page_bytes(server):
    """The start page and the styles it names, each packed as small as gzip can."""
    page = server.body("/")
    sheets = [server.body(address) for address in STYLE.findall(page.decode("utf-8"))]
    if not sheets:
        raise RuntimeError("The first page names no stylesheet.")
    return {"html": len(gzip.compress(page, 9)), "css": sum(len(gzip.compress(sheet, 9)) for sheet in sheets)}


@contextmanager
def phone():
    """A phone's browser with an empty cache."""
    with _chromium() as (browser, devices):
        yield browser.new_context(**devices["Pixel 7"])


@contextmanager
def desk():
    """The browser of somebody at a desk, with an empty cache."""
    with _chromium() as (browser, _devices):
        yield browser.new_context()


@contextmanager
def _chromium():
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    if path is None:
        raise RuntimeError("The bench needs Chromium: as root, run `apt-get install chromium`.")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=list(STAY_LOCAL))
        yield browser, playwright.devices
        browser.close()


def first_visit_bytes(server, context):
    """Bytes and answers the browser receives until it has been quiet for a while."""
    with counting_relay(server.port) as relay:
        page = context.new_page()
        answers = []
        page.on("response", lambda answer: answers.append(answer))
        page.goto(f"http://127.0.0.1:{relay.port}/", wait_until="networkidle")
        page.wait_for_timeout(QUIET_MILLISECONDS)
        failed = [answer.url for answer in answers if not answer.ok]
        page.close()
    if failed:
        raise RuntimeError(f"The first visit met errors: {failed}")
    return {"bytes": relay.received, "answers": len(answers)}


class Relay:
    """Passes connections on to the server and counts what comes back."""

    def __init__(self, server_port):
        self.server_port = server_port
        self.received = 0
        self.listener = socket.create_server(("127.0.0.1", 0))
        self.port = self.listener.getsockname()[1]
        self.connections = []
        self.threads = [threading.Thread(target=self.accept, daemon=True)]
        self.lock = threading.Lock()

    def accept(self):
        with suppress(OSError):  # the listener was shut
            while True:
                browser, _ = self.listener.accept()
                server = socket.create_connection(("127.0.0.1", self.server_port))
                self.connections += [browser, server]
                self.start(browser, server, False)
                self.start(server, browser, True)

    def start(self, source, target, counted):
        thread = threading.Thread(target=self.carry, args=(source, target, counted), daemon=True)
        self.threads.append(thread)
        thread.start()

    def carry(self, source, target, counted):
        with suppress(OSError):  # one side went away
            while piece := source.recv(CHUNK):
                if counted:
                    with self.lock:
                        self.received += len(piece)
                target.sendall(piece)
            target.shutdown(socket.SHUT_WR)

    def stop(self):
        for connection in (self.listener, *self.connections):
            with suppress(OSError):  # shut already
                connection.shutdown(socket.SHUT_RDWR)
        for thread in self.threads:
            thread.join(5)
        for connection in (self.listener, *self.connections):
            connection.close()


@contextmanager
def counting_relay(server_port):
    relay = Relay(server_port)
    relay.threads[0].start()
    try:
        yield relay
    finally:
        relay.stop()
