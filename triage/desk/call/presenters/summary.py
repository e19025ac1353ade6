"""The call in plain sentences, for the firm's own system. What the caller said is told as said, never as proved."""

from collections.abc import Iterator

from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_label, question_label
from triage.check_pages.presenters.causes import short_chance
from triage.check_pages.presenters.emergency import emergency_page
from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.check_pages.presenters.result import result_page
from triage.desk.call.caller import CALLER_CHOICES
from triage.desk.call.open_call import Call
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Belief, Emergency, OutOfScope, Result
from triage.engine.pack import OPENING
from triage.jobsheet.sentences import sentence


def summary_of(call: Call, belief: Belief) -> str:
    """A few sentences and the link. The page puts the reference, the notes and the length of the call around them."""
    return " ".join([*_story(call), *_outcome(call, belief), *_caller(call), _link(call)])


def _story(call: Call) -> Iterator[str]:
    texts, answers = call.check_request.texts, call.check_request.answers
    if not answers:
        yield _("Electric oven: nothing recorded yet.")
        return
    opening = answers.get(OPENING)
    problem = answer_label(texts, OPENING, opening) if opening else _("not stated")
    yield _("Electric oven, reported problem: %(problem)s.") % {"problem": problem}
    if answers.get(SCREEN) == NONE_OF_THESE:
        yield _("Danger signs were read out: none reported.")
    others = [
        f"{question_label(texts, name)}: {answer_label(texts, name, answer)}"
        for name, answer in answers.items()
        if name not in (OPENING, SCREEN) and answer != CANT_TELL
    ]
    if others:
        yield _("Answers: %(answers)s.") % {"answers": "; ".join(others)}


def _outcome(call: Call, belief: Belief) -> Iterator[str]:
    check_request = call.check_request
    match check_request.step:
        case Emergency() as step:
            yield _("DANGER reported, safety instructions given: %(heading)s.") % {
                "heading": emergency_page(check_request, step).heading
            }
        case Result() as step:
            page = result_page(check_request, step)
            yield _("Advice: %(heading)s.") % {"heading": sentence("result_heading", page=page)}
            yield from [sentence("leave_off", page=page)] if page.leave_off else []
        case OutOfScope(reason=reason):
            yield _("Not for this check: %(heading)s.") % {"heading": out_of_scope_page(check_request, reason).heading}
            return
        case _:
            yield _("Questions not finished.")
    if check_request.answers:
        first = belief.ranking[0]
        params = {"chance": short_chance(belief.faults[first]), "cause": check_request.texts.faults[first].name}
        yield _("Likeliest: %(cause)s (%(chance)s ovens that answer like this).") % params


def _caller(call: Call) -> Iterator[str]:
    details = [str(CALLER_CHOICES[topic][choice]) for topic, choice in call.state.caller.items() if topic != "board"]
    if "board" in call.state.caller:
        params = {
            "board": call.check_request.region.terms["board"],
            "how": CALLER_CHOICES["board"][call.state.caller["board"]],
        }
        details.append(_("%(board)s %(how)s") % params)
    if details:
        yield _("The caller: %(details)s.") % {"details": ", ".join(details)}


def _link(call: Call) -> str:
    return _("This check: %(link)s") % {"link": call.phone_href}
