"""What is not ready is told in one sentence, and comes right by itself."""

import pytest
from django.db import OperationalError

from triage.knowledge.problems import PackProblems
from triage.operations import readiness
from triage.operations.readiness import not_ready_reason

pytestmark = pytest.mark.django_db


class OlderDatabase:
    def __init__(self, _connection):
        self.loader = self
        self.graph = self

    def leaf_nodes(self):
        return []

    def migration_plan(self, _leaves):
        return ["0099_more"]


@pytest.fixture(autouse=True)
def nothing_remembered():
    readiness._require_migrations.cache_clear()
    yield
    readiness._require_migrations.cache_clear()


def test_a_site_that_is_ready():
    assert not_ready_reason() == ""


def test_broken_knowledge(monkeypatch):
    def broken():
        raise PackProblems([])

    monkeypatch.setattr(readiness, "library", broken)
    assert not_ready_reason() == "The knowledge has mistakes. Run manage.py check, which lists them."


def test_a_database_that_is_away_and_comes_back(monkeypatch):
    def away():
        raise OperationalError("host db.internal, user oven, password hunter2")

    with monkeypatch.context() as patch:
        patch.setattr(readiness, "_query_database", away)
        assert not_ready_reason() == "The database does not answer. See that it runs and that DATABASE_URL is right."
    assert not_ready_reason() == ""


def test_a_database_that_is_older_than_the_release(monkeypatch):
    with monkeypatch.context() as patch:
        patch.setattr(readiness, "MigrationExecutor", OlderDatabase)
        assert not_ready_reason() == "The database is older than this release. Run manage.py migrate."
    assert not_ready_reason() == ""


def test_once_applied_migrations_are_not_read_again(django_assert_num_queries):
    not_ready_reason()
    with django_assert_num_queries(1):
        assert not_ready_reason() == ""
