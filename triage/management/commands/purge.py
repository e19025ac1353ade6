"""`manage.py purge` erases whose oven it was from every job sheet whose time is over. Run it once a day."""

from django.core.management import BaseCommand

from triage.jobsheet.actions import purge


class Command(BaseCommand):
    help = "Erases names, places, photos and notes from job sheets that their firm may no longer keep."

    def handle(self, *_args: object, **_options: object) -> None:
        count = purge()
        self.stdout.write(f"{count} job sheet{'' if count == 1 else 's'} erased.")
