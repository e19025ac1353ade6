"""`manage.py api_key make|list|revoke <firm> ...`: the keys of a firm's own system. A key is shown once."""

from argparse import ArgumentParser

from django.core.management import BaseCommand, CommandError

from triage.jobsheet.errors import Refused
from triage.models import ApiKey, Firm
from triage.web.api_keys import make_key, revoke_key


class Command(BaseCommand):
    help = "Makes, lists or revokes the keys with which a firm's own system uses the API."

    def add_arguments(self, parser: ArgumentParser) -> None:
        commands = parser.add_subparsers(dest="command", required=True, metavar="command")
        make = commands.add_parser("make", help="make a key and show it, once")
        make.add_argument("firm", help="the firm's name in addresses")
        make.add_argument("name", help="what uses the key, such as: telephone menu")
        listed = commands.add_parser("list", help="list the keys of a firm, without the keys themselves")
        listed.add_argument("firm", help="the firm's name in addresses")
        revoke = commands.add_parser("revoke", help="end a key at once")
        revoke.add_argument("firm", help="the firm's name in addresses")
        revoke.add_argument("number", type=int, help="the key's number in the list")

    def handle(self, *_args: object, **options: object) -> None:
        firm = Firm.objects.filter(slug=str(options["firm"])).first()
        if firm is None:
            raise CommandError("There is no such firm. Give its name as it stands in addresses.")
        commands = {"make": self._make, "list": self._list, "revoke": self._revoke}
        commands[str(options["command"])](firm, options)

    def _make(self, firm: Firm, options: dict[str, object]) -> None:
        try:
            key, secret = make_key(firm=firm, name=str(options["name"]))
        except Refused as refused:
            raise CommandError(str(refused)) from refused
        self.stdout.write(f"Key {key.pk}, {key.name}. It is shown this once, so keep it where no browser reads it:")
        self.stdout.write(secret)

    def _list(self, firm: Firm, _options: dict[str, object]) -> None:
        for key in ApiKey.objects.filter(firm=firm).order_by("pk"):
            used = f"last used {key.last_used:%Y-%m-%d %H:%M}" if key.last_used else "never used"
            state = f"revoked {key.revoked:%Y-%m-%d %H:%M}" if key.revoked else "in use"
            self.stdout.write(f"{key.pk}  {key.name}: made {key.created:%Y-%m-%d}, {used}, {state}")

    def _revoke(self, firm: Firm, options: dict[str, object]) -> None:
        key = ApiKey.objects.filter(firm=firm, pk=str(options["number"])).first()
        if key is None:
            raise CommandError("The firm has no key with this number. Its keys are listed by: api_key list.")
        ended = revoke_key(key=key)
        self.stdout.write(f"Key {key.pk} is revoked." if ended else f"Key {key.pk} was revoked before.")
