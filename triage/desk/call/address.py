"""What the address of a call says beside the trail: whose call it is, what is known of the caller, what was read out.

These stand under names of their own (`call-…`), so that the trail stays what the householder's pages understand, and
a link sent to the caller's telephone carries the trail alone. Nothing here reaches the engine.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from django.urls import reverse

from triage.desk.call.caller import CALLER_CHOICES
from triage.query import REGION, Pairs, ParsedQuery, format_query

PREFIX = "call-"
ID, READ, ASK, EARLIER = f"{PREFIX}id", f"{PREFIX}read", f"{PREFIX}ask", f"{PREFIX}earlier"
MAX_LINE_IDS = 120
MAX_LINE_IDS_PER_VALUE = 25  # a longer value would be cut when the address is read

_ID = re.compile(r"[A-Z]{5}")
_LINE_ID = re.compile(r"[0-9a-f]{6}")


@dataclass(frozen=True, slots=True)
class CallState:
    """The call as its address states it: `read` are the marks of the lines read aloud, `ask` a question wished for;
    `earlier` the reference of an earlier job sheet as it was typed; `strange` are names or values that mean nothing."""

    id: str
    caller: Mapping[str, str]
    read_lines: tuple[str, ...]
    question: str
    previous_reference: str
    unknown_params: tuple[str, ...]


def split_query(query: ParsedQuery) -> tuple[CallState, ParsedQuery]:
    """The call, and the address without it."""
    calls = [(name, value) for name, value in query.pairs if name.startswith(PREFIX)]
    check_pairs: Pairs = tuple(pair for pair in query.pairs if not pair[0].startswith(PREFIX))
    caller, unknown, read, call_id, ask, earlier = {}, [], [], "", "", ""
    for name, value in calls:
        topic = name.removeprefix(PREFIX)
        if name == READ:
            read += [mark for mark in value.split(",") if _LINE_ID.fullmatch(mark)]
        elif name == ASK:
            ask = value
        elif name == EARLIER:
            earlier = value
        elif name == ID and _ID.fullmatch(value):
            call_id = value
        elif topic in CALLER_CHOICES and value in CALLER_CHOICES[topic]:
            caller[topic] = value
        else:
            unknown.append(name)
    line_ids = tuple(dict.fromkeys(read))[:MAX_LINE_IDS]
    state = CallState(call_id, caller, line_ids, ask, earlier, tuple(dict.fromkeys(unknown)))
    return state, ParsedQuery(check_pairs, query.region, query.truncated)


@dataclass(frozen=True, slots=True)
class CallLinks:
    """Addresses of the call page that keep everything good of this call."""

    region: str
    answers: Mapping[str, str]
    state: CallState

    def with_answers(self, more: Mapping[str, str], read: Iterable[str] = ()) -> str:
        return self._href({**self.answers, **more}, self.state.caller, read)

    def without(self, *left: str, ask: str = "") -> str:
        kept = {name: answer for name, answer in self.answers.items() if name not in left}
        return self._href(kept, self.state.caller, (), ask)

    def with_read(self, *marks: str, ask: str = "") -> str:
        return self._href(self.answers, self.state.caller, marks, ask or self.state.question)

    def with_caller(self, about: str, choice: str) -> str:
        return self._href(self.answers, {**self.state.caller, about: choice}, (), self.state.question)

    def with_question(self, observation: str) -> str:
        return self._href(self.answers, self.state.caller, (), observation)

    def starting_with(self, answers: Mapping[str, str], region: str) -> str:
        """The call with these answers beside its own, and where the oven of those stands."""
        return replace(self, region=region).with_answers({**answers, **self.answers})

    def current(self) -> str:
        return self._href(self.answers, self.state.caller)

    def current_query(self) -> str:
        return self.current().partition("?")[2]

    def current_params(self) -> list[tuple[str, str]]:
        """What a form has to carry so that it leads back to this call."""
        return self._params(self.answers, self.state.caller)

    def _href(
        self, answers: Mapping[str, str], caller: Mapping[str, str], read: Iterable[str] = (), ask: str = ""
    ) -> str:
        return f"{reverse('desk-call')}?{format_query(self._params(answers, caller, read, ask), safe=',')}"

    def _params(
        self, answers: Mapping[str, str], caller: Mapping[str, str], read: Iterable[str] = (), ask: str = ""
    ) -> list[tuple[str, str]]:
        about = [(f"{PREFIX}{name}", choice) for name, choice in caller.items()]
        ids = list(dict.fromkeys([*self.state.read_lines, *read]))
        together = [ids[at : at + MAX_LINE_IDS_PER_VALUE] for at in range(0, len(ids), MAX_LINE_IDS_PER_VALUE)]
        read_lines = [(READ, ",".join(some)) for some in together]
        pairs = [(REGION, self.region), *answers.items(), (ID, self.state.id), *about, *read_lines, (ASK, ask)]
        return [(name, value) for name, value in pairs if value]
