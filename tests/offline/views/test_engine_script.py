"""The engine's address names its version and may be kept for ever; another version is not found."""

import pytest
from django.urls import reverse

from triage.offline.engine_script import engine_script


@pytest.fixture
def address():
    return reverse("offline-engine", args=[engine_script().version])


def test_the_engine_is_there_and_may_be_kept_for_ever(client, address):
    response = client.get(address)
    assert response.headers["Content-Type"] == "text/javascript; charset=utf-8"
    assert response.content.decode() == engine_script().text
    assert "immutable" in response.headers["Cache-Control"]
    again = client.get(address, headers={"If-None-Match": response.headers["ETag"]})
    assert again.status_code == 304


def test_a_version_that_is_not_this_one_is_not_found_and_not_kept(client):
    response = client.get(reverse("offline-engine", args=["0000000000000000"]))
    assert response.status_code == 404
    assert "immutable" not in response.headers.get("Cache-Control", "")


def test_it_can_only_be_read(client, address):
    assert client.post(address).status_code == 405
