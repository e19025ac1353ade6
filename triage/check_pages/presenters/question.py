"""One question, and the danger page, which is a question with many answers."""

from dataclasses import dataclass, replace

from triage.check_pages.presenters.answers import Answered, answers_so_far
from triage.check_pages.presenters.problems import ProblemNote, problem_notes
from triage.check_pages.request import CheckRequest
from triage.check_pages.view_models import Choice
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Question


@dataclass(frozen=True)
class QuestionPage:
    """One question; `number` counts from one, `at_most` is the most that can be asked. `better` is a test that could
    tell more, or nothing."""

    question: str
    why: str
    how: str
    choices: list[Choice]
    cant_tell_href: str
    part: str
    number: int
    at_most: int
    answers: list[Answered]
    problems: list[ProblemNote]
    better: Choice | None = None


@dataclass(frozen=True)
class DangerPage:
    """The danger signs; `chosen_before` says that "none of these" was answered earlier."""

    heading: str
    intro: str
    signs: list[Choice]
    none: Choice
    answers: list[Answered]
    chosen_before: bool
    problems: list[ProblemNote]


def question_page(check_request: CheckRequest, observation: str, number: int = 1, at_most: int = 1) -> QuestionPage:
    asked = check_request.pack.observations[observation]
    text = check_request.texts.questions[observation]
    return QuestionPage(
        question=text.ask,
        why=text.why,
        how=text.look,
        choices=[
            Choice(text.options[option], check_request.links.step({observation: option})) for option in asked.options
        ],
        cant_tell_href=check_request.links.step({observation: CANT_TELL}),
        part=asked.picture,
        number=number,
        at_most=at_most,
        answers=answers_so_far(check_request.texts, check_request.answers, check_request.links),
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def asked_page(check_request: CheckRequest, step: Question) -> QuestionPage | DangerPage:
    """The page of a step that asks."""
    if step.observation == SCREEN:
        return danger_page(check_request)
    page = question_page(check_request, step.observation, step.number, step.max_questions)
    return replace(page, better=_better(check_request, step))


def _better(check_request: CheckRequest, step: Question) -> Choice | None:
    """The reading's task that would tell more than this question; the engine names only one that may be done now."""
    task = step.better_test
    return Choice(check_request.texts.tasks[task.id].title, check_request.links.task(task.id)) if task else None


def danger_page(check_request: CheckRequest) -> DangerPage:
    """The danger signs in the order of gravity; each leads on with every answer so far."""
    words = check_request.texts.start.danger
    return DangerPage(
        heading=words.heading,
        intro=words.intro,
        signs=_signs(check_request),
        none=Choice(words.none, _onward(check_request), words.none_note),
        answers=answers_so_far(check_request.texts, check_request.answers, check_request.links),
        chosen_before=check_request.answers.get(SCREEN) == NONE_OF_THESE,
        problems=problem_notes(check_request.texts, check_request.problems),
    )


def _onward(check_request: CheckRequest) -> str:
    """After "none of these": the check, or first the page that asks what is wrong."""
    return check_request.links.continue_url({SCREEN: NONE_OF_THESE})


def _signs(check_request: CheckRequest) -> list[Choice]:
    """One line per sign. Flags that share a sign share its words, so the gravest of them speaks for all."""
    lines: dict[tuple[str, str], Choice] = {}
    for flag in sorted(check_request.pack.red_flags.values(), key=lambda flag: flag.rank):
        for observation, option in flag.signs:
            words = check_request.texts.flags[flag.id].sign
            lines.setdefault((observation, option), Choice(words, check_request.links.step({observation: option})))
    return list(lines.values())
