"""The compiled pack's address names its version and may be kept for ever; another version is not found."""

import json

import pytest
from django.urls import reverse

from triage.offline.parts import offline_pack


@pytest.fixture
def address():
    return reverse("offline-pack", args=[offline_pack().version])


def test_the_pack_is_there_and_may_be_kept_for_ever(client, address):
    response = client.get(address)
    assert response.headers["Content-Type"] == "application/json"
    assert json.loads(response.content) == json.loads(offline_pack().text)
    kept = {part.strip() for part in response.headers["Cache-Control"].split(",")}
    assert kept == {"public", "max-age=31536000", "immutable"}


def test_who_has_it_already_is_told_so(client, address):
    etag = client.get(address).headers["ETag"]
    again = client.get(address, headers={"If-None-Match": etag})
    assert (again.status_code, again.content) == (304, b"")


def test_a_version_that_is_not_this_one_is_not_found_and_not_kept(client):
    response = client.get(reverse("offline-pack", args=["0000000000000000"]))
    assert response.status_code == 404
    assert "immutable" not in response.headers.get("Cache-Control", "")


def test_it_travels_compressed(client, address):
    response = client.get(address, headers={"Accept-Encoding": "gzip"})
    assert response.headers["Content-Encoding"] == "gzip"
    assert len(response.content) < 20_000


@pytest.mark.parametrize("method", ["post", "put", "delete"])
def test_it_can_only_be_read(client, address, method):
    assert getattr(client, method)(address).status_code == 405
