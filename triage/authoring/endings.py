"""How checks end for people, in a form that two packs can be compared by; no chances, which always move.

A check is walked as `run_check` would lead it, up to the first danger sign or the advice, without the weights that only
pages show. What is asked after a set of answers is kept, because many checks begin alike.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from triage.engine.advice import decide_band, tasks_for
from triage.engine.answers import parse_answers
from triage.engine.belief import Belief, infer_belief
from triage.engine.model import compile_model, is_screened
from triage.engine.next_question import next_question
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Pack, Region
from triage.engine.safety import ends_check, raised_flags

Answers = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Ending:
    """`flags` are the red flags raised. `exit` is the way out when the check is about another appliance; band and
    family are empty then."""

    band: str
    family: str
    tasks: frozenset[str] = frozenset()
    flags: tuple[str, ...] = ()
    exit: str = ""


@dataclass(frozen=True, slots=True)
class FinishedCheck:
    """One check: its answers in the order given, and how it ended."""

    trail: tuple[tuple[str, str], ...]
    ending: Ending


class Checks:
    """Checks on one pack in one region, one after the other."""

    def __init__(self, pack: Pack, region: Region) -> None:
        self.pack = pack
        self.region = region
        self.model = compile_model(pack, region)
        self.screened = tuple(o for o in pack.observations.values() if is_screened(pack, o) and not o.requires_answers)
        self._asked: dict[frozenset[tuple[str, str]], str | None] = {}

    def walk(self, statements: Answers) -> FinishedCheck:
        """The check of somebody who answers as `told`; what is not told, or in words this pack has not, is not
        known."""
        trail = [(OPENING, self._said(statements, OPENING)), self.danger_sign(statements)]
        while True:
            answers = parse_answers(self.pack, trail).answers
            leaves = next(
                (self.pack.out_of_scope[pair] for pair in answers.items() if pair in self.pack.out_of_scope), ""
            )
            if ends_check(raised_flags(self.pack, answers)) or leaves:
                return FinishedCheck(tuple(trail), self._ending(answers, leaves, None))
            key, belief = frozenset(answers.items()), None
            if key not in self._asked:
                belief = infer_belief(self.model, answers)
                self._asked[key] = next_question(belief, answers)
            question = self._asked[key]
            if question is None:
                return FinishedCheck(tuple(trail), self._ending(answers, "", belief))
            trail.append((question, self._said(statements, question)))

    def danger_sign(self, statements: Answers) -> tuple[str, str]:
        """The first sign of the danger page that holds, or that none does. A sign that exists only after another
        answer is not seen that early."""
        for question in self.screened:
            flag = question.flags.get(statements.get(question.id, CANT_TELL))
            if flag and self.pack.red_flags[flag].level.ends_check:
                return question.id, statements[question.id]
        return SCREEN, NONE_OF_THESE

    def _said(self, statements: Answers, question: str) -> str:
        said = statements.get(question, CANT_TELL)
        return said if said in self.pack.observations[question].options else CANT_TELL

    def _ending(self, answers: Answers, leaves: str, belief: Belief | None) -> Ending:
        flags = raised_flags(self.pack, answers)
        if leaves and not ends_check(flags):
            return Ending("", "", exit=leaves)
        belief = belief or infer_belief(self.model, answers)
        band = decide_band(belief, answers, flags)
        tasks = tasks_for(self.region, belief, answers, band)
        family = next(iter(belief.families))
        return Ending(band.value, family, frozenset(task.id for task in tasks), tuple(flag.id for flag in flags))
