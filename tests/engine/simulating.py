"""People with broken ovens, drawn from the compiled model: what is wrong, what kind of oven, and what they would say.

The dice belong to the test, not to the engine. One person keeps to one story: asked twice, they say the same.
"""

from dataclasses import dataclass, field, replace
from functools import cache
from random import Random

from triage.engine.belief import believe
from triage.engine.check import Ask, MakeSafe, advise
from triage.engine.model import is_screened
from triage.engine.next_question import count_asked
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN

# How often people cannot tell: the kind of oven they have, what they saw or remember, what they would have to try.
UNSURE_OF_KIND = 0.25
UNSURE = {"memory": 0.10, "look": 0.10, "trial": 0.60}
MOST_QUESTIONS = 12


@dataclass
class Household:
    """One oven with its trouble and the person who answers for it."""

    faults: tuple[str, ...]
    family: str
    kind: dict[str, str]
    levels: dict[str, int]
    pack: object
    dice: Random
    said: dict[str, str] = field(default_factory=dict)

    def answer(self, name):
        """What this person says to a question, the same every time."""
        if name not in self.said:
            self.said[name] = self._answer(self.pack.observations[name])
        return self.said[name]

    def _answer(self, question):
        if question.reports in self.pack.variants:
            return CANT_TELL if self.dice.random() < UNSURE_OF_KIND else self.kind[question.reports]
        fitted = all(self.kind[variant] in allowed for variant, allowed in question.needs.items())
        if question.reports is None or not fitted or self.dice.random() < UNSURE[question.how]:
            return CANT_TELL
        says = question.says[self.levels[question.reports]]
        return self.dice.choices(question.options, says)[0]

    def danger_page(self):
        """The sign this person ticks, or that none applies."""
        for question in self.pack.observations.values():
            if is_screened(self.pack, question) and not question.after:
                flag = question.flags.get(self.answer(question.id))
                if flag and self.pack.red_flags[flag].level.ends_check:
                    return question.id, self.answer(question.id)
        return SCREEN, NONE_OF_THESE


def draw_household(model, dice):
    """Somebody with an oven as common as the model thinks it is."""
    chances = believe(model, {}).chances
    h = dice.choices(range(len(chances)), chances)[0]
    kind = {
        v.id: dice.choices(v.options, [row[h] for row in model.kinds[v.id]])[0] for v in model.pack.variants.values()
    }
    levels = {}
    for condition in model.pack.conditions.values():
        option = model.pack.variants[condition.given].options.index(kind[condition.given]) if condition.given else 0
        table = model.levels[condition.id][option]
        levels[condition.id] = dice.choices(range(len(condition.levels)), table.distinct[table.index[h]])[0]
    hypothesis = model.hypotheses[h]
    return Household(hypothesis.faults, hypothesis.family, kind, levels, model.pack, dice)


@dataclass(frozen=True)
class Outcome:
    """How one check went: questions put before it ended by itself, and what led once every question was used up."""

    family: str
    ended: object
    questions: int
    last: object

    @property
    def found(self):
        """Whether the right family led at the end."""
        return self.last.verdict.family == self.family

    @property
    def was_dangerous(self):
        return isinstance(self.ended, MakeSafe)


def check_of(household, pack, region):
    """One check to its own end and then on, for as long as the limit of questions lets anybody ask."""
    trail = [(OPENING, household.answer(OPENING)), household.danger_page()]
    ended = follow(household, pack, region, trail)
    questions = count_asked(pack, ended.reading.answers)
    return Outcome(household.family, ended, questions, follow(household, without_early_stop(pack), region, trail))


@cache
def without_early_stop(pack):
    """The same pack, stopped by nothing but the number of questions."""
    return replace(pack, limits=replace(pack.limits, questions=MOST_QUESTIONS, settled=1.0, worth=0.0))


def follow(household, pack, region, trail):
    """Answers question after question, adding to `trail`, until no more is asked."""
    while True:
        step = advise(pack, region, trail)
        question = step.observation if isinstance(step, Ask) else getattr(step, "memory", None)
        if question is None:
            return step
        trail.append((question, household.answer(question)))
