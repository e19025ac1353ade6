/* A check is a pure function: pack, region and trail in, the next step out. The one entry of the engine. */

import { conclude, tasksFor } from "./advice.js";
import { inferBelief } from "./belief.js";
import { compileModel } from "./model.js";
import { countAsked, followUpQuestion, nextQuestion } from "./next_question.js";
import { SCREEN } from "./pack.js";
import { betterTest } from "./reading_tasks.js";
import { endsCheck, raisedFlags } from "./safety.js";
import { readTrail } from "./trail.js";

/** @typedef {import("./advice.js").Verdict} Verdict
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").RedFlag} RedFlag
 * @typedef {import("./pack.js").Region} Region
 * @typedef {import("./trail.js").Reading} Reading
 * @typedef {import("./pack.js").Task} Task
 * @typedef {{kind: "ask", reading: Reading, observation: string, number: number, atMost: number,
 *   better: Task | null}} Ask `better` is a reading's task that may be done now and would tell more per second
 * @typedef {{kind: "make-safe", reading: Reading, flags: RedFlag[], verdict: Verdict, memory: string | null}} MakeSafe
 * @typedef {{kind: "advice", reading: Reading, verdict: Verdict, cautions: RedFlag[], tasks: Task[]}} Advice
 * @typedef {{kind: "not-this", reading: Reading, reason: string}} NotThis
 * @typedef {Ask | MakeSafe | Advice | NotThis} Step */

/** The next step of a check. Never throws on what the trail holds; its faults are in `reading.problems`.
 * @param {Pack} pack @param {Region} region @param {Iterable<[string, string]>} trail @returns {Step} */
export function advise(pack, region, trail) {
  const reading = readTrail(pack, trail);
  const { answers } = reading;
  const flags = raisedFlags(pack, answers);
  if (endsCheck(flags)) {
    const belief = beliefOf(pack, region, reading);
    const verdict = conclude(belief, answers, flags);
    return { kind: "make-safe", reading, flags, verdict, memory: followUpQuestion(belief, answers) };
  }
  const exit = exitOf(pack, answers);
  if (exit) return { kind: "not-this", reading, reason: exit };
  const ask = (observation, better) => {
    const number = countAsked(pack, answers) + 1;
    return { kind: "ask", reading, observation, number, atMost: pack.limits.maxQuestions, better };
  };
  if (!answers.has(SCREEN)) return ask(SCREEN, null);
  const belief = beliefOf(pack, region, reading);
  const question = nextQuestion(belief, answers);
  if (!question) return finish(region, belief, reading);
  return ask(question, betterTest(region, belief, answers, question));
}

/** The advice on what is known now, whether or not more could be asked.
 * @param {Region} region @param {Belief} belief @param {Reading} reading @returns {Advice} */
export function finish(region, belief, reading) {
  const { answers } = reading;
  const cautions = raisedFlags(belief.model.pack, answers);
  const verdict = conclude(belief, answers, cautions);
  return { kind: "advice", reading, verdict, cautions, tasks: tasksFor(region, belief, answers, verdict.band) };
}

/** The belief a reading of a trail leads to.
 * @param {Pack} pack @param {Region} region @param {Reading} reading @returns {Belief} */
export function beliefOf(pack, region, reading) {
  return inferBelief(compileModel(pack, region), reading.answers);
}

/* The way out for an appliance this is not: the first answer that names one. */
function exitOf(pack, answers) {
  for (const [observation, answer] of answers) {
    const exit = pack.outOfScope.find(([o, option]) => o === observation && option === answer);
    if (exit) return exit[2];
  }
  return null;
}
