"""Only whole origins open a frame."""

import pytest
from django.http import HttpResponse

from triage.web.framing import allow_frames, good_origins, is_origin


@pytest.mark.parametrize("origin", ["https://shop.example", "https://shop.example:8443", "http://localhost:8000"])
def test_an_origin_is_one(origin):
    assert is_origin(origin)


@pytest.mark.parametrize(
    "text",
    [
        "https://shop.example/",
        "https://shop.example/book",
        "http://shop.example",
        "https://*.example",
        "*",
        "'self'",
        "https://Shop.example",
        "https://a.example; script-src *",
        "https://a.example https://b.example",
        "https://shop.example\n",
        "https:",
        "",
    ],
)
def test_anything_else_is_none(text):
    assert not is_origin(text)


def test_what_is_no_origin_in_a_list_opens_nothing():
    assert good_origins(["https://a.example", "*", 7, None]) == ["https://a.example"]
    assert not hasattr(allow_frames(HttpResponse(), ["*"]), "_csp_replace")
    assert not hasattr(allow_frames(HttpResponse(), []), "_csp_replace")
