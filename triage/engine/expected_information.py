"""How much an answer is expected to tell about the family and the band, in bits.

Hypotheses that together hold less than `TAIL` of the chance, and those beyond `MOST_HYPOTHESES`, are left out of this
choice (never out of the belief). An answer depends on a hypothesis only through its distinct row of the condition's
table, so what it tells about that row bounds what it tells about the family or the band: the bound is cheap, and
`next_question.py` works the exact figure out only where the bound says it could matter.
"""

from collections.abc import Sequence
from math import log2
from operator import mul

from triage.engine.belief import Belief
from triage.engine.model import ProbabilityTable, Row, answer_table, entropy
from triage.engine.pack import Observation, Requirement

MAX_OMITTED_PROBABILITY = 0.08
MAX_HYPOTHESES = 16


class ValueOfInformation:
    """The hypotheses that matter at one step, ordered by band and family, and what each answer would tell.

    Built for one step and thrown away; what several observations share is worked out once.
    """

    def __init__(self, belief: Belief) -> None:
        self.belief = belief
        self.model = belief.model
        self.index, self.weights = _most_likely(belief)
        hypotheses = [self.model.hypotheses[h] for h in self.index]
        self.families = _slices([(h.band, h.family) for h in hypotheses])
        self.bands = _slices([hypotheses[start].band for start, _ in self.families])
        self.total_entropy = self._grouped(self.weights)
        self.band_entropy = entropy(
            [sum(self.weights[self.families[a][0] : self.families[b - 1][1]]) for a, b in self.bands]
        )
        self._shares: dict[str, list[list[float]]] = {}
        self._places: dict[str, list[list[int]]] = {}
        self._row_weights: dict[str, list[list[float]]] = {}

    def applicability(self, needs: Requirement) -> float:
        """The chance that the oven has what an observation needs."""
        chance = 1.0
        for variant, allowed in needs.items():
            rows = zip(self.model.pack.variants[variant].options, self._option_shares(variant), strict=True)
            chance *= sum(sum(map(mul, self.weights, row)) for option, row in rows if option in allowed)
        return chance

    def bits(self, observation: Observation) -> float:
        """Mutual information of the answer with the family plus that with the band."""
        bits = -self.total_entropy
        for likelihood in self._answer_chances(observation):
            joint = list(map(mul, self.weights, likelihood))
            total = sum(joint)
            if total > 0.0:
                bits += self._grouped(joint) - 2.0 * total * log2(total)
        return max(bits, 0.0)

    def max_bits(self, observation: Observation) -> float:
        """An upper bound on `bits`."""
        reported = str(observation.reports)
        if reported in self.model.variant_weights:
            return self.bits(observation)
        weights = self._weights_of_rows(reported)
        told = self._told(observation)
        mean = [0.0] * len(observation.options)
        left = 0.0
        for table, by_place in zip(told, weights, strict=True):
            left += sum(map(mul, by_place, table.entropies))
            mean = [m + sum(map(mul, by_place, column)) for m, column in zip(mean, table.transposed, strict=True)]
        bits = entropy(mean) - left
        return bits + min(bits, self.band_entropy)

    def _grouped(self, joint: Sequence[float]) -> float:
        """Sum of x*log2(x) over families plus the same over bands."""
        families = [joint[a] if b - a == 1 else sum(joint[a:b]) for a, b in self.families]
        bands = [sum(families[a:b]) for a, b in self.bands]
        return -entropy(families) - entropy(bands)

    def _option_shares(self, variant: str) -> list[list[float]]:
        """P(option | hypothesis, answers) for each option of a variant."""
        if variant not in self._shares:
            known = self.belief.variant_weights.get(variant)
            rows = known or self.model.option_probabilities[variant]
            picked = [[row[h] for h in self.index] for row in rows]
            self._shares[variant] = _normalised(picked) if known else picked
        return self._shares[variant]

    def _places_of(self, condition: str) -> list[list[int]]:
        """For each option of the condition's variant (or one): which distinct row each hypothesis has."""
        if condition not in self._places:
            tables = self.model.level_tables[condition]
            self._places[condition] = [[table.index[h] for h in self.index] for table in tables]
        return self._places[condition]

    def _weights_of_rows(self, condition: str) -> list[list[float]]:
        """For each option of the condition's variant (or one): the chance of each distinct row."""
        if condition not in self._row_weights:
            given = self.model.pack.conditions[condition].parent
            found = []
            for option, table in enumerate(self.model.level_tables[condition]):
                by_place = [0.0] * len(table.distinct)
                shares = map(mul, self.weights, self._option_shares(given)[option]) if given else self.weights
                for place, weight in zip(self._places_of(condition)[option], shares, strict=True):
                    by_place[place] += weight
                found.append(by_place)
            self._row_weights[condition] = found
        return self._row_weights[condition]

    def _told(self, observation: Observation) -> Sequence[ProbabilityTable]:
        """For each option of the variant: P(answer | distinct row), given the answers so far."""
        reported = str(observation.reports)
        seen = self.belief.likelihoods.get(reported)
        if seen is None:
            return self.model.answer_tables[observation.id]
        return [answer_table(observation, table, seen) for table in self.model.level_tables[reported]]

    def _answer_chances(self, observation: Observation) -> list[list[float]]:
        """P(answer | hypothesis, what is known) for each answer."""
        reported = str(observation.reports)
        if reported in self.model.variant_weights:
            return self._option_shares(reported)
        rows = [
            (table.distinct, p) for table, p in zip(self._told(observation), self._places_of(reported), strict=True)
        ]
        given = self.model.pack.conditions[reported].parent
        if given is None:
            told, places = rows[0]
            return [[told[place][a] for place in places] for a in range(len(observation.options))]
        shares = self._option_shares(given)
        return [
            _mixed(shares, [[told[place][a] for place in places] for told, places in rows])
            for a in range(len(observation.options))
        ]


def _most_likely(belief: Belief) -> tuple[tuple[int, ...], Row]:
    hypotheses, chances = belief.model.hypotheses, belief.probabilities
    kept, mass = [], 0.0
    for h in sorted(range(len(chances)), key=chances.__getitem__, reverse=True)[:MAX_HYPOTHESES]:
        kept.append(h)
        mass += chances[h]
        if mass >= 1.0 - MAX_OMITTED_PROBABILITY:
            break
    kept.sort(key=lambda h: (hypotheses[h].band.severity, hypotheses[h].family, h))
    return tuple(kept), tuple(chances[h] / mass for h in kept)


def _slices(keys: Sequence[object]) -> tuple[tuple[int, int], ...]:
    starts = [i for i, key in enumerate(keys) if i == 0 or key != keys[i - 1]]
    return tuple(zip(starts, [*starts[1:], len(keys)], strict=True))


def _mixed(shares: list[list[float]], rows: list[list[float]]) -> list[float]:
    products = [map(mul, share, row) for share, row in zip(shares, rows, strict=True)]
    return [sum(column) for column in zip(*products, strict=True)]


def _normalised(rows: list[list[float]]) -> list[list[float]]:
    totals = [sum(column) or 1.0 for column in zip(*rows, strict=True)]
    return [[value / total for value, total in zip(row, totals, strict=True)] for row in rows]
