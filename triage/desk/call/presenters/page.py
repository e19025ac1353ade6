"""The whole call page at one moment: what to say now, and everything that stands beside it.

What is said follows the engine's step, but for three things an agent may put first: the opening while nothing was
told, the danger signs, and a question of the agent's own choice among those that may be asked.
"""

from collections.abc import Set

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.check_pages.handing_over import may_hand_over
from triage.check_pages.presenters.answers import answer_words, question_words
from triage.check_pages.presenters.firm_words import firm_words
from triage.check_pages.presenters.problems import problem_sentences
from triage.check_pages.view_models import Choice
from triage.desk.call.caller import CHOICES
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.alarm import alarm_of
from triage.desk.call.presenters.asking import danger, opening, question, wants_danger
from triage.desk.call.presenters.belief import askable, leanings, would_change
from triage.desk.call.presenters.summary import summary_of
from triage.desk.call.presenters.telling import advice, make_safe, not_this
from triage.desk.call.view_models import CallerRow, CallPage, Say, Told
from triage.engine import SCREEN, Emergency, OutOfScope, Question, Result


def call_page(call: Call) -> CallPage:
    answers = call.check_request.answers
    found = askable(call) if isinstance(call.check_request.step, Question | Result) else []
    say = _say(call, {worth.observation for worth in found})
    last = list(answers)[-1] if answers else ""
    query = call.links.here().partition("?")[2]
    over = say.kind in ("act", "advice", "exit") and all(line.read for line in say.lines)
    return CallPage(
        say=say,
        alarm=alarm_of(call),
        story=_story(call),
        leanings=leanings(call),
        would_change=would_change(call, found) if answers else [],
        caller=_caller_rows(call),
        problems=[*_strange(call), *problem_sentences(call.check_request.texts, call.check_request.problems)],
        summary=summary_of(call, call.check_request.check.belief),
        over=over,
        good=query,
        firm_says=firm_words(call.firm),
        hand_over_href=f"{reverse('desk-call-hand-over')}?{query}" if _may_be_taken(call, say, over) else "",
        earlier_href=f"{reverse('desk-call-earlier')}?{query}",
        undo_href=call.links.without(last) if last else "",
        danger_href=call.links.without(SCREEN, ask=SCREEN),
        phone_href=call.phone_href,
        qr_href=f"{reverse('desk-call-phone-code')}?{query}",
        words_href=f"{reverse('desk-call-words')}?region={call.check_request.region.id}",
        call_id=call.line.id,
    )


def _may_be_taken(call: Call, say: Say, over: bool) -> bool:
    """Whether a visit is the next thing and all that must be heard before was read; what is asked from memory after
    danger need not be."""
    from_memory = isinstance(call.check_request.step, Emergency) and say.kind == "question"
    return (over or from_memory) and may_hand_over(call.check_request)


def _say(call: Call, names: Set[str]) -> Say:
    step, wish = call.check_request.step, call.line.ask
    if isinstance(step, Emergency):
        return make_safe(call, step)
    if wants_danger(call) and SCREEN not in call.check_request.answers:
        return danger(call)
    if wish in names:
        return question(call, wish)
    match step:
        case OutOfScope():
            return not_this(call, step)
        case Result():
            return advice(call, step)
        case Question() if not call.check_request.answers:
            return opening(call)
        case Question(observation=name) if name == SCREEN:
            return danger(call)
    count = _("Question %(number)s, at most %(most)s") % {"number": step.number, "most": step.max_questions}
    return question(call, step.observation, count)


def _story(call: Call) -> list[Told]:
    """Every answer that holds; changing one asks it again, everything else kept."""
    texts, pack = call.check_request.texts, call.check_request.pack
    return [
        Told(
            question=question_words(texts, name),
            answer=answer_words(texts, name, answer),
            change_href=call.links.without(name, ask=name),
            grave=name in pack.observations and answer in pack.observations[name].flags,
        )
        for name, answer in call.check_request.answers.items()
    ]


def _caller_rows(call: Call) -> list[CallerRow]:
    board = call.check_request.region.words["board"]
    asks = {
        "who": _("Caller"),
        "oven": _("Oven"),
        "board": board[:1].upper() + board[1:],
        "alone": _("There"),
        "home": _("At risk"),
    }
    return [
        CallerRow(
            about=about,
            ask=asks[about],
            choices=[Choice(str(words), call.links.about_caller(about, choice)) for choice, words in choices.items()],
            chosen=str(choices.get(call.line.caller.get(about, ""), "")),
        )
        for about, choices in CHOICES.items()
    ]


def _strange(call: Call) -> list[str]:
    words = {"names": ", ".join(name[:40] for name in call.line.strange[:4])}
    told = _("Part of the address about the caller could not be read and was left out: %(names)s. Ask it again.")
    return [told % words] if call.line.strange else []
