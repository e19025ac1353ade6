/* When a reading is worth the trouble: the tasks whose outcome is measured, by expected information per second. As
   `triage/engine/reading_tasks.py`. */

import { ValueOfInformation } from "./expected_information.js";
import { questionValue } from "./next_question.js";
import { mayBeOffered } from "./safety.js";
import { greatestFirst } from "./tables.js";
import { applies, ruledOut } from "./answers.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./next_question.js").QuestionValue} QuestionValue
 * @typedef {import("./pack.js").Task} Task */

const NOTHING_DIGITS = 12;

/** The reading's task that may be done now and is expected to tell more per second than `question`, or null.
 * @param {import("./pack.js").Region} region @param {Belief} belief @param {Answers} answers @param {string} question
 * @returns {Task | null} */
export function betterTest(region, belief, answers, question) {
  const { pack } = belief.model;
  const open = [...pack.tasks.values()].filter((task) => isOpen(pack, task, answers));
  const allowed = mayBeOffered(region, belief, answers, open);
  if (!allowed.length) return null;
  const information = new ValueOfInformation(belief);
  const asked = questionValue(information, pack.observations.get(question));
  const values = valuesOf(information, allowed);
  const [best] = mostTellingFirst(values);
  const { bits, bitsPerSecond } = values.get(best);
  return bitsPerSecond > asked.bitsPerSecond && bits >= pack.limits.minBits ? pack.tasks.get(best) : null;
}

/** The same tasks; those whose outcome is a reading change places among themselves, the most telling first.
 * @param {Belief} belief @param {Task[]} tasks @returns {Task[]} */
export function rankedByValue(belief, tasks) {
  const { pack } = belief.model;
  const readings = tasks.filter((task) => measuredOutcome(pack, task));
  if (readings.length < 2) return tasks;
  const ranked = mostTellingFirst(valuesOf(new ValueOfInformation(belief), readings));
  return tasks.map((task) => (readings.includes(task) ? pack.tasks.get(ranked.shift()) : task));
}

/** What each task's outcome is worth, by the task's id.
 * @param {ValueOfInformation} information @param {Task[]} tasks @returns {Map<string, QuestionValue>} */
function valuesOf(information, tasks) {
  const { observations } = information.model.pack;
  return new Map(tasks.map((task) => [task.id, questionValue(information, observations.get(task.outcome))]));
}

/** What comes to nothing is a tie, however the logarithms miss it. @param {Map<string, QuestionValue>} values */
function mostTellingFirst(values) {
  /** @type {[string, number][]} */
  const rounded = [...values].map(([task, value]) => [task, Number(value.bitsPerSecond.toFixed(NOTHING_DIGITS))]);
  return greatestFirst(new Map(rounded));
}

/** What a task measures, or undefined where its outcome is not a reading. @param {Pack} pack @param {Task} task */
function measuredOutcome(pack, task) {
  const outcome = pack.observations.get(task.outcome);
  return outcome?.measurement ? outcome : undefined;
}

/** Whether its outcome is a reading that no plain question asks for, exists after these answers and is not known.
 * @param {Pack} pack @param {Task} task @param {Answers} answers */
function isOpen(pack, task, answers) {
  const outcome = measuredOutcome(pack, task);
  if (outcome?.method !== "trial" || answers.has(outcome.id)) return false;
  return applies(outcome, answers) && !ruledOut(outcome.requiresVariant, answers);
}
