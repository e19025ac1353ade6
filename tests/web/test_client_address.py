"""Where a request comes from: nobody can claim another address."""

import pytest

from triage.web.client_address import client_address


@pytest.mark.parametrize(
    ("trusted", "data", "address"),
    [
        (None, "198.51.100.7", "192.0.2.1"),
        (("HTTP_X_FORWARDED_PROTO", "https"), "198.51.100.7", "198.51.100.7"),
        (("HTTP_X_FORWARDED_PROTO", "https"), "203.0.113.9, 198.51.100.7", "198.51.100.7"),
        (("HTTP_X_FORWARDED_PROTO", "https"), "", "192.0.2.1"),
    ],
)
def test_only_the_trusted_proxy_is_believed_and_only_what_it_wrote(rf, settings, trusted, data, address):
    settings.SECURE_PROXY_SSL_HEADER = trusted
    request = rf.get("/", REMOTE_ADDR="192.0.2.1", headers={"X-Forwarded-For": data})
    assert client_address(request) == address
