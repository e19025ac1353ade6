"""The metrics are shut until somebody opens them, and then to no more than was said."""

import pytest

from triage.operations.metrics_auth import may_read_metrics

TOKEN = "a-token-of-more-than-32-characters-1"


def asks(rf, address="192.0.2.1", **headers):
    return may_read_metrics(rf.get("/metrics/", REMOTE_ADDR=address, headers=headers))


def test_at_first_nobody_may(rf):
    assert not asks(rf, "127.0.0.1")
    assert not asks(rf, Authorization="Bearer none")
    assert not asks(rf, "")


def test_a_chosen_network_may(rf, settings):
    settings.TRIAGE_METRICS_ALLOWED_NETWORKS = "127.0.0.1, 10.0.0.0/8,2001:db8::/32"
    assert [asks(rf, address) for address in ("127.0.0.1", "10.9.8.7", "2001:db8::5")] == [True] * 3
    assert [asks(rf, address) for address in ("127.0.0.2", "11.0.0.1", "2001:db9::5", "nonsense")] == [False] * 4


def test_an_address_that_anybody_could_have_written_does_not_count(rf, settings):
    settings.TRIAGE_METRICS_ALLOWED_NETWORKS = "127.0.0.1"
    settings.SECURE_PROXY_SSL_HEADER = None
    assert not asks(rf, X_Forwarded_For="127.0.0.1")
    settings.SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
    assert not asks(rf, "127.0.0.1", X_Forwarded_For="127.0.0.1, 192.0.2.1")


@pytest.mark.parametrize(
    ("header", "let_in"),
    [
        (f"Bearer {TOKEN}", True),
        (f"bearer  {TOKEN} ", True),
        (f"Basic {TOKEN}", False),
        (f"Bearer {TOKEN}x", False),
        ("Bearer é", False),
        ("Bearer", False),
    ],
)
def test_who_shows_the_token_may(rf, settings, header, let_in):
    settings.TRIAGE_METRICS_TOKEN = TOKEN
    assert asks(rf, Authorization=header) is let_in
