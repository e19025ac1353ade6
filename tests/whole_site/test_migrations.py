"""Migrations only add: while an upgrade goes on, the release before writes to the newer database."""

import pytest
from django.db import connection
from django.db.migrations.loader import MigrationLoader
from django.db.migrations.operations import AddConstraint, AddField, AlterField, CreateModel, RemoveConstraint
from django.utils import timezone

from tests.firm_builders import make_firm, make_job_sheet
from triage.models import Delivery, Report
from triage.models.delivery import DeliveryState

NOW = timezone.now()

# What may stand in a migration; whatever takes away or renames is not among them.
ADDING = {"AddConstraint", "AddField", "AddIndex", "AlterField", "CreateModel", "RemoveConstraint"}
# Names that only Python knows: nothing of it reaches the database.
STATE_ONLY = "SeparateDatabaseAndState"
# One more kind of actor: the same column, and the rule that replaces the one that goes allows all it allowed. The other
# rule is about the new column alone, which the release before leaves empty.
ALLOWED = {"0005_api_keys": {"accessline.actor", "access_actor_is_known", "access_key_is_a_system"}}


def migrations():
    """Ours, the first one first."""
    loader = MigrationLoader(None, ignore_no_migrations=True)
    return [migration for (app, _), migration in sorted(loader.disk_migrations.items()) if app == "triage"]


def made_in(migration):
    return {operation.name.lower() for operation in migration.operations if isinstance(operation, CreateModel)}


def works_without_it(field):
    """Whether a row that says nothing of the column, as the release before writes it, is a good row."""
    return field.null or field.has_db_default() or field.many_to_many


def test_nothing_is_taken_away_or_renamed():
    kinds = {(migration.name, type(step).__name__) for migration in migrations() for step in migration.operations}
    assert {kind for _, kind in kinds} >= {"AddField", "CreateModel"}
    assert {(name, kind) for name, kind in kinds if kind not in {*ADDING, STATE_ONLY}} == set()


def test_names_that_only_python_knows_do_nothing_to_the_database():
    apart = [step for migration in migrations() for step in migration.operations if type(step).__name__ == STATE_ONLY]
    assert len(apart) >= 1
    assert [step.database_operations for step in apart] == [[]] * len(apart)


def test_what_a_migration_changes_on_a_table_of_before_is_listed_with_its_reason():
    """Another column type, another rule: the release before might not keep to it."""
    for migration in migrations():
        altered = {f"{step.model_name}.{step.name}" for step in migration.operations if isinstance(step, AlterField)}
        replaced = {step.name for step in migration.operations if isinstance(step, RemoveConstraint)}
        ruled = {
            step.constraint.name
            for step in migration.operations
            if isinstance(step, AddConstraint) and step.model_name not in made_in(migration)
        }
        assert altered | replaced | ruled == ALLOWED.get(migration.name, set()), migration.name


def test_a_column_added_to_a_table_of_before_may_be_left_out():
    added = [
        (f"{migration.name}: {step.model_name}.{step.name}", works_without_it(step.field))
        for migration in migrations()
        for step in migration.operations
        if isinstance(step, AddField) and step.model_name.lower() not in made_in(migration)
    ]
    assert len(added) >= 2
    assert [name for name, works in added if not works] == []


@pytest.mark.django_db
def test_the_release_before_writes_an_api_key():
    before = MigrationLoader(connection).project_state(("triage", "0005_api_keys")).apps.get_model("triage", "ApiKey")
    assert "begins" not in {field.name for field in before._meta.get_fields()}
    key = before.objects.create(firm_id=make_firm().pk, name="menu", key_hash="a", created=timezone.now())
    with connection.cursor() as cursor:
        cursor.execute("SELECT begins FROM triage_apikey WHERE id = %s", [key.pk])
        assert cursor.fetchone() == ("",)


@pytest.mark.django_db
def test_the_release_before_reads_and_writes_what_this_one_calls_by_other_names():
    before = MigrationLoader(connection).project_state(("triage", "0006_key_begins")).apps
    sheet = make_job_sheet()
    assert before.get_model("triage", "JobSheet").objects.get().trail == sheet.answers
    line = before.get_model("triage", "AccessLine").objects.get()
    assert (line.sheet_id, line.deed) == (sheet.pk, "handed over")
    sent = before.get_model("triage", "Delivery").objects.create(
        firm_id=sheet.firm_id,
        channel="webhook",
        event="test",
        message="msg_1",
        state="dead",
        next_try=NOW,
        created=NOW,
    )
    now = Delivery.objects.get(pk=sent.pk)
    assert (now.message_id, now.next_attempt, now.state) == ("msg_1", NOW, DeliveryState.FAILED)
    before.get_model("triage", "Reckoning").objects.create(topic="knowledge", pack_version="1", contents={}, made=NOW)
    assert Report.objects.get().computed == NOW
