"""One question, and the danger page, which is a question with many answers."""

from dataclasses import replace

from triage.check_pages.page_models import DangerPage, QuestionPage
from triage.check_pages.presenters.answers import answers_so_far
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.view_models import Choice
from triage.check_pages.visit import Visit
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Ask


def question_page(visit: Visit, observation: str, number: int = 1, at_most: int = 1) -> QuestionPage:
    asked = visit.library.pack.observations[observation]
    text = visit.texts.questions[observation]
    return QuestionPage(
        question=text.ask,
        why=text.why,
        how=text.look,
        choices=[Choice(text.options[option], visit.links.step({observation: option})) for option in asked.options],
        cant_tell_href=visit.links.step({observation: CANT_TELL}),
        part=asked.picture,
        number=number,
        at_most=at_most,
        answers=answers_so_far(visit.texts, visit.reading, visit.links),
        problems=problem_sentences(visit.texts, visit.reading.problems),
    )


def asked_page(visit: Visit, step: Ask) -> QuestionPage | DangerPage:
    """The page of a step that asks."""
    if step.observation == SCREEN:
        return danger_page(visit)
    page = question_page(visit, step.observation, step.number, step.at_most)
    return replace(page, better=_better(visit, step))


def _better(visit: Visit, step: Ask) -> Choice | None:
    """The reading's task that would tell more than this question; the engine names only one that may be done now."""
    task = step.better
    return Choice(visit.texts.tasks[task.id].title, visit.links.task(task.id)) if task else None


def danger_page(visit: Visit) -> DangerPage:
    """The danger signs in the order of gravity; each leads on with every answer so far."""
    words = visit.texts.start.danger
    return DangerPage(
        heading=words.heading,
        intro=words.intro,
        signs=_signs(visit),
        none=Choice(words.none, _onward(visit), words.none_note),
        answers=answers_so_far(visit.texts, visit.reading, visit.links),
        chosen_before=visit.reading.answers.get(SCREEN) == NONE_OF_THESE,
        problems=problem_sentences(visit.texts, visit.reading.problems),
    )


def _onward(visit: Visit) -> str:
    """After "none of these": the check, or first the page that asks what is wrong."""
    return visit.links.onward({SCREEN: NONE_OF_THESE})


def _signs(visit: Visit) -> list[Choice]:
    """One line per sign. Flags that share a sign share its words, so the gravest of them speaks for all."""
    lines: dict[tuple[str, str], Choice] = {}
    for flag in sorted(visit.library.pack.red_flags.values(), key=lambda flag: flag.rank):
        for observation, option in flag.signs:
            words = visit.texts.flags[flag.id].sign
            lines.setdefault((observation, option), Choice(words, visit.links.step({observation: option})))
    return list(lines.values())
