"""A red flag ended the questions: what to do now, in order, and never. Nothing is tested or touched after it."""

from triage.check_pages.page_models import MakeSafePage
from triage.check_pages.presenters.answers import answers_so_far
from triage.check_pages.presenters.causes import causes_of
from triage.check_pages.presenters.flags import Raised, first_of, never_of, note_of, sort_out, urgent_first
from triage.check_pages.presenters.numbers import calls_for, without_number
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.presenters.question import question_page
from triage.check_pages.presenters.summary import summary_of
from triage.check_pages.visit import Visit
from triage.engine import MakeSafe


def make_safe_page(visit: Visit, step: MakeSafe) -> MakeSafePage:
    raised = sort_out(step.flags)
    flag = raised.acting[0]
    text = visit.texts.flags[flag.id]
    wanted = [call for each in step.flags for call in each.calls]
    bare = raised.bare
    return MakeSafePage(
        signal=flag.signal,
        heading=text.heading,
        hazard=text.hazard,
        first=[*urgent_first(visit, raised), *first_of(visit, flag, raised.away)],
        never=never_of(visit, flag, raised.away),
        tell_them=[visit.texts.flags[told.id].sign for told in raised.told],
        call=calls_for(visit.place, wanted),
        other_calls=without_number(visit.place, wanted),
        also=[note_of(visit, other, raised.away) for other in raised.acting[1:]],
        who=text.who,
        then=text.then,
        causes=[] if bare else causes_of(visit, step.verdict),
        memory=question_page(visit, step.memory) if step.memory and not bare else None,
        answers=answers_so_far(visit.texts, visit.reading, visit.links, _shown_answers(visit, raised)),
        problems=[] if bare else problem_sentences(visit.texts, visit.reading.problems),
        summary="" if bare else summary_of(visit, step),
        bare=bare,
        local_line="" if bare else visit.place.local_line,
    )


def _shown_answers(visit: Visit, raised: Raised) -> list[str] | None:
    """All answers; when people have to leave, only those that say so, to put a slip of the finger right."""
    if not raised.bare:
        return None
    pack, ids = visit.library.pack, {flag.id for flag in raised.acting}
    return [
        observation
        for observation, answer in visit.reading.answers.items()
        if observation in pack.observations and pack.observations[observation].flags.get(answer) in ids
    ]
