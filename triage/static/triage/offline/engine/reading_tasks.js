/* When a reading is worth the trouble: the tasks whose outcome is measured, by expected information per second. As
   `triage/engine/reading_tasks.py`. */

import { ValueOfInformation } from "./expected_information.js";
import { questionValue } from "./next_question.js";
import { mayBeOffered } from "./safety.js";
import { applies, ruledOut } from "./answers.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").Task} Task */

/** The reading's task that may be done now and is expected to tell more per second than `question`, or null.
 * @param {import("./pack.js").Region} region @param {Belief} belief @param {Answers} answers @param {string} question
 * @returns {Task | null} */
export function betterTest(region, belief, answers, question) {
  const { pack } = belief.model;
  const open = [...pack.tasks.values()].filter((task) => isOpenReading(pack, task, answers));
  const allowed = mayBeOffered(region, belief, answers, open);
  if (!allowed.length) return null;
  const outlook = new ValueOfInformation(belief);
  const asked = questionValue(outlook, pack.observations.get(question));
  const worths = allowed.map((task) => questionValue(outlook, pack.observations.get(task.outcome)));
  const best = worths.reduce((most, worth) => (worth.bitsPerSecond > most.bitsPerSecond ? worth : most));
  const isBetter = best.bitsPerSecond > asked.bitsPerSecond && best.bits >= pack.limits.minBits;
  return isBetter ? allowed[worths.indexOf(best)] : null;
}

/** The same tasks; those whose outcome is a reading change places among themselves, the most telling first.
 * @param {Belief} belief @param {Task[]} tasks @returns {Task[]} */
export function rankedByValue(belief, tasks) {
  const { pack } = belief.model;
  const readings = tasks.filter((task) => readingOf(pack, task));
  if (readings.length < 2) return tasks;
  const outlook = new ValueOfInformation(belief);
  /** @param {Task} task */
  const worthOfTask = (task) => questionValue(outlook, pack.observations.get(task.outcome)).bitsPerSecond;
  const worths = new Map(readings.map((task) => [task, worthOfTask(task)]));
  const ranked = [...readings].sort((one, other) => worths.get(other) - worths.get(one));
  return tasks.map((task) => (worths.has(task) ? ranked.shift() : task));
}

/** What a task measures, or undefined where its outcome is not a reading. @param {Pack} pack @param {Task} task */
function readingOf(pack, task) {
  const outcome = pack.observations.get(task.outcome);
  return outcome?.measurement ? outcome : undefined;
}

/** Whether its outcome is a reading that no plain question asks for, exists after these answers and is not known.
 * @param {Pack} pack @param {Task} task @param {Answers} answers */
function isOpenReading(pack, task, answers) {
  const outcome = readingOf(pack, task);
  if (outcome?.method !== "trial" || answers.has(outcome.id)) return false;
  return applies(outcome, answers) && !ruledOut(outcome.requiresVariant, answers);
}
