"""Its address names its version and may be kept for ever; another version is not found."""

import brotli
import pytest
from django.urls import reverse

from triage.offline.page_bundle import build_page_bundle


@pytest.fixture
def address():
    return reverse("offline-page-bundle", args=[build_page_bundle().version])


def test_it_is_there_and_may_be_kept_for_ever(client, address):
    response = client.get(address)
    assert response.headers["Content-Type"] == "application/json"
    assert response.content.decode() == build_page_bundle().text
    assert "immutable" in response.headers["Cache-Control"]
    again = client.get(address, headers={"If-None-Match": response.headers["ETag"]})
    assert (again.status_code, again.content) == (304, b"")


def test_it_travels_packed(client, address):
    response = client.get(address, headers={"Accept-Encoding": "gzip, br"})
    assert response.headers["Content-Encoding"] == "br"
    assert brotli.decompress(response.content).decode() == build_page_bundle().text


def test_a_version_that_is_not_this_one_is_not_found_and_not_kept(client):
    response = client.get(reverse("offline-page-bundle", args=["0000000000000000"]))
    assert response.status_code == 404
    assert "immutable" not in response.headers.get("Cache-Control", "")


def test_it_can_only_be_read(client, address):
    assert client.post(address).status_code == 405
