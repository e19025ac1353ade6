"""`manage.py firm add` makes a firm and `manage.py firm invite-owner` a link with which its owner gets in, once.

Every further member is invited by the owner, at the desk.
"""

from django.core.exceptions import ValidationError
from django.core.management import BaseCommand, CommandError, CommandParser
from django.urls import reverse

from triage.conf import DEFAULT_REGION
from triage.desk.staff import INVITATION_LIFETIME, invite
from triage.knowledge.library import library
from triage.models import Firm
from triage.models.firm import Role


class Command(BaseCommand):
    help = "Makes a firm, and a link with which an owner gets in."

    def add_arguments(self, parser: CommandParser) -> None:
        commands = parser.add_subparsers(dest="command", required=True, metavar="command")
        add = commands.add_parser("add", help="a new firm")
        add.add_argument("slug", help="its short name: lower-case words with hyphens")
        add.add_argument("name", help="its name as people know it")
        add.add_argument("--region", default=DEFAULT_REGION.value(), help="such as gb-eng (the site's own)")
        owner = commands.add_parser("invite-owner", help="a link for an owner")
        owner.add_argument("slug", help="the firm's short name")
        owner.add_argument("name", help="whom the link is for")

    def handle(self, *_args: object, command: str, slug: str, name: str, **options: str) -> None:
        if command == "add":
            self._add(slug, name, options["region"])
        else:
            self._invite_owner(slug, name)

    def _add(self, slug: str, name: str, region: str) -> None:
        if region not in library().regions:
            known = ", ".join(sorted(library().regions))
            raise CommandError(f"There is no region {region}. Use one of: {known}.", returncode=2)
        firm = Firm(slug=slug, name=name, region=region)
        try:
            firm.full_clean()
        except ValidationError as wrong:
            raise CommandError(" ".join(wrong.messages), returncode=2) from wrong
        firm.save()
        self.stdout.write(f"Firm {slug} is made. Next: manage.py firm invite-owner {slug} NAME")

    def _invite_owner(self, slug: str, name: str) -> None:
        firm = Firm.objects.filter(slug=slug).first()
        if firm is None:
            raise CommandError(f"There is no firm {slug}. Make it first: manage.py firm add {slug} NAME", returncode=2)
        path = reverse("desk-invitation", args=[invite(firm=firm, name=name, role=Role.OWNER)])
        self.stdout.write(f"For {name}, once, within {INVITATION_LIFETIME.days} days: {path}")
        self.stdout.write("Put the site's own address before it.")
