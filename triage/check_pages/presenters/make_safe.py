"""A red flag ended the questions: what to do now, in order, and never. Nothing is tested or touched after it."""

from triage.check_pages.page_models import MakeSafePage
from triage.check_pages.presenters.answers import answers_so_far
from triage.check_pages.presenters.causes import causes_of
from triage.check_pages.presenters.flags import Raised, first_of, never_of, note_of, sort_out, urgent_first
from triage.check_pages.presenters.numbers import calls_for, without_number
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.presenters.question import question_page
from triage.check_pages.presenters.summary import summary_of
from triage.check_pages.request import CheckRequest
from triage.engine import Emergency


def make_safe_page(check_request: CheckRequest, step: Emergency) -> MakeSafePage:
    raised = sort_out(step.flags)
    flag = raised.acting[0]
    text = check_request.texts.flags[flag.id]
    wanted = [call for each in step.flags for call in each.phone_numbers]
    bare = raised.bare
    return MakeSafePage(
        signal=flag.signal,
        heading=text.heading,
        hazard=text.hazard,
        first=[*urgent_first(check_request, raised), *first_of(check_request, flag, raised.away)],
        never=never_of(check_request, flag, raised.away),
        tell_them=[check_request.texts.flags[told.id].sign for told in raised.told],
        call=calls_for(check_request.region, wanted),
        other_calls=without_number(check_request.region, wanted),
        also=[note_of(check_request, other, raised.away) for other in raised.acting[1:]],
        who=text.who,
        then=text.then,
        causes=[] if bare else causes_of(check_request, step.verdict),
        memory=question_page(check_request, step.follow_up_question) if step.follow_up_question and not bare else None,
        answers=answers_so_far(
            check_request.texts, check_request.answers, check_request.links, _shown_answers(check_request, raised)
        ),
        problems=[] if bare else problem_sentences(check_request.texts, check_request.problems),
        summary="" if bare else summary_of(check_request),
        bare=bare,
        local_line="" if bare else check_request.region.local_line,
    )


def _shown_answers(check_request: CheckRequest, raised: Raised) -> list[str] | None:
    """All answers; when people have to leave, only those that say so, to put a slip of the finger right."""
    if not raised.bare:
        return None
    pack, ids = check_request.pack, {flag.id for flag in raised.acting}
    return [
        observation
        for observation, answer in check_request.answers.items()
        if observation in pack.observations and pack.observations[observation].flags.get(answer) in ids
    ]
