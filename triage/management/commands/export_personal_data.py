"""`manage.py export_personal_data REFERENCE` writes all that is kept about one hand-over, for the person it is about.

Before it is handed out, see that who asks is that person: a reference opens nothing by itself, and this opens all.
"""

import json

from django.core.management import BaseCommand, CommandError, CommandParser

from triage.jobsheet.actions import note_access
from triage.jobsheet.personal_data import export_personal_data
from triage.jobsheet.reference import read_reference
from triage.models import JobSheet
from triage.models.audit_entry import Actor, AuditAction


class Command(BaseCommand):
    help = "Writes everything kept about one hand-over as JSON, with who looked at it."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("reference", help="such as KD7MX-4QPTR, in any spelling")

    def handle(self, *_args: object, reference: str, **_options: object) -> None:
        sheet = JobSheet.objects.filter(reference=read_reference(reference)).select_related("firm").first()
        if sheet is None:
            raise CommandError(
                "There is no job sheet with this reference. Check it, character by character.", returncode=2
            )
        note_access(sheet, AuditAction.EXPORTED, None, Actor.SITE)
        self.stdout.write(json.dumps(export_personal_data(sheet), ensure_ascii=False, indent=2))
