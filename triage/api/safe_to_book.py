"""No firm is booked while people have to get out: they need help from outside, and should wait for no repairer."""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.presenters.flags import prioritise_flags
from triage.engine import parse_answers
from triage.engine.safety import raised_flags
from triage.jobsheet.errors import FieldProblem, Refused
from triage.knowledge.library import library


def leave_first(trail: Iterable[tuple[str, str]]) -> None:
    """Raises Refused where these answers say that people have to leave."""
    pack = library().pack
    flags = raised_flags(pack, parse_answers(pack, trail).answers)
    if flags and prioritise_flags(flags).evacuate:
        sentence = _(
            "By these answers people have to get out now and call for help from outside. Tell them that, and whom to"
            " call; both are in the step of these answers. No repair can be booked with them."
        )
        raise Refused([FieldProblem("answers", sentence)])
