"""Attempts of one test fall into one window of the counters, whatever the time is while the tests run."""

from datetime import UTC, datetime, timedelta

import pytest


class Clock:
    moment = datetime(2030, 1, 2, 3, 1, tzinfo=UTC)

    def now(self):
        return self.moment

    def advance(self, **difference):
        self.moment += timedelta(**difference)


@pytest.fixture(autouse=True)
def rate_limit_clock(monkeypatch):
    clock = Clock()
    monkeypatch.setattr("triage.web.rate_limit.timezone", clock)
    return clock
