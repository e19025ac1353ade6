"""Requests are counted in the database, and the header fields are those of the draft on RateLimit fields (11)."""

from datetime import UTC, datetime, timedelta

import pytest
from django.db import connection

from triage.models import RequestCount
from triage.web.rate_limit import Policy, count_request, network_of

TWO = Policy("key", quota=2, seconds=60)
NOON = datetime(2031, 5, 26, 12, 0, 10, tzinfo=UTC)


@pytest.mark.django_db
def test_so_many_pass_and_the_next_does_not():
    seen = [count_request(TWO, "one", NOON) for _ in range(3)]
    assert [allowance.exceeded for allowance in seen] == [False, False, True]
    assert [allowance.remaining for allowance in seen] == [1, 0, 0]
    assert not count_request(TWO, "another", NOON).exceeded


@pytest.mark.django_db
def test_a_new_stretch_begins_afresh_and_old_rows_go():
    for _ in range(3):
        count_request(TWO, "one", NOON)
    assert not count_request(TWO, "one", NOON + timedelta(seconds=50)).exceeded
    assert RequestCount.objects.count() == 1


@pytest.mark.django_db
def test_a_row_that_another_worker_clears_away_meanwhile_fails_nobody():
    """As where the stretch ends between the two statements of one request."""

    def cleared_after_update(execute, sql, params, many, context):
        found = execute(sql, params, many, context)
        if sql.startswith("UPDATE"):
            execute("DELETE FROM triage_requestcount", (), False, context)
        return found

    count_request(TWO, "one", NOON)
    with connection.execute_wrapper(cleared_after_update):
        assert not count_request(TWO, "one", NOON).exceeded
    assert not RequestCount.objects.exists()


@pytest.mark.django_db
def test_policies_count_apart():
    count_request(TWO, "one", NOON)
    assert count_request(Policy("address", 2, 60), "one", NOON).remaining == 1


@pytest.mark.django_db
def test_the_fields_are_those_of_the_draft():
    """draft-ietf-httpapi-ratelimit-headers-11, sections 3.1 and 4.1: a quoted name; q, w; r, t."""
    first = count_request(TWO, "one", NOON).headers()
    assert first == {"RateLimit-Policy": '"key";q=2;w=60', "RateLimit": '"key";r=1;t=50'}
    count_request(TWO, "one", NOON)
    # Section 6: Retry-After is not earlier than the end of the effective window.
    assert count_request(TWO, "one", NOON).headers()["Retry-After"] == "50"


@pytest.mark.django_db
def test_a_row_names_nobody():
    count_request(TWO, "192.0.2.7", NOON)
    assert "192.0.2.7" not in RequestCount.objects.get().bucket


def test_an_ipv6_household_is_one_caller():
    """A household has at least a /64 of IPv6 (RFC 6177); the addresses are from the ranges for documentation."""
    assert network_of("2001:db8:1:2:3:4:5:6") == network_of("2001:db8:1:2::9") == "2001:db8:1:2::/64"
    assert network_of("192.0.2.7") == network_of("::ffff:192.0.2.7") == "192.0.2.7"
    assert network_of("fe80::1%eth0") == "fe80::/64"
    assert network_of("") == ""
