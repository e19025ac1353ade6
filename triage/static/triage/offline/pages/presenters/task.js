/* One task: offered or not, its gates, and only then its steps. As `triage/check_pages/presenters/task.py`: whether it
   is offered comes from the engine for exactly these answers; an address alone never opens it. */

import { CANT_TELL } from "../../engine/pack.js";
import { roundHalfEven } from "../rounding.js";
import { DID, answerWords } from "./answers.js";
import { problemSentences } from "./problems.js";
import { measuredBy, readingForm } from "./readings/form.js";
import { OFF_AT_THE_SUPPLY, instructionsOf, switchingOff } from "./supply.js";

const COLD = "cold";
const TOUCHED = "lamp-glass-seal";
const COLDEST = ["lamp", "glass", "seal", "hinge", "door"];

export function taskPage(visit, name) {
  const task = visit.pack.tasks.get(name);
  const text = visit.texts.tasks.get(name);
  const offered = isOffered(visit, task);
  const opened = offered && isOpen(visit, task);
  const here = (more) => visit.links.task(name, more);
  return {
    title: text.title,
    why: text.why,
    gates: offered ? task.gates.map((gate) => gateShown(visit, task, gate, here)) : [],
    open: opened,
    closed: opened ? "" : whyClosed(visit, task, offered),
    region_name: visit.place.name,
    tools: offered ? text.tools : [],
    minutes: roundHalfEven(task.minutes),
    result: offered ? resultOf(visit, task) : "",
    part: task.picture,
    back_href: visit.links.step(),
    problems: problemSentences(visit),
    ...(opened ? openTaskSteps(visit, task, text) : {}),
  };
}

/* Whether these answers, and no others, make the engine offer the task: on the advice, or beside a question. */
function isOffered({ step }, task) {
  return step.kind === "ask" ? step.better === task : Boolean(step.tasks?.includes(task));
}

/** Whether every gate was answered yes. */
export function isOpen(visit, task) {
  return task.gates.every((gate) => visit.reading.answers.get(gate) === "yes");
}

function openTaskSteps(visit, task, text) {
  const isCut = task.gates.includes(OFF_AT_THE_SUPPLY);
  const measured = measuredBy(visit.pack, task);
  return {
    cautions: cautionsOf(visit, task),
    steps: instructionsOf(visit, text.steps, false),
    stop_if: text.stop_if,
    back_on: isCut ? visit.texts.isolation.back_on : [],
    after_question: visit.texts.questions.get(task.outcome)?.ask,
    after_choices: outcomesOf(visit, task),
    reading: measured.length ? readingForm(visit, measured, visit.links.taskPath(task.id)) : null,
  };
}

export function cautionsOf(visit, task) {
  const { signs } = visit.site.pages;
  return visit.texts.tasks.get(task.id).cautions.map((caution) => ({ ...caution, sign: signs[caution.sign] }));
}

/** What to do now that it did or did not put the oven right; nothing before that is known. */
export function resultOf(visit, task) {
  const text = visit.texts.tasks.get(task.id);
  const told = visit.reading.answers.get(DID + task.id);
  return told === "fixed" ? text.fixed : told === "not-fixed" ? text.not_fixed : "";
}

/** One gate of a task; `here` gives the address of the page it stands on with more answers. */
export function gateShown(visit, task, gate, here) {
  const text = visit.texts.gates.get(gate);
  const [yes, no, unsure] = ["yes", "no", "unsure"].map((answer) => here([[gate, answer]]));
  return {
    question: text.ask,
    yes_href: yes,
    no_href: no,
    unsure_href: unsure,
    state: gateState(visit.reading.answers.get(gate)),
    if_not: text.if_not,
    looks_off: text.looks_off,
    how: gate === OFF_AT_THE_SUPPLY ? switchingOff(visit) : null,
    waits: gate === COLD ? waitsFor(visit, task) : [],
  };
}

/* How long to wait; what hands get near to has to be colder still. */
function waitsFor(visit, task) {
  const cooling = [...visit.texts.isolation.cooling];
  return cooling.filter(([after]) => after !== TOUCHED || COLDEST.includes(task.picture)).map(([, line]) => line);
}

function gateState(answer) {
  if (answer === CANT_TELL) return "unsure";
  return ["yes", "no", "unsure"].includes(answer) ? answer : "";
}

function whyClosed(visit, task, offered) {
  if (offered) {
    const given = task.gates.map((gate) => visit.reading.answers.get(gate));
    return given.includes("no") || given.includes("unsure") ? "not-yet" : "unanswered";
  }
  if (visit.place.region.removes.has(task.id)) return "removed";
  return visit.step.kind === "ask" ? "too-early" : "not-now";
}

/* What may have come of it, each leading back to the check with that answer. */
function outcomesOf(visit, task) {
  const asked = visit.pack.observations.get(task.outcome);
  const options = visit.texts.questions.has(task.outcome) ? [...asked.options, CANT_TELL] : asked.options;
  return options.map((option) => ({
    label: answerWords(visit, task.outcome, option),
    href: visit.links.step([[task.outcome, option]]),
  }));
}
