"""What can be asked and answered, and no more of it than a telephone menu needs: ids, and words to say."""

from triage.api.presenters.parts import Told
from triage.api.presenters.question import told_danger_signs
from triage.api.presenters.step import told_around
from triage.check_pages.visit import Visit
from triage.engine import CANT_TELL
from triage.engine.pack import OPENING
from triage.jobsheet.wording import answer_words


def told_pack(visit: Visit) -> Told:
    return {
        **told_around(visit),
        "regions": [{"id": place.region.id, "name": place.name} for place in visit.library.regions.values()],
        "danger_signs": told_danger_signs(visit),
        "complaints": _complaints(visit),
        "observations": _observations(visit),
    }


def _complaints(visit: Visit) -> list[Told]:
    """The lines of the first page. Each is one or more answers at once."""
    entries = zip(visit.library.pack.complaints, visit.texts.start.entries, strict=True)
    return [
        {"words": entry.words, "answers": [[OPENING, complaint.option], *map(list, complaint.answers.items())]}
        for complaint, entry in entries
    ]


def _observations(visit: Visit) -> list[Told]:
    asked = visit.library.pack.observations
    return [
        {
            "observation": observation,
            "say": text.say,
            "options": [
                {"answer": option, "words": answer_words(visit.texts, observation, option)}
                for option in (*asked[observation].options, CANT_TELL)
            ],
        }
        for observation, text in visit.texts.questions.items()
    ]
