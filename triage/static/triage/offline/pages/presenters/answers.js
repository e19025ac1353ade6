/* Questions and answers in the words a person saw: as `triage/check_pages/presenters/answers.py` and
   `triage/jobsheet/wording.py`. */

import { CANT_TELL, SCREEN } from "../../engine/pack.js";
import { answerInFigures } from "./reading_text.js";

export const DID = "did-";

/** The short name of a question; the id where a text has none, so that nothing is ever hidden. */
export function questionWords(visit, observation) {
  const { texts } = visit;
  if (observation === SCREEN) return visit.say("Danger signs");
  if (texts.gates.has(observation)) return texts.gates.get(observation).ask;
  const task = observation.startsWith(DID) ? observation.slice(DID.length) : observation;
  if (texts.tasks.has(task)) return texts.tasks.get(task).title;
  return texts.questions.get(observation)?.short ?? observation;
}

export function answerWords(visit, observation, answer) {
  const { texts } = visit;
  if (answer === CANT_TELL) return visit.say("I can’t tell");
  if (observation === SCREEN) return texts.start.danger.none;
  const words = texts.questions.get(observation)?.options ?? fixedWords(visit);
  return words.get(answer) || answerInFigures(visit, observation, answer) || answer;
}

/* The answers to gates and to "did that fix it?", which are the same for all of them. */
function fixedWords(visit) {
  return new Map([
    ["yes", visit.say("Yes")],
    ["no", visit.say("No")],
    ["unsure", visit.say("Not sure")],
    ["fixed", visit.say("That fixed it")],
    ["not-fixed", visit.say("No change")],
  ]);
}

/** Every answer that holds, or those in `only`, each with the way to answer it again. */
export function answersSoFar(visit, only = null) {
  return [...visit.reading.answers]
    .filter(([observation]) => only === null || only.includes(observation))
    .map(([observation, answer]) => ({
      question: questionWords(visit, observation),
      answer: answerWords(visit, observation, answer),
      change_href: observation === SCREEN ? visit.links.danger() : visit.links.step([], [observation]),
    }));
}
