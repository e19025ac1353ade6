"""Lines to be read word for word, each ticked as read before the call goes on.

A line that sends somebody to the board is held back until the agent knows that they can get there safely; where they
can't, it is left out and one sentence that keeps them away stands in its place.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.translation import gettext as _

from triage.check_pages.presenters.isolation import Instruction, instruction_notes, instruction_text
from triage.desk.call.caller import board_unknown, may_reach_board, sends_to_board
from triage.desk.call.open_call import Call
from triage.desk.call.speech import line_id, seconds_to_say, split_for_speech
from triage.desk.call.view_models import ScriptLine


@dataclass(frozen=True)
class Script:
    """`lines` end where one waits for what the caller says of the board; `ask_board` when that is what comes next,
    `done` when every line was read."""

    lines: list[ScriptLine]
    left_out: list[str]
    ask_board: bool
    done: bool


def build_script(call: Call, texts: Iterable[str]) -> Script:
    region, caller = call.check_request.region, call.state.caller
    spoken: list[str] = []
    left_out: list[str] = []
    waits = -1
    for text in dict.fromkeys(breath for whole in texts for breath in split_for_speech(whole)):
        if not sends_to_board(region, text) or may_reach_board(caller):
            spoken.append(text)
        elif board_unknown(caller):
            waits = len(spoken) if waits < 0 else waits
            spoken.append(text)
        else:
            spoken += [] if left_out else [keep_away_line(call)]
            left_out.append(text)
    return _script(call, spoken, left_out, waits)


def _script(call: Call, spoken: list[str], left_out: list[str], waits: int) -> Script:
    read = set(call.state.read_lines)
    shown = spoken if waits < 0 else spoken[:waits]
    turn = next((number for number, text in enumerate(shown) if line_id(text) not in read), -1)
    lines = [
        ScriptLine(
            text=text,
            seconds=seconds_to_say(text),
            read=line_id(text) in read,
            href=call.links.with_read(line_id(text)) if number == turn else "",
        )
        for number, text in enumerate(shown)
    ]
    return Script(lines, left_out, ask_board=turn < 0 <= waits, done=turn < 0 and waits < 0)


def keep_away_line(call: Call) -> str:
    params = {"board": call.check_request.region.terms["board"]}
    return _("Do not go to the %(board)s in the dark, over water or up a ladder. Stay away from it.") % params


def board_question(call: Call) -> str:
    params = {"board": call.check_request.region.terms["board"]}
    return _("Is the way to the %(board)s lit and dry, and can you reach it with both feet on the floor?") % params


def spoken_lines(instructions: Iterable[Instruction]) -> list[str]:
    """Each instruction as it is said: what to do, its steps, and what to know."""
    found = []
    for instruction in instructions:
        found += [instruction_text(instruction), *instruction.parts, *instruction_notes(instruction)]
    return found
