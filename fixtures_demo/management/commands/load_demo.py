"""Puts the invented firm into a fresh database and says where its people look and how they sign in."""

from django.core.management import BaseCommand, CommandParser

from fixtures_demo.firm import load


class Command(BaseCommand):
    help = "Loads the invented firm of the demo and prints where each of its people looks."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--port", type=int, required=True, help="where the demo listens")

    def handle(self, *_args: object, port: int, **_options: object) -> None:
        site, shop = f"http://127.0.0.1:{port}", f"http://localhost:{port}"
        passwords = load(shop, site)
        self.stdout.write(f"  Booking page of an invented firm: {shop}/booking-page/")
        self.stdout.write(f"  The same, when the check asks whom to call itself: {shop}/booking-page/in-the-frame/")
        self.stdout.write(f"  The same in a plain frame, without a script: {shop}/booking-page/plain-frame/")
        self.stdout.write(f"  Call page of the firm’s agent: {site}/desk/call/")
        self.stdout.write(f"  Desk of the firm: {site}/desk/")
        for name, password in passwords:
            self.stdout.write(f"    sign in as {name} with {password}")
