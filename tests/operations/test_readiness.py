"""What is not ready is told in one sentence, and comes right by itself."""

import pytest
from django.db import OperationalError

from triage.knowledge.problems import PackProblems
from triage.operations import readiness
from triage.operations.readiness import obstacle

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
    readiness._see_that_migrations_are_applied.cache_clear()
    yield
    readiness._see_that_migrations_are_applied.cache_clear()


def test_a_site_that_is_ready():
    assert obstacle() == ""


def test_broken_knowledge(monkeypatch):
    def broken():
        raise PackProblems([])

    monkeypatch.setattr(readiness, "library", broken)
    assert obstacle() == "The knowledge has mistakes. Run manage.py check, which lists them."


def test_a_database_that_is_away_and_comes_back(monkeypatch):
    def away():
        raise OperationalError("host db.internal, user oven, password hunter2")

    with monkeypatch.context() as patch:
        patch.setattr(readiness, "_ask_the_database", away)
        assert obstacle() == "The database does not answer. See that it runs and that DATABASE_URL is right."
    assert obstacle() == ""


def test_a_database_that_is_older_than_the_release(monkeypatch):
    with monkeypatch.context() as patch:
        patch.setattr(readiness, "MigrationExecutor", OlderDatabase)
        assert obstacle() == "The database is older than this release. Run manage.py migrate."
    assert obstacle() == ""


def test_once_applied_migrations_are_not_read_again(django_assert_num_queries):
    obstacle()
    with django_assert_num_queries(1):
        assert obstacle() == ""
