/* How much each answer says for a cause: weight of evidence in decibans, 10*log10 of the Bayes factor (Good 1950).

   Answers are taken in the order given, so the weights of a trail add up to the change of the cause's log odds. */

import { inferBelief } from "./belief.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {{observation: string, answer: string, decibans: number}} Weight */

const MIN_PROBABILITY = 1e-12;

/** For each of `faults`, the weight of every answer in the order given.
 * @param {import("./model.js").Model} model @param {Answers} answers @param {string[]} faults
 * @returns {Map<string, Weight[]>} */
export function weightsOfEvidence(model, answers, faults) {
  const known = new Map();
  const beliefs = [inferBelief(model, known)];
  for (const [observation, answer] of answers) {
    known.set(observation, answer);
    beliefs.push(inferBelief(model, known));
  }
  /** @param {string} fault */
  const weightsFor = (fault) => {
    const odds = beliefs.map((belief) => decibansOf(belief.faults.get(fault)));
    return [...answers].map(([observation, answer], at) => {
      return { observation, answer, decibans: odds[at + 1] - odds[at] };
    });
  };
  return new Map(faults.map((fault) => [fault, weightsFor(fault)]));
}

/** @param {number} chance */
function decibansOf(chance) {
  const bounded = Math.min(Math.max(chance, MIN_PROBABILITY), 1 - MIN_PROBABILITY);
  return 10 * Math.log10(bounded / (1 - bounded));
}
