"""The knowledge author's tools: one subcommand of `pack` for each module of `pack_commands`."""

from argparse import ArgumentParser
from typing import Any

from django.core.management import BaseCommand, CommandError

from triage.knowledge.problems import PackProblems
from triage.management.pack_commands import (
    PackCommand,
    accept,
    diff,
    explain,
    export,
    fit,
    lint,
    replay,
    simulate,
    tree,
    unverified,
)

COMMANDS: tuple[PackCommand, ...] = (
    accept,
    diff,
    explain,
    export,
    fit,
    lint,
    replay,
    simulate,
    tree,
    unverified,
)


class Command(BaseCommand):
    help = "Shows what the packs and regions know, where they are weak, and what a change does."
    # A broken pack is reported by the command itself, with exit code 2, and not by the site's own start-up checks.
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        subcommands = parser.add_subparsers(dest="command", required=True, metavar="command")
        for command in COMMANDS:
            command.add_arguments(subcommands.add_parser(command.NAME, help=command.HELP, description=command.HELP))

    def handle(self, *_args: object, command: str, **options: Any) -> None:
        asked = next(known for known in COMMANDS if command == known.NAME)
        try:
            asked.run(options, self.stdout, self.stderr)
        except PackProblems as found:
            raise CommandError(str(found), returncode=2) from found
