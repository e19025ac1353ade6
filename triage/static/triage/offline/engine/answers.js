/* The answers so far, read from anything a person or a forger may send. Never throws on what a trail says.

   Every answer that still fits is kept; each that does not becomes a problem with its reason. What is kept depends on
   the set of answers, not on their order. */

import { CANT_TELL, NONE_OF_THESE, SCREEN, stops } from "./pack.js";
import { flagsRaisedBy, invalidReason } from "./readings/evidence.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./pack.js").Gate} Gate
 * @typedef {import("./pack.js").Observation} Observation
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").RedFlag} RedFlag
 * @typedef {{kind: "unknown-question" | "unknown-answer" | "unreadable-reading" | "contradiction" | "retired" |
 *   "out-of-place" | "too-many", observation: string, answer: string, detail: string}} AnswerProblem `detail` says why a
 *   reading is unreadable
 * @typedef {{answers: Answers, problems: AnswerProblem[]}} ParsedAnswers */

const MAX_ANSWERS = 120;
const MAX_ID_LENGTH = 60;

/** The usable answers of a trail and what was wrong with the others.
 * @param {Pack} pack @param {Iterable<[string, string]>} pairs @returns {ParsedAnswers} */
export function parseAnswers(pack, pairs) {
  /** @type {AnswerProblem[]} */
  const problems = [];
  const choices = new Map();
  let tooMany = false;
  let number = 0;
  for (const [observation, answer] of pairs) {
    const problem = misnamed(pack, observation, answer);
    if (number >= MAX_ANSWERS && (problem || !endsByItself(pack, observation, answer))) {
      tooMany = true; // a danger sign is read wherever it stands
    } else if (problem) {
      problems.push(problem);
    } else {
      choices.set(observation, (choices.get(observation) ?? new Set()).add(answer));
    }
    number += 1;
  }
  if (tooMany) problems.push(problemOf("too-many", ""));
  const answers = new Map();
  for (const [observation, given] of choices) {
    const kept = given.size === 1 ? [...given][0] : safestOf(pack, observation, given);
    if (given.size > 1) problems.push(problemOf("contradiction", observation));
    if (kept) answers.set(observation, kept);
  }
  return inPlace(pack, answers, problems);
}

/** Whether the answers that make an observation exist were given.
 * @param {Observation} observation @param {Answers} answers */
export function applies(observation, answers) {
  return isGiven(observation.requiresAnswers, answers);
}

/** Whether every observation that `gate` names has one of the answers it allows.
 * @param {Gate} gate @param {Answers} answers */
export function isGiven(gate, answers) {
  return [...gate].every(([observation, options]) => options.has(answers.get(observation)));
}

/** Whether a stated variant excludes what `needs` asks for.
 * @param {Gate} needs @param {Answers} answers */
export function ruledOut(needs, answers) {
  return [...needs].some(([variant, allowed]) => {
    const answer = answers.get(variant) ?? CANT_TELL;
    return answer !== CANT_TELL && !allowed.has(answer);
  });
}

/** @param {AnswerProblem["kind"]} kind @param {string} observation @returns {AnswerProblem} */
function problemOf(kind, observation, answer = "", detail = "") {
  return { kind, observation, answer, detail };
}

/** @param {Pack} pack @param {string} observation @param {string} answer */
function misnamed(pack, observation, answer) {
  const shown = shortened(observation);
  if (observation === SCREEN) {
    return answer === NONE_OF_THESE ? null : problemOf("unknown-answer", shown, shortened(answer));
  }
  if (pack.retired.has(observation)) return problemOf("retired", shown);
  if (!pack.observations.has(observation)) return problemOf("unknown-question", shown);
  const reason = invalidReason(pack.observations.get(observation), answer);
  if (reason === null) return null;
  if (!pack.observations.get(observation).measurement) return problemOf("unknown-answer", shown, shortened(answer));
  return problemOf("unreadable-reading", shown, shortened(answer), reason);
}

/** By whole letters, so that no half of one is left over. @param {string} text */
function shortened(text) {
  return text.length > MAX_ID_LENGTH ? [...text].slice(0, MAX_ID_LENGTH).join("") : text;
}

/** The red flags this answer raises, whatever else was said.
 * @param {Pack} pack @param {string} observation @param {string} answer @returns {RedFlag[]} */
function flagsOf(pack, observation, answer) {
  const asked = pack.observations.get(observation);
  return asked ? flagsRaisedBy(asked, answer).map((flag) => pack.redFlags.get(flag)) : [];
}

/** @param {Pack} pack @param {string} observation @param {string} answer */
function endsByItself(pack, observation, answer) {
  return flagsOf(pack, observation, answer).some(stops);
}

/** Of contradicting answers the one that raises the gravest flag, else none: it is asked again.
 * @param {Pack} pack @param {string} observation @param {Set<string>} choices */
function safestOf(pack, observation, choices) {
  /** @param {RedFlag} one @param {RedFlag} other */
  const byGravity = (one, other) => Number(stops(other)) - Number(stops(one)) || one.rank - other.rank;
  /** @param {string} choice */
  const gravestOf = (choice) => flagsOf(pack, observation, choice).sort(byGravity)[0];
  const flagged = [...choices].map((choice) => ({ choice, flag: gravestOf(choice) })).filter(({ flag }) => flag);
  return flagged.sort((one, other) => byGravity(one.flag, other.flag))[0]?.choice;
}

/** Set aside answers to questions that do not exist on this oven or after these answers; flags always stay.
 * @param {Pack} pack @param {Answers} answers @param {AnswerProblem[]} problems @returns {ParsedAnswers} */
function inPlace(pack, answers, problems) {
  let kept = answers;
  for (;;) {
    const out = [...kept].filter(([o]) => o !== SCREEN && isOutOfPlace(pack.observations.get(o), kept));
    if (!out.length) return { answers: kept, problems };
    for (const [o, answer] of out) problems.push(problemOf("out-of-place", o, answer));
    const outside = new Set(out.map(([o]) => o));
    kept = new Map([...kept].filter(([o]) => !outside.has(o)));
  }
}

/** @param {Observation} observation @param {Answers} answers */
function isOutOfPlace(observation, answers) {
  const answer = answers.get(observation.id);
  if (answer === CANT_TELL || flagsRaisedBy(observation, answer).length) return false;
  return !applies(observation, answers) || ruledOut(observation.requiresVariant, answers);
}
