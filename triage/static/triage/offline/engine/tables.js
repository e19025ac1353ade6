/* Tables of chances over all hypotheses, each distinct row kept once: that of hypothesis h is `distinct[index[h]]`. */

import { entropy, sumOf, sumOfProducts, timesEach, transposed } from "./arithmetic.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./pack.js").Fault} Fault
 * @typedef {import("./pack.js").Condition} Condition
 * @typedef {{distinct: Row[], index: number[], entropies: Row, transposed: Row[]}} Table `entropies` and `transposed` in tables
 *   of answers only: the entropy of each row, and the rows transposed */

/** Per hypothesis: the sum over values of their chance times `likelihood`.
 * @param {Table} table @param {Row} likelihood @returns {Row} */
export function expectedLikelihood(table, likelihood) {
  const weights = table.distinct.map((row) => sumOfProducts(row, likelihood));
  return table.index.map((place) => weights[place]);
}

/** P(answer | hypothesis); `likelihood` is the likelihood of the levels where answers already speak about them.
 * @param {import("./pack.js").Observation} observation @param {Table} levels @param {Row} [likelihood] @returns {Table} */
export function answerTable(observation, levels, likelihood) {
  const said = transposed(observation.answerProbabilities);
  const distinct = levels.distinct.map((row) => {
    const weighed = likelihood ? timesEach(row, likelihood) : row;
    const total = sumOf(weighed) || 1;
    return said.map((column) => sumOfProducts(weighed, column) / total);
  });
  return { distinct, index: levels.index, entropies: distinct.map(entropy), transposed: transposed(distinct) };
}

/** P(level | hypothesis) for each option of the condition's variant, or one table where it has none.
 * @param {import("./pack.js").Pack} pack @param {Condition} condition @param {Fault[][]} causes @returns {Table[]} */
export function conditionTables(pack, condition, causes) {
  const options = condition.parent ? pack.variants.get(condition.parent).options : [null];
  return options.map((option) => tableFor(condition, causes, option));
}

/** Most causes claim nothing here or what another claims too, so a row is worked out once for each claim.
 * @param {Condition} condition @param {Fault[][]} causes @param {string | null} option @returns {Table} */
function tableFor(condition, causes, option) {
  /** @type {Row[]} */
  const distinct = [];
  const placeOfRow = new Map();
  const placeOfClaim = new Map();
  /** @param {Row[]} claims @returns {number} */
  const placed = (claims) => {
    const row = levelDistribution(condition, claims, option);
    const key = row.join();
    if (!placeOfRow.has(key)) placeOfRow.set(key, distinct.push(row) - 1);
    return placeOfRow.get(key);
  };
  const index = causes.map((faults) => {
    const claims = faults.map((fault) => effectOf(fault, condition, option)).filter(Boolean);
    if (claims.length > 1) return placed(claims);
    if (!placeOfClaim.has(claims[0])) placeOfClaim.set(claims[0], placed(claims));
    return placeOfClaim.get(claims[0]);
  });
  return { distinct, index, entropies: [], transposed: [] };
}

/** @param {Condition} condition @param {Row[]} claims @param {string | null} option @returns {Row} */
function levelDistribution(condition, claims, option) {
  const levels = claims.length ? noisyMax(claims) : condition.baseline;
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
  const claim = mine?.find((effect) => effect.when?.has(option)) ?? mine?.find((effect) => effect.when === null);
  return claim?.levels;
}

/** Noisy-MAX: several causes act independently on ordered levels and the most dominant outcome shows.
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
