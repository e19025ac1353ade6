"""Models and fields under plainer names. No table, column or stored value changes: the release before goes on."""

from django.db import migrations, models
from django.db.models import CASCADE, SET_NULL, Q

RENAMED_MODELS = [
    migrations.RenameModel("AccessLine", "AuditEntry"),
    migrations.AlterModelTable("AuditEntry", "triage_accessline"),
    migrations.AlterModelOptions(
        "AuditEntry", options={"ordering": ["at", "pk"], "verbose_name_plural": "audit entries"}
    ),
    migrations.RenameModel("Reckoning", "Report"),
    migrations.AlterModelTable("Report", "triage_reckoning"),
]
RENAMED_FIELDS = [
    migrations.RemoveConstraint("AuditEntry", "access_deed_is_known"),
    migrations.RenameField("AuditEntry", "deed", "action"),
    migrations.AlterField(
        "AuditEntry",
        "action",
        models.CharField(
            choices=[
                ("handed over", "Handed Over"),
                ("opened", "Opened"),
                ("exported", "Exported"),
                ("changed the status of", "Status"),
                ("wrote a note on", "Noted"),
                ("recorded the outcome of", "Outcome"),
                ("erased", "Erased"),
            ],
            db_column="deed",
            max_length=30,
        ),
    ),
    migrations.AddConstraint(
        "AuditEntry",
        models.CheckConstraint(
            condition=Q(
                (
                    "action__in",
                    [
                        "handed over",
                        "opened",
                        "exported",
                        "changed the status of",
                        "wrote a note on",
                        "recorded the outcome of",
                        "erased",
                    ],
                )
            ),
            name="access_deed_is_known",
        ),
    ),
    migrations.RenameField("Report", "made", "computed"),
    migrations.AlterField("Report", "computed", models.DateTimeField(db_column="made")),
    migrations.RenameField("ApiKey", "begins", "prefix"),
    migrations.AlterField(
        "ApiKey",
        "prefix",
        models.CharField(blank=True, db_column="begins", db_default="", default="", max_length=8),
    ),
    migrations.RenameField("JobSheet", "trail", "answers"),
    migrations.AlterField("JobSheet", "answers", models.JSONField(db_column="trail")),
    migrations.RenameField("Delivery", "message", "message_id"),
    migrations.AlterField("Delivery", "message_id", models.CharField(db_column="message", max_length=40, unique=True)),
    migrations.RemoveIndex("Delivery", "delivery_due"),
    migrations.RenameField("Delivery", "next_try", "next_attempt"),
    migrations.AlterField("Delivery", "next_attempt", models.DateTimeField(db_column="next_try")),
    migrations.AddIndex(
        "Delivery",
        models.Index(condition=Q(("state", "waiting")), fields=["next_attempt"], name="delivery_due"),
    ),
]
OTHER_LABELS = [
    migrations.AlterField(
        "Delivery",
        "state",
        models.CharField(
            choices=[("waiting", "Waiting"), ("sent", "Sent"), ("dead", "Failed"), ("dropped", "Cancelled")],
            default="waiting",
            max_length=10,
        ),
    ),
    *(
        migrations.AlterField("AuditEntry", name, field)
        for name, field in (
            ("sheet", models.ForeignKey("triage.jobsheet", CASCADE, related_name="audit_entries")),
            ("member", models.ForeignKey("triage.member", SET_NULL, null=True, related_name="audit_entries")),
            ("key", models.ForeignKey("triage.apikey", SET_NULL, null=True, related_name="audit_entries")),
        )
    ),
    migrations.AlterField(
        "Report", "firm", models.ForeignKey("triage.firm", CASCADE, blank=True, null=True, related_name="reports")
    ),
]


class Migration(migrations.Migration):
    dependencies = [("triage", "0006_key_begins")]
    operations = [
        migrations.SeparateDatabaseAndState(state_operations=[*RENAMED_MODELS, *RENAMED_FIELDS, *OTHER_LABELS])
    ]
