/* How much an answer is expected to tell about the family and the band, in bits. As
   `triage/engine/expected_information.py`, which says why the bound holds. */

import { dividedEach, sumOf, sumOfProducts, sumOfRows, timesEach } from "./arithmetic.js";
import { severity } from "./pack.js";
import { answerTable, entropy } from "./tables.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./model.js").Hypothesis} Hypothesis
 * @typedef {import("./pack.js").Observation} Observation
 * @typedef {import("./tables.js").Table} Table */

const MAX_OMITTED_PROBABILITY = 0.08;
const MAX_HYPOTHESES = 16;

/** The hypotheses that matter at one step, ordered by band and family, and what each answer would tell. Built for one
 * step and thrown away; what several observations share is worked out once. */
export class ValueOfInformation {
  /** @param {import("./belief.js").Belief} belief */
  constructor(belief) {
    this.belief = belief;
    this.model = belief.model;
    const [index, weights] = mostLikely(belief);
    this.index = index;
    this.weights = weights;
    const hypotheses = this.index.map((h) => this.model.hypotheses[h]);
    this.families = slicesOf(hypotheses.map((h) => `${h.band} ${h.family}`));
    this.bands = slicesOf(this.families.map(([start]) => hypotheses[start].band));
    this.totalEntropy = -this.sumOfLogs(this.weights);
    /** @param {number} group */
    const first = (group) => this.families[group][0];
    /** @param {number} group */
    const last = (group) => this.families[group - 1][1];
    this.bandEntropy = entropy(this.bands.map(([a, b]) => sumOf(this.weights.slice(first(a), last(b)))));
    /** @type {Map<string, Row[]>} */
    this.optionsCache = new Map();
    /** @type {Map<string, number[][]>} */
    this.rowsCache = new Map();
    /** @type {Map<string, Row[]>} */
    this.rowWeightsCache = new Map();
  }

  /** The probability that the oven has what an observation requires.
   * @param {import("./pack.js").Gate} required */
  applicability(required) {
    let probability = 1;
    for (const [variant, allowed] of required) {
      const shares = this.optionProbabilities(variant);
      const { options } = this.model.pack.variants.get(variant);
      const fitting = shares.filter((_, at) => allowed.has(options[at]));
      probability *= sumOf(fitting.map((row) => sumOfProducts(this.weights, row)));
    }
    return probability;
  }

  /** I(F; A) + I(B; A): mutual information of the answer with the family plus that with the band.
   * @param {Observation} observation */
  bits(observation) {
    let bits = this.totalEntropy;
    for (const likelihood of this.answerProbabilities(observation)) {
      const joint = timesEach(this.weights, likelihood);
      const total = sumOf(joint);
      if (total > 0) bits += this.sumOfLogs(joint) - 2 * total * Math.log2(total);
    }
    return Math.max(bits, 0);
  }

  /** An upper bound on `bits`.
   * @param {Observation} observation */
  maxBits(observation) {
    if (this.model.variantWeights.has(observation.reports)) return this.bits(observation);
    const weights = this.weightsOfRows(observation.reports);
    let mean = observation.options.map(() => 0);
    let conditionalEntropy = 0;
    this.answerTablesOf(observation).forEach((table, at) => {
      conditionalEntropy += sumOfProducts(weights[at], table.entropies);
      mean = mean.map((m, option) => m + sumOfProducts(weights[at], table.transposed[option]));
    });
    const bits = entropy(mean) - conditionalEntropy;
    return bits + Math.min(bits, this.bandEntropy);
  }

  /** Sum of x*log2(x) over families plus the same over bands. @param {Row} joint */
  sumOfLogs(joint) {
    const families = this.families.map(([a, b]) => sumOf(joint.slice(a, b)));
    const bands = this.bands.map(([a, b]) => sumOf(families.slice(a, b)));
    return -entropy(families) - entropy(bands);
  }

  /** P(option | hypothesis, answers) for each option of a variant. @param {string} variant @returns {Row[]} */
  optionProbabilities(variant) {
    return kept(this.optionsCache, variant, () => {
      const known = this.belief.variantWeights.get(variant);
      const picked = (known ?? this.model.optionProbabilities.get(variant)).map((row) => this.index.map((h) => row[h]));
      return known ? normalised(picked) : picked;
    });
  }

  /** For each option of the condition's parent (or one): which distinct row each hypothesis has.
   * @param {string} condition @returns {number[][]} */
  rowsOf(condition) {
    return kept(this.rowsCache, condition, () =>
      this.model.levelTables.get(condition).map((table) => this.index.map((h) => table.index[h])),
    );
  }

  /** For each option of the condition's parent (or one): the probability of each distinct row.
   * @param {string} condition @returns {Row[]} */
  weightsOfRows(condition) {
    return kept(this.rowWeightsCache, condition, () => {
      const { parent } = this.model.pack.conditions.get(condition);
      return this.model.levelTables.get(condition).map((table, option) => {
        const byRow = table.distinct.map(() => 0);
        const shares = parent ? timesEach(this.weights, this.optionProbabilities(parent)[option]) : this.weights;
        this.rowsOf(condition)[option].forEach((place, at) => (byRow[place] += shares[at]));
        return byRow;
      });
    });
  }

  /** For each option of the variant: P(answer | distinct row), given the answers so far.
   * @param {Observation} observation @returns {Table[]} */
  answerTablesOf(observation) {
    const likelihood = this.belief.likelihoods.get(observation.reports);
    if (!likelihood) return this.model.answerTables.get(observation.id);
    return this.model.levelTables.get(observation.reports).map((table) => answerTable(observation, table, likelihood));
  }

  /** P(answer | hypothesis, what is known) for each answer. @param {Observation} observation @returns {Row[]} */
  answerProbabilities(observation) {
    const reported = observation.reports;
    if (this.model.variantWeights.has(reported)) return this.optionProbabilities(reported);
    const places = this.rowsOf(reported);
    const rows = this.answerTablesOf(observation).map((table, at) => places[at].map((place) => table.distinct[place]));
    const { parent } = this.model.pack.conditions.get(reported);
    const shares = parent ? this.optionProbabilities(parent) : null;
    return observation.options.map((_, a) => {
      const byOption = rows.map((perHypothesis) => perHypothesis.map((row) => row[a]));
      return shares ? sumOfRows(byOption.map((row, at) => timesEach(shares[at], row))) : byOption[0];
    });
  }
}

/** @param {Belief} belief @returns {[index: number[], weights: Row]} */
function mostLikely({ model, probabilities }) {
  const index = [];
  let mass = 0;
  const likeliest = [...probabilities.keys()].sort((one, other) => probabilities[other] - probabilities[one]);
  for (const h of likeliest.slice(0, MAX_HYPOTHESES)) {
    index.push(h);
    mass += probabilities[h];
    if (mass >= 1 - MAX_OMITTED_PROBABILITY) break;
  }
  index.sort((one, other) => byBandAndFamily(model.hypotheses[one], model.hypotheses[other]) || one - other);
  return [index, index.map((h) => probabilities[h] / mass)];
}

/** @param {Hypothesis} one @param {Hypothesis} other */
function byBandAndFamily(one, other) {
  if (one.band !== other.band) return severity(one.band) - severity(other.band);
  if (one.family === other.family) return 0;
  return one.family < other.family ? -1 : 1;
}

/** Runs of equal keys, each as its start and its end.
 * @param {string[]} keys @returns {[start: number, end: number][]} */
function slicesOf(keys) {
  const starts = [...keys.keys()].filter((at) => at === 0 || keys[at] !== keys[at - 1]);
  return starts.map((start, at) => [start, starts[at + 1] ?? keys.length]);
}

/** @param {Row[]} rows */
function normalised(rows) {
  const totals = sumOfRows(rows).map((total) => total || 1);
  return rows.map((row) => dividedEach(row, totals));
}

/** @template T @param {Map<string, T>} store @param {string} key @param {() => T} work */
function kept(store, key, work) {
  if (!store.has(key)) store.set(key, work());
  return store.get(key);
}
