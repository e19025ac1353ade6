"""Everything a phone keeps to go through a check alone, the worker included, weighed as it travels to a browser."""

import brotli
from django.urls import reverse
from rcssmin import cssmin

from triage.offline.precache import precache_manifest

HEAVIEST = 120_000


def weight(client, url):
    response = client.get(url, headers={"Accept-Encoding": "br"})
    assert response.status_code == 200, url
    body = response.getvalue()
    if response.headers.get("Content-Encoding") == "br":
        return len(body)
    return len(brotli.compress(cssmin(body.decode()).encode() if url.endswith(".css") else body))


def test_everything_offline_weighs_less_than_120_kilobytes(client):
    """What stands under /static/ is squeezed and packed with Brotli when the site's files are collected."""
    addresses = [reverse("offline-worker"), *(file.url for file in precache_manifest().files)]
    assert len(addresses) > 10
    assert sum(weight(client, address) for address in addresses) <= HEAVIEST
