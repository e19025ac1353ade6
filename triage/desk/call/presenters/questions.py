"""What to say when something is to be found out: the opening, the danger signs, one question, or about the caller."""

from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_label
from triage.desk.call.caller import board_unknown, is_with_oven, may_reach_board, mentions_board
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.script import Script, board_question, build_script
from triage.desk.call.speech import line_id, seconds_to_say
from triage.desk.call.view_models import KeyChoice, Prompt, ScriptLine
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN
from triage.engine.enums import Method
from triage.engine.pack import OPENING, Observation
from triage.knowledge.texts import QuestionText, RoundText

OPTION_KEYS = "123456789.,"
CANT_TELL_KEY = "0"


def opening(call: Call) -> Prompt:
    """The first thing said. Nothing is picked from a list: what they say goes into the box."""
    text = call.check_request.texts.questions[OPENING]
    options = call.check_request.pack.observations[OPENING].options
    return Prompt(
        kind="open",
        heading=text.short,
        text=text.say,
        seconds=seconds_to_say(text.say),
        simpler=text.again,
        note=_("Press / and type everything they say. Pick what fits from the suggestions; nothing else is recorded."),
        lines=[],
        left_out=[],
        keys=[
            *(KeyChoice("", text.options[option], call.links.with_answers({OPENING: option})) for option in options),
            _cant_tell_key(call, OPENING),
        ],
        part="front",
        count="",
    )


def danger_signs(call: Call) -> Prompt:
    """The danger signs, a round at a time; the last one read with nothing found records "none of these".

    Asked for again, they are read again from the first; otherwise from the first that was not read.
    """
    rounds = call.check_request.texts.calls.rounds
    at = _round(call, rounds)
    return Prompt(
        kind="danger",
        heading=call.check_request.texts.start.danger.heading,
        text="",
        seconds=seconds_to_say(rounds[at].say),
        simpler=_("Does any of that apply, now or at any time since it began?"),
        note=_("Mark it as read only if none of it applies. If a sign shows up later, press D at once."),
        lines=[ScriptLine(spoken.say, seconds_to_say(spoken.say), read=True, href="") for spoken in rounds[:at]]
        + [_round_line(call, rounds, at)],
        left_out=[],
        keys=_signs(call, rounds[at]),
        part="",
        count=_("%(n)s of %(all)s") % {"n": at + 1, "all": len(rounds)},
    )


def _round(call: Call, rounds: tuple[RoundText, ...]) -> int:
    if wants_danger_signs(call):
        number = call.state.question.removeprefix(f"{SCREEN}-")
        return min(int(number), len(rounds) - 1) if number.isdecimal() and len(number) == 1 else 0
    return next((at for at, spoken in enumerate(rounds) if line_id(spoken.say) not in call.state.read_lines), 0)


def wants_danger_signs(call: Call) -> bool:
    return call.state.question.partition("-")[0] == SCREEN


def _round_line(call: Call, rounds: tuple[RoundText, ...], at: int) -> ScriptLine:
    """The round whose turn it is. Ticking it says that it was read and that none of it is so."""
    say, read = rounds[at].say, {*call.state.read_lines, line_id(rounds[at].say)}
    if all(line_id(spoken.say) in read for spoken in rounds) and (
        at == len(rounds) - 1 or not wants_danger_signs(call)
    ):
        href = call.links.with_answers({SCREEN: NONE_OF_THESE}, [line_id(say)])
    else:
        href = call.links.with_read(line_id(say), ask=f"{SCREEN}-{at + 1}" if wants_danger_signs(call) else "")
    return ScriptLine(say, seconds_to_say(say), read=False, href=href)


def _signs(call: Call, spoken: RoundText) -> list[KeyChoice]:
    flags, texts = call.check_request.pack.red_flags, call.check_request.texts.flags
    signs = [(texts[name].sign, sign) for name in spoken.signs for sign in flags[name].signs]
    return [
        KeyChoice(key, words, call.links.with_answers({observation: option}), urgent=True)
        for key, (words, (observation, option)) in zip(OPTION_KEYS, signs, strict=False)
    ]


def question(call: Call, name: str, count: str = "") -> Prompt:
    """One question: first the line that keeps the caller safe, then the words, then the answers by key."""
    asked, text = call.check_request.pack.observations[name], call.check_request.texts.questions[name]
    needs_board = asked.method != Method.MEMORY and mentions_board(call.check_request.region, f"{text.look} {text.say}")
    if needs_board and board_unknown(call.state.caller):
        return board_prompt(call, asked.picture, count)
    goes_to_look = asked.method != Method.MEMORY and is_with_oven(call.state.caller)
    goes_to_look = goes_to_look and (not needs_board or may_reach_board(call.state.caller))
    first = build_script(call, [_safety_line(asked, text, goes_to_look)])
    return Prompt(
        kind="question",
        heading=text.short,
        text=text.say,
        seconds=seconds_to_say(text.say),
        simpler=text.again,
        note=text.why,
        lines=first.lines,
        left_out=first.left_out,
        keys=_answers(call, asked, text) if first.done else [],
        part=asked.picture,
        count=count,
    )


def _safety_line(asked: Observation, text: QuestionText, goes_to_look: bool) -> str:
    """What is read before the question: how to look safely, or that nobody is to look at all."""
    if goes_to_look:
        return text.look
    if asked.method == Method.MEMORY:
        return _("Answer from memory, please. Do not switch anything on and do not touch it to find out.")
    return _("Please do not go and look. Tell me only what you remember, or what you were told.")


def _answers(call: Call, asked: Observation, text: QuestionText) -> list[KeyChoice]:
    keys = [
        KeyChoice(key, text.options[option], call.links.with_answers({asked.id: option}), option in asked.flags)
        for key, option in zip(OPTION_KEYS, asked.options, strict=False)
    ]
    return [*keys, _cant_tell_key(call, asked.id)]


def _cant_tell_key(call: Call, name: str) -> KeyChoice:
    label = answer_label(call.check_request.texts, name, CANT_TELL)
    return KeyChoice(CANT_TELL_KEY, label, call.links.with_answers({name: CANT_TELL}))


def board_prompt(call: Call, part: str, count: str = "", before: Script | None = None) -> Prompt:
    """Asked before anybody is sent to the board, to look or to switch."""
    say = board_question(call)
    yes, no = (call.links.with_caller("board", choice) for choice in ("yes", "no"))
    return Prompt(
        kind="caller",
        heading=_("Before they go anywhere"),
        text=say,
        seconds=seconds_to_say(say),
        simpler=_("No dark, no water, no ladder: is it safe to reach?"),
        note=_("If they are not sure, it is no. They are then asked from memory, and sent nowhere."),
        lines=before.lines if before else [],
        left_out=[],
        keys=[KeyChoice("1", _("Yes, it is safe to reach"), yes), KeyChoice(CANT_TELL_KEY, _("No, or not sure"), no)],
        part=part,
        count=count,
    )
