"""What the address of a call says beside the trail: whose call it is, what is known of the caller, what was read out.

These stand under names of their own (`call-…`), so that the trail stays what the householder's pages understand, and
a link sent to the caller's telephone carries the trail alone. Nothing here reaches the engine.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from urllib.parse import quote

from django.urls import reverse

from triage.check_pages.query import REGION, Pairs, ParsedQuery
from triage.desk.call.caller import CHOICES

PREFIX = "call-"
ID, READ, ASK, EARLIER = f"{PREFIX}id", f"{PREFIX}read", f"{PREFIX}ask", f"{PREFIX}earlier"
MOST_MARKS = 120
MARKS_TOGETHER = 25  # a longer value would be cut when the address is read

_ID = re.compile(r"[A-Z]{5}")
_MARK = re.compile(r"[0-9a-f]{6}")


@dataclass(frozen=True, slots=True)
class OnTheLine:
    """The call as its address states it: `read` are the marks of the lines read aloud, `ask` a question wished for;
    `earlier` the reference of an earlier job sheet as it was typed; `strange` are names or values that mean nothing."""

    id: str
    caller: Mapping[str, str]
    read: tuple[str, ...]
    ask: str
    earlier: str
    strange: tuple[str, ...]


def split(asked: ParsedQuery) -> tuple[OnTheLine, ParsedQuery]:
    """The call, and the address without it."""
    calls = [(name, value) for name, value in asked.pairs if name.startswith(PREFIX)]
    trail: Pairs = tuple(pair for pair in asked.pairs if not pair[0].startswith(PREFIX))
    caller, strange, read, number, ask, earlier = {}, [], [], "", "", ""
    for name, value in calls:
        about = name.removeprefix(PREFIX)
        if name == READ:
            read += [mark for mark in value.split(",") if _MARK.fullmatch(mark)]
        elif name == ASK:
            ask = value
        elif name == EARLIER:
            earlier = value
        elif name == ID and _ID.fullmatch(value):
            number = value
        elif about in CHOICES and value in CHOICES[about]:
            caller[about] = value
        else:
            strange.append(name)
    marks = tuple(dict.fromkeys(read))[:MOST_MARKS]
    line = OnTheLine(number, caller, marks, ask, earlier, tuple(dict.fromkeys(strange)))
    return line, ParsedQuery(trail, asked.region, asked.truncated)


@dataclass(frozen=True, slots=True)
class CallLinks:
    """Addresses of the call page that keep everything good of this call."""

    region: str
    answers: Mapping[str, str]
    line: OnTheLine

    def with_answers(self, more: Mapping[str, str], read: Iterable[str] = ()) -> str:
        return self._to({**self.answers, **more}, self.line.caller, read)

    def without(self, *left: str, ask: str = "") -> str:
        kept = {name: answer for name, answer in self.answers.items() if name not in left}
        return self._to(kept, self.line.caller, (), ask)

    def having_read(self, *marks: str, ask: str = "") -> str:
        return self._to(self.answers, self.line.caller, marks, ask or self.line.ask)

    def about_caller(self, about: str, choice: str) -> str:
        return self._to(self.answers, {**self.line.caller, about: choice}, (), self.line.ask)

    def asking(self, observation: str) -> str:
        return self._to(self.answers, self.line.caller, (), observation)

    def beginning_with(self, answers: Mapping[str, str], region: str) -> str:
        """The call with these answers beside its own, and where the oven of those stands."""
        return replace(self, region=region).with_answers({**answers, **self.answers})

    def here(self) -> str:
        return self._to(self.answers, self.line.caller)

    def _to(
        self, answers: Mapping[str, str], caller: Mapping[str, str], read: Iterable[str] = (), ask: str = ""
    ) -> str:
        about = [(f"{PREFIX}{name}", choice) for name, choice in caller.items()]
        marks = list(dict.fromkeys([*self.line.read, *read]))
        told = [(READ, ",".join(marks[at : at + MARKS_TOGETHER])) for at in range(0, len(marks), MARKS_TOGETHER)]
        pairs = [(REGION, self.region), *answers.items(), (ID, self.line.id), *about, *told, (ASK, ask)]
        query = "&".join(f"{quote(name)}={quote(value, safe=',')}" for name, value in pairs if value)
        return f"{reverse('desk-call')}?{query}"
