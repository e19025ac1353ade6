"""How much an answer is expected to tell about the family and the band: mutual information, in bits.

With answers A, families F and bands B of the hypotheses, and everything given the answers so far, an observation is
worth I(F; A) + I(B; A), where by the definition of mutual information

    I(F; A) = H(F) - H(F | A) = H(F) + sum over a of [ sum over f of P(f, a) * log2 P(f, a)  -  P(a) * log2 P(a) ]

A hypothesis bears on an answer only through R, its distinct row of the condition's table, and both F and B are
functions of the hypothesis. So by the data-processing inequality (the chain rule, applied twice)

    I(F; A) <= I(R; A) = H(A) - sum over r of P(r) * H(A | r)        and        I(B; A) <= min(I(R; A), H(B))

This bound is cheap, and `next_question.py` works the exact figure out only where the bound says it could matter.
Unlikely hypotheses are left out of this choice, never out of the belief.
"""

from collections.abc import Sequence
from math import log2
from operator import mul

from triage.engine.belief import Belief
from triage.engine.pack import Observation, Requirement
from triage.engine.tables import PerHypothesis, ProbabilityTable, answer_table, entropy

# Hypotheses that together hold less than this are left out, and those beyond so many: they cost time and decide
# nothing (author's judgement, held against the exact choice by the tests).
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
        self.total_entropy = -self._sum_of_logs(self.weights)
        self.band_entropy = entropy(
            [sum(self.weights[self.families[a][0] : self.families[b - 1][1]]) for a, b in self.bands]
        )
        self._options: dict[str, list[list[float]]] = {}
        self._rows: dict[str, list[list[int]]] = {}
        self._row_weights: dict[str, list[list[float]]] = {}

    def applicability(self, required: Requirement) -> float:
        """The probability that the oven has what an observation requires."""
        probability = 1.0
        for variant, allowed in required.items():
            rows = zip(self.model.pack.variants[variant].options, self._option_probabilities(variant), strict=True)
            probability *= sum(sum(map(mul, self.weights, row)) for option, row in rows if option in allowed)
        return probability

    def bits(self, observation: Observation) -> float:
        """I(F; A) + I(B; A): mutual information of the answer with the family plus that with the band."""
        bits = self.total_entropy
        for likelihood in self._answer_probabilities(observation):
            joint = list(map(mul, self.weights, likelihood))
            total = sum(joint)
            if total > 0.0:
                bits += self._sum_of_logs(joint) - 2.0 * total * log2(total)
        return max(bits, 0.0)

    def max_bits(self, observation: Observation) -> float:
        """An upper bound on `bits`."""
        reported = str(observation.reports)
        if reported in self.model.variant_weights:
            return self.bits(observation)
        mean = [0.0] * len(observation.options)
        conditional_entropy = 0.0
        for table, weights in zip(self._answer_tables(observation), self._weights_of_rows(reported), strict=True):
            conditional_entropy += sum(map(mul, weights, table.entropies))
            mean = [m + sum(map(mul, weights, column)) for m, column in zip(mean, table.transposed, strict=True)]
        bits = entropy(mean) - conditional_entropy
        return bits + min(bits, self.band_entropy)

    def _sum_of_logs(self, joint: Sequence[float]) -> float:
        """Sum of x*log2(x) over families plus the same over bands."""
        families = [joint[a] if b - a == 1 else sum(joint[a:b]) for a, b in self.families]
        bands = [sum(families[a:b]) for a, b in self.bands]
        return -entropy(families) - entropy(bands)

    def _option_probabilities(self, variant: str) -> list[list[float]]:
        """P(option | hypothesis, answers) for each option of a variant."""
        if variant not in self._options:
            known = self.belief.variant_weights.get(variant)
            rows = known or self.model.option_probabilities[variant]
            picked = [[row[h] for h in self.index] for row in rows]
            self._options[variant] = _normalised(picked) if known else picked
        return self._options[variant]

    def _rows_of(self, condition: str) -> list[list[int]]:
        """For each option of the condition's parent (or one): which distinct row each hypothesis has."""
        if condition not in self._rows:
            tables = self.model.level_tables[condition]
            self._rows[condition] = [[table.index[h] for h in self.index] for table in tables]
        return self._rows[condition]

    def _weights_of_rows(self, condition: str) -> list[list[float]]:
        """For each option of the condition's parent (or one): the probability of each distinct row."""
        if condition not in self._row_weights:
            parent = self.model.pack.conditions[condition].parent
            found = []
            for option, table in enumerate(self.model.level_tables[condition]):
                by_row = [0.0] * len(table.distinct)
                shares = map(mul, self.weights, self._option_probabilities(parent)[option]) if parent else self.weights
                for row, weight in zip(self._rows_of(condition)[option], shares, strict=True):
                    by_row[row] += weight
                found.append(by_row)
            self._row_weights[condition] = found
        return self._row_weights[condition]

    def _answer_tables(self, observation: Observation) -> Sequence[ProbabilityTable]:
        """For each option of the condition's parent (or one): P(answer | distinct row), given the answers so far."""
        reported = str(observation.reports)
        likelihood = self.belief.likelihoods.get(reported)
        if likelihood is None:
            return self.model.answer_tables[observation.id]
        return [answer_table(observation, table, likelihood) for table in self.model.level_tables[reported]]

    def _answer_probabilities(self, observation: Observation) -> list[list[float]]:
        """P(answer | hypothesis, answers so far) for each answer."""
        reported = str(observation.reports)
        if reported in self.model.variant_weights:
            return self._option_probabilities(reported)
        tables = zip(self._answer_tables(observation), self._rows_of(reported), strict=True)
        by_option = [[table.distinct[row] for row in rows] for table, rows in tables]
        parent = self.model.pack.conditions[reported].parent
        answers = range(len(observation.options))
        if parent is None:
            return [[row[a] for row in by_option[0]] for a in answers]
        shares = self._option_probabilities(parent)
        return [_mixed(shares, [[row[a] for row in rows] for rows in by_option]) for a in answers]


def _most_likely(belief: Belief) -> tuple[tuple[int, ...], PerHypothesis]:
    """The likeliest hypotheses by place, ordered by band and family, and their probabilities, summing to one."""
    hypotheses, probabilities = belief.model.hypotheses, belief.probabilities
    index, mass = [], 0.0
    for h in sorted(range(len(probabilities)), key=probabilities.__getitem__, reverse=True)[:MAX_HYPOTHESES]:
        index.append(h)
        mass += probabilities[h]
        if mass >= 1.0 - MAX_OMITTED_PROBABILITY:
            break
    index.sort(key=lambda h: (hypotheses[h].band.severity, hypotheses[h].family, h))
    return tuple(index), tuple(probabilities[h] / mass for h in index)


def _slices(keys: Sequence[object]) -> tuple[tuple[int, int], ...]:
    """Runs of equal keys, each as its start and its end."""
    starts = [i for i, key in enumerate(keys) if i == 0 or key != keys[i - 1]]
    return tuple(zip(starts, [*starts[1:], len(keys)], strict=True))


def _mixed(shares: list[list[float]], rows: list[list[float]]) -> list[float]:
    products = [map(mul, share, row) for share, row in zip(shares, rows, strict=True)]
    return [sum(column) for column in zip(*products, strict=True)]


def _normalised(rows: list[list[float]]) -> list[list[float]]:
    totals = [sum(column) or 1.0 for column in zip(*rows, strict=True)]
    return [[value / total for value, total in zip(row, totals, strict=True)] for row in rows]
