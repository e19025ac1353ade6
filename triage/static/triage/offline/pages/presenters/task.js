/* One task: offered or not, its gates, and only then its steps. As `triage/check_pages/presenters/task.py`: whether it
   is offered comes from the engine for exactly these answers; an address alone never opens it. */

import { CANT_TELL } from "../../engine/pack.js";
import { roundHalfEven } from "../rounding.js";
import { DID, answerLabel } from "./answers.js";
import { problemNotes } from "./problems.js";
import { measuredBy, readingForm } from "./readings/form.js";
import { OFF_AT_THE_SUPPLY, instructionsOf, fullIsolation } from "./isolation.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/pack.js").Task} Task
 * @typedef {import("../wording.js").TaskText} TaskText
 * @typedef {(more: [string, string][]) => string} Here the address of this page with more answers */

const COLD = "cold";
const TOUCHED = "lamp-glass-seal";
const COLDEST = ["lamp", "glass", "seal", "hinge", "door"];

/** @param {CheckRequest} checkRequest @param {string} name */
export function taskPage(checkRequest, name) {
  const task = checkRequest.pack.tasks.get(name);
  const text = checkRequest.texts.tasks.get(name);
  const offered = isOffered(checkRequest, task);
  const opened = offered && isOpen(checkRequest, task);
  /** @type {Here} */
  const here = (more) => checkRequest.links.task(name, more);
  return {
    title: text.title,
    why: text.why,
    gates: offered ? task.gates.map((gate) => gateShown(checkRequest, task, gate, here)) : [],
    open: opened,
    closed: opened ? "" : whyClosed(checkRequest, task, offered),
    region_name: checkRequest.region.name,
    tools: offered ? text.tools : [],
    minutes: roundHalfEven(task.minutes),
    result: offered ? resultOf(checkRequest, task) : "",
    part: task.picture,
    back_href: checkRequest.links.step(),
    problems: problemNotes(checkRequest),
    ...(opened ? openTaskSteps(checkRequest, task, text) : {}),
  };
}

/** Whether these answers, and no others, make the engine offer the task: on the advice, or beside a question.
 * @param {CheckRequest} request @param {Task} task */
function isOffered({ step }, task) {
  return step.kind === "question" ? step.betterTest === task : step.kind === "result" && step.tasks.includes(task);
}

/** Whether every gate was answered yes. @param {CheckRequest} checkRequest @param {Task} task */
export function isOpen(checkRequest, task) {
  return task.gates.every((gate) => checkRequest.answers.get(gate) === "yes");
}

/** @param {CheckRequest} checkRequest @param {Task} task @param {TaskText} text */
function openTaskSteps(checkRequest, task, text) {
  const isCut = task.gates.includes(OFF_AT_THE_SUPPLY);
  const measured = measuredBy(checkRequest.pack, task);
  return {
    cautions: cautionsOf(checkRequest, task),
    steps: instructionsOf(checkRequest, text.steps, false),
    stop_if: text.stop_if,
    back_on: isCut ? checkRequest.texts.isolation.back_on : [],
    after_question: checkRequest.texts.questions.get(task.outcome)?.ask,
    after_choices: outcomesOf(checkRequest, task),
    reading: measured.length ? readingForm(checkRequest, measured, checkRequest.links.taskPath(task.id)) : null,
  };
}

/** @param {CheckRequest} checkRequest @param {Task} task */
export function cautionsOf(checkRequest, task) {
  const { signs } = checkRequest.site.pages;
  return checkRequest.texts.tasks.get(task.id).cautions.map((caution) => ({ ...caution, sign: signs[caution.sign] }));
}

/** What to do now that it did or did not put the oven right; nothing before that is known.
 * @param {CheckRequest} checkRequest @param {Task} task */
export function resultOf(checkRequest, task) {
  const text = checkRequest.texts.tasks.get(task.id);
  const outcome = checkRequest.answers.get(DID + task.id);
  return outcome === "fixed" ? text.fixed : outcome === "not-fixed" ? text.not_fixed : "";
}

/** One gate of a task; `here` gives the address of the page it stands on with more answers.
 * @param {CheckRequest} checkRequest @param {Task} task @param {string} gate @param {Here} here */
export function gateShown(checkRequest, task, gate, here) {
  const text = checkRequest.texts.gates.get(gate);
  const [yes, no, unsure] = ["yes", "no", "unsure"].map((answer) => here([[gate, answer]]));
  return {
    question: text.ask,
    yes_href: yes,
    no_href: no,
    unsure_href: unsure,
    state: gateState(checkRequest.answers.get(gate)),
    if_not: text.if_not,
    looks_off: text.looks_off,
    how: gate === OFF_AT_THE_SUPPLY ? fullIsolation(checkRequest) : null,
    waits: gate === COLD ? waitsFor(checkRequest, task) : [],
  };
}

/** How long to wait; what hands get near to has to be colder still.
 * @param {CheckRequest} checkRequest @param {Task} task */
function waitsFor(checkRequest, task) {
  const cooling = [...checkRequest.texts.isolation.cooling];
  return cooling.filter(([after]) => after !== TOUCHED || COLDEST.includes(task.picture)).map(([, line]) => line);
}

/** @param {string} answer */
function gateState(answer) {
  if (answer === CANT_TELL) return "unsure";
  return ["yes", "no", "unsure"].includes(answer) ? answer : "";
}

/** @param {CheckRequest} checkRequest @param {Task} task @param {boolean} offered */
function whyClosed(checkRequest, task, offered) {
  if (offered) {
    const given = task.gates.map((gate) => checkRequest.answers.get(gate));
    return given.includes("no") || given.includes("unsure") ? "not-yet" : "unanswered";
  }
  if (checkRequest.check.region.removedTasks.has(task.id)) return "removed";
  return checkRequest.step.kind === "question" ? "too-early" : "not-now";
}

/** What may have come of it, each leading back to the check with that answer.
 * @param {CheckRequest} checkRequest @param {Task} task */
function outcomesOf(checkRequest, task) {
  const asked = checkRequest.pack.observations.get(task.outcome);
  const options = checkRequest.texts.questions.has(task.outcome) ? [...asked.options, CANT_TELL] : asked.options;
  return options.map((option) => ({
    label: answerLabel(checkRequest, task.outcome, option),
    href: checkRequest.links.step([[task.outcome, option]]),
  }));
}
