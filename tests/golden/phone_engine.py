"""The engine's other home: the modules of `triage/static/triage/offline/engine` in a real browser.

A small server on loopback gives the browser the modules, the compiled pack and the trails, and takes back what the
engine made of them. Two workers share the trails, as a phone's browser would run them away from the page.
"""

import json
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import triage
from tests.whole_site.project_files import ROOT
from triage.knowledge.library import library
from triage.knowledge.offline_pack import build_offline_pack

ENGINE = Path(triage.__file__).parent / "static" / "triage" / "offline" / "engine"
PHONE = Path(__file__).parent / "phone"
RECORD_CHUNKS = """async (chunks) => {
  const waiting = [...chunks];
  const share = async () => {
    const worker = new Worker("/tests/golden/phone/worker.js", { type: "module" });
    while (waiting.length) {
      const done = new Promise((resolve, reject) => {
        worker.onmessage = resolve;
        worker.onerror = (event) => reject(new Error(event.message));
      });
      worker.postMessage(waiting.shift());
      await done;
    }
  };
  await Promise.all([share(), share()]);
}"""


def address_of(path):
    """Modules stand below the project's root, as their imports of each other have it."""
    return f"/{path.relative_to(ROOT).as_posix()}"


def all_regions():
    return [profile.region for profile in library().regions.values()]


class Desk:
    """What lies ready for the browser, by path, and what it brought back."""

    def __init__(self, pack, regions):
        self.ready = {
            "/": b"<!doctype html><title>Engine</title>",
            "/pack.json": build_offline_pack(pack, regions).text.encode(),
        }
        self.records = {}
        for folder in (ENGINE, PHONE):
            files = sorted(folder.rglob("*.js"))
            self.ready |= {address_of(path): path.read_bytes() for path in files}

    def lay(self, chunks):
        self.ready |= {f"/chunks/{number}": json.dumps(trails).encode() for number, trails in enumerate(chunks)}


@contextmanager
def phone_engine(page, pack, regions):
    """A page on which the engine can be loaded; yields the desk between it and the test."""
    desk = Desk(pack, regions)
    server = ThreadingHTTPServer(("127.0.0.1", 0), _handler(desk))
    Thread(target=server.serve_forever, daemon=True).start()
    try:
        page.goto(f"http://127.0.0.1:{server.server_port}/")
        yield desk
    finally:
        server.shutdown()
        server.server_close()


def records_on_phone(page, desk, chunks):
    """What the engine on the phone makes of each chunk of `(region, pairs)` trails."""
    desk.lay(chunks)
    page.evaluate(RECORD_CHUNKS, list(range(len(chunks))))
    return [json.loads(desk.records[f"/records/{number}"]) for number in range(len(chunks))]


def _handler(desk):
    class Handler(BaseHTTPRequestHandler):
        def do_GET(self):
            content = desk.ready.get(self.path)
            self.send_response(200 if content is not None else 404)
            kind = {".js": "text/javascript", ".json": "application/json"}.get(Path(self.path).suffix, "text/html")
            self.send_header("Content-Type", kind + "; charset=utf-8")
            self.end_headers()
            self.wfile.write(content or b"")

        def do_POST(self):
            desk.records[self.path] = self.rfile.read(int(self.headers["Content-Length"]))
            self.send_response(204)
            self.end_headers()

        def log_message(self, *arguments):
            """Nothing: a run sends twenty thousand trails."""

    return Handler
