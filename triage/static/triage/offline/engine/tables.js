/* Tables of probabilities over all hypotheses, and the arithmetic on them. As `triage/engine/tables.py`. */

import { sumOf, sumOfProducts, timesEach, transposed } from "./arithmetic.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./pack.js").Fault} Fault
 * @typedef {import("./pack.js").Condition} Condition
 * @typedef {{distinct: Row[], index: number[], entropies: Row, transposed: Row[]}} Table `entropies` and `transposed` in tables
 *   of answers only: the entropy of each row, and the rows transposed */

const RANKED_DIGITS = 9;

/** P(evidence | hypothesis) = sum over values v of P(v | hypothesis) * P(evidence | v); `likelihood` is over values.
 * @param {Table} table @param {Row} likelihood @returns {Row} */
export function expectedLikelihood(table, likelihood) {
  const weights = table.distinct.map((row) => sumOfProducts(row, likelihood));
  return table.index.map((place) => weights[place]);
}

/** P(answer | h, evidence) = sum over levels l of P(answer | l) * P(l | h, evidence), from a table of P(level | h);
 * `likelihood` is P(evidence | level) where answers are already about this condition.
 * @param {import("./pack.js").Observation} observation @param {Table} levels @param {Row} [likelihood] @returns {Table} */
export function answerTable(observation, levels, likelihood) {
  const said = transposed(observation.answerProbabilities);
  const distinct = levels.distinct.map((row) => {
    const joint = likelihood ? timesEach(row, likelihood) : row;
    const total = sumOf(joint) || 1;
    return said.map((column) => sumOfProducts(joint, column) / total);
  });
  return { distinct, index: levels.index, entropies: distinct.map(entropy), transposed: transposed(distinct) };
}

/** P(level | hypothesis) for each option of the condition's variant, or one table where it has none.
 * @param {import("./pack.js").Pack} pack @param {Condition} condition @param {Fault[][]} causes @returns {Table[]} */
export function conditionTables(pack, condition, causes) {
  const options = condition.parent ? pack.variants.get(condition.parent).options : [null];
  return options.map((option) => tableFor(condition, causes, option));
}

/** Most causes leave this condition alone or as another does, so a row is worked out once for each effect.
 * @param {Condition} condition @param {Fault[][]} causes @param {string | null} option @returns {Table} */
function tableFor(condition, causes, option) {
  /** @type {Row[]} */
  const distinct = [];
  const placeOfRow = new Map();
  const placeOfEffect = new Map();
  /** @param {Row[]} effects @returns {number} */
  const placed = (effects) => {
    const row = levelDistribution(condition, effects, option);
    const key = row.join();
    if (!placeOfRow.has(key)) placeOfRow.set(key, distinct.push(row) - 1);
    return placeOfRow.get(key);
  };
  const index = causes.map((faults) => {
    const effects = faults.map((fault) => effectOf(fault, condition, option)).filter(Boolean);
    if (effects.length > 1) return placed(effects);
    if (!placeOfEffect.has(effects[0])) placeOfEffect.set(effects[0], placed(effects));
    return placeOfEffect.get(effects[0]);
  });
  return { distinct, index, entropies: [], transposed: [] };
}

/** @param {Condition} condition @param {Row[]} effects @param {string | null} option @returns {Row} */
function levelDistribution(condition, effects, option) {
  const levels = effects.length ? noisyMax(effects) : condition.baseline;
  if (option === null || !condition.allowedOn.size) return levels;
  /** @param {string} level */
  const isPossible = (level) => condition.allowedOn.get(level)?.has(option) ?? true;
  const possible = levels.map((value, at) => (isPossible(condition.levels[at]) ? value : 0));
  const total = sumOf(possible);
  return possible.map((value) => value / total);
}

/** @param {Fault} fault @param {Condition} condition @param {string | null} option */
function effectOf(fault, condition, option) {
  if (fault.noiseShare) {
    const flat = 1 / condition.levels.length;
    return condition.baseline.map((value) => (1 - fault.noiseShare) * value + fault.noiseShare * flat);
  }
  const mine = fault.effects.get(condition.id);
  const effect = mine?.find((effect) => effect.when?.has(option)) ?? mine?.find((effect) => effect.when === null);
  return effect?.levels;
}

/** The distribution of the most dominant of several independent causes on ordered levels: noisy-MAX.
 * @param {Row[]} distributions @returns {Row} */
function noisyMax(distributions) {
  const below = distributions.map(accumulated).reduce(timesEach);
  return below.map((high, at) => high - (at ? below[at - 1] : 0));
}

/** @param {Row} row @returns {Row} */
function accumulated(row) {
  let sum = 0;
  return row.map((value) => (sum += value));
}

/** Minus the sum of x*log2(x): Shannon's entropy in bits where they sum to one.
 * @param {Row} probabilities */
export function entropy(probabilities) {
  let sum = 0;
  for (const x of probabilities) if (x > 0) sum += x * Math.log2(x);
  return -sum;
}

/** The names, those of the greatest values first; ties keep their order. The last digits of exp and log differ from one
 * computer to the next and must not decide a tie.
 * @param {Map<string, number>} values @returns {string[]} */
export function greatestFirst(values) {
  const rounded = [...values].map(([name, value]) => ({ name, value: Number(value.toPrecision(RANKED_DIGITS)) }));
  return rounded.sort((one, other) => other.value - one.value).map(({ name }) => name);
}
