/* Which observation is worth asking next: expected information about the family and the band per second of effort.
   Ties fall to the pack's order. */

import { ValueOfInformation } from "./expected_information.js";
import { NONE_OF_THESE, OPENING, SCREEN } from "./pack.js";
import { forbiddenLooks } from "./safety.js";
import { applies, isGiven, ruledOut } from "./answers.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Observation} Observation
 * @typedef {{observation: string, bits: number, bitsPerSecond: number}} QuestionValue
 * @typedef {{observation: Observation, applicability: number}} Askable with the
 *   probability that this oven has what is asked about */

const SECONDS_TO_READ = 20;
const MIN_APPLICABILITY = 0.4;
/* Two engines may differ in the last digits of a logarithm; what is closer than this is a tie. */
const TIE_TOLERANCE = 1e-9;

/** The observation to ask now, or null when the limit is reached, a family is settled or nothing is worth it.
 * @param {Belief} belief @param {Answers} answers @returns {string | null} */
export function nextQuestion(belief, answers) {
  const { pack } = belief.model;
  if (countAsked(pack, answers) >= pack.limits.maxQuestions) return null;
  const information = new ValueOfInformation(belief);
  const askable = askableQuestions(information, answers);
  const urgent = askable.find(({ observation: o }) => o.urgent && isGiven(o.urgentAfter, answers));
  if (urgent) return urgent.observation.id;
  const [likeliest] = belief.families.values();
  return likeliest >= pack.limits.stopProbability ? null : bestQuestion(information, askable);
}

/** After a red flag: what the repairer would still like to know, from memory alone, touching nothing.
 * @param {Belief} belief @param {Answers} answers @returns {string | null} */
export function followUpQuestion(belief, answers) {
  const { pack } = belief.model;
  if (countAsked(pack, answers) >= pack.limits.maxQuestions) return null;
  const information = new ValueOfInformation(belief);
  return bestQuestion(
    information,
    askableQuestions(information, answers).filter(({ observation: o }) => o.method === "memory"),
  );
}

/** The exact worth of one observation, whether or not it may be put as a question.
 * @param {ValueOfInformation} information @param {Observation} observation @returns {QuestionValue} */
export function questionValue(information, observation) {
  return discountedValue(information, observation, information.applicability(observation.requiresVariant));
}

/** How many questions were put: the complaint, the danger page and what the complaint itself said are free.
 * @param {import("./pack.js").Pack} pack @param {Answers} answers */
export function countAsked(pack, answers) {
  let said = new Map();
  for (const line of pack.complaints) {
    if (line.option !== answers.get(OPENING) || line.answers.size <= said.size) continue;
    if ([...line.answers].every(([o, answer]) => answers.get(o) === answer)) said = line.answers;
  }
  const asked = [...answers.keys()].filter((o) => pack.observations.has(o) && !said.has(o));
  return asked.map((o) => pack.observations.get(o)).filter((o) => o.reports && o.id !== OPENING && !o.task).length;
}

/** Observations that exist, were not asked, and are safe now.
 * @param {ValueOfInformation} information @param {Answers} answers @returns {Askable[]} */
function askableQuestions(information, answers) {
  const isScreenDone = answers.get(SCREEN) === NONE_OF_THESE;
  const forbidden = forbiddenLooks(information.belief, answers);
  return information.model.questions
    .filter((o) => !answers.has(o.id) && !forbidden.has(o.id) && o.method !== "trial")
    .filter((o) => !(isScreenDone && information.model.impliedByScreening.has(o.id)))
    .filter((o) => applies(o, answers) && !ruledOut(o.requiresVariant, answers))
    .map((observation) => ({ observation, applicability: information.applicability(observation.requiresVariant) }))
    .filter(({ applicability }) => applicability >= MIN_APPLICABILITY);
}

/** @param {ValueOfInformation} information @param {Askable[]} askable */
function bestQuestion(information, askable) {
  const best = bestValue(information, askable);
  return best && best.bits >= information.model.pack.limits.minBits ? best.observation : null;
}

/** The most worth of them; exact figures are worked out only while a bound could still win.
 * @param {ValueOfInformation} information @param {Askable[]} askable */
function bestValue(information, askable) {
  const bounds = askable.map(({ observation, applicability }, place) => {
    return {
      observation,
      applicability,
      place,
      bound: (applicability * information.maxBits(observation)) / secondsFor(observation),
    };
  });
  const found = [];
  let most = 0;
  for (const { observation, applicability, place, bound } of bounds.sort((one, other) => other.bound - one.bound)) {
    if (bound < most * (1 - TIE_TOLERANCE)) break;
    found[place] = discountedValue(information, observation, applicability);
    most = Math.max(most, found[place].bitsPerSecond);
  }
  return found.find((value) => value && value.bitsPerSecond >= most * (1 - TIE_TOLERANCE));
}

/** @param {ValueOfInformation} information @param {Observation} observation @param {number} applicability
 * @returns {QuestionValue} */
function discountedValue(information, observation, applicability) {
  const bits = applicability * information.bits(observation);
  return { observation: observation.id, bits, bitsPerSecond: bits / secondsFor(observation) };
}

/** @param {Observation} observation */
function secondsFor(observation) {
  return observation.effortSeconds + SECONDS_TO_READ;
}
