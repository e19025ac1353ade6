"""Texts that never change travel as small as the browser can take them."""

import brotli
import pytest

from triage.offline.views.brotli_response import brotli_response

TEXT = "The oven’s door. " * 100


@pytest.mark.parametrize("accepts", ["br", "gzip, deflate, br, zstd", "gzip;q=0.5, br;q=1.0", "br;q=0.5"])
def test_who_takes_brotli_gets_it(rf, accepts):
    response = brotli_response(rf.get("/", headers={"Accept-Encoding": accepts}), TEXT, "application/json")
    assert response.headers["Content-Encoding"] == "br"
    assert brotli.decompress(response.content).decode() == TEXT


@pytest.mark.parametrize("accepts", ["", "gzip", "br;q=0", "gzip, br;q=0.0", "brotli"])
def test_who_does_not_gets_the_text_as_it_is(rf, accepts):
    response = brotli_response(rf.get("/", headers={"Accept-Encoding": accepts}), TEXT, "application/json")
    assert "Content-Encoding" not in response.headers
    assert response.content.decode() == TEXT


def test_a_cache_on_the_way_is_told_that_it_depends_on_that(rf):
    response = brotli_response(rf.get("/"), TEXT, "text/javascript; charset=utf-8")
    assert response.headers["Vary"] == "Accept-Encoding"
    assert response.headers["Content-Type"] == "text/javascript; charset=utf-8"
