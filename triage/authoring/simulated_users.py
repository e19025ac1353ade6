"""People with broken ovens, drawn from a compiled model: what is wrong, what kind of oven, and what they would say.

The dice belong to the author's tools, not to the engine. One person keeps to one story: asked twice, they say the same.
A person who answers wrong picks one of the other answers, but never claims a danger that is not there; one that is
there may be missed.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from random import Random

from triage.engine.belief import infer_belief
from triage.engine.model import Hypothesis, Model, harmless_options, is_screened
from triage.engine.pack import CANT_TELL, NONE_OF_THESE, OPENING, SCREEN, Observation, Pack


@dataclass(frozen=True, slots=True)
class AnswerModel:
    """How often people cannot tell: the kind of oven they have, what they saw or remember, what they would have to
    try (judged, no source). `wrong` is the share of answers that are one of the others, `blank` the share of
    questions nobody can say anything to, on top."""

    unsure_of_variant: float = 0.25
    unsure: Mapping[str, float] = field(default_factory=lambda: {"memory": 0.10, "look": 0.10, "trial": 0.60})
    error_rate: float = 0.0
    unknown_rate: float = 0.0


@dataclass
class SimulatedUser:
    """One oven with its trouble and the person who answers for it."""

    hypothesis: Hypothesis
    variants: dict[str, str]
    levels: dict[str, int]
    pack: Pack
    dice: Random
    answer_model: AnswerModel = field(default_factory=AnswerModel)
    given: dict[str, str] = field(default_factory=dict)

    @property
    def faults(self) -> tuple[str, ...]:
        return self.hypothesis.faults

    @property
    def family(self) -> str:
        return self.hypothesis.family

    def opening_answers(self) -> list[tuple[str, str]]:
        """What this person says on the start page and on the danger page."""
        return [(OPENING, self.answer(OPENING)), self.danger_page()]

    def answer(self, name: str) -> str:
        """What this person says to a question, the same every time."""
        if name not in self.given:
            question = self.pack.observations[name]
            self.given[name] = self._as_told(question, self._truth(question))
        return self.given[name]

    def _truth(self, question: Observation) -> str:
        if question.reports in self.pack.variants:
            unsure = self.dice.random() < self.answer_model.unsure_of_variant
            return CANT_TELL if unsure else self.variants[str(question.reports)]
        fitted = all(self.variants[variant] in allowed for variant, allowed in question.requires_variant.items())
        if question.reports is None or not fitted or self.dice.random() < self.answer_model.unsure[question.method]:
            return CANT_TELL
        says = question.answer_probabilities[self.levels[question.reports]]
        return self.dice.choices(question.options, says)[0]

    def _as_told(self, question: Observation, truth: str) -> str:
        if truth == CANT_TELL or self.dice.random() < self.answer_model.unknown_rate:
            return CANT_TELL
        if self.dice.random() < self.answer_model.error_rate:
            others = [option for option in harmless_options(self.pack, question) if option != truth]
            return self.dice.choice(others) if others else truth
        return truth

    def danger_page(self) -> tuple[str, str]:
        """The sign this person ticks, or that none applies."""
        for question in self.pack.observations.values():
            if is_screened(self.pack, question) and not question.requires_answers:
                flag = question.flags.get(self.answer(question.id))
                if flag and self.pack.red_flags[flag].level.ends_check:
                    return question.id, self.answer(question.id)
        return SCREEN, NONE_OF_THESE


def draw_user(model: Model, dice: Random, habits: AnswerModel | None = None) -> SimulatedUser:
    """Somebody with an oven as common as the model thinks it is."""
    chances = infer_belief(model, {}).probabilities
    h = dice.choices(range(len(chances)), chances)[0]
    kind = {
        v.id: dice.choices(v.options, [row[h] for row in model.variant_weights[v.id]])[0]
        for v in model.pack.variants.values()
    }
    levels = {}
    for condition in model.pack.conditions.values():
        option = model.pack.variants[condition.parent].options.index(kind[condition.parent]) if condition.parent else 0
        table = model.level_tables[condition.id][option]
        levels[condition.id] = dice.choices(range(len(condition.levels)), table.distinct[table.index[h]])[0]
    return SimulatedUser(model.hypotheses[h], kind, levels, model.pack, dice, habits or AnswerModel())
