"""Work that is not the householder's: what it is, why it is not theirs, and whose it is. Never how it is done."""

from dataclasses import dataclass

from triage.check_pages.request import CheckRequest
from triage.engine import Band, Result
from triage.engine.enums import PerformedBy
from triage.knowledge.wording import fill_terms

MAX_JOBS = 3
MIN_CHANCE_NAMED = 0.08
PERSONS = {
    "technician": "a {technician}",
    "electrician": "a {electrician}",
    "network-operator": "the {network}",
    "householder": "a {technician}",
}
PREPARATION = ("label", "pattern", "screen", "photos")
"""What to have ready for whoever comes (`sentences/preparation.txt`)."""


@dataclass(frozen=True)
class ProfessionalJob:
    """Work that is not the householder's: what, why, and whose it is. Never how."""

    what: str
    why: str
    who: str


def person_label(check_request: CheckRequest, who: str) -> str:
    """Who it is in this region's words, with an article."""
    return fill_terms(PERSONS[who], check_request.region.terms)


def professional_jobs(check_request: CheckRequest, step: Result) -> list[ProfessionalJob]:
    """The jobs the likely causes lead to, the likeliest first, each named once."""
    jobs: dict[str, ProfessionalJob] = {}
    needed = step.verdict.band in (Band.QUALIFIED, Band.MAKE_SAFE)
    for cause in step.verdict.causes:
        fault, text = check_request.pack.faults[cause.fault], check_request.texts.faults[cause.fault]
        named = cause.chance >= MIN_CHANCE_NAMED or (needed and not jobs)
        if named and fault.performed_by != PerformedBy.HOUSEHOLDER:
            who = person_label(check_request, fault.performed_by)
            jobs.setdefault(text.job, ProfessionalJob(text.job, text.why_them, who))
    return list(jobs.values())[:MAX_JOBS]


def local_rules(check_request: CheckRequest, step: Result) -> str:
    """The line every page of advice has, and what the law here says about the kind of work the likeliest cause is."""
    who = check_request.pack.faults[step.verdict.causes[0].fault].performed_by
    rules = {"technician": check_request.region.appliance_inside, "electrician": check_request.region.hardwired}
    return f"{check_request.region.local_line} {rules.get(who, '')}".strip()
