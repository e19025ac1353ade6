"""A step of the check as plain values: what stands around every step, and the step itself, in the pages' own words."""

from django.utils.translation import gettext as _

from triage.api.presenters.ending import told_advice, told_exit, told_make_safe
from triage.api.presenters.parts import Told, told_emergency
from triage.api.presenters.question import told_ask
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.visit import Visit
from triage.engine import Advice, Ask, MakeSafe, NotThis
from triage.jobsheet.wording import answer_words, question_words


def told_step(visit: Visit) -> Told:
    return {**_kind(visit), **told_around(visit), **_so_far(visit)}


def told_around(visit: Visit) -> Told:
    """With what knowledge and for which place: as much part of every answer as its words are."""
    return {
        "pack": {"id": visit.library.pack.id, "version": visit.library.pack.version},
        "region": {"id": visit.place.region.id, "name": visit.place.name},
        "language": visit.texts.language,
        "notices": list(visit.notices),
        "emergency": told_emergency(visit),
    }


def _kind(visit: Visit) -> Told:
    match visit.step:
        case Ask() as asked:
            return told_ask(visit, asked)
        case MakeSafe() as danger:
            return told_make_safe(visit, danger)
        case Advice() as advice:
            return told_advice(visit, advice)
        case NotThis(reason=reason):
            return told_exit(visit, reason)


def _so_far(visit: Visit) -> Told:
    links = visit.links
    pages = {"step": links.step(), "danger": links.danger(), "start": links.start(), "summary": links.summary()}
    return {
        "safety": _safety(visit),
        "answers": [
            {
                "observation": observation,
                "answer": answer,
                "question": question_words(visit.texts, observation),
                "words": answer_words(visit.texts, observation, answer),
            }
            for observation, answer in visit.reading.answers.items()
        ],
        "problems": problem_sentences(visit.texts, visit.reading.problems),
        "links": {name: visit.origin + page for name, page in pages.items()},
    }


def _safety(visit: Visit) -> str:
    """The line that goes with a question or an advice; a step that is about safety itself has no other words in it."""
    if isinstance(visit.step, MakeSafe | NotThis):
        return ""
    sentence = _(
        "If anything seems dangerous now, stop and say which danger sign it is. In an emergency keep away from the oven"
        " and call %(number)s."
    )
    return sentence % {"number": visit.place.emergency}
