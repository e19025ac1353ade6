"""What a knowledge author asks of the packs: one word after `pack` for each question (see `pack_questions`)."""

from argparse import ArgumentParser
from typing import Any

from django.core.management import BaseCommand, CommandError

from triage.knowledge.problems import PackProblems
from triage.management.pack_commands import (
    PackQuestion,
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

QUESTIONS: tuple[PackQuestion, ...] = (
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
    # A broken pack is told by the question itself, with exit code 2, and not by the site's own start-up checks.
    requires_system_checks: list[str] = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        words = parser.add_subparsers(dest="question", required=True, metavar="question")
        for question in QUESTIONS:
            question.add_arguments(words.add_parser(question.NAME, help=question.HELP, description=question.HELP))

    def handle(self, *_args: object, question: str, **options: Any) -> None:
        asked = next(known for known in QUESTIONS if question == known.NAME)
        try:
            asked.answer(options, self.stdout, self.stderr)
        except PackProblems as found:
            raise CommandError(str(found), returncode=2) from found
