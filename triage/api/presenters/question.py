"""A question, and the danger signs, which are a question with many answers. To answer is to add the pair of an option
to the address."""

from triage.api.presenters.parts import Told
from triage.check_pages.request import CheckRequest
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Question
from triage.jobsheet.wording import answer_words


def told_ask(check_request: CheckRequest, step: Question) -> Told:
    if step.observation == SCREEN:
        return {"kind": "danger-signs", **told_danger_signs(check_request)}
    counted = {"number": step.number, "at_most": step.max_questions}
    return {"kind": "question", "question": {**told_question(check_request, step.observation), **counted}}


def told_question(check_request: CheckRequest, observation: str) -> Told:
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
            _option(observation, option, answer_words(check_request.texts, observation, option))
            for option in (*asked.options, CANT_TELL)
        ],
    }


def told_danger_signs(check_request: CheckRequest) -> Told:
    """The signs, gravest first. Flags that share a sign share its words, so the gravest of them speaks for all."""
    words = check_request.texts.start.danger
    signs: dict[tuple[str, str], str] = {}
    for flag in sorted(check_request.pack.red_flags.values(), key=lambda flag: flag.rank):
        for sign in flag.signs:
            signs.setdefault(sign, check_request.texts.flags[flag.id].sign)
    return {
        "heading": words.heading,
        "intro": words.intro,
        "signs": [_option(observation, option, sign) for (observation, option), sign in signs.items()],
        "none": _option(SCREEN, NONE_OF_THESE, words.none),
    }


def _option(observation: str, answer: str, words: str) -> Told:
    return {"observation": observation, "answer": answer, "words": words}
