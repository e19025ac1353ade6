/* One question, and the danger page, which is a question with many answers: as
   `triage/check_pages/presenters/question.py`. */

import { CANT_TELL, NONE_OF_THESE, SCREEN } from "../../engine/pack.js";
import { answersSoFar } from "./answers.js";
import { problemNotes } from "./problems.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/check.js").Question} Question */

/** @param {CheckRequest} checkRequest @param {string} observation @param {number} [number]
 * @param {number} [atMost] */
export function questionPage(checkRequest, observation, number = 1, atMost = 1) {
  const asked = checkRequest.pack.observations.get(observation);
  const text = checkRequest.texts.questions.get(observation);
  return {
    question: text.ask,
    why: text.why,
    how: text.look,
    choices: asked.options.map((option) => {
      return { label: text.options.get(option), href: checkRequest.links.step([[observation, option]]) };
    }),
    cant_tell_href: checkRequest.links.step([[observation, CANT_TELL]]),
    part: asked.picture,
    number,
    at_most: atMost,
    answers: answersSoFar(checkRequest),
    problems: problemNotes(checkRequest),
  };
}

/** The template and the page of a step that asks. @param {CheckRequest} checkRequest @param {Question} step
 * @returns {[template: string, page: any]} */
export function askedPage(checkRequest, step) {
  if (step.observation === SCREEN) return ["danger", dangerPage(checkRequest)];
  const page = questionPage(checkRequest, step.observation, step.number, step.maxQuestions);
  return ["question", { ...page, better: betterTest(checkRequest, step) }];
}

/** The reading's task that would tell more than this question.
 * @param {CheckRequest} checkRequest @param {Question} step */
function betterTest(checkRequest, { betterTest: better }) {
  if (!better) return null;
  return { label: checkRequest.texts.tasks.get(better.id).title, href: checkRequest.links.task(better.id) };
}

/** The danger signs in the order of gravity; each leads on with every answer so far.
 * @param {CheckRequest} checkRequest */
export function dangerPage(checkRequest) {
  const text = checkRequest.texts.start.danger;
  return {
    heading: text.heading,
    intro: text.intro,
    signs: dangerSigns(checkRequest),
    none: { label: text.none, href: checkRequest.links.continueUrl([[SCREEN, NONE_OF_THESE]]), hint: text.none_note },
    answers: answersSoFar(checkRequest),
    chosen_before: checkRequest.answers.get(SCREEN) === NONE_OF_THESE,
    problems: problemNotes(checkRequest),
  };
}

/** One line per sign. Flags that share a sign share its words, so the gravest of them speaks for all.
 * @param {CheckRequest} checkRequest */
function dangerSigns(checkRequest) {
  const lines = new Map();
  for (const flag of [...checkRequest.pack.redFlags.values()].sort((one, other) => one.rank - other.rank)) {
    for (const [observation, option] of flag.signs) {
      const sign = `${observation}=${option}`;
      const line = {
        label: checkRequest.texts.flags.get(flag.id).sign,
        href: checkRequest.links.step([[observation, option]]),
      };
      if (!lines.has(sign)) lines.set(sign, line);
    }
  }
  return [...lines.values()];
}
