/* The chance of every hypothesis given a set of answers. Exact; the order of the answers cannot matter.

   Answers to observations of one condition multiply into one likelihood over that condition's levels, so a fact told
   five ways is one fact with five witnesses. An answer of "can't tell" is no evidence at all; a reading is a likelihood
   over the options (`readings/evidence.js`). */

import { dividedEach, sumOf, sumOfRows, timesEach } from "./arithmetic.js";
import { CANT_TELL, NONE_OF_THESE, SCREEN } from "./pack.js";
import { levelLikelihood } from "./readings/evidence.js";
import { expectedLikelihood, greatestFirst } from "./tables.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./model.js").Model} Model
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {Map<string, string>} Answers observation to option, in the order given */

/** `probabilities[h]` sums to one. `likelihoods` is the likelihood of a condition's levels, `variantWeights` the joint
 * weight of hypothesis and option where anything is known about a variant. */
export class Belief {
  /** @param {Model} model @param {Row} probabilities @param {Map<string, Row>} likelihoods
   * @param {Map<string, Row[]>} variantWeights */
  constructor(model, probabilities, likelihoods, variantWeights) {
    this.model = model;
    this.probabilities = probabilities;
    this.likelihoods = likelihoods;
    this.variantWeights = variantWeights;
    /** The chance that each fault is present, alone or with another, in the pack's order. */
    this.faults = new Map([...model.pack.faults.keys()].map((fault) => [fault, 0]));
    model.hypotheses.forEach((hypothesis, h) => {
      for (const fault of hypothesis.faults) this.faults.set(fault, this.faults.get(fault) + probabilities[h]);
    });
  }

  /** The chance of each family, most likely first; a pair counts for the fault its job is named after. */
  get families() {
    const totals = new Map();
    this.model.hypotheses.forEach(({ family }, h) => {
      totals.set(family, (totals.get(family) ?? 0) + this.probabilities[h]);
    });
    return new Map(greatestFirst(totals).map((family) => [family, totals.get(family)]));
  }

  /** Fault ids, most likely first; ties keep the pack's order. */
  get ranking() {
    return greatestFirst(this.faults);
  }
}

/** The belief after answers that already fit together.
 * @param {Model} model @param {Answers} answers @returns {Belief} */
export function inferBelief(model, answers) {
  const likelihoods = likelihoodsOf(model, answers);
  const variantWeights = variantWeightsOf(model, answers, likelihoods);
  let weights = model.prior;
  for (const [condition, likelihood] of likelihoods) {
    if (model.pack.conditions.get(condition).parent !== null) continue;
    weights = timesEach(weights, expectedLikelihood(model.levelTables.get(condition)[0], likelihood));
  }
  for (const [variant, rows] of variantWeights) {
    weights = timesEach(weights, dividedEach(sumOfRows(rows), model.variantTotals.get(variant)));
  }
  const total = sumOf(weights);
  return new Belief(
    model,
    weights.map((weight) => weight / total),
    likelihoods,
    variantWeights,
  );
}

/** The likelihood over each reported condition's levels; danger signs not ticked count as "not this".
 * @param {Model} model @param {Answers} answers @returns {Map<string, Row>} */
function likelihoodsOf(model, answers) {
  const { observations } = model.pack;
  /** @type {[string, Row][]} */
  const found = [];
  for (const [o, answer] of answers) {
    if (answer === CANT_TELL || !model.answerTables.has(o)) continue;
    const observation = observations.get(o);
    found.push([observation.reports, levelLikelihood(observation, answer)]);
  }
  if (answers.get(SCREEN) === NONE_OF_THESE) {
    for (const [o, row] of model.screenedLikelihood) {
      if ((answers.get(o) ?? CANT_TELL) === CANT_TELL) found.push([observations.get(o).reports, row]);
    }
  }
  const likelihoods = new Map();
  for (const [condition, evidence] of found.sort(byConditionAndRow)) {
    likelihoods.set(condition, likelihoods.has(condition) ? timesEach(likelihoods.get(condition), evidence) : evidence);
  }
  return likelihoods;
}

/** @param {[string, Row]} one @param {[string, Row]} other */
function byConditionAndRow([one, row], [other, otherRow]) {
  if (one !== other) return one < other ? -1 : 1;
  const at = row.findIndex((value, place) => value !== otherRow[place]);
  return at < 0 ? 0 : row[at] - otherRow[at];
}

/** Joint weight of hypothesis and option for each variant that an answer, a gate or a condition speaks about.
 * @param {Model} model @param {Answers} answers @param {Map<string, Row>} likelihoods @returns {Map<string, Row[]>} */
function variantWeightsOf(model, answers, likelihoods) {
  const { conditions, variants } = model.pack;
  const options = allowedOptions(model.pack, answers);
  const variantWeights = new Map();
  for (const variant of variants.values()) {
    const dependent = [...likelihoods.keys()].filter((condition) => conditions.get(condition).parent === variant.id);
    if (!options.has(variant.id) && !dependent.length) continue;
    const rows = variant.options.map((option, at) => {
      let row = model.variantWeights.get(variant.id)[at];
      if (!(options.get(variant.id)?.has(option) ?? true)) row = row.map(() => 0);
      for (const condition of dependent) {
        row = timesEach(row, expectedLikelihood(model.levelTables.get(condition)[at], likelihoods.get(condition)));
      }
      return row;
    });
    variantWeights.set(variant.id, rows);
  }
  return variantWeights;
}

/** The options each variant may still have; what was said of the variant itself outranks a gate.
 * @param {Pack} pack @param {Answers} answers @returns {Map<string, Set<string>>} */
function allowedOptions(pack, answers) {
  const options = new Map();
  const known = [...pack.observations.values()].filter((o) => (answers.get(o.id) ?? CANT_TELL) !== CANT_TELL);
  for (const { id, reports } of known) if (pack.variants.has(reports)) options.set(reports, new Set([answers.get(id)]));
  for (const { requiresVariant } of known) {
    for (const [variant, allowed] of requiresVariant) {
      const before = options.get(variant) ?? new Set(pack.variants.get(variant).options);
      const narrowed = new Set([...before].filter((option) => allowed.has(option)));
      options.set(variant, narrowed.size ? narrowed : before);
    }
  }
  return options;
}
