"""What still stands between this process and its visitors: the knowledge, the database, the database's shape.

A sentence says what is wrong and what to do, and nothing about where the database is or who may use it. Once every
migration was seen to be applied it stays so for this process: a later release adds more, and takes none away.
"""

from functools import cache

from django.db import DatabaseError, connection
from django.db.migrations.executor import MigrationExecutor
from django.utils.translation import gettext as _

from triage.knowledge.library import library
from triage.knowledge.problems import PackProblems


class PendingMigrations(Exception):
    """The database lacks a table or a column that this release uses."""


def not_ready_reason() -> str:
    """Why this process cannot serve; nothing where it can."""
    try:
        library()
    except PackProblems:
        return _("The knowledge has mistakes. Run manage.py check, which lists them.")
    try:
        _query_database()
        _require_migrations()
    except DatabaseError:
        return _("The database does not answer. See that it runs and that DATABASE_URL is right.")
    except PendingMigrations:
        return _("The database is older than this release. Run manage.py migrate.")
    return ""


def _query_database() -> None:
    with connection.cursor() as cursor:
        cursor.execute("SELECT 1")


@cache
def _require_migrations() -> None:
    """Returns once, then from memory; an exception is never remembered."""
    executor = MigrationExecutor(connection)
    if executor.migration_plan(executor.loader.graph.leaf_nodes()):
        raise PendingMigrations
