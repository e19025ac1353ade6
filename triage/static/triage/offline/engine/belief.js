/* The chance of every hypothesis given a set of answers. Exact; the order of the answers cannot matter.

   Answers to observations of one condition multiply into one likelihood over that condition's levels, so a fact told
   five ways is one fact with five witnesses. An answer of "can't tell" is no evidence at all; a reading is a likelihood
   over the options (`readings/evidence.js`). */

import { dividedEach, sumOf, sumOfRows, timesEach } from "./arithmetic.js";
import { CANT_TELL, NONE_OF_THESE, SCREEN } from "./pack.js";
import { levelLikelihood } from "./readings/evidence.js";
import { weighTable } from "./tables.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./model.js").Model} Model
 * @typedef {Map<string, string>} Answers observation to option, in the order given */

/** `chances[h]` sums to one. `seen` is the likelihood of a condition's levels, `kinds` the joint weight of hypothesis
 * and option where anything is known about a variant. */
export class Belief {
  /** @param {Model} model @param {Row} chances @param {Map<string, Row>} seen @param {Map<string, Row[]>} kinds */
  constructor(model, chances, seen, kinds) {
    Object.assign(this, { model, chances, seen, kinds });
    /** The chance that each fault is present, alone or with another, in the pack's order. */
    this.faults = new Map([...model.pack.faults.keys()].map((fault) => [fault, 0]));
    model.hypotheses.forEach((hypothesis, h) => {
      for (const fault of hypothesis.faults) this.faults.set(fault, this.faults.get(fault) + chances[h]);
    });
  }

  /** The chance of each family, most likely first; a pair counts for the fault its job is named after. */
  get families() {
    const totals = new Map();
    this.model.hypotheses.forEach(({ family }, h) => {
      totals.set(family, (totals.get(family) ?? 0) + this.chances[h]);
    });
    return new Map([...totals].sort(([, one], [, other]) => other - one));
  }

  /** Fault ids, most likely first; ties keep the pack's order. */
  get ranking() {
    return [...this.faults].sort(([, one], [, other]) => other - one).map(([fault]) => fault);
  }
}

/** The belief after answers that already fit together.
 * @param {Model} model @param {Answers} answers @returns {Belief} */
export function believe(model, answers) {
  const seen = likelihoodsOf(model, answers);
  const kinds = kindsOf(model, answers, seen);
  let weights = model.prior;
  for (const [condition, likelihood] of seen) {
    if (model.pack.conditions.get(condition).given !== null) continue;
    weights = timesEach(weights, weighTable(model.levels.get(condition)[0], likelihood));
  }
  for (const [variant, rows] of kinds) {
    weights = timesEach(weights, dividedEach(sumOfRows(rows), model.reach.get(variant)));
  }
  const total = sumOf(weights);
  return new Belief(
    model,
    weights.map((weight) => weight / total),
    seen,
    kinds,
  );
}

/* The likelihood over each reported condition's levels; danger signs not ticked count as "not this". */
function likelihoodsOf(model, answers) {
  const { observations } = model.pack;
  const found = [];
  for (const [o, answer] of answers) {
    if (answer === CANT_TELL || !model.answers.has(o)) continue;
    const observation = observations.get(o);
    found.push([observation.reports, levelLikelihood(observation, answer)]);
  }
  if (answers.get(SCREEN) === NONE_OF_THESE) {
    for (const [o, row] of model.harmless) {
      if ((answers.get(o) ?? CANT_TELL) === CANT_TELL) found.push([observations.get(o).reports, row]);
    }
  }
  const seen = new Map();
  for (const [condition, witness] of found.sort(byConditionAndRow)) {
    seen.set(condition, seen.has(condition) ? timesEach(seen.get(condition), witness) : witness);
  }
  return seen;
}

function byConditionAndRow([one, row], [other, otherRow]) {
  if (one !== other) return one < other ? -1 : 1;
  const at = row.findIndex((value, place) => value !== otherRow[place]);
  return at < 0 ? 0 : row[at] - otherRow[at];
}

/* Joint weight of hypothesis and option for each variant that an answer, a gate or a condition speaks about. */
function kindsOf(model, answers, seen) {
  const { conditions, variants } = model.pack;
  const told = toldOf(model.pack, answers);
  const kinds = new Map();
  for (const variant of variants.values()) {
    const dependent = [...seen.keys()].filter((condition) => conditions.get(condition).given === variant.id);
    if (!told.has(variant.id) && !dependent.length) continue;
    const rows = variant.options.map((option, at) => {
      let row = model.kinds.get(variant.id)[at];
      if (!(told.get(variant.id)?.has(option) ?? true)) row = row.map(() => 0);
      for (const condition of dependent) {
        row = timesEach(row, weighTable(model.levels.get(condition)[at], seen.get(condition)));
      }
      return row;
    });
    kinds.set(variant.id, rows);
  }
  return kinds;
}

/* The options each variant may still have; what was said of the variant itself outranks a gate. */
function toldOf(pack, answers) {
  const told = new Map();
  const known = [...pack.observations.values()].filter((o) => (answers.get(o.id) ?? CANT_TELL) !== CANT_TELL);
  for (const { id, reports } of known) if (pack.variants.has(reports)) told.set(reports, new Set([answers.get(id)]));
  for (const { needs } of known) {
    for (const [variant, allowed] of needs) {
      const before = told.get(variant) ?? new Set(pack.variants.get(variant).options);
      const narrowed = new Set([...before].filter((option) => allowed.has(option)));
      told.set(variant, narrowed.size ? narrowed : before);
    }
  }
  return told;
}
