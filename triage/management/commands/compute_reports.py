"""`manage.py compute_reports` works out what the desk shows and takes longer than a page may: run it once a day.

What the pack knows (for who keeps it), and for every firm with enough outcomes what they propose.
"""

from django.core.management import BaseCommand, CommandError, CommandParser

from triage.authoring.progress import Progress
from triage.conf import DEFAULT_REGION
from triage.desk.knowledge_report import report_knowledge
from triage.desk.outcome_stats import report_calibration
from triage.knowledge.library import library
from triage.models import Firm

MAX_SAMPLES = 100_000


class Command(BaseCommand):
    help = "Works out the figures of the desk's calibration pages and of the page about the pack."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--samples", type=int, default=500, help="how many simulated checks for each part (500)")
        parser.add_argument("--firm", help="only the calibration of this firm, by its short name")

    def handle(self, *_args: object, samples: int, firm: str | None, **_options: object) -> None:
        if not 1 <= samples <= MAX_SAMPLES:
            raise CommandError(f"--samples must be from 1 to {MAX_SAMPLES}, not {samples}.", returncode=2)
        firms = Firm.objects.filter(slug=firm) if firm else Firm.objects.all()
        if firm and not firms:
            raise CommandError(f"There is no firm {firm}.", returncode=2)
        if not firm:
            report_knowledge(library(), DEFAULT_REGION.value(), samples, self._progress)
            self.stdout.write("The page about the pack is worked out.")
        for one in firms:
            report = report_calibration(one)
            said = f"from {report.contents['outcomes']} outcomes" if report else "too few outcomes yet"
            self.stdout.write(f"{one.slug}: {said}.")

    def _progress(self, what: str, total: int) -> Progress:
        return Progress(what, total, self.stderr.write)
