"""`manage.py erase_expired` erases whose oven it was from every job sheet whose time is over. Run it once a day."""

from django.core.management import BaseCommand

from triage.jobsheet.actions import erase_expired
from triage.models import SignInTry


class Command(BaseCommand):
    help = "Erases names, places, photos and notes from job sheets that their firm may no longer keep."

    def handle(self, *_args: object, **_options: object) -> None:
        count = erase_expired()
        SignInTry.objects.all().delete()  # attempts the release before counted; this one counts them elsewhere
        self.stdout.write(f"{count} job sheet{'' if count == 1 else 's'} erased.")
