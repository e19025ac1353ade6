"""What to say when something is to be done: danger, the advice, or that this check is not for it.

The words are those of the householder's pages, in the same order, so that both get the same advice; only what points
to a place on that page is left out.
"""

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from triage.check_pages.presenters.emergency import EmergencyPage, emergency_page
from triage.check_pages.presenters.flags import FlagNote
from triage.check_pages.presenters.out_of_scope import out_of_scope_page
from triage.check_pages.presenters.result import ResultPage, result_page
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.questions import board_prompt, question
from triage.desk.call.presenters.script import Script, build_script, spoken_lines
from triage.desk.call.view_models import Prompt, PromptKind
from triage.engine import Emergency, Level, OutOfScope, Result
from triage.jobsheet.sentences import sentence

MAX_TITLES = 3  # checks named aloud; a person who listens keeps no more in mind, and the phone shows them all


def emergency(call: Call, step: Emergency) -> Prompt:
    """The lines that keep people safe; once all are read, what may still be asked from memory."""
    page = emergency_page(call.check_request, step)
    script = build_script(call, _danger_lines(call, page, step))
    if script.ask_board:
        return board_prompt(call, "fuse-box", before=script)
    if script.done and step.follow_up_question and not page.evacuate:
        return question(call, step.follow_up_question)
    return _prompt("act", page.heading, page.hazard, script, "")


def _danger_lines(call: Call, page: EmergencyPage, step: Emergency) -> list[str]:
    first, *more = spoken_lines(page.steps)
    lines = [*_pass_on(call), first, *_who_is_there(call), *_number_line(call, page, step), *more]
    lines += _signs_to_tell(page)
    lines += page.prohibitions
    for note in page.other_flags:
        lines += _note_lines(note)
    return [*lines, *(sentence("other_contact", contact=contact) for contact in page.other_contacts), page.next_step]


def _note_lines(note: FlagNote) -> list[str]:
    return [note.heading + ".", *spoken_lines(note.steps), *note.prohibitions]


def _signs_to_tell(page: EmergencyPage) -> list[str]:
    """One sentence for each sign, so that many of them can be said in more than one breath."""
    first, *more = page.mention or [""]
    sentences = [_("Say this too when you call: %(sign)s.") % {"sign": first}] if first else []
    return (
        [" ".join([*sentences, *(_("And say this: %(sign)s.") % {"sign": sign} for sign in more)])] if sentences else []
    )


def _pass_on(call: Call) -> list[str]:
    """For a caller who is not with the oven, or calls for somebody and did not say whether they are."""
    caller = call.state.caller
    if caller.get("oven", "no" if caller.get("who") == "other" else "yes") != "no":
        return []
    return [_("Is somebody with the oven now? Tell them each line as I say it, and do not go back in yourself.")]


def _who_is_there(call: Call) -> list[str]:
    lines = {
        "child": _("Keep the child by you, well away from the oven."),
        "frail": _("See to the person who needs help first, and keep them well away from the oven."),
    }
    home = call.state.caller.get("home", "")
    return [lines[home]] if home in lines else []


def _number_line(call: Call, page: EmergencyPage, step: Emergency) -> list[str]:
    """In an emergency: who calls the first of the numbers, which depends on who is there."""
    if not page.phone_numbers or not any(flag.level is Level.EMERGENCY for flag in step.flags):
        return []
    number = {"number": page.phone_numbers[0].number}
    alone = call.state.caller.get("alone")
    if alone == "alone":
        return [_("Once you are safe, hang up and call %(number)s. Call us back when they are on their way.") % number]
    if alone == "company":
        return [_("Let the person with you call %(number)s from a safe place. You stay on the line with me.") % number]
    return [_("Once you are safe, call %(number)s, or let somebody with you call.") % number]


def result(call: Call, step: Result) -> Prompt:
    page = result_page(call.check_request, step)
    script = build_script(call, _advice_lines(call, page))
    if script.ask_board:
        return board_prompt(call, "fuse-box", before=script)
    return _prompt("advice", *_verdict(page), script, page.part)


def _advice_lines(call: Call, page: ResultPage) -> list[str]:
    lines = [". ".join(_verdict(page)), *_for_another(call, page)]
    lines += [sentence("leave_off", page=page)] if page.leave_off else []
    lines += _who_is_there(call) if page.leave_off or page.cautions else []
    for note in page.cautions:
        lines += _note_lines(note)
    lines += _for_a_tenant(call, page)
    lines += [sentence("action", action=each, aloud=True) for each in page.actions if each.kind != "checks"]
    return [*lines, *_checks_to_send(page)]


def _verdict(page: ResultPage) -> tuple[str, str]:
    return sentence("result_heading", page=page), sentence("result_meaning", page=page)


def _for_another(call: Call, page: ResultPage) -> list[str]:
    """Before the first safety line, because whoever is with the oven must hear that one too."""
    if call.state.caller.get("who") != "other" or page.solved:
        return []
    return [
        _(
            "You call for somebody else. The person with the oven must hear the safety lines."
            " Tell them each one just as I say it."
        )
    ]


def _for_a_tenant(call: Call, page: ResultPage) -> list[str]:
    """After the safety lines and before anybody is told to book."""
    if call.state.caller.get("who") != "tenant" or page.solved:
        return []
    return [
        _(
            "You rent the home. Unless the oven is your own, tell the owner or the landlord now,"
            " and agree no repair yourself."
        )
    ]


def _checks_to_send(page: ResultPage) -> list[str]:
    if not page.tasks:
        return []
    named, left = page.tasks[:MAX_TITLES], len(page.tasks) - MAX_TITLES
    titles = {"titles": "; ".join(task.title for task in named)}
    line = _("I can send these checks to your phone, with how to do them safely: %(titles)s.") % titles
    if left <= 0:
        return [line]
    more = ngettext("There is %(n)s more on your phone.", "There are %(n)s more on your phone.", left)
    return [f"{line} {more % {'n': left}}"]


def out_of_scope(call: Call, step: OutOfScope) -> Prompt:
    page = out_of_scope_page(call.check_request, step.reason)
    script = build_script(call, [page.heading + ".", *page.lines, page.contact + "."])
    if script.ask_board:
        return board_prompt(call, "fuse-box", before=script)
    return _prompt("exit", page.heading, "", script, "")


def _prompt(kind: PromptKind, heading: str, note: str, script: Script, part: str) -> Prompt:
    turn = next((line for line in script.lines if line.href), None)
    return Prompt(
        kind=kind,
        heading=heading,
        text="",
        seconds=turn.seconds if turn else 0,
        simpler="",
        note=note,
        lines=script.lines,
        left_out=script.left_out,
        keys=[],
        part=part,
        count="",
    )
