"""What to say when something is to be found out: the opening, the danger signs, one question, or about the caller."""

from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_words
from triage.desk.call.caller import board_unknown, may_reach_board, names_board, with_the_oven
from triage.desk.call.open_call import Call
from triage.desk.call.presenters.read_out import ReadOut, board_question, read_out
from triage.desk.call.speech import mark_of, seconds_to_say
from triage.desk.call.view_models import Key, Line, Say
from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN
from triage.engine.enums import Method
from triage.engine.pack import OPENING, Observation
from triage.knowledge.texts import QuestionText, RoundText

KEYS = "123456789.,"
CANT_TELL_KEY = "0"


def opening(call: Call) -> Say:
    """The first thing said. Nothing is picked from a list: what they say goes into the box."""
    text = call.check_request.texts.questions[OPENING]
    options = call.check_request.pack.observations[OPENING].options
    return Say(
        kind="open",
        heading=text.short,
        text=text.say,
        seconds=seconds_to_say(text.say),
        again=text.again,
        note=_("Press / and type what they say, all of it. Pick what fits from the list; nothing else is recorded."),
        lines=[],
        left_out=[],
        keys=[
            *(Key("", text.options[option], call.links.with_answers({OPENING: option})) for option in options),
            _cant_tell(call, OPENING),
        ],
        part="front",
        count="",
    )


def danger(call: Call) -> Say:
    """The danger signs, a round at a time; the last one read with nothing found records "none of these".

    Asked for again, they are read again from the first; otherwise from the first that was not read.
    """
    rounds = call.check_request.texts.calls.rounds
    at = _round(call, rounds)
    return Say(
        kind="danger",
        heading=call.check_request.texts.start.danger.heading,
        text="",
        seconds=seconds_to_say(rounds[at].say),
        again=_("Is any of that so, now or at any time since it began?"),
        note=_("Tick it as read only if none of it is so. If a sign shows up later, press D at once."),
        lines=[Line(spoken.say, seconds_to_say(spoken.say), read=True, href="") for spoken in rounds[:at]]
        + [_round_line(call, rounds, at)],
        left_out=[],
        keys=_signs(call, rounds[at]),
        part="",
        count=_("%(n)s of %(all)s") % {"n": at + 1, "all": len(rounds)},
    )


def _round(call: Call, rounds: tuple[RoundText, ...]) -> int:
    if wants_danger(call):
        number = call.line.ask.removeprefix(f"{SCREEN}-")
        return min(int(number), len(rounds) - 1) if number.isdecimal() and len(number) == 1 else 0
    return next((at for at, spoken in enumerate(rounds) if mark_of(spoken.say) not in call.line.read), 0)


def wants_danger(call: Call) -> bool:
    return call.line.ask.partition("-")[0] == SCREEN


def _round_line(call: Call, rounds: tuple[RoundText, ...], at: int) -> Line:
    """The round whose turn it is. Ticking it says that it was read and that none of it is so."""
    say, read = rounds[at].say, {*call.line.read, mark_of(rounds[at].say)}
    if all(mark_of(spoken.say) in read for spoken in rounds) and (at == len(rounds) - 1 or not wants_danger(call)):
        href = call.links.with_answers({SCREEN: NONE_OF_THESE}, [mark_of(say)])
    else:
        href = call.links.having_read(mark_of(say), ask=f"{SCREEN}-{at + 1}" if wants_danger(call) else "")
    return Line(say, seconds_to_say(say), read=False, href=href)


def _signs(call: Call, spoken: RoundText) -> list[Key]:
    flags, texts = call.check_request.pack.red_flags, call.check_request.texts.flags
    signs = [(texts[name].sign, sign) for name in spoken.signs for sign in flags[name].signs]
    return [
        Key(key, words, call.links.with_answers({observation: option}), grave=True)
        for key, (words, (observation, option)) in zip(KEYS, signs, strict=False)
    ]


def question(call: Call, name: str, count: str = "") -> Say:
    """One question: first the line that keeps the caller safe, then the words, then the answers by key."""
    asked, text = call.check_request.pack.observations[name], call.check_request.texts.questions[name]
    needs_board = asked.method != Method.MEMORY and names_board(call.check_request.region, f"{text.look} {text.say}")
    if needs_board and board_unknown(call.line.caller):
        return about_board(call, asked.picture, count)
    goes_to_look = asked.method != Method.MEMORY and with_the_oven(call.line.caller)
    goes_to_look = goes_to_look and (not needs_board or may_reach_board(call.line.caller))
    first = read_out(call, [_safe_words(asked, text, goes_to_look)])
    return Say(
        kind="question",
        heading=text.short,
        text=text.say,
        seconds=seconds_to_say(text.say),
        again=text.again,
        note=text.why,
        lines=first.lines,
        left_out=first.left_out,
        keys=_answers(call, asked, text) if first.done else [],
        part=asked.picture,
        count=count,
    )


def _safe_words(asked: Observation, text: QuestionText, goes_to_look: bool) -> str:
    """What is read before the question: how to look safely, or that nobody is to look at all."""
    if goes_to_look:
        return text.look
    if asked.method == Method.MEMORY:
        return _("Answer from memory, please. Do not switch anything on and do not touch it to find out.")
    return _("Please do not go and look. Tell me only what you remember, or what you were told.")


def _answers(call: Call, asked: Observation, text: QuestionText) -> list[Key]:
    told = [
        Key(key, text.options[option], call.links.with_answers({asked.id: option}), option in asked.flags)
        for key, option in zip(KEYS, asked.options, strict=False)
    ]
    return [*told, _cant_tell(call, asked.id)]


def _cant_tell(call: Call, name: str) -> Key:
    words = answer_words(call.check_request.texts, name, CANT_TELL)
    return Key(CANT_TELL_KEY, words, call.links.with_answers({name: CANT_TELL}))


def about_board(call: Call, part: str, count: str = "", before: ReadOut | None = None) -> Say:
    """Asked before anybody is sent to the board, to look or to switch."""
    say = board_question(call)
    yes, no = (call.links.about_caller("board", choice) for choice in ("yes", "no"))
    return Say(
        kind="caller",
        heading=_("Before they go anywhere"),
        text=say,
        seconds=seconds_to_say(say),
        again=_("No dark, no water, no ladder: is it safe to reach?"),
        note=_("If they are not sure, it is no. They are then asked from memory, and sent nowhere."),
        lines=before.lines if before else [],
        left_out=[],
        keys=[Key("1", _("Yes, it is safe to reach"), yes), Key(CANT_TELL_KEY, _("No, or not sure"), no)],
        part=part,
        count=count,
    )
