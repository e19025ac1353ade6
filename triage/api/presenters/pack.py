"""What can be asked and answered, and no more of it than a telephone menu needs: ids, and words to say."""

from triage.api.presenters.parts import Told
from triage.api.presenters.question import told_danger_signs
from triage.api.presenters.step import told_around
from triage.check_pages.request import CheckRequest
from triage.engine import CANT_TELL
from triage.engine.pack import OPENING
from triage.jobsheet.wording import answer_words


def told_pack(check_request: CheckRequest) -> Told:
    return {
        **told_around(check_request),
        "regions": [{"id": region.id, "name": region.name} for region in check_request.library.regions.values()],
        "danger_signs": told_danger_signs(check_request),
        "complaints": _complaints(check_request),
        "observations": _observations(check_request),
    }


def _complaints(check_request: CheckRequest) -> list[Told]:
    """The lines of the first page. Each is one or more answers at once."""
    entries = zip(check_request.pack.complaints, check_request.texts.start.entries, strict=True)
    return [
        {"words": entry.words, "answers": [[OPENING, complaint.option], *map(list, complaint.answers.items())]}
        for complaint, entry in entries
    ]


def _observations(check_request: CheckRequest) -> list[Told]:
    asked = check_request.pack.observations
    return [
        {
            "observation": observation,
            "say": text.say,
            "options": [
                {"answer": option, "words": answer_words(check_request.texts, observation, option)}
                for option in (*asked[observation].options, CANT_TELL)
            ],
        }
        for observation, text in check_request.texts.questions.items()
    ]
