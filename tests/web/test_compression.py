"""What may not be stored is not compressed either; everything else is."""

from django.http import HttpResponse

from triage.web.compression import OpenPagesGZipMiddleware

LONG = "answers " * 100


def encoding(rf, **headers):
    page = OpenPagesGZipMiddleware(lambda _request: HttpResponse(LONG, headers=headers))
    return page(rf.get("/", headers={"Accept-Encoding": "gzip"})).headers.get("Content-Encoding")


def test_a_page_of_the_check_is_compressed(rf):
    assert encoding(rf) == "gzip"
    assert encoding(rf, **{"Cache-Control": "max-age=60"}) == "gzip"


def test_a_page_with_a_secret_is_not(rf):
    assert encoding(rf, **{"Cache-Control": "private, no-store"}) is None
