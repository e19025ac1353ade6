"""What could not be read in an address, as plain sentences. Nobody is blamed: most broken links were broken by a
program on the way."""

from collections.abc import Iterable

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from triage.check_pages.presenters.answers import answer_words, question_words
from triage.engine import AnswerProblem
from triage.knowledge.texts import Texts

MOST_SHOWN = 4


def problem_sentences(texts: Texts, problems: Iterable[AnswerProblem]) -> list[str]:
    """One sentence each, the first few of them, and how many more there were."""
    sentences = list(dict.fromkeys(_sentence(texts, problem) for problem in problems))
    more = len(sentences) - MOST_SHOWN
    if more <= 1:
        return sentences
    rest = ngettext("%(n)s more answer could not be used either.", "%(n)s more answers could not be used either.", more)
    return [*sentences[:MOST_SHOWN], rest % {"n": more}]


def _sentence(texts: Texts, problem: AnswerProblem) -> str:
    question = question_words(texts, problem.observation)
    words = {"question": question, "answer": answer_words(texts, problem.observation, problem.answer)}
    if problem.kind == "unknown-answer":
        return _("We did not know the answer “%(answer)s” to “%(question)s”. It was left out.") % words
    if problem.kind == "unreadable-reading":
        return _("The figures given for “%(question)s” could not be used. Please give them again.") % words
    if problem.kind == "contradiction":
        return _("“%(question)s” had two different answers. The safer one is used, or it is asked again.") % words
    if problem.kind == "retired":
        return _("The question “%(question)s” is asked in another way now. It may be asked again.") % words
    if problem.kind == "out-of-place":
        return _("“%(question)s” does not go with the other answers. It was left out.") % words
    if problem.kind == "too-many":
        return _("There were more answers than we can read. The first ones are used.")
    return _("We did not know the question “%(question)s”. It was left out.") % words
