"""Faults that no question can tell apart, although nothing in the pack says so.

What two faults make people say is compared question by question, on every kind of oven both can have: the total
variation distance, in words the share of homes in which the answer would differ. A question that exists only after
another answer counts as often as it comes up. Members of one family and stated look-alikes may be the same.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations

from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.engine.frequency import Row
from triage.engine.model import Model
from triage.engine.pack import Observation, Pack

MIN_DISTANCE_MISTAKE = 0.05
MIN_DISTANCE_REMARK = 0.25


def indistinguishable_faults(model: Model, places: PackSource) -> list[LintFinding]:
    """A mistake for two faults that differ nowhere, a remark for two that hardly do."""
    tells = _Separations(model)
    found = []
    for one, other in combinations(tells.alone, 2):
        if _may_be_alike(model.pack, one, other):
            continue
        share, question = tells.best_split(one, other)
        if share < MIN_DISTANCE_REMARK:
            found.append(_finding(places, one, other, share, question))
    return found


def _may_be_alike(pack: Pack, one: str, other: str) -> bool:
    same_family = pack.faults[one].family == pack.faults[other].family
    return same_family or any({one, other} <= group for group in pack.look_alikes)


def _finding(places: PackSource, one: str, other: str, share: float, question: str) -> LintFinding:
    best = f"the best, {question}, differs in {100 * share:.0f} of 100 homes" if question else "none applies to both"
    problem = places.problem(
        "faults",
        one,
        f"no question tells it from {other}: {best}.",
        "Add a question that splits them, give them one family, or list them under look_alikes in pack.yaml.",
    )
    return LintFinding(Gravity.MISTAKE if share < MIN_DISTANCE_MISTAKE else Gravity.REMARK, "twins", problem)


class _Separations:
    """What each fault alone makes people say; worked out once."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self.alone = {h.faults[0]: i for i, h in enumerate(model.hypotheses) if len(h.faults) == 1}
        self.asked = [o for o in model.pack.observations.values() if o.reports and not o.task]

    def best_split(self, one: str, other: str) -> tuple[float, str]:
        """The largest difference any question makes, and that question; stops at one that is large enough."""
        a, b = self.alone[one], self.alone[other]
        best, question = 0.0, ""
        for observation in self.asked:
            share = max((_distance(x, y) for x, y in self._rows(observation, a, b)), default=0.0)
            if share > best or not question:
                best, question = share, observation.id
            if best >= MIN_DISTANCE_REMARK:
                break
        return best, question

    def _rows(self, observation: Observation, a: int, b: int) -> Iterator[tuple[Row, Row]]:
        """The two rows of answers, "it never came up" last, on every kind of oven both faults can have."""
        reported = str(observation.reports)
        up = self._comes_up(observation, a), self._comes_up(observation, b)
        if reported in self.model.option_probabilities:
            rows = self.model.option_probabilities[reported]
            yield _with_silence([row[a] for row in rows], up[0]), _with_silence([row[b] for row in rows], up[1])
            return
        given = self.model.pack.conditions[reported].parent
        for option, table in enumerate(self.model.answer_tables[observation.id]):
            if given is None or (
                self.model.variant_weights[given][option][a] and self.model.variant_weights[given][option][b]
            ):
                one, other = table.distinct[table.index[a]], table.distinct[table.index[b]]
                yield _with_silence(one, up[0]), _with_silence(other, up[1])

    def _comes_up(self, observation: Observation, h: int) -> float:
        """How often the answers are given that make a question exist."""
        share = 1.0
        for parent, options in observation.requires_answers.items():
            share *= self._share_of(self.model.pack.observations[parent], options, h)
        return share

    def _share_of(self, observation: Observation, options: frozenset[str], h: int) -> float:
        if not observation.reports:
            return 1.0
        chances = self._usual_row(observation, h)
        return sum(chance for option, chance in chances.items() if option in options) * self._comes_up(observation, h)

    def _usual_row(self, observation: Observation, h: int) -> Mapping[str, float]:
        """The answers of one hypothesis over all kinds of oven it occurs on."""
        reported = str(observation.reports)
        if reported in self.model.option_probabilities:
            return {
                o: row[h] for o, row in zip(observation.options, self.model.option_probabilities[reported], strict=True)
            }
        given = self.model.pack.conditions[reported].parent
        shares = [row[h] for row in self.model.option_probabilities[given]] if given else [1.0]
        mixed = dict.fromkeys(observation.options, 0.0)
        for share, table in zip(shares, self.model.answer_tables[observation.id], strict=True):
            for option, chance in zip(observation.options, table.distinct[table.index[h]], strict=True):
                mixed[option] += share * chance
        return mixed


def _with_silence(row: Sequence[float], comes_up: float) -> Row:
    return (*(comes_up * chance for chance in row), 1.0 - comes_up)


def _distance(one: Row, other: Row) -> float:
    """Total variation: half the sum of absolute differences."""
    return sum(abs(a - b) for a, b in zip(one, other, strict=True)) / 2.0
