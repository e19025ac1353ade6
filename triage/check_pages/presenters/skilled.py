"""Work that is not the householder's: what it is, why it is not theirs, and whose it is. Never how it is done."""

from django.utils.translation import gettext as _

from triage.check_pages.page_models import SkilledJob
from triage.check_pages.request import CheckRequest
from triage.engine import Band, Result
from triage.engine.enums import PerformedBy
from triage.knowledge.wording import fill

MOST_JOBS = 3
WORTH_NAMING = 0.08
PERSONS = {
    "technician": "a {technician}",
    "electrician": "a {electrician}",
    "network-operator": "the {network}",
    "householder": "a {technician}",
}


def a_person(check_request: CheckRequest, who: str) -> str:
    """Who it is in this region's words, with an article."""
    return fill(PERSONS[who], check_request.region.words)


def skilled_jobs(check_request: CheckRequest, step: Result) -> list[SkilledJob]:
    """The jobs the likely causes lead to, the likeliest first, each named once."""
    jobs: dict[str, SkilledJob] = {}
    needed = step.verdict.band in (Band.QUALIFIED, Band.MAKE_SAFE)
    for cause in step.verdict.causes:
        fault, text = check_request.pack.faults[cause.fault], check_request.texts.faults[cause.fault]
        if fault.performed_by != PerformedBy.HOUSEHOLDER and (cause.chance >= WORTH_NAMING or (needed and not jobs)):
            jobs.setdefault(text.job, SkilledJob(text.job, text.why_them, _whose(check_request, fault.performed_by)))
    return list(jobs.values())[:MOST_JOBS]


def _whose(check_request: CheckRequest, who: str) -> str:
    person = a_person(check_request, who)
    return f"{person[:1].upper()}{person[1:]}."


def local_rules(check_request: CheckRequest, step: Result) -> str:
    """The line every page of advice has, and what the law here says about the kind of work the likeliest cause is."""
    who = check_request.pack.faults[step.verdict.causes[0].fault].performed_by
    rules = {"technician": check_request.region.appliance_inside, "electrician": check_request.region.hardwired}
    return f"{check_request.region.local_line} {rules.get(who, '')}".strip()


def ready_for_them() -> list[str]:
    """What makes one visit enough; nothing is opened or moved for it."""
    return [
        _("The model and serial number. They are on a label; look only where you can see it as the oven stands."),
        _("When it happens, how often, and since when."),
        _("What the screen showed, word for word."),
        _("A photo or two from the front, with the oven cold. Open and move nothing for a photo."),
    ]
