/* A pack seen from one region, compiled for reasoning: hypotheses, their prior, and a table per condition. As
   `triage/engine/model.py`, which says why; `tables.js` holds the tables' arithmetic. */

import { dividedEach, sumOf, sumOfRows, timesEach } from "./arithmetic.js";
import { OPENING, severity, stops } from "./pack.js";
import { answerTable, conditionTables } from "./tables.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {import("./pack.js").Fault} Fault
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").Variant} Variant
 * @typedef {import("./pack.js").Region} Region
 * @typedef {import("./pack.js").Observation} Observation
 * @typedef {import("./tables.js").Table} Table
 * @typedef {{faults: string[], family: string, band: import("./pack.js").Band}} Hypothesis
 * @typedef {{pack: Pack, region: Region, hypotheses: Hypothesis[], variantWeights: Map<string, Row[]>,
 *   levelTables: Map<string, Table[]>, answerTables: Map<string, Table[]>, screenedLikelihood: Map<string, Row>,
 *   impliedByScreening: Set<string>, questions: Observation[], variantTotals: Map<string, Row>, optionProbabilities: Map<string, Row[]>,
 *   prior: Row}} Model */

const MIN_SHARE = 1e-6;

/** @type {WeakMap<Pack, WeakMap<Region, Model>>} */
const compiled = new WeakMap();

/** The model of `pack` in `region`, compiled once.
 * @param {Pack} pack @param {Region} region @returns {Model} */
export function compileModel(pack, region) {
  if (!compiled.has(pack)) compiled.set(pack, new WeakMap());
  const models = compiled.get(pack);
  if (!models.has(region)) models.set(region, compileAfresh(pack, region));
  return models.get(region);
}

/** @param {Pack} pack @param {Region} region @returns {Model} */
function compileAfresh(pack, region) {
  const variants = [...pack.variants.values()];
  const possible = combinations(pack).filter(([faults]) => variants.every((variant) => canOccur(faults, variant)));
  const causes = possible.map(([faults]) => faults);
  const variantWeights = new Map(
    variants.map((variant) => [variant.id, variantWeightRows(variant, sharesIn(region, variant), causes)]),
  );
  const variantTotals = new Map([...variantWeights].map(([variant, rows]) => [variant, sumOfRows(rows)]));
  const levels = new Map([...pack.conditions.values()].map((c) => [c.id, conditionTables(pack, c, causes)]));
  const reporting = [...pack.observations.values()].filter((o) => levels.has(o.reports));
  const screened = reporting.filter((o) => isScreened(pack, o));
  return {
    pack,
    region,
    hypotheses: causes.map(hypothesisOf),
    variantWeights,
    levelTables: levels,
    answerTables: new Map(reporting.map((o) => [o.id, levels.get(o.reports).map((table) => answerTable(o, table))])),
    screenedLikelihood: new Map(screened.map((o) => [o.id, screenedLikelihoodRow(pack, o)])),
    impliedByScreening: new Set(screened.filter((o) => harmlessOptions(pack, o).length === 1).map((o) => o.id)),
    questions: [...pack.observations.values()].filter((o) => o.reports && !o.task && o.id !== OPENING),
    variantTotals,
    optionProbabilities: new Map(
      [...variantWeights].map(([v, rows]) => [v, rows.map((row) => dividedEach(row, variantTotals.get(v)))]),
    ),
    prior: [...variantTotals.values()].reduce(
      timesEach,
      possible.map(([, rate]) => rate),
    ),
  };
}

/** Every single fault, then the pairs, with their rates before any variant is considered.
 * @param {Pack} pack @returns {[faults: Fault[], rate: number][]} */
function combinations(pack) {
  /** @param {string} id */
  const named = (id) => pack.faults.get(id);
  /** @type {[Fault[], number][]} */
  const single = [...pack.faults.values()].map((fault) => [[fault], fault.callsPer1000 * fault.onlineRatio]);
  /** @type {[Fault[], number][]} */
  const pairs = pack.faultPairs.map((pair) => [[named(pair.cause), named(pair.effect)], pair.ratePer1000]);
  return [...single, ...pairs];
}

/** @param {Fault[]} faults @returns {Hypothesis} */
function hypothesisOf(faults) {
  const bands = faults.map((fault) => fault.band);
  const gravest = bands.reduce((worst, band) => (severity(band) > severity(worst) ? band : worst));
  return { faults: faults.map((fault) => fault.id), family: faults[0].family, band: gravest };
}

/** Share of each option in the region; one never seen there is rare, not impossible.
 * @param {Region} region @param {Variant} variant @returns {Row} */
function sharesIn(region, variant) {
  const own = region.shares.get(variant.id);
  const stated = variant.options.map((option, at) => (own?.size ? (own.get(option) ?? 0) : variant.shares[at]));
  const shares = stated.map((share) => Math.max(share, MIN_SHARE));
  const total = sumOf(shares);
  return shares.map((share) => share / total);
}

/** Whether some option of the variant suits all of the faults; no option is so rare that it has no share.
 * @param {Fault[]} faults @param {Variant} variant */
function canOccur(faults, variant) {
  const required = faults.map((fault) => fault.requiresVariant.get(variant.id)).filter(Boolean);
  return !required.length || variant.options.some((option) => required.every((allowed) => allowed.has(option)));
}

/** Zero where a fault cannot occur on this option, else how much more often it does.
 * @param {Fault[]} faults @param {Variant} variant @param {string} option */
function rateMultiplier(faults, variant, option) {
  let factor = 1;
  for (const fault of faults) {
    if (!(fault.requiresVariant.get(variant.id)?.has(option) ?? true)) return 0;
    factor *= fault.rateMultipliers.get(variant.id)?.get(option) ?? 1;
  }
  return factor;
}

/** @param {Variant} variant @param {Row} shares @param {Fault[][]} causes @returns {Row[]} */
function variantWeightRows(variant, shares, causes) {
  return variant.options.map((option, at) =>
    causes.map((faults) => rateMultiplier(faults, variant, option) * shares[at]),
  );
}

/** Whether the danger page asks after this observation: some of its answers stand there as a sign.
 * @param {Pack} pack @param {Observation} observation */
function isScreened(pack, observation) {
  return [...pack.redFlags.values()].some((flag) => flag.signs.some(([name]) => name === observation.id));
}

/** The answers that do not end the check. @param {Pack} pack @param {Observation} observation */
function harmlessOptions(pack, observation) {
  /** @param {string} option */
  const ends = (option) => observation.flags.has(option) && stops(pack.redFlags.get(observation.flags.get(option)));
  return observation.options.filter((option) => !ends(option));
}

/** @param {Pack} pack @param {Observation} observation @returns {Row} */
function screenedLikelihoodRow(pack, observation) {
  const places = harmlessOptions(pack, observation).map((option) => observation.options.indexOf(option));
  return observation.answerProbabilities.map((row) => sumOf(places.map((place) => row[place])));
}
