"""What can be asked and answered, and no more of it than a telephone menu needs: ids, and words to say."""

from triage.api.presenters.parts import Json
from triage.api.presenters.question import danger_signs_json
from triage.api.presenters.step import context_json
from triage.check_pages.request import CheckRequest
from triage.engine import CANT_TELL
from triage.engine.pack import OPENING
from triage.jobsheet.wording import answer_label


def pack_json(check_request: CheckRequest) -> Json:
    return {
        **context_json(check_request),
        "regions": [{"id": region.id, "name": region.name} for region in check_request.library.regions.values()],
        "danger_signs": danger_signs_json(check_request),
        "complaints": _complaints(check_request),
        "observations": _observations(check_request),
    }


def _complaints(check_request: CheckRequest) -> list[Json]:
    """The lines of the first page. Each is one or more answers at once."""
    entries = zip(check_request.pack.complaints, check_request.texts.start.entries, strict=True)
    return [
        {"text": entry.label, "answers": [[OPENING, complaint.option], *map(list, complaint.answers.items())]}
        for complaint, entry in entries
    ]


def _observations(check_request: CheckRequest) -> list[Json]:
    asked = check_request.pack.observations
    return [
        {
            "observation": observation,
            "say": text.say,
            "options": [
                {"answer": option, "text": answer_label(check_request.texts, observation, option)}
                for option in (*asked[observation].options, CANT_TELL)
            ],
        }
        for observation, text in check_request.texts.questions.items()
    ]
