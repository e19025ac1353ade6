"""A question, and the danger signs, which are a question with many answers. To answer is to add the pair of an option
to the address."""

from triage.api.presenters.parts import Json
from triage.check_pages.request import CheckRequest
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Question
from triage.jobsheet.wording import answer_label


def question_step_json(check_request: CheckRequest, step: Question) -> Json:
    if step.observation == SCREEN:
        return {"kind": "danger-signs", **danger_signs_json(check_request)}
    counted = {"number": step.number, "max_questions": step.max_questions}
    return {"kind": "question", "question": {**question_json(check_request, step.observation), **counted}}


def question_json(check_request: CheckRequest, observation: str) -> Json:
    """`say` is for reading aloud and `again` a shorter second try."""
    asked, text = check_request.pack.observations[observation], check_request.texts.questions[observation]
    return {
        "observation": observation,
        "ask": text.ask,
        "why": text.why,
        "how": text.look,
        "say": text.say,
        "again": text.again,
        "options": [
            _option_json(observation, option, answer_label(check_request.texts, observation, option))
            for option in (*asked.options, CANT_TELL)
        ],
    }


def danger_signs_json(check_request: CheckRequest) -> Json:
    """The signs, gravest first. Flags that share a sign share its words, so the gravest of them speaks for all."""
    texts = check_request.texts.start.danger
    signs: dict[tuple[str, str], str] = {}
    for flag in sorted(check_request.pack.red_flags.values(), key=lambda flag: flag.rank):
        for sign in flag.signs:
            signs.setdefault(sign, check_request.texts.flags[flag.id].sign)
    return {
        "heading": texts.heading,
        "intro": texts.intro,
        "signs": [_option_json(observation, option, sign) for (observation, option), sign in signs.items()],
        "none": _option_json(SCREEN, NONE_OF_THESE, texts.none),
    }


def _option_json(observation: str, answer: str, text: str) -> Json:
    return {"observation": observation, "answer": answer, "text": text}
