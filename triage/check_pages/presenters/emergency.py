"""A red flag ended the questions: what to do now, in order, and never. Nothing is tested or touched after it."""

from dataclasses import dataclass

from triage.check_pages.presenters.answers import Answered, answers_so_far
from triage.check_pages.presenters.causes import Cause, causes_of
from triage.check_pages.presenters.flags import (
    FlagNote,
    RaisedFlags,
    flag_note,
    flag_prohibitions,
    flag_steps,
    graver_flags_first,
    prioritise_flags,
)
from triage.check_pages.presenters.isolation import Instruction
from triage.check_pages.presenters.phone_numbers import OtherContact, PhoneNumber, numbers_for, numbers_not_shown
from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.presenters.question import QuestionPage, question_page
from triage.check_pages.presenters.summary import summary_of
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Signal
from triage.engine import Emergency
from triage.jobsheet.shapes import CheckSummary


@dataclass(frozen=True)
class EmergencyPage:
    """A red flag: what to do now and never. `other_flags` stand below the first, `mention` is what to say on the
    telephone, `other_contacts` how to reach those whose number is not shown here.

    `follow_up` asks only what can be answered from memory. `evacuate` when people have to leave: nothing stands on the
    page that does not help them out.
    """

    signal: Signal
    heading: str
    hazard: str
    steps: list[Instruction]
    prohibitions: list[str]
    mention: list[str]
    phone_numbers: list[PhoneNumber]
    other_contacts: list[OtherContact]
    other_flags: list[FlagNote]
    contact: str
    next_step: str
    causes: list[Cause]
    follow_up: QuestionPage | None
    answers: list[Answered]
    problems: list[ProblemNote]
    summary: CheckSummary | None
    evacuate: bool
    local_rules: str


def emergency_page(check_request: CheckRequest, step: Emergency) -> EmergencyPage:
    raised = prioritise_flags(step.flags)
    flag = raised.primary[0]
    text = check_request.texts.flags[flag.id]
    wanted = [call for each in step.flags for call in each.phone_numbers]
    memory = step.follow_up_question
    evacuate, away = raised.evacuate, raised.isolate_remotely
    return EmergencyPage(
        signal=flag.signal,
        heading=text.heading,
        hazard=text.hazard,
        steps=[*graver_flags_first(check_request, raised), *flag_steps(check_request, flag, away)],
        prohibitions=flag_prohibitions(check_request, flag, away),
        mention=[check_request.texts.flags[other.id].sign for other in raised.mentioned],
        phone_numbers=numbers_for(check_request.region, wanted),
        other_contacts=list(numbers_not_shown(check_request.region, wanted)),
        other_flags=[flag_note(check_request, other, away) for other in raised.primary[1:]],
        contact=text.who,
        next_step=text.then,
        causes=[] if evacuate else causes_of(check_request, step.verdict),
        follow_up=question_page(check_request, memory) if memory and not evacuate else None,
        answers=answers_so_far(
            check_request.texts, check_request.answers, check_request.links, _shown_answers(check_request, raised)
        ),
        problems=[] if evacuate else problem_notes(check_request.texts, check_request.problems),
        summary=None if evacuate else summary_of(check_request),
        evacuate=evacuate,
        local_rules="" if evacuate else check_request.region.local_line,
    )


def _shown_answers(check_request: CheckRequest, raised: RaisedFlags) -> list[str] | None:
    """All answers; when people have to leave, only those that say so, to put a slip of the finger right."""
    if not raised.evacuate:
        return None
    pack, ids = check_request.pack, {flag.id for flag in raised.primary}
    return [
        observation
        for observation, answer in check_request.answers.items()
        if observation in pack.observations and pack.observations[observation].flags.get(answer) in ids
    ]
