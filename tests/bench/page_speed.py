"""A question page in this process, through every middleware, beside a bare template page."""

from itertools import cycle, islice
from statistics import median

from django.core.handlers.wsgi import WSGIHandler
from django.test import RequestFactory

from tests.bench.engine_speed import milliseconds
from tests.bench.sessions import question_addresses

BARE = "/bare/"


def page_speed(pack, region, count):
    """Median milliseconds of a question page and of the bare page, and their ratio."""
    site = WSGIHandler()
    addresses = question_addresses(pack, region, count, "pages")
    for address in [BARE, *question_addresses(pack, region, count, "warm-up")]:
        fetch(site, address)
    questions = milliseconds(lambda address: fetch(site, address), addresses)
    bare = milliseconds(lambda address: fetch(site, address), islice(cycle([BARE]), max(count, 20)))
    return {
        "pages": len(questions),
        "question": median(questions),
        "bare": median(bare),
        "question / bare": median(questions) / median(bare),
    }


def fetch(site, address):
    """One request as a server hands it over; the body comes back. Anything but a page is an error."""
    environ = RequestFactory(headers={"Host": "127.0.0.1", "Accept-Encoding": "gzip"}).get(address).environ
    status = []
    response = site(environ, lambda line, _headers: status.append(line))
    body = b"".join(response)
    response.close()
    if not status[0].startswith("200"):
        raise RuntimeError(f"{address} answered {status[0]}")
    return body
