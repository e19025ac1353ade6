"""The whole call page at one moment: what to say now, and everything that stands beside it.

What is said follows the engine's step, but for three things an agent may put first: the opening while nothing was
told, the danger signs, and a question of the agent's own choice among those that may be asked.
"""

from collections.abc import Set

from django.urls import reverse
from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_label, question_label
from triage.check_pages.presenters.firm_words import firm_words
from triage.check_pages.presenters.problems import problem_notes
from triage.check_pages.view_models import Choice
from triage.desk.call.caller import CALLER_CHOICES
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.advice_script import emergency, out_of_scope, result
from triage.desk.call.presenters.alarm import alarm_of
from triage.desk.call.presenters.differential import allowed_questions, differential, useful_questions
from triage.desk.call.presenters.questions import danger_signs, opening, question, wants_danger_signs
from triage.desk.call.presenters.summary import summary_of
from triage.desk.call.view_models import CallerRow, CallPage, Prompt, StoryItem
from triage.engine import SCREEN, Emergency, OutOfScope, Question, Result
from triage.jobsheet.booking_rule import booking_refusal


def call_page(call: Call) -> CallPage:
    answers = call.check_request.answers
    found = allowed_questions(call) if isinstance(call.check_request.step, Question | Result) else []
    say = _prompt(call, {worth.observation for worth in found})
    last = list(answers)[-1] if answers else ""
    query = call.links.current_query()
    over = say.kind in ("act", "advice", "exit") and all(line.read for line in say.lines)
    return CallPage(
        prompt=say,
        alarm=alarm_of(call),
        story=_story(call),
        candidates=differential(call),
        useful_questions=useful_questions(call, found) if answers else [],
        caller=_caller_rows(call),
        unknown_params=", ".join(name[:40] for name in call.state.unknown_params[:4]),
        problems=problem_notes(call.check_request.texts, call.check_request.problems),
        summary=summary_of(call, call.check_request.check.belief),
        finished=over,
        query=query,
        firm_details=firm_words(call.firm),
        booking_href=f"{reverse('desk-call-booking')}?{query}" if _may_book(call, say, over) else "",
        previous_sheet_href=f"{reverse('desk-call-previous-sheet')}?{query}",
        undo_href=call.links.without(last) if last else "",
        danger_href=call.links.without(SCREEN, ask=SCREEN),
        phone_href=call.phone_href,
        qr_href=f"{reverse('desk-call-phone-code')}?{query}",
        phrase_index_href=f"{reverse('desk-call-phrases')}?region={call.check_request.region.id}",
        call_id=call.state.id,
    )


def _may_book(call: Call, say: Prompt, over: bool) -> bool:
    """Whether a visit is the next thing and all that must be heard before was read; what is asked from memory after
    danger need not be."""
    from_memory = isinstance(call.check_request.step, Emergency) and say.kind == "question"
    return (over or from_memory) and booking_refusal(call.check_request.check) is None


def _prompt(call: Call, names: Set[str]) -> Prompt:
    step, wish = call.check_request.step, call.state.question
    if isinstance(step, Emergency):
        return emergency(call, step)
    if wants_danger_signs(call) and SCREEN not in call.check_request.answers:
        return danger_signs(call)
    if wish in names:
        return question(call, wish)
    match step:
        case OutOfScope():
            return out_of_scope(call, step)
        case Result():
            return result(call, step)
        case Question() if not call.check_request.answers:
            return opening(call)
        case Question(observation=name) if name == SCREEN:
            return danger_signs(call)
    count = _("Question %(number)s, at most %(most)s") % {"number": step.number, "most": step.max_questions}
    return question(call, step.observation, count)


def _story(call: Call) -> list[StoryItem]:
    """Every answer that holds; changing one asks it again, everything else kept."""
    texts, pack = call.check_request.texts, call.check_request.pack
    return [
        StoryItem(
            question=question_label(texts, name),
            answer=answer_label(texts, name, answer),
            change_href=call.links.without(name, ask=name),
            urgent=name in pack.observations and answer in pack.observations[name].flags,
        )
        for name, answer in call.check_request.answers.items()
    ]


def _caller_rows(call: Call) -> list[CallerRow]:
    board = call.check_request.region.terms["board"]
    labels = {
        "who": _("Role"),
        "oven": _("Oven"),
        "board": board[:1].upper() + board[1:],
        "alone": _("Company"),
        "home": _("At risk"),
    }
    return [
        CallerRow(
            topic=topic,
            label=labels[topic],
            choices=[Choice(str(label), call.links.with_caller(topic, choice)) for choice, label in choices.items()],
            chosen=str(choices.get(call.state.caller.get(topic, ""), "")),
        )
        for topic, choices in CALLER_CHOICES.items()
    ]
