"""A step of the check as plain values: what stands around every step, and the step itself, in the pages' own words."""

from django.utils.translation import gettext as _

from triage.api.presenters.parts import Json, emergency_number_json
from triage.api.presenters.question import question_step_json
from triage.api.presenters.results import emergency_json, out_of_scope_json, result_json
from triage.check_pages.presenters.problems import problem_notes
from triage.check_pages.request import CheckRequest
from triage.engine import Emergency, OutOfScope, Question, Result
from triage.jobsheet.sentences import sentence
from triage.jobsheet.wording import answer_label, question_label


def step_json(check_request: CheckRequest) -> Json:
    return {**_kind_json(check_request), **context_json(check_request), **_progress_json(check_request)}


def context_json(check_request: CheckRequest) -> Json:
    """With what knowledge and for which place: as much part of every answer as its words are."""
    return {
        "pack": {"id": check_request.pack.id, "version": check_request.pack.version},
        "region": {"id": check_request.region.id, "name": check_request.region.name},
        "language": check_request.texts.language,
        "notices": [sentence("notice", notice=notice) for notice in check_request.notices],
        "emergency_number": emergency_number_json(check_request),
    }


def _kind_json(check_request: CheckRequest) -> Json:
    match check_request.step:
        case Question() as asked:
            return question_step_json(check_request, asked)
        case Emergency() as danger:
            return emergency_json(check_request, danger)
        case Result() as advice:
            return result_json(check_request, advice)
        case OutOfScope(reason=reason):
            return out_of_scope_json(check_request, reason)


def _progress_json(check_request: CheckRequest) -> Json:
    links = check_request.links
    pages = {"step": links.step(), "danger": links.danger(), "start": links.restart(), "summary": links.summary()}
    return {
        "safety": _safety(check_request),
        "answers": [
            {
                "observation": observation,
                "answer": answer,
                "question": question_label(check_request.texts, observation),
                "text": answer_label(check_request.texts, observation, answer),
            }
            for observation, answer in check_request.answers.items()
        ],
        "problems": [
            sentence("problem", problem=note) for note in problem_notes(check_request.texts, check_request.problems)
        ],
        "links": {name: check_request.origin + page for name, page in pages.items()},
    }


def _safety(check_request: CheckRequest) -> str:
    """The line that goes with a question or an advice; a step that is about safety itself has no other words in it."""
    if isinstance(check_request.step, Emergency | OutOfScope):
        return ""
    sentence = _(
        "If anything seems dangerous now, stop and say which danger sign it is. In an emergency keep away from the oven"
        " and call %(number)s."
    )
    return sentence % {"number": check_request.region.emergency}
