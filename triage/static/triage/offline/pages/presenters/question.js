/* One question, and the danger page, which is a question with many answers: as
   `triage/check_pages/presenters/question.py`. */

import { CANT_TELL, NONE_OF_THESE, SCREEN } from "../../engine/pack.js";
import { answersSoFar } from "./answers.js";
import { problemSentences } from "./problems.js";

export function questionPage(visit, observation, number = 1, atMost = 1) {
  const asked = visit.pack.observations.get(observation);
  const text = visit.texts.questions.get(observation);
  return {
    question: text.ask,
    why: text.why,
    how: text.look,
    choices: asked.options.map((option) => {
      return { label: text.options.get(option), href: visit.links.step([[observation, option]]) };
    }),
    cant_tell_href: visit.links.step([[observation, CANT_TELL]]),
    part: asked.picture,
    number,
    at_most: atMost,
    answers: answersSoFar(visit),
    problems: problemSentences(visit),
  };
}

/** The template and the page of a step that asks. */
export function askedPage(visit, step) {
  if (step.observation === SCREEN) return ["danger", dangerPage(visit)];
  const page = questionPage(visit, step.observation, step.number, step.atMost);
  return ["question", { ...page, better: betterTest(visit, step) }];
}

/* The reading's task that would tell more than this question. */
function betterTest(visit, { better }) {
  if (!better) return null;
  return { label: visit.texts.tasks.get(better.id).title, href: visit.links.task(better.id) };
}

/** The danger signs in the order of gravity; each leads on with every answer so far. */
export function dangerPage(visit) {
  const words = visit.texts.start.danger;
  return {
    heading: words.heading,
    intro: words.intro,
    signs: dangerSigns(visit),
    none: { label: words.none, href: visit.links.onward([[SCREEN, NONE_OF_THESE]]), hint: words.none_note },
    answers: answersSoFar(visit),
    chosen_before: visit.reading.answers.get(SCREEN) === NONE_OF_THESE,
    problems: problemSentences(visit),
  };
}

/* One line per sign. Flags that share a sign share its words, so the gravest of them speaks for all. */
function dangerSigns(visit) {
  const lines = new Map();
  for (const flag of [...visit.pack.redFlags.values()].sort((one, other) => one.rank - other.rank)) {
    for (const [observation, option] of flag.signs) {
      const sign = `${observation}=${option}`;
      const line = { label: visit.texts.flags.get(flag.id).sign, href: visit.links.step([[observation, option]]) };
      if (!lines.has(sign)) lines.set(sign, line);
    }
  }
  return [...lines.values()];
}
