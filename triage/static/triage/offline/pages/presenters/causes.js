/* Chances as natural frequencies, and which answers speak for and against a cause: as
   `triage/check_pages/presenters/causes.py`. */

import { answerLabel, questionLabel } from "./answers.js";

/** @typedef {import("../../engine/advice.js").Cause} Cause
 * @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/advice.js").Verdict} Verdict */

const MIN_DECIBANS = 1.0;
const MAX_LINES = 4;
const SMALL = 0.1;
const GREAT = 0.95;

/** @param {CheckRequest} checkRequest @param {Verdict} verdict */
export function causesOf(checkRequest, verdict) {
  return verdict.causes.map((cause) => causeShown(checkRequest, cause));
}

/** How many of ten ovens; ten for more than nine. @param {number} chance */
export function perTen(chance) {
  if (chance >= GREAT) return 10;
  return chance < SMALL ? 0 : Math.floor(chance * 10 + 0.5);
}

/** @param {CheckRequest} checkRequest @param {Cause} cause */
function causeShown(checkRequest, { fault, chance, weights }) {
  const text = checkRequest.texts.faults.get(fault);
  return {
    name: text.name,
    per_ten: perTen(chance),
    explanation: text.means,
    points_to: heaviestLines(
      checkRequest,
      weights.filter(({ decibans }) => decibans >= MIN_DECIBANS),
    ),
    points_away: heaviestLines(
      checkRequest,
      weights.filter(({ decibans }) => decibans <= -MIN_DECIBANS),
    ),
    part: text.picture,
  };
}

/** The heaviest answers first, as "question: answer". @param {CheckRequest} checkRequest @param {Cause["weights"]} weights */
function heaviestLines(checkRequest, weights) {
  const heaviest = weights.sort((one, other) => Math.abs(other.decibans) - Math.abs(one.decibans));
  return heaviest.slice(0, MAX_LINES).map(({ observation, answer }) => {
    return `${questionLabel(checkRequest, observation)}: ${answerLabel(checkRequest, observation, answer)}`;
  });
}
