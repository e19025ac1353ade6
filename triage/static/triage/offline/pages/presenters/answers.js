/* Questions and answers in the words a person saw: as `triage/check_pages/presenters/answers.py` and
   `triage/jobsheet/wording.py`. */

import { CANT_TELL, SCREEN } from "../../engine/pack.js";
import { answerInFigures } from "./reading_text.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest */

export const DID = "did-";

/** The short name of a question; the id where a text has none, so that nothing is ever hidden.
 * @param {CheckRequest} checkRequest @param {string} observation */
export function questionLabel(checkRequest, observation) {
  const { texts } = checkRequest;
  if (observation === SCREEN) return checkRequest.site.pages.labels.screen;
  if (texts.gates.has(observation)) return texts.gates.get(observation).ask;
  const task = observation.startsWith(DID) ? observation.slice(DID.length) : observation;
  if (texts.tasks.has(task)) return texts.tasks.get(task).title;
  return texts.questions.get(observation)?.short ?? observation;
}

/** @param {CheckRequest} checkRequest @param {string} observation @param {string} answer */
export function answerLabel(checkRequest, observation, answer) {
  const { texts } = checkRequest;
  if (answer === CANT_TELL) return checkRequest.site.answerLabels.get(CANT_TELL);
  if (observation === SCREEN) return texts.start.danger.none;
  const labels = texts.questions.get(observation)?.options ?? checkRequest.site.answerLabels;
  return labels.get(answer) || answerInFigures(checkRequest, observation, answer) || answer;
}

/** Every answer that holds, or those in `only`, each with the way to answer it again.
 * @param {CheckRequest} checkRequest @param {string[] | null} [only] */
export function answersSoFar(checkRequest, only = null) {
  return [...checkRequest.answers]
    .filter(([observation]) => only === null || only.includes(observation))
    .map(([observation, answer]) => ({
      question: questionLabel(checkRequest, observation),
      answer: answerLabel(checkRequest, observation, answer),
      change_href: observation === SCREEN ? checkRequest.links.danger() : checkRequest.links.step([], [observation]),
    }));
}
