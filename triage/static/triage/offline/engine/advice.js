/* From a belief to what to tell the person: the band, the causes, what cannot be told apart, the tasks.

   The band follows the belief only where no rule speaks; a caution keeps it from falling below `qualified`, and when
   the belief is divided the stricter reading wins. */

import { inferBelief } from "./belief.js";
import { weightsOfEvidence } from "./explanation.js";
import { BANDS } from "./pack.js";
import { rankedByValue } from "./reading_tasks.js";
import { flagsRaisedBy } from "./readings/evidence.js";
import { endsCheck, offeredTasks } from "./safety.js";
import { parseAnswers } from "./answers.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./model.js").Model} Model
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Band} Band
 * @typedef {import("./pack.js").RedFlag} RedFlag
 * @typedef {{fault: string, chance: number, weights: import("./explanation.js").Weight[]}} Cause
 * @typedef {{band: Band, family: string, causes: Cause[], alike: string[], alsoCheck: string[]}} Verdict */

const MAKE_SAFE_SHARE = 0.65;
const MOST_CAUTIONS = 4;
const HARMLESS_SHARE = 0.5;
const MOST_CAUSES = 5;
const SMALLEST_CAUSE = 0.03;
const ALIKE_RATIO = 0.1;
const ALIKE_CHANCE = 0.005;

/** The verdict on these answers; `flags` are the red flags they raise.
 * @param {Belief} belief @param {Answers} answers @param {RedFlag[]} flags @returns {Verdict} */
export function conclude(belief, answers, flags) {
  const { faults, ranking } = belief;
  const likely = ranking.slice(0, MOST_CAUSES).filter((fault) => faults.get(fault) >= SMALLEST_CAUSE);
  const leading = likely.length ? likely : [ranking[0]];
  const weights = weightsOfEvidence(belief.model, answers, leading);
  const [family] = belief.families.keys();
  return {
    band: decideBand(belief, answers, flags),
    family,
    causes: leading.map((fault) => ({ fault, chance: faults.get(fault), weights: weights.get(fault) })),
    alike: alikeTo(belief),
    alsoCheck: comesWith(belief, leading[0]),
  };
}

/** The advice level. Red flags that end the check always give `make-safe`; a caution never lowers it, not even by what
 * it tells about the cause: the belief without any of them counts as well.
 * @param {Belief} belief @param {Answers} answers @param {RedFlag[]} flags @returns {Band} */
export function decideBand(belief, answers, flags) {
  if (endsCheck(flags) || flags.length > MOST_CAUTIONS) return "make-safe";
  const { observations } = belief.model.pack;
  /** @param {[string, string]} answered */
  const raises = ([o, answer]) => observations.has(o) && flagsRaisedBy(observations.get(o), answer).length;
  const cautions = flags.length ? [...answers].filter(raises).map(([o]) => o) : [];
  for (const leftOut of subsetsOf(cautions)) {
    const share = bandShares(leftOut.length ? beliefWithout(belief.model, answers, leftOut) : belief);
    if (share.get("make-safe") >= MAKE_SAFE_SHARE) return "make-safe";
  }
  const share = bandShares(belief);
  if (flags.length || share.get("self-check") + share.get("normal") < HARMLESS_SHARE) return "qualified";
  return share.get("normal") > share.get("self-check") ? "normal" : "self-check";
}

/** What the person may do: nothing at all where the band says make it safe.
 * @param {import("./pack.js").Region} region @param {Belief} belief @param {Answers} answers @param {Band} band */
export function tasksFor(region, belief, answers, band) {
  return band === "make-safe" ? [] : rankedByValue(belief, offeredTasks(region, belief, answers));
}

/** @param {Model} model @param {Answers} answers @param {string[]} leftOut */
function beliefWithout(model, answers, leftOut) {
  const rest = [...answers].filter(([o]) => !leftOut.includes(o));
  return inferBelief(model, parseAnswers(model.pack, rest).answers);
}

/** @param {string[]} items @returns {string[][]} */
function subsetsOf(items) {
  /** @type {string[][]} */
  const none = [[]];
  return items.reduce((subsets, item) => [...subsets, ...subsets.map((subset) => [...subset, item])], none);
}

/** The chance of each band, a pair counting for the graver of its two. @param {Belief} belief */
function bandShares(belief) {
  const share = new Map(BANDS.map((band) => [band, 0]));
  belief.model.hypotheses.forEach(({ band }, h) => share.set(band, share.get(band) + belief.probabilities[h]));
  return share;
}

/** The leading fault and those nobody can tell from it without opening the oven, likeliest first.
 * @param {Belief} belief @returns {string[]} */
function alikeTo({ model, faults, ranking }) {
  const [first] = ranking;
  const { family } = model.pack.faults.get(first);
  const groups = model.pack.lookAlikes.filter((group) => group.has(first));
  /** @param {string} fault */
  const isNear = (fault) =>
    (model.pack.faults.get(fault).family === family && faults.get(fault) >= ALIKE_RATIO * faults.get(first)) ||
    (groups.some((group) => group.has(fault)) && faults.get(fault) >= ALIKE_CHANCE);
  return ranking.filter(isNear);
}

/** Faults that come with the leading one: known chains either way.
 * @param {Belief} belief @param {string} leading @returns {string[]} */
function comesWith({ model, faults }, leading) {
  const chains = model.pack.faultPairs.filter((pair) => pair.causal && [pair.cause, pair.effect].includes(leading));
  const others = chains.map((pair) => (pair.cause === leading ? pair.effect : pair.cause));
  return [...new Set(others.filter((fault) => faults.get(fault) >= SMALLEST_CAUSE / 3))];
}
