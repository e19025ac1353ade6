/* Which of the answers that can be picked the figures fit, without an edge: near one, both are named. As
   `triage/check_pages/presenters/readings/interpretation.py`. */

import { optionLikelihoods } from "../../../engine/readings/evidence.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../../engine/pack.js").Observation} Observation */

export const CLEAR = 0.7;

/** @param {CheckRequest} checkRequest @param {Observation} observation @param {string} text */
export function interpret(checkRequest, observation, text) {
  const likelihoods = optionLikelihoods(observation, text);
  const { short, options } = checkRequest.texts.questions.get(observation.id);
  const ranked = distinctOptions(observation).sort((one, other) => likelihoods[other] - likelihoods[one]);
  const total = ranked.reduce((sum, at) => sum + likelihoods[at], 0);
  const [best, next] = ranked.map((at) => options.get(observation.options[at]));
  return { question: short, best, next, clear: likelihoods[ranked[0]] >= CLEAR * total };
}

/** The places of the options; of two with one span the later one, which says it in figures.
 * @param {Observation} observation */
function distinctOptions({ measurement, options }) {
  return [...new Map(options.map((option, at) => [String(measurement.intervals.get(option) ?? option), at])).values()];
}
