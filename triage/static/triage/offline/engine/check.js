/* A check is a pure function: pack, region and answers in, everything they come to out. The one entry of the engine. */

import { conclude, tasksFor } from "./advice.js";
import { parseAnswers } from "./answers.js";
import { inferBelief } from "./belief.js";
import { compileModel } from "./model.js";
import { countAsked, followUpQuestion, nextQuestion } from "./next_question.js";
import { SCREEN } from "./pack.js";
import { betterTest } from "./reading_tasks.js";
import { endsCheck, raisedFlags } from "./safety.js";

/** @typedef {import("./advice.js").Verdict} Verdict
 * @typedef {import("./answers.js").ParsedAnswers} ParsedAnswers
 * @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").RedFlag} RedFlag
 * @typedef {import("./pack.js").Region} Region
 * @typedef {import("./pack.js").Task} Task
 * @typedef {{kind: "question", observation: string, number: number, maxQuestions: number, betterTest: Task | null}}
 *   Question `betterTest` is a measurement's task that may be done now and would tell more per second
 * @typedef {{kind: "emergency", flags: RedFlag[], verdict: Verdict, followUpQuestion: string | null}} Emergency
 * @typedef {{kind: "result", verdict: Verdict, cautions: RedFlag[], tasks: Task[]}} Result
 * @typedef {{kind: "out-of-scope", reason: string}} OutOfScope
 * @typedef {Question | Emergency | Result | OutOfScope} Step */

/** What answers come to. Flags, belief and step are worked out once, and only for who asks for them. */
export class Check {
  /** @type {RedFlag[] | null} */
  #flags = null;
  /** @type {Belief | null} */
  #belief = null;
  /** @type {Step | null} */
  #step = null;

  /** @param {Pack} pack @param {Region} region @param {ParsedAnswers} parsed */
  constructor(pack, region, { answers, problems }) {
    this.pack = pack;
    this.region = region;
    this.answers = answers;
    this.problems = problems;
  }

  /** The red flags that were raised, the first to act on first. */
  get flags() {
    this.#flags ??= raisedFlags(this.pack, this.answers);
    return this.#flags;
  }

  get belief() {
    this.#belief ??= inferBelief(compileModel(this.pack, this.region), this.answers);
    return this.#belief;
  }

  /** What comes next. @returns {Step} */
  get step() {
    this.#step ??= stepOf(this);
    return this.#step;
  }
}

/** The check these answers make. Never throws on what they hold; what was wrong with them is in `problems`.
 * @param {Pack} pack @param {Region} region @param {Iterable<[string, string]>} pairs @returns {Check} */
export function runCheck(pack, region, pairs) {
  return new Check(pack, region, parseAnswers(pack, pairs));
}

/** Red flags are looked at before anything else, and ways out before any probability.
 * @param {Check} check @returns {Step} */
function stepOf(check) {
  const { pack, region, answers } = check;
  if (endsCheck(check.flags)) return emergencyOf(check);
  const reason = exitOf(pack, answers);
  if (reason) return { kind: "out-of-scope", reason };
  /** @param {string} observation @param {Task | null} better @returns {Question} */
  const ask = (observation, better) => {
    const number = countAsked(pack, answers) + 1;
    return { kind: "question", observation, number, maxQuestions: pack.limits.maxQuestions, betterTest: better };
  };
  if (!answers.has(SCREEN)) return ask(SCREEN, null);
  const question = nextQuestion(check.belief, answers);
  return question ? ask(question, betterTest(region, check.belief, answers, question)) : resultOf(check);
}

/** @param {Check} check @returns {Emergency} */
function emergencyOf({ belief, answers, flags }) {
  const verdict = conclude(belief, answers, flags);
  return { kind: "emergency", flags, verdict, followUpQuestion: followUpQuestion(belief, answers) };
}

/** @param {Check} check @returns {Result} */
function resultOf({ region, belief, answers, flags }) {
  const verdict = conclude(belief, answers, flags);
  return { kind: "result", verdict, cautions: flags, tasks: tasksFor(region, belief, answers, verdict.band) };
}

/** The way out for an appliance this is not: the first answer that names one.
 * @param {Pack} pack @param {Answers} answers */
function exitOf(pack, answers) {
  for (const [observation, answer] of answers) {
    const exit = pack.outOfScope.find(([o, option]) => o === observation && option === answer);
    if (exit) return exit[2];
  }
  return null;
}
