"""A firm's own page, on another origin, hands a check over: a real browser asks beforehand and obeys the answer."""

from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread

import pytest

from tests.api.asking import body_of
from tests.firm_builders import make_firm
from triage.models import JobSheet

SEND = """async ([url, told]) => {
  const headers = {"Content-Type": "application/json", "Idempotency-Key": "from-a-page-0001"};
  try {
    const answer = await fetch(url, {method: "POST", headers, body: JSON.stringify(told)});
    return [answer.status, (await answer.json()).reference || "", answer.headers.get("RateLimit") || ""];
  } catch (problem) { return [0, problem.name, ""]; }
}"""
READ = "async url => (await (await fetch(url)).json()).kind"

pytestmark = pytest.mark.django_db(transaction=True)


class Booking(BaseHTTPRequestHandler):
    def do_GET(self):
        self.send_response(200)
        self.send_header("Content-Type", "text/html")
        self.end_headers()
        self.wfile.write(b"<!doctype html><title>Booking</title><link rel=icon href=data:,>")

    def log_message(self, *_told):
        """Nothing is written to the terminal."""


@pytest.fixture
def shop(page):
    """The origin of a site that is not ours, with the browser on a page of it."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), Booking)
    Thread(target=server.serve_forever, daemon=True).start()
    origin = f"http://127.0.0.1:{server.server_port}"
    page.goto(f"{origin}/booking")
    yield origin
    server.shutdown()
    server.server_close()


def test_a_page_of_the_firm_reads_steps_and_hands_over(page, shop):
    make_firm(slug="hearth", origins=[shop])
    assert page.evaluate(READ, f"{page.site}/api/v1/step?region=gb-eng") == "danger-signs"
    status, reference, left = page.evaluate(SEND, [f"{page.site}/api/v1/firms/hearth/job-sheets", body_of()])
    assert (status, reference) == (201, JobSheet.objects.get().reference)
    assert left.startswith('"address";r=')


def test_a_page_of_anybody_else_cannot(page, shop):
    make_firm(slug="hearth", origins=["https://www.hearth.example"])
    address = f"{page.site}/api/v1/firms/hearth/job-sheets"
    assert page.evaluate(SEND, [address, body_of()]) == [0, "TypeError", ""]
    assert not JobSheet.objects.exists()
    assert "No 'Access-Control-Allow-Origin' header is present" in page.complaints[0]
    page.complaints.clear()
